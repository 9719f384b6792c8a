/**
 * How long are the edges of a plumb leg between two runs of one rail, and how are its ends cut?
 *
 * A run at angle a turns into a leg that goes up by 90 − a, into one that goes down by 90 + a; the leg turns the other way into
 * the next run. Each end is mitred by half its turn, the two cuts open to opposite sides, so the leg's edges are
 * length ± (d/2)·(tan m₁ − tan m₂) (trade geometry; handbook form for a level upper run: m₂ = 45). Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { tanDegrees } from "../angles.js";

/** A plumb leg between two runs. */
export interface PlumbLeg {
  /** Between centrelines; negative where it goes down as one walks up. */
  readonly length: number;
  readonly longEdge: number;
  readonly shortEdge: number;
  /** The length at which the short edge vanishes. */
  readonly shortestLeg: number;
  readonly feasible: boolean;
  /** From square, lower and upper end. */
  readonly miters: readonly [number, number];
}

const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

/**
 * A plumb leg.
 *
 * @param length - from the lower run's axis to the upper one's, mm, + up
 * @param slopes - of the lower and the upper run, rise per run
 * @param depth - of the rail, mm
 * @example
 * ```ts
 * plumbLeg(6, [0.714285714, 0], 1.5).shortEdge; // 5.636…: rake at 35.54°, then level
 * ```
 */
export function plumbLeg(length: number, slopes: readonly [number, number], depth: number): PlumbLeg {
  const way = length < 0 ? -1 : 1;
  const miters = [(90 - way * degrees(slopes[0])) / 2, (90 - way * degrees(slopes[1])) / 2] as const;
  const half = (depth / 2) * Math.abs(tanDegrees(miters[0]) - tanDegrees(miters[1]));
  const long = Math.abs(length);
  return {
    length,
    longEdge: long + half,
    shortEdge: long - half,
    shortestLeg: half,
    // Without a length there is nothing to turn into.
    feasible: long > half && long > 0,
    miters,
  };
}
