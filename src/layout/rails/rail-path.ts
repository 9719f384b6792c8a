/**
 * The path of a rail: straight runs, broken where their lines meet or joined by a plumb leg, turned at plan corners.
 *
 * Each run carries three lines: top edge, axis, underside, z = z₀ + slope·x, offset plumb by (distance square to the
 * rail)/cos θ. Two runs meet at the break of each line; the axes meet in one point, where the members of the model end. x runs
 * along the guard (see `siteOf`); millimetres.
 *
 * @packageDocumentation
 */
import { CORNER_STEP_MM } from "../../kernel/tolerance.js";
import type { SectionExtent } from "../section-extent.js";
import type { Site, SiteCorner } from "../site/site.js";
import { type PathBreak, pathBreak, type RailEdge } from "./path-break.js";
import type { RunLine } from "./rail-runs.js";

/** One straight run. */
export interface RailRun extends Omit<RunLine, "z0"> {
  /** Height of each line at x = 0. */
  readonly z0: Readonly<Record<RailEdge, number>>;
  /** Where each line starts and ends. */
  readonly x: Readonly<Record<RailEdge, readonly [number, number]>>;
}

/** A plan corner of the rail. */
export interface PathCorner {
  readonly site: SiteCorner;
  /** Indices of the runs that end there. */
  readonly runs: readonly [number, number];
  /** Of the rail's axis after the corner over that before it. */
  readonly step: number;
}

/** The whole path, from the foot upward. */
export interface RailPath {
  readonly runs: readonly RailRun[];
  readonly breaks: readonly PathBreak[];
  readonly corners: readonly PathCorner[];
}

/** Height of a run's line at x. */
export function edgeZ(run: RailRun, edge: RailEdge, x: number): number {
  return run.z0[edge] + run.slope * x;
}

/** The run whose line covers x, or undefined beyond both ends of the path; at a corner the lower one. */
export function runAt(path: RailPath, edge: RailEdge, x: number): RailRun | undefined {
  return path.runs.find((run) => run.x[edge][0] <= x && x <= run.x[edge][1]);
}

/** Height of the rail's line at x, or undefined beyond both ends of the path. */
export function pathZ(path: RailPath, edge: RailEdge, x: number): number | undefined {
  const run = runAt(path, edge, x);
  return run && edgeZ(run, edge, x);
}

/** The three lines of a run: the top edge less what lies above the axis, and less the whole depth, square to the run. */
function linesOf(run: RunLine, extent: SectionExtent): RailRun["z0"] {
  const secant = Math.hypot(1, run.slope);
  return { top: run.z0, axis: run.z0 - extent.above * secant, underside: run.z0 - extent.depth * secant };
}

/**
 * Runs that are mitred in plan brought together: heights are typed to a thousandth of an inch, so their axes miss each other at
 * the corner by a hair. One that misses by more stays where it is (see `checkCorners`).
 */
export function metAtCorners(
  site: Site,
  lines: readonly RunLine[],
  extent: SectionExtent,
): readonly RunLine[] {
  const met = [...lines];
  const axis = (run: RunLine, x: number) => run.z0 + run.slope * x - extent.above * Math.hypot(1, run.slope);
  met.forEach((upper, i) => {
    const lower = met[i - 1];
    const corner = lower && site.corners[lower.reach];
    if (lower === undefined || corner === undefined || lower.reach === upper.reach) return;
    const step = axis(upper, corner.x) - axis(lower, corner.x);
    if (corner.kind === "post" || Math.abs(step) > CORNER_STEP_MM) return;
    met[i] = { ...upper, z0: upper.z0 - step };
  });
  return met;
}

/**
 * The path of a rail over all legs.
 *
 * @param lines - from `railRuns`: heights to the top of the rail
 * @param extent - of the rail's section
 * @param ends - x of the two ends of the path: plumb cuts, the same for every line
 */
export function railPath(
  site: Site,
  lines: readonly RunLine[],
  extent: SectionExtent,
  ends: readonly [number, number],
): RailPath {
  const breaks: PathBreak[] = [];
  const found = lines.map((lower, i) => {
    const upper = lines[i + 1];
    if (upper === undefined || upper.reach !== lower.reach) return undefined;
    const own = pathBreak(lower, upper, [i, i + 1], extent);
    breaks.push(own);
    return own;
  });
  const endOf = (i: number, edge: RailEdge, side: 0 | 1): number => {
    const own = found[side === 0 ? i - 1 : i];
    if (own !== undefined) return own.x[edge];
    const corner = site.corners[(lines[i]?.reach ?? 0) - (side === 0 ? 1 : 0)];
    const inside = side === 0 ? i > 0 : i < lines.length - 1;
    return inside && corner !== undefined ? corner.x : ends[side];
  };
  const runs = lines.map((line, i): RailRun => {
    const reach = (edge: RailEdge) => [endOf(i, edge, 0), endOf(i, edge, 1)] as const;
    const x = { top: reach("top"), axis: reach("axis"), underside: reach("underside") };
    return { ...line, z0: linesOf(line, extent), x };
  });
  return { runs, breaks, corners: cornersOf(site, runs) };
}

function cornersOf(site: Site, runs: readonly RailRun[]): PathCorner[] {
  return site.corners.flatMap((corner, i): PathCorner[] => {
    const [before, after] = [
      runs.map((run) => run.reach).lastIndexOf(i),
      runs.findIndex((run) => run.reach === i + 1),
    ];
    const [lower, upper] = [runs[before], runs[after]];
    if (lower === undefined || upper === undefined) return [];
    const step = edgeZ(upper, "axis", corner.x) - edgeZ(lower, "axis", corner.x);
    return [{ site: corner, runs: [before, after], step }];
  });
}
