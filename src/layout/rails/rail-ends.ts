/**
 * How the two ends of the top rail are finished: cut, closed, plated to a wall, or returned to a post or the ground.
 *
 * A level rail is cut square, a raking one plumb; a capped end is cut square. A return is a plumb piece mitred to the rail,
 * and, back to the post, a level piece mitred to that and cut to the post. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { negate, type Vec3 } from "../../kernel/vec.js";
import { type Member, member } from "../../members/member.js";
import type { EndDesign, FlangeDesign, RailDesign } from "../document/design.js";
import { alongOf, at, joined, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { holesOf, plateOr } from "../posts/plate-or.js";
import { postAxis, xAt } from "../posts/post-line.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import { edgeZ, type RailPath, type RailRun } from "./rail-path.js";
import { lastRailId, railId } from "./top-rails.js";

/** One end of the rail: which, where, and how its run goes away from it. */
interface RailEnd {
  readonly place: Place;
  readonly rail: RailDesign;
  readonly extent: SectionExtent;
  readonly run: RailRun;
  readonly id: string;
  readonly side: 0 | 1;
  /** Outward along the guard: −1 at the lower end. */
  readonly way: 1 | -1;
  /** On the axis. */
  readonly point: Vec3;
  readonly x: number;
  /** Of marks: 2 at the upper end where the lower one is finished the same way. */
  readonly number: 1 | 2;
}

const NOTHING: Part = { members: [], joints: [], diagnostics: [] };

const outward = ({ place, run, way }: RailEnd): Vec3 => {
  const along = alongOf(place, run.reach);
  return way === 1 ? along : negate(along);
};

/** Joint ids keep the names an earlier form of the document gave them. */
function cutJoint(end: RailEnd, cut: Extract<Joint, { kind: "cut" }>["cut"], onto?: string): Joint {
  const { id, side, place, run, x } = end;
  const base = { kind: "cut", id: `${id}-end-${side}`, end: { member: id, end: side }, cut } as const;
  const topPoint = at(place, run.reach, x, edgeZ(run, "top", x));
  return { ...base, at: topPoint, ...(onto === undefined ? {} : { onto }) };
}

const plainCut = ({ run }: RailEnd) => ({ type: run.slope === 0 ? "square" : "plumb" }) as const;

function flange(
  end: RailEnd,
  plate: FlangeDesign,
  thickness: number,
  where: { readonly at: Vec3; readonly normal: Vec3; readonly up?: Vec3; readonly height: number },
) {
  const { place, extent, side, id, run } = end;
  return plateOr(
    {
      ...{ id: `${id}-end-plate-${side}`, mark: `EP${end.number}${place.suffix}`, thickness },
      ...{ material: place.design.material, at: where.at, normal: where.normal },
      ...(where.up === undefined ? {} : { up: where.up }),
      outline: {
        width: plate.width ?? 2 * extent.halfWidth,
        depth: plate.height ?? where.height,
        cornerRadius: plate.cornerRadius,
      },
      holes: holesOf(plate.holes, plate.holes?.across ?? 0, plate.holes?.along ?? 0),
    },
    `legs[${run.ground.index}].${side === 0 ? "start" : "end"}`,
  );
}

function wallEnd(end: RailEnd, design: Extract<EndDesign, { type: "wall" }>): Part {
  if (design.endPlate === 0) return { ...NOTHING, joints: [cutJoint(end, plainCut(end), "wall")] };
  const { run, extent } = end;
  const height = extent.depth * Math.hypot(1, run.slope);
  const made = flange(end, design.plate, design.endPlate, { at: end.point, normal: outward(end), height });
  if (made.plate === undefined) return { ...NOTHING, diagnostics: made.diagnostics };
  const joint = cutJoint(end, { type: "face" }, made.plate.id);
  return { members: [made.plate], joints: [joint], diagnostics: [] };
}

function capEnd(end: RailEnd, cap: number): Part {
  if (cap === 0) return { ...NOTHING, joints: [cutJoint(end, plainCut(end))] };
  const { place, rail, run, side, id, point } = end;
  const secant = Math.hypot(1, run.slope);
  const along = alongOf(place, run.reach);
  const axis: Vec3 = [along[0] / secant, along[1] / secant, run.slope / secant];
  const normal = side === 1 ? axis : negate(axis);
  const made = plateOr(
    {
      ...{ id: `${id}-cap-${side}`, mark: `CP${end.number}${place.suffix}`, thickness: cap },
      ...{ material: place.design.material, outline: rail.section.region.outer },
      ...{ at: point, normal },
    },
    `legs[${run.ground.index}].${side === 0 ? "start" : "end"}`,
  );
  if (made.plate === undefined) return { ...NOTHING, diagnostics: made.diagnostics };
  return { members: [made.plate], joints: [cutJoint(end, { type: "face" }, made.plate.id)], diagnostics: [] };
}

