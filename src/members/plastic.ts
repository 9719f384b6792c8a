/**
 * The plastic modulus of any region: where is the equal-area axis, and what are the first moments about it?
 *
 * What lies above the line y = c has area −∫(y − c) dx and first moment −½∫(y − c)² dx over the parts of the boundary
 * above it: both integrands vanish on the line itself, so no region is ever cut. The area above falls steadily with c,
 * so 64 bisections find the halving line to the last bit of the depth; the modulus is least there, so exact to rounding.
 *
 * @packageDocumentation
 */
import type { ArcSegment, Segment } from "../kernel/region.js";
import { arcMoment, lineMoment, sideRange } from "./moments.js";

/** A side's share of area (k = 1) or first moment about the line (k = 2) of what lies above y = `c`. */
function shareAbove(side: Segment, c: number, k: 1 | 2): number {
  if (side.kind === "arc") return arcShareAbove(side, c, k);
  const [y1, y2] = [side.from[1] - c, side.to[1] - c];
  const dx = side.to[0] - side.from[0];
  if (y1 <= 0 && y2 <= 0) return 0;
  if (y1 >= 0 && y2 >= 0) return lineMoment(dx, y1, y2, k);
  const part = Math.max(y1, y2) / Math.abs(y1 - y2);
  return lineMoment(dx * part, Math.max(y1, 0), Math.max(y2, 0), k);
}

function arcShareAbove(arc: ArcSegment, c: number, k: 1 | 2): number {
  const lowered: ArcSegment = { ...arc, centre: [arc.centre[0], arc.centre[1] - c] };
  const [from, to] = [arc.start, arc.start + arc.sweep];
  const sine = -lowered.centre[1] / arc.radius;
  const isAbove = (angle: number): boolean => Math.sin(angle) > sine;
  if (Math.abs(sine) >= 1) return sine <= -1 ? arcMoment(lowered, from, to, k) : 0;
  const [low, high] = [Math.min(from, to), Math.max(from, to)];
  const rise = Math.asin(sine);
  const cuts = [rise, Math.PI - rise].flatMap((angle) => {
    const first = angle + 2 * Math.PI * Math.ceil((low - angle) / (2 * Math.PI));
    return first < high ? [first] : [];
  });
  const stops = [low, ...cuts.sort((a, b) => a - b), high];
  const sense = Math.sign(arc.sweep);
  return stops.slice(1).reduce((sum, stop, i) => {
    const start = stops[i] ?? low;
    return isAbove((start + stop) / 2) ? sum + sense * arcMoment(lowered, start, stop, k) : sum;
  }, 0);
}

/**
 * Plastic modulus about the axis parallel to x.
 *
 * @param sides - all sides of the region, outer loop counter-clockwise and holes clockwise, in any order
 * @param area - the region's area
 * @param firstMoment - its first moment about y = 0
 * @returns the modulus, mm³, and the height of the equal-area axis, mm
 */
export function plasticModulus(
  sides: readonly Segment[],
  area: number,
  firstMoment: number,
): { modulus: number; axis: number } {
  const above = (c: number, k: 1 | 2): number => sides.reduce((sum, side) => sum + shareAbove(side, c, k), 0);
  const ranges = sides.map(sideRange);
  let low = Math.min(...ranges.map((r) => r[0]));
  let high = Math.max(...ranges.map((r) => r[1]));
  for (let halvings = 0; halvings < 64; halvings += 1) {
    const middle = (low + high) / 2;
    if (above(middle, 1) > area / 2) low = middle;
    else high = middle;
  }
  const axis = (low + high) / 2;
  return { modulus: 2 * above(axis, 2) - (firstMoment - area * axis), axis };
}
