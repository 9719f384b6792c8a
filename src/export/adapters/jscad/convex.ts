/**
 * Cuts a flat convex polygon into triangles, all of them with area, using every corner.
 *
 * A fan does that when every corner turns. Where corners lie on a straight side, the corner beside them is cut off
 * first: that makes them turn. No corner may be left out, as a neighbour may use it.
 *
 * @packageDocumentation
 */
import { PARALLEL_SINE } from "../../../kernel/tolerance.js";
import { cross, length, sub, type Vec3 } from "../../../kernel/vec.js";

/**
 * Triangles as corner numbers, in the polygon's own sense of turning.
 *
 * @param points - at least three, in order; fewer give no triangle
 */
export function triangulateConvex(points: readonly Vec3[]): readonly (readonly [number, number, number])[] {
  const out: (readonly [number, number, number])[] = [];
  const ring = points.map((_, i) => i);
  while (ring.length > 3) {
    const at = ring.findIndex((_, k) => turns(points, ring, k) && besideFlat(points, ring, k));
    if (at < 0) break;
    out.push([corner(ring, at - 1), corner(ring, at), corner(ring, at + 1)]);
    ring.splice(at, 1);
  }
  for (let k = 1; k + 1 < ring.length; k++) out.push([corner(ring, 0), corner(ring, k), corner(ring, k + 1)]);
  return out;
}

function besideFlat(points: readonly Vec3[], ring: readonly number[], k: number): boolean {
  return !turns(points, ring, k - 1) || !turns(points, ring, k + 1);
}

function turns(points: readonly Vec3[], ring: readonly number[], k: number): boolean {
  const [a, b, c] = [-1, 0, 1].map((d) => points[corner(ring, k + d)]) as [Vec3, Vec3, Vec3];
  const [u, v] = [sub(b, a), sub(c, b)];
  return length(cross(u, v)) > PARALLEL_SINE * length(u) * length(v);
}

function corner(ring: readonly number[], k: number): number {
  return ring[(k + ring.length) % ring.length] as number;
}
