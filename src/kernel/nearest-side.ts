/**
 * The place on the outline of a section that is nearest to a point: on a line its foot, on an arc the radius through it,
 * and an end where these fall beyond one.
 *
 * @packageDocumentation
 */
import { loopsOf, pointOn, type Region, type Segment } from "./region.js";
import type { Vec2 } from "./vec.js";

/** A place on the outline: fraction `t` of a segment. */
export interface OutlinePlace {
  readonly loop: number;
  readonly segment: number;
  readonly t: number;
}

/** Fraction of a segment nearest to a point. */
function nearestOn(s: Segment, [u, v]: Vec2): number {
  if (s.kind === "line") {
    const [du, dv] = [s.to[0] - s.from[0], s.to[1] - s.from[1]];
    const t = ((u - s.from[0]) * du + (v - s.from[1]) * dv) / (du * du + dv * dv);
    return Math.min(1, Math.max(0, t));
  }
  // Measured from the arc's middle, so that beyond an end the nearer end is the one.
  const middle = s.start + s.sweep / 2;
  const turn = Math.atan2(v - s.centre[1], u - s.centre[0]) - middle;
  const t = 0.5 + (turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI))) / s.sweep;
  return Math.min(1, Math.max(0, t));
}

/** The nearest place on the outline, holes and all. */
export function nearestOnLoops(section: Region, p: Vec2): OutlinePlace {
  let best: OutlinePlace = { loop: 0, segment: 0, t: 0 };
  let least = Number.POSITIVE_INFINITY;
  for (const [loop, segments] of loopsOf(section).entries()) {
    for (const [segment, s] of segments.entries()) {
      const t = nearestOn(s, p);
      const q = pointOn(s, t);
      const away = Math.hypot(q[0] - p[0], q[1] - p[1]);
      if (away < least) [best, least] = [{ loop, segment, t }, away];
    }
  }
  return best;
}
