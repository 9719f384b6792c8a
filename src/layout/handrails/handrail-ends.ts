/**
 * How the two ends of a handrail are turned away: level to a wall or into a post, plumb to the ground, or cut plumb.
 *
 * A return is one more link of the rail's chain, mitred to it; its far end is cut to a flange, to the wall or ground itself, or
 * shaped to the post. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { addScaled, negate, scale, type Vec3 } from "../../kernel/vec.js";
import type { HandrailDesign, HandrailFlange, HandrailReturn } from "../document/handrail-design.js";
import { alongOf, at, inwardOf, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { holesOf, plateOr } from "../posts/plate-or.js";
import { axisX, inwardOfAxis, postAxis, xAt } from "../posts/post-line.js";
import { edgeZ, type RailRun } from "../rails/rail-path.js";
import type { RunLine } from "../rails/rail-runs.js";
import { sayLength } from "../say-length.js";
import type { SectionExtent } from "../section-extent.js";
import type { LegGround, Site } from "../site/site.js";
import type { Link } from "./chain.js";

/** One end: which, and the run that ends there. */
export interface HandrailEndPlace {
  readonly place: Place;
  readonly design: HandrailDesign;
  readonly extent: SectionExtent;
  readonly id: string;
  /** In the document, e.g. `handrails[0].top`. */
  readonly path: string;
  readonly side: 0 | 1;
  readonly run: RailRun;
  readonly x: number;
  /** On the axis. */
  readonly point: Vec3;
  /** Of its flange. */
  readonly mark: string;
}

/** A return: the link, what its far end is cut to, and the flange. */
export interface HandrailReturnPart extends Part {
  readonly link: Link;
}

/** A post with the height at which its tube ends. */
export type StandingPost = PlacedPost & { readonly topZ: number };

/** The post a handrail is turned into: the next one at or past the end in its reach that stands at the rail's height. */
export function postAt(
  posts: readonly StandingPost[],
  line: RunLine,
  extent: SectionExtent,
  x: number,
  side: 0 | 1,
): PlacedPost | undefined {
  const way = side === 1 ? 1 : -1;
  const depth = extent.depth * Math.hypot(1, line.slope);
  return posts
    .filter((post) => {
      const top = line.z0 + line.slope * post.x;
      const beside = post.footZ <= top - depth && top <= post.topZ;
      return beside && post.reach === line.reach && way * (post.x - x) >= -STATION_MM;
    })
    .sort((a, b) => way * (a.x - b.x))[0];
}

/** x where a post's axis is as high as the axis of a handrail's line. */
export function axisAtRail(place: Place, post: PlacedPost, line: RunLine, extent: SectionExtent): number {
  const z0 = line.z0 - extent.above * Math.hypot(1, line.slope);
  return axisX(place.site, post, { reach: line.reach, slope: line.slope, z0 });
}

/** Findings about a return to a post: none there, or one narrower than the rail. */
export function postFindings(
  end: Pick<HandrailEndPlace, "design" | "path" | "side">,
  post: PlacedPost | undefined,
  extent: SectionExtent,
): Diagnostic[] {
  if (post === undefined) {
    const message = `Handrail ${end.design.id}: expected a post at its height at or past its ${end.side === 0 ? "lower" : "upper"} end to be turned into, got none.`;
    const hint = "Put a post there, make `extend` shorter, or turn it to a wall or the ground.";
    return [diagnostic({ code: "handrail-no-post", path: end.path, message, hint })];
  }
  const by = extent.halfWidth - post.extent.depth / 2;
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "handrail-wide-for-post",
      path: end.path,
      members: [post.id],
      message: `Handrail ${end.design.id}: expected post ${post.mark} no narrower than the rail that is turned into it, got ${sayLength(by)} less on each side.`,
      hint: "Use a wider post there, or turn the rail to a wall or the ground.",
      values: { bySide: by },
    }),
  ];
}

/** Floor, tread or landing under a place of a reach. */
function groundUnder(site: Site, reach: number, x: number): number {
  const own = site.legs.filter((ground) => ground.reach === reach);
  const level = own.find((g) => g.flight === undefined && g.x[0] <= x && x <= g.x[1]);
  if (level !== undefined) return level.groundZ + level.slope * x;
  const near = own.find((g) => x <= g.x[1]) ?? (own.at(-1) as LegGround);
  if (near.flight === undefined) return near.groundZ + near.slope * x;
  const { nosings, line } = near.flight;
  const tread = [...nosings].reverse().find((nosing) => nosing.x <= x);
  return tread?.z ?? (nosings.at(-1)?.z ?? 0) + line.floorZ;
}

