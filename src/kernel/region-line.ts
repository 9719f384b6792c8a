/**
 * Along which stretches does a straight line lie in the material of a region?
 *
 * The line is cut at every side it crosses; a piece between two cuts is in the material when its middle is. Closed form.
 * Millimetres, section coordinates.
 *
 * @packageDocumentation
 */
import { crossings } from "./end-boundary.js";
import { loopsOf, pointOn, type Region } from "./region.js";
import { regionContains } from "./region-contains.js";
import { ROUNDING_SHARE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/**
 * Stretches of p + t·d, t from `from` to `to`, that are in the material, in rising order.
 *
 * @param d - any length; one of next to nothing means that the line stands on the section in p
 * @example
 * ```ts
 * stretchesInside(tube, [-50, 0], [1, 0], 0, 100); // the two walls
 * ```
 */
export function stretchesInside(
  region: Region,
  p: Vec2,
  d: Vec2,
  from: number,
  to: number,
): readonly (readonly [number, number])[] {
  const marks = [from, to];
  const square = d[0] * d[0] + d[1] * d[1];
  if (square > ROUNDING_SHARE * ROUNDING_SHARE) {
    const size = Math.sqrt(square);
    const [hu, hv] = [-d[1] / size, d[0] / size];
    for (const segment of loopsOf(region).flat()) {
      for (const share of crossings(segment, hu, hv, 0, hu * p[0] + hv * p[1])) {
        if (share < 0 || share > 1) continue;
        const [u, v] = pointOn(segment, share);
        const t = ((u - p[0]) * d[0] + (v - p[1]) * d[1]) / square;
        if (t > from && t < to) marks.push(t);
      }
    }
    marks.sort((a, b) => a - b);
  }
  const out: [number, number][] = [];
  for (let i = 0; i + 1 < marks.length; i++) {
    const [t0, t1] = [marks[i] as number, marks[i + 1] as number];
    const t = (t0 + t1) / 2;
    if (t1 > t0 && regionContains(region, [p[0] + t * d[0], p[1] + t * d[1]])) out.push([t0, t1]);
  }
  return out;
}
