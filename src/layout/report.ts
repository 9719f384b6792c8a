/**
 * Makes the report of a layout: what was decided, in numbers a shop can check with a tape.
 *
 * @packageDocumentation
 */
import { distance } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { Design, RailDesign } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import type { PlacedPost } from "./place-posts.js";
import { edgeZ, pathZ, type RailPath, type RailRun } from "./rail-path.js";
import type {
  BreakReport,
  LayoutReport,
  NosingReport,
  PostReport,
  SpacingReport,
  TopRailReport,
} from "./report-types.js";
import { topRailId } from "./top-rails.js";

const ASSUMPTIONS = [
  "The steps are counted and taken as equal; they are not measured. Measure every nosing before cutting.",
  "The guard stands in one plumb plane; offsets across the stair are not part of this layout.",
  "Heights, gaps and plates are the design's own inputs; local codes and licensed practice decide what they must be.",
] as const;

function nosingReports(line: NosingLine, path: RailPath): NosingReport[] {
  return line.nosings.flatMap((nosing): NosingReport[] => {
    const z = pathZ(path, "top", nosing.x);
    return z === undefined ? [] : [{ ...nosing, railTop: z - nosing.z }];
  });
}

function heightsOf(nosings: readonly NosingReport[]): LayoutReport["heights"] {
  const [first] = nosings;
  if (first === undefined) return null;
  const least = nosings.reduce((best, own) => (own.railTop < best.railTop ? own : best), first);
  const greatest = nosings.reduce((best, own) => (own.railTop > best.railTop ? own : best), first);
  return { least, greatest };
}

function breakReports(path: RailPath, rail: RailDesign): BreakReport[] {
  return path.breaks.map((found) => ({
    between: [topRailId(found.between[0], rail), topRailId(found.between[1], rail)],
    topEdge: found.x.top,
    midDepth: found.x.axis,
    underside: found.x.underside,
    fromNosing: found.fromNosing,
    heightRake: found.heightRake,
    heightLevel: found.heightLevel,
    miter: found.miter,
    legToHold: found.heightLevel - found.heightRake,
  }));
}

/** Edges of one run: each is its plan length / cos θ; the blank runs from the first to the last corner along the rail. */
function topRailReport(run: RailRun, member: Member): TopRailReport {
  const secant = Math.hypot(1, run.slope);
  const length = ([from, to]: readonly [number, number]) => (to - from) * secant;
  const along = (edge: "top" | "underside", x: number) => (x + run.slope * edgeZ(run, edge, x)) / secant;
  const corners = (["top", "underside"] as const).flatMap((edge) => run.x[edge].map((x) => along(edge, x)));
  return {
    id: member.id,
    mark: member.mark ?? member.id,
    along: run.along,
    topEdge: length(run.x.top),
    bottomEdge: length(run.x.underside),
    blank: Math.max(...corners) - Math.min(...corners),
  };
}

function postReport(post: PlacedPost, path: RailPath): PostReport[] {
  const half = post.extent.depth / 2;
  const [top, axis, up, down] = [
    pathZ(path, "top", post.x),
    pathZ(path, "underside", post.x),
    pathZ(path, "underside", post.x + half),
    pathZ(path, "underside", post.x - half),
  ];
  if (top === undefined || axis === undefined) return [];
  const { id, mark, along, x, offset, baseZ, footZ } = post;
  return [
    {
      ...{ id, mark, along, x, offset, baseZ },
      ...(post.tread === undefined ? {} : { tread: post.tread }),
      railTopAboveBase: top - baseZ,
      railUndersideAboveBase: axis - baseZ,
      atAxis: axis - footZ,
      uphillFace: (up ?? axis) - footZ,
      downhillFace: (down ?? axis) - footZ,
    },
  ];
}

/** Length of the rail's top edge between two x, over its breaks. */
function alongTop(path: RailPath, from: number, to: number): number {
  return path.runs.reduce((sum, run) => {
    const plan = Math.min(to, run.x.top[1]) - Math.max(from, run.x.top[0]);
    return plan > 0 ? sum + plan * Math.hypot(1, run.slope) : sum;
  }, 0);
}

function spacings(posts: readonly PlacedPost[], path: RailPath): SpacingReport[] {
  return posts.slice(1).flatMap((to, i): SpacingReport[] => {
    const from = posts[i];
    if (from === undefined) return [];
    return [{ from: from.mark, to: to.mark, plan: to.x - from.x, alongRail: alongTop(path, from.x, to.x) }];
  });
}

function longestOf(members: readonly Member[], rails: readonly TopRailReport[]): LayoutReport["longest"] {
  const lengths = members.map((own) => ({
    id: own.id,
    mark: own.mark ?? own.id,
    length: rails.find((rail) => rail.id === own.id)?.blank ?? distance(own.from, own.to),
  }));
  const [first] = lengths;
  return first === undefined
    ? null
    : lengths.reduce((best, own) => (own.length > best.length ? own : best), first);
}

/** The report over what was laid out: `posts` and `members` are those that were built. */
export function layoutReport(
  design: Design,
  line: NosingLine,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
  members: readonly Member[],
): LayoutReport {
  const nosings = nosingReports(line, path);
  const topRails = path.runs.flatMap((run) => {
    const own = members.find((m) => m.id === topRailId(run.along, rail));
    return own === undefined ? [] : [topRailReport(run, own)];
  });
  return {
    job: design.job,
    unit: design.unit,
    side: design.side,
    pitch: line.pitch,
    riser: line.riser,
    going: line.going,
    slopePerStep: line.slopePerStep,
    nosings,
    heights: heightsOf(nosings),
    breaks: breakReports(path, rail),
    topRails,
    posts: posts.flatMap((post) => postReport(post, path)),
    spacing: spacings(posts, path),
    longest: longestOf(members, topRails),
    assumptions: ASSUMPTIONS,
  };
}
