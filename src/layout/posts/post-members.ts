/**
 * Posts as members: plumb, from the top of their plate to the top rail's axis, or past it at a corner.
 *
 * A post that ends on the rail's axis yields to the rail by the solver's own rule. Two cases are asked for explicitly: a
 * post under a break is shaped to both rails, and a post wider than its rail is closed at the rail's mid-depth, with a
 * warning that says how much of it stands out. A corner post goes on past the rails, which are cut to it. Millimetres.
 *
 * @packageDocumentation
 */
import type { CopeJoint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { member } from "../../members/member.js";
import { missesRail } from "../as-set/beside.js";
import { postName } from "../as-set/stance.js";
import type { RailDesign } from "../document/design.js";
import { alongOf, joined, type Part, type Place } from "../part.js";
import { edgeZ, type RailPath, type RailRun } from "../rails/rail-path.js";
import { lastRailId, legId, railId } from "../rails/top-rails.js";
import { sayLength } from "../say-length.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import type { PlacedPost } from "./place-posts.js";
import { plateOr } from "./plate-or.js";
import { axisPoint, axisX, crossX, faceOf, postAxis, yAt } from "./post-line.js";

/** A post's top: the run it stands under, where its axis crosses that of the run, and its two faces there. */
interface Head {
  readonly run: RailRun;
  readonly x: number;
  /** From and to which the post reaches along the guard, from the run's underside to its axis. */
  readonly faces: readonly [number, number];
}

/** Where a post meets the rail; undefined where no run of its reach is over it. */
function headOf(place: Place, post: PlacedPost, path: RailPath): Head | undefined {
  const axis = postAxis(place.site, post);
  const line = (run: RailRun, edge: "axis" | "underside") => ({ slope: run.slope, z0: run.z0[edge] });
  const run = path.runs.find((own) => {
    const x = crossX(axis, line(own, "axis"));
    return own.reach === post.reach && own.x.axis[0] <= x && x <= own.x.axis[1];
  });
  if (run === undefined) return undefined;
  const [down, up] = [faceOf(place, post, post.reach, -1), faceOf(place, post, post.reach, 1)];
  const edges = ["axis", "underside"] as const;
  const reach = (face: typeof up) => edges.map((edge) => crossX(face, line(run, edge)));
  return {
    run,
    x: crossX(axis, line(run, "axis")),
    faces: [Math.min(...reach(down)), Math.max(...reach(up))],
  };
}

/** The members a post's top touches: two under a break, when its footprint meets the miter between axis and underside. */
function railsOver(place: Place, post: PlacedPost, head: Head, path: RailPath, rail: RailDesign): string[] {
  const broken = path.breaks.find(({ x, runs }) => {
    const reach = path.runs[runs[0]]?.reach;
    const [low, high] = x.axis <= x.underside ? [x.axis, x.underside] : [x.underside, x.axis];
    return reach === post.reach && head.faces[1] > low + STATION_MM && head.faces[0] < high - STATION_MM;
  });
  if (broken === undefined) return [railId(place, head.run, rail, head.x)];
  const [lower, upper] = broken.runs.map((i) => path.runs[i] as RailRun) as [RailRun, RailRun];
  const ids = [lastRailId(place, lower, rail), railId(place, upper, rail)];
  return broken.leg === undefined ? ids : [ids[0] as string, legId(place, path, broken, rail)];
}

/** The stretch of the rail's axis that a post of a reach may stand under. */
function reachSpan(path: RailPath, reach: number): readonly [number, number] {
  const runs = path.runs.filter((run) => run.reach === reach);
  return [runs[0]?.x.axis[0] ?? 0, runs.at(-1)?.x.axis[1] ?? 0];
}

function pastRail(place: Place, post: PlacedPost, path: RailPath): Diagnostic[] {
  const [first, last] = reachSpan(path, post.reach);
  const ends = ([-1, 1] as const).map((way) => {
    const faces = path.runs.filter((run) => run.reach === post.reach).at(way === -1 ? 0 : -1);
    const line = { slope: faces?.slope ?? 0, z0: faces?.z0.axis ?? 0 };
    return crossX(faceOf(place, post, post.reach, way), line);
  }) as [number, number];
  const by = Math.max(first - ends[0], ends[1] - last);
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "post-past-rail",
      path: post.path,
      members: [post.id],
      message: `${postName(post)}: expected it to stand wholly under the top rail, got a face ${sayLength(by)} past the rail's end.`,
      hint: "Move the post in, or let the leg or its rail reach farther.",
      values: { by },
    }),
  ];
}

function tooLow(post: PlacedPost, underside: number): Diagnostic[] {
  const height = underside - post.footZ;
  if (height > 0) return [];
  return [
    diagnostic({
      code: "rail-below-foot",
      path: post.path,
      members: [post.id],
      message: `${postName(post)}: expected the rail's underside above the top of the plate, got ${sayLength(height)} at its lower face.`,
      hint: "Raise the rail, or make the plate thinner.",
      values: { height },
    }),
  ];
}

