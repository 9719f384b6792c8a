/**
 * How near can an end come at most? A bound that settles at once what would take many places to look at.
 *
 * Within a distance of the axis a plane rises or falls by its slope times that distance, and the root of a cylinder adds at
 * most its radius. Every place of an end is on one of its sheets. Millimetres, the end's outward coordinate.
 *
 * @packageDocumentation
 */
import type { CompiledEnd } from "./end-compile.js";

/**
 * An outward coordinate that no place of an end within `reach` of the axis comes below.
 *
 * @param reach - millimetres, ≥ 0
 * @example nearestOf(squareEndAt1000, 50); // 1000
 */
export function nearestOf({ dir, sheets }: CompiledEnd, reach: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { a, b, c, round } of sheets) {
    const bulge = round ? Math.min(0, dir * round.k * round.radius) : 0;
    least = Math.min(least, dir * c - reach * Math.sqrt(a * a + b * b) + bulge);
  }
  return least;
}
