/**
 * Makes the report of a layout: what was decided, in numbers a shop can check with a tape.
 *
 * @packageDocumentation
 */
import { distance } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { PostStance } from "./as-set/stance.js";
import type { RailDesign } from "./document/design.js";
import { flightReports, planReport } from "./flight-report.js";
import type { Place } from "./part.js";
import { holeRoom } from "./posts/foot-holes.js";
import type { PlacedPost } from "./posts/place-posts.js";
import { crossX, faceOf, type PlumbLine, postAxis } from "./posts/post-line.js";
import { cornerReports } from "./rails/corners.js";
import { edgeZ, pathZ, type RailPath, type RailRun } from "./rails/rail-path.js";
import { lastRailId, railId } from "./rails/top-rails.js";
import type {
  AsSetReport,
  BreakReport,
  LayoutReport,
  NosingReport,
  PostReport,
  SpacingReport,
  TopRailReport,
} from "./report-types.js";
import { sayLength } from "./say-length.js";
import { sectionExtent } from "./section-extent.js";
import type { LegGround } from "./site/site.js";
import { laidRails } from "./stops.js";

const COUNTED =
  "The steps are counted and taken as equal; they are not measured. Measure every nosing before cutting.";
const MEASURED =
  "The nosings were taped one by one; the rail follows the line whose worst miss is least. No reading was checked against another.";
const SURVEYED =
  "The nosings come from a survey, all its readings adjusted together; their uncertainties are as stated with them or, where none is stated, the tape's and the hand's.";
const ONE_PLANE =
  "The guard stands in one plumb plane; offsets across the stair are not part of this layout.";
const RAILS_IN_PLANE =
  "The rails stand in one plumb plane; posts that were found beside it stand there, the rails are cut to them.";
const PLANES =
  "Between plan turns the guard stands in one plumb plane; x is measured along the guard round its corners.";
const INPUTS =
  "Heights, gaps and plates are the design's own inputs; local codes and licensed practice decide what they must be.";

/** What was measured of the guard itself, and what that leaves as designed. */
function asSetWords({ asSet }: Place): string[] {
  if (asSet === undefined) return [];
  const posts = asSet.posts.map((own) => own.post);
  const dry = asSet.posts.filter((own) => own.stage === "dry-set").map((own) => own.post);
  const legs = asSet.legs.map((own) => `${own.leg}, ${sayLength(own.length)}`);
  const taken = dry.length === 0 ? "" : ` Stood up to be measured, not set for good: ${dry.join(", ")}.`;
  return [
    ...(posts.length === 0
      ? []
      : [
          `Posts as set, where they were measured: ${posts.join(", ")}; the others, and what was not measured of these, as designed.${taken}`,
        ]),
    ...(legs.length === 0 ? [] : [`Measured to its far end: ${legs.join("; ")}.`]),
  ];
}

function assumptionsOf(place: Place): string[] {
  const { design, site } = place;
  const beside = place.asSet?.posts.some((own) => own.across !== 0 || own.leanAcross !== 0);
  const counted = site.legs.some(({ leg }) => leg.stair !== undefined && leg.stair.nosings === undefined);
  const taped = site.legs.flatMap(({ leg }) => (leg.stair?.nosings === undefined ? [] : [leg.stair]));
  const both =
    design.side === "both"
      ? [
          `The right-hand guard is the mirror image of the left-hand one${place.asSet === undefined ? "" : ", but for what was measured"}; figures are the left one's${place.asSet === undefined ? "" : ", and those of the right-hand posts as set"}.`,
        ]
      : [];
  return [
    ...(counted ? [COUNTED] : []),
    ...(taped.some((own) => own.survey === undefined) ? [MEASURED] : []),
    ...(taped.some((own) => own.survey !== undefined) ? [SURVEYED] : []),
    site.corners.length > 0 ? PLANES : beside ? RAILS_IN_PLANE : ONE_PLANE,
    ...asSetWords(place),
    ...both,
    INPUTS,
  ];
}

function nosingReports(legs: readonly LegGround[], path: RailPath): NosingReport[] {
  return legs.flatMap(({ leg, flight, reach }) =>
    (flight?.nosings ?? []).flatMap((nosing): NosingReport[] => {
      const own = { ...path, runs: path.runs.filter((run) => run.reach === reach) };
      const z = pathZ(own, "top", nosing.x);
      return z === undefined ? [] : [{ leg: leg.id, ...nosing, railTop: z - nosing.z }];
    }),
  );
}

/** Least and greatest height over nosings. */
export function rangeOf(nosings: readonly NosingReport[]): LayoutReport["heights"] {
  const [first] = nosings;
  if (first === undefined) return null;
  const least = nosings.reduce((best, own) => (own.railTop < best.railTop ? own : best), first);
  const greatest = nosings.reduce((best, own) => (own.railTop > best.railTop ? own : best), first);
  return { least, greatest };
}

