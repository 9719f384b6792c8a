/**
 * The top rail's path in the guard's own plane: one straight run a leg, broken where the runs' lines meet.
 *
 * Each run carries three lines: top edge, axis, underside, z = z₀ + slope·x, offset plumb by (distance square to the
 * rail)/cos θ. Runs meet at the break of each line (see `breakPoint`); the axes meet in one point, where the members of
 * the model end. Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import { tanHalf } from "./angles.js";
import { breakPoint } from "./break.js";
import type { LegDesign } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import type { SectionExtent } from "./section-extent.js";

/** Which line of a rail. */
export type RailEdge = "top" | "axis" | "underside";

/** One straight run. */
export interface RailRun {
  readonly along: LegDesign["along"];
  /** tan θ; 0 on a level leg. */
  readonly slope: number;
  /** Height of each line at x = 0. */
  readonly z0: Readonly<Record<RailEdge, number>>;
  /** Where each line starts and ends. */
  readonly x: Readonly<Record<RailEdge, readonly [number, number]>>;
}

/** Where two runs meet. */
export interface PathBreak {
  /** The legs, lower first. */
  readonly between: readonly [LegDesign["along"], LegDesign["along"]];
  /** Of the lines' meeting points. */
  readonly x: Readonly<Record<RailEdge, number>>;
  readonly heightRake: number;
  readonly heightLevel: number;
  /** Top-edge break from where equal heights would put it: the top nosing, or the foot of the nosing line. */
  readonly fromNosing: number;
  /** Of either cut, degrees. */
  readonly miter: number;
}

/** The whole path, from the foot upward. */
export interface RailPath {
  readonly runs: readonly RailRun[];
  readonly breaks: readonly PathBreak[];
}

/** Height of a run's line at x. */
export function edgeZ(run: RailRun, edge: RailEdge, x: number): number {
  return run.z0[edge] + run.slope * x;
}

/** The run whose line covers x, or undefined beyond both ends of the path. */
export function runAt(path: RailPath, edge: RailEdge, x: number): RailRun | undefined {
  return path.runs.find((run) => run.x[edge][0] <= x && x <= run.x[edge][1]);
}

/** Height of the rail's line at x, or undefined beyond both ends of the path. */
export function pathZ(path: RailPath, edge: RailEdge, x: number): number | undefined {
  const run = runAt(path, edge, x);
  return run && edgeZ(run, edge, x);
}

/** A leg and the height of its ground at x = 0. */
export interface LegGround {
  readonly leg: LegDesign;
  readonly slope: number;
  readonly groundZ: number;
}

/** Each leg with the line its heights are measured from: floor, nosing line, landing. */
export function groundOf(leg: LegDesign, line: NosingLine): LegGround {
  if (leg.along === "stair") return { leg, slope: line.slope, groundZ: 0 };
  return { leg, slope: 0, groundZ: leg.along === "floor" ? line.floorZ : 0 };
}

function breakOf(lower: LegGround, upper: LegGround, extent: SectionExtent, line: NosingLine): PathBreak {
  const [rake, level] = lower.slope === 0 ? [upper, lower] : [lower, upper];
  const start = level.leg.along === "floor" ? line.footX : 0;
  const heights = { heightRake: rake.leg.top, heightLevel: level.leg.top };
  const found = breakPoint({ ...heights, pitch: line.pitch });
  const fromNosing = found.kind === "at" ? found.x : 0;
  const x = start + fromNosing;
  const shift = tanHalf(line.slope);
  return {
    between: [lower.leg.along, upper.leg.along],
    x: { top: x, axis: x + extent.above * shift, underside: x + extent.depth * shift },
    ...heights,
    fromNosing,
    miter: line.pitch / 2,
  };
}

/**
 * The path of a rail over all legs.
 *
 * @param legs - in walking order, heights to the top of the rail
 * @param extent - of the rail's section
 * @param ends - x of the two ends of the path: plumb cuts, the same for every line
 */
export function railPath(
  legs: readonly LegDesign[],
  line: NosingLine,
  extent: SectionExtent,
  ends: readonly [number, number],
): RailPath {
  const grounds = legs.map((leg) => groundOf(leg, line));
  const breaks = grounds.slice(1).flatMap((upper, i) => {
    const lower = grounds[i];
    return lower === undefined ? [] : [breakOf(lower, upper, extent, line)];
  });
  const runs = grounds.map((ground, i): RailRun => {
    const secant = Math.hypot(1, ground.slope);
    const top = ground.groundZ + ground.leg.top;
    const reach = (edge: RailEdge): readonly [number, number] => [
      breaks[i - 1]?.x[edge] ?? ends[0],
      breaks[i]?.x[edge] ?? ends[1],
    ];
    return {
      along: ground.leg.along,
      slope: ground.slope,
      z0: { top, axis: top - extent.above * secant, underside: top - extent.depth * secant },
      x: { top: reach("top"), axis: reach("axis"), underside: reach("underside") },
    };
  });
  return { runs, breaks };
}
