/**
 * How far a section reaches in a direction: what the "long minus short" of a flat cut is measured over.
 *
 * Method: exact, per segment of the loop; an arc's farthest point is where its radius lies along the direction, if the
 * arc gets there, else one of its ends. Millimetres, section coordinates.
 *
 * @packageDocumentation
 */

import { type Loop, pointOn, type Segment } from "./region.js";
import { ROUNDING_MM } from "./tolerance.js";
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

/** A distance from the section's origin that no point of a loop exceeds, millimetres; exact for circles about it and polygons. */
export function reachOf(loop: Loop): number {
  let reach = 0;
  for (const s of loop) {
    reach = Math.max(reach, s.kind === "line" ? Math.hypot(...s.from) : Math.hypot(...s.centre) + s.radius);
  }
  return reach;
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
  const points = loop.flatMap((segment) => candidates(segment, direction));
  const reach = (p: Vec2): number => p[0] * direction[0] + p[1] * direction[1];
  const across = (p: Vec2): number => p[1] * direction[0] - p[0] * direction[1];
  let greatest = Number.NEGATIVE_INFINITY;
  for (const p of points) greatest = Math.max(greatest, reach(p));
  let [first, last]: Vec2[] = [];
  for (const p of points) {
    if (reach(p) < greatest - ROUNDING_MM) continue;
    if (!first || across(p) < across(first)) first = p;
    if (!last || across(p) > across(last)) last = p;
  }
  return first && last ? [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2] : [0, 0];
}