function breakReports(place: Place, path: RailPath, rail: RailDesign): BreakReport[] {
  return path.breaks.map((found) => {
    const [lower, upper] = found.runs.map((i) => path.runs[i] as RailRun) as [RailRun, RailRun];
    const { leg } = found;
    return {
      between: [lastRailId(place, lower, rail), railId(place, upper, rail)],
      topEdge: found.x.top,
      midDepth: found.x.axis,
      underside: found.x.underside,
      fromNosing: found.fromNosing,
      heightRake: found.heightRake,
      heightLevel: found.heightLevel,
      miter: found.miter,
      legToHold: found.heightLevel - found.heightRake,
      type: found.type,
      ...(leg && { leg: { length: leg.length, shortEdge: leg.shortEdge, miters: leg.miters } }),
    };
  });
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
    along: run.leg.along,
    topEdge: length(run.x.top),
    bottomEdge: length(run.x.underside),
    blank: Math.max(...corners) - Math.min(...corners),
  };
}

/** Height of the rail's underside where a plumb or leaning line meets it. */
function undersideAt(path: RailPath, line: PlumbLine): number | undefined {
  const crossed = (run: RailRun) => crossX(line, { slope: run.slope, z0: run.z0.underside });
  const run = path.runs.find((own) => {
    const x = crossed(own);
    return own.x.underside[0] <= x && x <= own.x.underside[1];
  });
  return run && edgeZ(run, "underside", crossed(run));
}

function setReport({ stage, lean, leanAcross, y, design }: PostStance): AsSetReport {
  return { stage, lean, leanAcross, across: y, designed: design };
}

/** What is said of the posts that were built; `over` is the path of what the hand is on. */
export function postReports(
  place: Place,
  posts: readonly PlacedPost[],
  path: RailPath,
  over: RailPath,
): PostReport[] {
  return posts.flatMap((post) => postReport(place, post, path, over));
}

function postReport(place: Place, post: PlacedPost, path: RailPath, over: RailPath): PostReport[] {
  const [top, axis, up, down] = [
    pathZ(over, "top", post.x),
    undersideAt(path, postAxis(place.site, post)),
    undersideAt(path, faceOf(place, post, post.reach, 1)),
    undersideAt(path, faceOf(place, post, post.reach, -1)),
  ];
  if (top === undefined || axis === undefined) return [];
  const holes = holeRoom(place, post);
  const { id, mark, along, leg, x, offset, baseZ, footZ } = post;
  return [
    {
      ...{ id, mark, along, leg, x, offset, baseZ },
      ...(post.tread === undefined ? {} : { tread: post.tread }),
      ...(post.corner === undefined ? {} : { corner: post.corner.index + 1 }),
      railTopAboveBase: top - baseZ,
      railUndersideAboveBase: (pathZ(path, "underside", x) ?? axis) - baseZ,
      atAxis: axis - footZ,
      uphillFace: (up ?? axis) - footZ,
      downhillFace: (down ?? axis) - footZ,
      ...(holes === undefined ? {} : { holes }),
      ...(post.set === undefined ? {} : { asSet: setReport(post.set) }),
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

/**
 * The report over what was laid out: `posts` and `members` are those that were built; `over` is what the hand is on, where
 * that is a cap.
 */
export function layoutReport(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
  members: readonly Member[],
  over: { readonly rail: RailDesign; readonly path: RailPath } = { rail, path },
  more: Pick<LayoutReport, "handrails" | "infill"> = { handrails: [], infill: [] },
): LayoutReport {
  const { design, site } = place;
  const nosings = nosingReports(site.legs, over.path);
  const topRails = path.runs.flatMap((run) => {
    const own = members.find((m) => m.id === railId(place, run, rail));
    return own === undefined ? [] : [topRailReport(run, own)];
  });
  const { pitch, riser, going, slopePerStep } = site.main;
  const plan = planReport(design);
  return {
    ...{ job: design.job, unit: design.unit, side: design.side, pitch, riser, going, slopePerStep },
    flights: flightReports(site.legs),
    ...(plan && { plan }),
    nosings,
    heights: rangeOf(nosings),
    breaks: breakReports(place, over.path, over.rail),
    corners: cornerReports(over.path, sectionExtent(over.rail.section)),
    topRails,
    posts: postReports(place, posts, path, over.path),
    spacing: spacings(posts, path),
    laid: laidRails(place, rail, path, posts, members),
    handrails: more.handrails,
    infill: more.infill,
    longest: longestOf(members, topRails),
    assumptions: assumptionsOf(place),
  };
}
