/**
 * Where two runs of a rail in one plumb plane meet, each of their three lines, or how long a plumb leg joins them.
 *
 * Lines meet by `breakPoint`; a leg holds the break at a place (see `plumbLeg`). x along the guard; millimetres, degrees.
 *
 * @packageDocumentation
 */
import { bisectorShift } from "../angles.js";
import type { BreakDesign } from "../document/design.js";
import type { SectionExtent } from "../section-extent.js";
import { breakPoint } from "./break.js";
import { type PlumbLeg, plumbLeg } from "./plumb-leg.js";
import type { RunLine } from "./rail-runs.js";

/** Which line of a rail. */
export type RailEdge = "top" | "axis" | "underside";

/** Where two runs meet. */
export interface PathBreak {
  readonly type: BreakDesign["type"];
  /** False for parallel lines at unequal heights. */
  readonly met: boolean;
  /** Indices of the runs, lower first. */
  readonly runs: readonly [number, number];
  /** Of the lines' meeting points; of the leg's two faces and axis where there is one. */
  readonly x: Readonly<Record<RailEdge, number>>;
  readonly heightRake: number;
  readonly heightLevel: number;
  /** Top-edge break from where equal heights would put it: the top nosing, or the foot of the nosing line. */
  readonly fromNosing: number;
  /** Of either cut, degrees from square; with a leg, of the rake's. */
  readonly miter: number;
  readonly leg?: PlumbLeg;
}

const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/** Where the two grounds meet: the nosing, or the foot of the nosing line. */
function startOf(rake: RunLine, level: RunLine, upward: boolean): number {
  const { flight, x } = rake.ground;
  if (flight === undefined) return upward ? rake.ground.x[1] : level.ground.x[1];
  return upward ? x[1] : x[1] + flight.line.footX;
}

/** Plumb heights of both runs over the level ground at the start. */
function heightsAt(rake: RunLine, level: RunLine, start: number) {
  const ground = level.ground.groundZ + level.ground.slope * start;
  // Parallel to counted steps: the height over the nosing line is the design's own number, free of rounding.
  const plain = rake.slope === rake.ground.slope && rake.ground.flight?.line.z0 === 0;
  return {
    heightRake: plain ? rake.z0 - rake.ground.groundZ : rake.z0 + rake.slope * start - ground,
    heightLevel: level.z0 + level.slope * start - ground,
  };
}

/** Height of a run's axis at x. */
function axisZ(run: RunLine, x: number, extent: SectionExtent): number {
  return run.z0 + run.slope * x - extent.above * Math.hypot(1, run.slope);
}

/** Lines that turn plumb at x: the top edge keeps to the outside of the leg that goes up, to the inside of one that goes down. */
function turnedPlumb(lower: RunLine, upper: RunLine, place: number, extent: SectionExtent) {
  // Under a cap the leg stands inside the cap's own leg, face to face.
  const rises = axisZ(upper, place, extent) >= axisZ(lower, place, extent) ? 1 : -1;
  const x = place + (upper.capBelow === undefined ? 0 : rises * (upper.capBelow + extent.above));
  const leg = plumbLeg(
    axisZ(upper, x, extent) - axisZ(lower, x, extent),
    [lower.slope, upper.slope],
    extent.depth,
  );
  const way = leg.length < 0 ? -1 : 1;
  return { leg, x: { top: x - way * extent.above, axis: x, underside: x + way * extent.below } };
}

/**
 * The break between two runs that follow each other in one reach.
 *
 * @param lower - the run before
 * @param upper - the run after: its `from` says how it is reached
 * @param runs - their indices
 */
export function pathBreak(
  lower: RunLine,
  upper: RunLine,
  runs: readonly [number, number],
  extent: SectionExtent,
): PathBreak {
  const upward = Math.abs(lower.slope) >= Math.abs(upper.slope);
  const [rake, level] = upward ? [lower, upper] : [upper, lower];
  const start = startOf(rake, level, upward);
  const heights = heightsAt(rake, level, start);
  const type = upper.from.type;
  if (type === "drop") {
    const at = start + upper.from.at;
    const { leg, x } = turnedPlumb(lower, upper, at, extent);
    const miter = leg.miters[upward ? 0 : 1];
    return { type, met: true, runs, x, ...heights, fromNosing: upper.from.at, miter, leg };
  }
  const angles = { pitch: degrees(rake.slope), levelSlope: degrees(level.slope) };
  const pitch =
    rake.slope === rake.ground.slope ? (rake.ground.flight?.line.pitch ?? angles.pitch) : angles.pitch;
  const found = rake.slope === level.slope ? undefined : breakPoint({ ...heights, ...angles, pitch });
  const fromNosing = found?.kind === "at" ? found.x : 0;
  const x = start + fromNosing;
  const shift = bisectorShift(rake.slope, level.slope);
  return {
    type,
    met: rake.slope !== level.slope || rake.z0 === level.z0,
    runs,
    x: { top: x, axis: x + extent.above * shift, underside: x + extent.depth * shift },
    ...heights,
    fromNosing,
    miter: (pitch - angles.levelSlope) / 2,
  };
}
