/**
 * How long is the plumb leg that holds a break where it is wanted although the heights differ?
 *
 * The raking rail turns up to plumb at x and the leg turns to level: leg = h_l − h_r − x·tan θ between centrelines,
 * miters (90 − θ)/2 and 45 from square on opposite sides, so the leg's edges are leg ± (d/2)·(tan 45 − tan((90 − θ)/2))
 * (trade geometry). Millimetres, degrees; x from the top nosing, + over the landing.
 *
 * @packageDocumentation
 */
import { tanDegrees } from "../angles.js";

/** The two heights, the place and the rail. */
export interface DropInput {
  /** Plumb above the nosing line and above the landing, both to the same line of the rail, mm. */
  readonly heightRake: number;
  readonly heightLevel: number;
  /** Where the leg stands, mm from the top nosing. */
  readonly at: number;
  /** Degrees, 0 to below 90. */
  readonly pitch: number;
  /** Of the rail, mm, ≥ 0. */
  readonly depth: number;
}

/** The leg and its cuts. */
export interface Drop {
  /** Of the raking line at `at`, mm. */
  readonly rakeZ: number;
  /** Between centrelines, mm; negative when the leg goes down to the level rail. */
  readonly leg: number;
  /** Rake to plumb and plumb to level, degrees from square. */
  readonly miterRake: number;
  readonly miterLevel: number;
  /** The leg's long and short edge, mm. */
  readonly longEdge: number;
  readonly shortEdge: number;
  /** The leg's length at which the short edge vanishes, mm. */
  readonly shortestLeg: number;
  /** True when the short edge is longer than nothing. */
  readonly feasible: boolean;
}

/**
 * The plumb leg that holds a break at a place.
 *
 * @example
 * ```ts
 * dropToHold({ heightRake: 36, heightLevel: 42, at: 0, pitch: 35.537677791974, depth: 1.5 }).leg; // 6
 * ```
 */
export function dropToHold(input: DropInput): Drop {
  const { heightRake, heightLevel, at, pitch, depth } = input;
  const rakeZ = heightRake + at * tanDegrees(pitch);
  const leg = heightLevel - rakeZ;
  // A leg that goes down turns the rake by 90 + θ instead of 90 − θ, and both cuts still face opposite ways.
  const miterRake = leg < 0 ? (90 + pitch) / 2 : (90 - pitch) / 2;
  const half = (depth / 2) * Math.abs(tanDegrees(45) - tanDegrees(miterRake));
  const length = Math.abs(leg);
  return {
    rakeZ,
    leg,
    miterRake,
    miterLevel: 45,
    longEdge: length + half,
    shortEdge: length - half,
    shortestLeg: half,
    feasible: length > half,
  };
}
