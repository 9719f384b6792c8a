/**
 * What if the rail is laid a little steeper than the stair, so that it starts at one height and ends at another?
 *
 * A straight line from the first height over nosing 1 to the last over the top nosing: the height changes by the same
 * amount at every nosing, and the break stays over the edge (trade geometry). Heights plumb, millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { NosingLine } from "../site/nosing-line.js";

/**
 * A rail between two heights, at its own pitch.
 *
 * @param line - nosing line with at least two nosings; with one, the pitch is the stair's own
 * @param heights - plumb above the lowest and above the top nosing, mm
 * @returns the rail's pitch and its height above every nosing, lowest first
 * @example
 * ```ts
 * compromiseRail(line, { first: 914.4, last: 1066.8 }).heights; // 914.4 … 1066.8
 * ```
 */
export function compromiseRail(
  line: NosingLine,
  heights: { readonly first: number; readonly last: number },
): { readonly pitch: number; readonly heights: readonly number[] } {
  const steps = line.nosings.length - 1;
  if (steps === 0) return { pitch: line.pitch, heights: [heights.last] };
  const gain = (heights.last - heights.first) / steps;
  return {
    pitch: (Math.atan2(line.riser + gain, line.going) * 180) / Math.PI,
    heights: line.nosings.map((_, i) => heights.first + i * gain),
  };
}
