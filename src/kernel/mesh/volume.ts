/**
 * What volume does a closed mesh enclose?
 *
 * Divergence theorem: the sum of the signed tetrahedra from a reference point to each triangle, V = Σ a·(b×c)/6. The
 * reference is a vertex of the mesh itself, so that a piece far from the origin loses no digits.
 *
 * @packageDocumentation
 */
import type { Mesh } from "./mesh.js";

/**
 * Signed volume of a closed mesh, mm³: positive when its triangles run counter-clockwise seen from outside.
 *
 * @param mesh - closed and oriented, indices in range; of an open mesh the value depends on where it stands
 * @example
 * ```ts
 * const tetrahedron = {
 *   positions: Float64Array.of(0, 0, 0, 6, 0, 0, 0, 6, 0, 0, 0, 6),
 *   triangles: Uint32Array.of(0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3),
 * };
 * meshVolume(tetrahedron); // 36
 * ```
 */
export function meshVolume(mesh: Mesh): number {
  const { positions: p, triangles } = mesh;
  const first = 3 * (triangles[0] ?? 0);
  let sum = 0;
  for (let h = 0; h < triangles.length; h += 3) {
    sum += sixTetrahedra(p, triangles, h, first);
  }
  return sum / 6;
}

/**
 * Six times the signed tetrahedron from the point at `origin` (an index into positions) to triangle h/3: the distance
 * vector to one corner times the triangle's own sides, so that a far origin enters the rounding once, not three times.
 */
export function sixTetrahedra(p: Float64Array, triangles: Uint32Array, h: number, origin: number): number {
  const a = 3 * (triangles[h] as number);
  const b = 3 * (triangles[h + 1] as number);
  const c = 3 * (triangles[h + 2] as number);
  const ax = p[a] as number;
  const ay = p[a + 1] as number;
  const az = p[a + 2] as number;
  const bx = (p[b] as number) - ax;
  const by = (p[b + 1] as number) - ay;
  const bz = (p[b + 2] as number) - az;
  const cx = (p[c] as number) - ax;
  const cy = (p[c + 1] as number) - ay;
  const cz = (p[c + 2] as number) - az;
  return (
    (ax - (p[origin] as number)) * (by * cz - bz * cy) +
    (ay - (p[origin + 1] as number)) * (bz * cx - bx * cz) +
    (az - (p[origin + 2] as number)) * (bx * cy - by * cx)
  );
}
