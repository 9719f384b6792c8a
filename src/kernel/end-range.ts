/**
 * Between which outward coordinates does an end lie? Bounds, not the exact range: a few operations and no sampling.
 *
 * Over a disc about the axis a sheet's plane part rises by its slope times the radius, and its round part is between zero
 * and the whole radius of the header. Which sheet closes the bar where does not matter to a bound. Millimetres.
 *
 * @packageDocumentation
 */
import type { CompiledEnd } from "./end-compile.js";

/** No part of an end is nearer than `least` or farther out than `greatest`, in its outward coordinate. */
export interface EndRange {
  readonly least: number;
  readonly greatest: number;
}

/**
 * Bounds of an end over a section.
 *
 * @param radius - no point of the section is farther from the axis, millimetres
 */
export function endRange(end: CompiledEnd, radius: number): EndRange {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { c, a, b, round } of end.sheets) {
    const middle = end.dir * c;
    const slope = Math.hypot(a, b) * radius;
    const bulge = round ? end.dir * round.k * round.radius : 0;
    least = Math.min(least, middle - slope + Math.min(0, bulge));
    greatest = Math.max(greatest, middle + slope + Math.max(0, bulge));
  }
  return { least, greatest };
}
