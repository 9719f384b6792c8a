/**
 * How far a section reaches in a direction: what the "long minus short" of a flat cut is measured over.
 *
 * Method: exact, per segment of the loop; an arc's farthest point is where its radius lies along the direction, if the
 * arc gets there, else one of its ends. Millimetres, section coordinates.
 *
 * @packageDocumentation
 */
import { type Loop, pointOn, type Segment } from "./region.js";
import type { Vec2 } from "./vec.js";

const TURN = 2 * Math.PI;

/**
 * Least and greatest reach of a loop along a direction, millimetres.
 *
 * @param loop - the outer loop of a section
 * @param direction - unit vector in the section's plane
 * @example
 * extentAlong(circleLoop([0, 0], 10, "wall"), [0.6, 0.8]); // { least: -10, greatest: 10 }
 */
export function extentAlong(loop: Loop, direction: Vec2): { least: number; greatest: number } {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const segment of loop) {
    for (const p of candidates(segment, direction)) {
      const reach = p[0] * direction[0] + p[1] * direction[1];
      least = Math.min(least, reach);
      greatest = Math.max(greatest, reach);
    }
  }
  return { least, greatest };
}

function candidates(segment: Segment, direction: Vec2): Vec2[] {
  const points = [pointOn(segment, 0), pointOn(segment, 1)];
  if (segment.kind === "line" || segment.sweep === 0) return points;
  const low = Math.min(segment.start, segment.start + segment.sweep);
  const along = Math.atan2(direction[1], direction[0]);
  for (const angle of [along, along + Math.PI]) {
    const part = ((((angle - low) % TURN) + TURN) % TURN) / Math.abs(segment.sweep);
    if (part <= 1) points.push(pointOn(segment, segment.sweep > 0 ? part : 1 - part));
  }
  return points;
}

/**
 * The point of a loop that reaches farthest along a direction; the middle of a side that is square to it.
 *
 * @param loop - the outer loop of a section
 * @param direction - unit vector in the section's plane
 */
export function farthestAlong(loop: Loop, direction: Vec2): Vec2 {
  let greatest = Number.NEGATIVE_INFINITY;
  let best: Vec2 = [0, 0];
  let ties = 0;
  for (const segment of loop) {
    for (const p of candidates(segment, direction)) {
      const reach = p[0] * direction[0] + p[1] * direction[1];
      if (reach > greatest + TIE) {
        [greatest, best, ties] = [reach, p, 1];
      } else if (reach > greatest - TIE && Math.hypot(p[0] - best[0] / ties, p[1] - best[1] / ties) > TIE) {
        best = [best[0] + p[0], best[1] + p[1]];
        ties++;
      }
    }
  }
  return [best[0] / ties, best[1] / ties];
}

/** mm. Points that reach as far within this are on one side square to the direction. */
const TIE = 1e-9;