/** `off`: how far its axis stands beside the rail's. */
function wider(
  post: PlacedPost,
  by: number,
  off: number,
  rail: RailDesign,
  railExtent: SectionExtent,
): Diagnostic[] {
  if (by <= STATION_MM) return [];
  const where =
    off === 0
      ? "more on each side; its sides are"
      : `past its side, ${sayLength(off)} off its middle; that is`;
  return [
    diagnostic({
      code: "post-wider-than-rail",
      severity: "warning",
      path: post.path,
      members: [post.id],
      message: `${postName(post)} (${post.section.name}): expected it no wider across than the top rail (${rail.section.name}), got ${sayLength(by)} ${where} closed level with the rail's mid-depth.`,
      hint: "Grind the corners to suit, use a narrower post or a wider rail.",
      values: { bySide: by, postHalfWidth: post.extent.halfWidth, railHalfWidth: railExtent.halfWidth },
    }),
  ];
}

function postMember(place: Place, post: PlacedPost, topZ: number) {
  const up = alongOf(place, post.reach);
  return member({
    ...{ id: post.id, mark: post.mark, section: post.section, role: "post" },
    ...{ material: place.design.material, up },
    from: axisPoint(place, post, post.footZ),
    to: axisPoint(place, post, topZ),
  });
}

/** How far a corner post reaches along the rail after the turn. */
function reachAcross(place: Place, { extent, corner, section }: PlacedPost): number {
  const angle = Math.abs(place.site.corners[corner?.index ?? 0]?.angle ?? 0);
  const round = section.shape.kind === "round-tube" || section.shape.kind === "round-bar";
  if (round || angle === 90) return extent.halfWidth;
  return Math.hypot(extent.halfWidth, extent.depth / 2);
}

/** The top of a leaning post is sawn square: how far its lowest point is under its axis' end. */
function topFall({ set, extent }: PlacedPost): number {
  if (set === undefined) return 0;
  return (extent.depth / 2) * Math.abs(set.tilt.along) + extent.halfWidth * Math.abs(set.tilt.across);
}

type Corner = NonNullable<PlacedPost["corner"]>;

/** A post that goes on past the rails of both sides. */
function cornerPost(place: Place, post: PlacedPost, path: RailPath, corner: Corner): Part {
  const runs = path.corners[corner.index]?.runs ?? [];
  const heights = runs.map((i) => path.runs[i] as RailRun);
  const xOf = ({ reach, slope, z0 }: RailRun, edge: "top" | "underside") =>
    axisX(place.site, post, { reach, slope, z0: z0[edge] });
  // A rail that climbs from the post meets its face higher than its axis; the post covers the whole cut.
  const faces = [-post.extent.depth / 2, reachAcross(place, post)] as const;
  const top = Math.max(
    ...heights.map((run, i) => {
      const x = xOf(run, "top");
      return Math.max(edgeZ(run, "top", x), edgeZ(run, "top", x + (faces[i] ?? 0))) + topFall(post);
    }),
  );
  const low = Math.min(...heights.map((run) => edgeZ(run, "underside", xOf(run, "underside"))));
  const diagnostics = tooLow(post, low);
  if (diagnostics.length > 0) return { members: [], joints: [], diagnostics };
  const tube = postMember(place, post, top + corner.above - corner.cap);
  if (corner.cap === 0) return { members: [tube], joints: [], diagnostics };
  const made = plateOr(
    {
      ...{
        id: `${post.id}-cap`,
        mark: `${post.mark}-CP`,
        material: tube.material,
        up: alongOf(place, post.reach),
      },
      ...{ outline: post.section.region.outer, thickness: corner.cap, at: tube.to },
      normal: post.set === undefined ? [0, 0, 1] : tube.frame.z,
    },
    post.path,
  );
  return { members: [tube, ...(made.plate ? [made.plate] : [])], joints: [], diagnostics: made.diagnostics };
}

/** A post under the rail. */
function railPost(place: Place, post: PlacedPost, path: RailPath, rail: RailDesign): Part {
  const head = headOf(place, post, path);
  const past = pastRail(place, post, path);
  const low =
    head === undefined || past.length > 0
      ? []
      : tooLow(
          post,
          edgeZ(head.run, "underside", head.x) - (Math.abs(head.run.slope) * post.extent.depth) / 2,
        );
  const diagnostics = [...past, ...low];
  if (head === undefined || diagnostics.length > 0) return { members: [], joints: [], diagnostics };
  const railExtent = sectionExtent(rail.section);
  const top = edgeZ(head.run, "axis", head.x);
  const axis = postAxis(place.site, post);
  const off = Math.abs(yAt(axis, top));
  const half = post.extent.halfWidth * Math.hypot(1, axis.q);
  const by = half + off - railExtent.halfWidth;
  if (off >= half + railExtent.halfWidth) {
    const diagnostics = [missesRail(post, `rail ${rail.id}`, off)];
    return { members: [], joints: [], diagnostics };
  }
  const onto = railsOver(place, post, head, path, rail);
  const wide = by > STATION_MM;
  const joint = { kind: "cope", id: `${post.id}-top`, end: { member: post.id, end: 1 } } as const;
  const asked: CopeJoint[] =
    wide || off > 0 || onto.length > 1
      ? [{ ...joint, onto, ...(wide ? { shoulder: "midline" as const } : {}) }]
      : [];
  return {
    members: [postMember(place, post, top)],
    joints: asked,
    diagnostics: wider(post, by, off, rail, railExtent),
  };
}

/** The posts' members; a post that is not under the rail, or has no height, is left out with its diagnostic. */
export function postMembers(
  place: Place,
  rail: RailDesign,
  posts: readonly PlacedPost[],
  path: RailPath,
): Part {
  return joined(
    posts.map((post) =>
      post.corner === undefined
        ? railPost(place, post, path, rail)
        : cornerPost(place, post, path, post.corner),
    ),
  );
}