/** Floor or landing under a point past the end of the guard. */
function groundZ({ run, side, x }: RailEnd): number {
  const { ground } = run;
  if (ground.flight === undefined) return ground.groundZ + ground.slope * x;
  return side === 1 ? (ground.flight.nosings.at(-1)?.z ?? 0) : floorZ(run);
}

function floorZ({ ground }: RailRun): number {
  const { flight } = ground;
  return flight === undefined ? ground.groundZ : (flight.nosings.at(-1)?.z ?? 0) + flight.line.floorZ;
}

function returnEnd(
  end: RailEnd,
  design: Extract<EndDesign, { type: "return" }>,
  post: PlacedPost | undefined,
): Part {
  const { place, rail, id, side, point, run } = end;
  const { material } = place.design;
  const away = outward(end);
  const [down, back] = [`${id}-down-${side}`, `${id}-back-${side}`];
  const onGround = design.to === "ground";
  const foot: Vec3 = onGround
    ? [point[0], point[1], groundZ(end) + design.endPlate]
    : [point[0], point[1], point[2] - design.down];
  const mark = (letter: string) => `RT${end.number}${letter}${place.suffix}`;
  const common = { section: rail.section, role: "rail", material } as const;
  const leg = member({ id: down, mark: mark("a"), ...common, from: point, to: foot, up: away });
  const miter: Joint = {
    ...{ kind: "miter", id: `${id}-return-${side}` },
    ends: [
      { member: id, end: side },
      { member: down, end: 0 },
    ],
  };
  if (onGround) {
    if (design.endPlate === 0) return { members: [leg], joints: [miter], diagnostics: [] };
    const up = alongOf(place, run.reach);
    const lies = { at: [foot[0], foot[1], groundZ(end)] as Vec3, normal: [0, 0, 1] as Vec3, up };
    const made = flange(end, design.plate, design.endPlate, { ...lies, height: end.extent.depth });
    if (made.plate === undefined) return { ...NOTHING, diagnostics: made.diagnostics };
    const cut: Joint = {
      ...{ kind: "cut", id: `${down}-foot`, end: { member: down, end: 1 } },
      cut: { type: "face" },
      onto: made.plate.id,
    };
    return { members: [leg, made.plate], joints: [miter, cut], diagnostics: [] };
  }
  if (post === undefined) return { members: [leg], joints: [miter], diagnostics: [] };
  const own = postAxis(place.site, post);
  const to = at(place, post.reach, xAt(own, foot[2]), foot[2]);
  const level: Member = member({ id: back, mark: mark("b"), ...common, from: foot, to });
  const turn: Joint = {
    ...{ kind: "miter", id: `${id}-return-back-${side}` },
    ends: [
      { member: down, end: 1 },
      { member: back, end: 0 },
    ],
  };
  // A rail wider than its post is closed level with its own middle, as a post wider than its rail is.
  const wide = end.extent.halfWidth > post.extent.halfWidth + STATION_MM;
  const cope: Joint = {
    ...{ kind: "cope", id: `${back}-post`, end: { member: back, end: 1 }, onto: [post.id] },
    ...(wide ? { shoulder: "midline" as const } : {}),
  };
  return { members: [leg, level], joints: [miter, turn, cope], diagnostics: [] };
}

/** True where the pieces of both ends would bear one mark. */
function sameMark(lower: EndDesign | undefined, upper: EndDesign | undefined): boolean {
  const plated = (end: EndDesign | undefined) => end !== undefined && end.type !== "free" && end.endPlate > 0;
  return lower?.type === upper?.type || (plated(lower) && plated(upper));
}

/** The ends of the top rail: joints of its own ends, and the pieces that go with them. */
export function railEnds(place: Place, rail: RailDesign, path: RailPath, posts: readonly PlacedPost[]): Part {
  const extent = sectionExtent(rail.section);
  const { legs } = place.site;
  const designs = [legs[0]?.leg.start, legs.at(-1)?.leg.end] as const;
  const parts = ([0, 1] as const).map((side): Part => {
    const run = path.runs.at(side === 0 ? 0 : -1) as RailRun;
    const leg = (side === 0 ? legs[0] : legs.at(-1))?.leg;
    const design = designs[side];
    const number = side === 1 && sameMark(designs[0], design) ? 2 : 1;
    const x = run.x.top[side];
    const point = at(place, run.reach, x, edgeZ(run, "axis", x));
    const way = side === 1 ? 1 : -1;
    const end: RailEnd = {
      place,
      rail,
      extent,
      run,
      id: side === 0 ? railId(place, run, rail) : lastRailId(place, run, rail),
      side,
      way,
      point,
      x,
      number,
    };
    if (design?.type === "wall") return wallEnd(end, design);
    if (design?.type !== "return") return capEnd(end, design?.cap ?? 0);
    const own = posts.filter((post) => post.leg === leg?.id);
    return returnEnd(end, design, side === 0 ? own[0] : own.at(-1));
  });
  return joined(parts);
}