/** Up of the section at the end: square to the run, in its plumb plane. */
function upOf(along: Vec3, slope: number): Vec3 {
  const secant = Math.hypot(1, slope);
  return [(-slope * along[0]) / secant, (-slope * along[1]) / secant, 1 / secant];
}

function flangePlate(
  end: HandrailEndPlace,
  flange: HandrailFlange,
  where: { readonly at: Vec3; readonly normal: Vec3; readonly up?: Vec3 },
) {
  const { place, extent, id, side, path, mark } = end;
  const { plate, thickness } = flange;
  const { width = 2 * extent.halfWidth, height = extent.depth, cornerRadius, holes } = plate;
  return plateOr(
    {
      ...{ id: `${id}-flange-${side}`, mark, thickness, material: place.design.material, ...where },
      outline: { width, depth: height, cornerRadius },
      holes: holesOf(holes, holes?.across ?? 0, holes?.along ?? 0),
    },
    path,
  );
}

/** A return from the end's point along `way`, `reach` long to what it ends on, less a flange there. */
function toFace(
  end: HandrailEndPlace,
  way: Vec3,
  reach: number,
  more: {
    readonly up: Vec3;
    readonly plateUp?: Vec3;
    readonly flange: HandrailFlange | undefined;
    readonly onto: string;
  },
): HandrailReturnPart {
  const { id, side, point, path } = end;
  const name = `${id}-return-${side}`;
  const { flange } = more;
  const far = addScaled(point, way, reach - (flange?.thickness ?? 0));
  const link: Link =
    side === 1
      ? { id: name, from: point, to: far, way, up: more.up, path, mitred: true }
      : { id: name, from: far, to: point, way: negate(way), up: more.up, path, mitred: true };
  const made =
    flange && flangePlate(end, flange, { at: far, normal: way, ...(more.plateUp && { up: more.plateUp }) });
  const base = { kind: "cut", id: `${name}-end`, end: { member: name, end: side } } as const;
  const joint: Joint =
    made?.plate === undefined
      ? { ...base, cut: { type: "square" }, onto: more.onto }
      : { ...base, cut: { type: "face" }, onto: made.plate.id };
  return {
    link,
    members: made?.plate === undefined ? [] : [made.plate],
    joints: [joint],
    diagnostics: made?.diagnostics ?? [],
  };
}

/** The return of an end. */
export function handrailReturn(
  end: HandrailEndPlace,
  back: HandrailReturn,
  post: PlacedPost | undefined,
): HandrailReturnPart | undefined {
  const { place, run, point, side, x } = end;
  const along = alongOf(place, run.reach);
  const inward = inwardOf(place, run.reach);
  const up = upOf(along, run.slope);
  if (back.to === "wall") {
    const way = back.towards === "inside" ? inward : negate(inward);
    return toFace(end, way, back.distance, { up, flange: back.flange, onto: "wall" });
  }
  if (back.to === "ground") {
    const reach = point[2] - groundUnder(place.site, run.reach, x);
    const outward = scale(along, side === 1 ? 1 : -1);
    const more = { up: outward, plateUp: along, flange: back.flange, onto: "ground" };
    return toFace(end, [0, 0, -1], reach, more);
  }
  if (post === undefined) return undefined;
  const way = negate(inward);
  const name = `${end.id}-return-${side}`;
  const z = edgeZ(run, "axis", x);
  const own = postAxis(place.site, post, run.reach);
  const axis = at(place, run.reach, xAt(own, z), z, inwardOfAxis(place, own, z));
  const common = { id: name, up, path: end.path, mitred: true } as const;
  const link: Link =
    side === 1
      ? { ...common, from: point, to: axis, way }
      : { ...common, from: axis, to: point, way: negate(way) };
  const joint: Joint = {
    ...{ kind: "cope", id: `${name}-post`, end: { member: name, end: side }, onto: [post.id] },
  };
  return { link, members: [], joints: [joint], diagnostics: [] };
}
