/**
 * Outlines as dense polygons by trigonometry alone: the slow, independent answer to questions about loops.
 */
import type { Loop, Segment } from "../../src/kernel/region.js";

export type Point = readonly [number, number];

/** `parts` points per side, the corners exact. */
export function densePolygon(loop: Loop, parts = 2000): Point[] {
  return loop.flatMap((s: Segment) =>
    Array.from({ length: s.kind === "line" ? 1 : parts }, (_, k): Point => {
      if (s.kind === "line") return s.from;
      const angle = s.start + (s.sweep * k) / parts;
      return [s.centre[0] + s.radius * Math.cos(angle), s.centre[1] + s.radius * Math.sin(angle)];
    }),
  );
}

/** Distance of a point from the outline of a polygon. */
export function distanceFrom(polygon: readonly Point[], p: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length]!;
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
    least = Math.min(least, Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy));
  }
  return least;
}

/** Winding number of a polygon about a point, by summed angles. */
export function angleWinding(polygon: readonly Point[], p: Point): number {
  let sum = 0;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length]!;
    const [ax, ay, bx, by] = [a[0] - p[0], a[1] - p[1], b[0] - p[0], b[1] - p[1]];
    sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return Math.round(sum / (2 * Math.PI));
}

/** Signed area by the shoelace formula. */
export function shoelace(polygon: readonly Point[]): number {
  return (
    polygon.reduce((sum, a, i) => {
      const b = polygon[(i + 1) % polygon.length]!;
      return sum + a[0] * b[1] - a[1] * b[0];
    }, 0) / 2
  );
}

/** The lowest m at which the line h = const meets a polygon; +∞ where it misses. */
export function lowestCrossing(polygon: readonly Point[], h: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of polygon.entries()) {
    const b = polygon[(i + 1) % polygon.length]!;
    if (a[0] > h === b[0] > h) continue;
    least = Math.min(least, a[1] + ((h - a[0]) / (b[0] - a[0])) * (b[1] - a[1]));
  }
  return least;
}
