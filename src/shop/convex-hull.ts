/**
 * The convex hull of points in a plane, counter-clockwise.
 *
 * Andrew's monotone chain (A. M. Andrew, Information Processing Letters 9, 1979). Points on a side are left out.
 *
 * @packageDocumentation
 */
import type { Vec2 } from "../kernel/vec.js";

/**
 * The corners of the hull.
 *
 * @param points - in any order
 * @returns corners counter-clockwise from the leftmost one; fewer than three where all points are in one line
 * @example convexHull([[0, 0], [2, 0], [1, 0.5], [1, 2]]); // [[0, 0], [2, 0], [1, 2]]
 */
export function convexHull(points: readonly Vec2[]): readonly Vec2[] {
  const sorted = [...points].sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  const [lower, upper] = [chain(sorted), chain(sorted.reverse())];
  return [...lower.slice(0, -1), ...upper.slice(0, -1)];
}

/** One side of the hull: every turn is to the left. */
function chain(sorted: readonly Vec2[]): Vec2[] {
  const kept: Vec2[] = [];
  for (const p of sorted) {
    while (kept.length >= 2 && turn(kept.at(-2) as Vec2, kept.at(-1) as Vec2, p) <= 0) kept.pop();
    kept.push(p);
  }
  return kept;
}

function turn(a: Vec2, b: Vec2, c: Vec2): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}
