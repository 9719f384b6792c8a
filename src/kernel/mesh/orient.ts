/**
 * On which side does a point lie? Always the true sign, however near to the plane or line.
 *
 * A determinant in doubles decides when it is larger than its own rounding error, else exact arithmetic does. Method and
 * error bounds: J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic" (1997), bounds `o3derrboundA` and
 * `ccwerrboundA`. Points are vertices of a mesh, given by index into its positions.
 *
 * @packageDocumentation
 */
import { difference, type Expansion, minus, plus, signOf, times } from "./expansion.js";

/** Half the spacing of doubles at one. */
const UNIT_ROUNDOFF = 2 ** -53;
const O3D_BOUND = (7 + 56 * UNIT_ROUNDOFF) * UNIT_ROUNDOFF;
const CCW_BOUND = (3 + 16 * UNIT_ROUNDOFF) * UNIT_ROUNDOFF;

/**
 * Sign of the volume spanned by a−d, b−d, c−d: positive when d lies below the plane in which a, b, c run
 * counter-clockwise seen from above, zero exactly when the four lie in one plane.
 *
 * @param p - x, y, z per vertex
 * @param a - vertex index; b, c, d likewise
 * @returns −1, 0 or 1
 */
export function orient3d(p: Float64Array, a: number, b: number, c: number, d: number): number {
  const dx = at(p, d, 0);
  const dy = at(p, d, 1);
  const dz = at(p, d, 2);
  const adx = at(p, a, 0) - dx;
  const ady = at(p, a, 1) - dy;
  const adz = at(p, a, 2) - dz;
  const bdx = at(p, b, 0) - dx;
  const bdy = at(p, b, 1) - dy;
  const bdz = at(p, b, 2) - dz;
  const cdx = at(p, c, 0) - dx;
  const cdy = at(p, c, 1) - dy;
  const cdz = at(p, c, 2) - dz;
  const bc = bdx * cdy;
  const cb = cdx * bdy;
  const ca = cdx * ady;
  const ac = adx * cdy;
  const ab = adx * bdy;
  const ba = bdx * ady;
  const det = adz * (bc - cb) + bdz * (ca - ac) + cdz * (ab - ba);
  const size =
    (Math.abs(bc) + Math.abs(cb)) * Math.abs(adz) +
    (Math.abs(ca) + Math.abs(ac)) * Math.abs(bdz) +
    (Math.abs(ab) + Math.abs(ba)) * Math.abs(cdz);
  const bound = O3D_BOUND * size;
  if (det > bound) return 1;
  if (det < -bound) return -1;
  return bound === 0 ? 0 : exact3d(p, a, b, c, d);
}

/**
 * Sign of the turn a → b → c seen against one coordinate axis: positive is counter-clockwise, zero exactly when the
 * three points' shadows lie on one line.
 *
 * @param axis - the coordinate left out: 0 (x), 1 (y) or 2 (z)
 * @returns −1, 0 or 1
 */
export function orient2d(p: Float64Array, a: number, b: number, c: number, axis: number): number {
  const u = (axis + 1) % 3;
  const v = (axis + 2) % 3;
  const left = (at(p, a, u) - at(p, c, u)) * (at(p, b, v) - at(p, c, v));
  const right = (at(p, a, v) - at(p, c, v)) * (at(p, b, u) - at(p, c, u));
  const det = left - right;
  const bound = CCW_BOUND * (Math.abs(left) + Math.abs(right));
  if (det > bound) return 1;
  if (det < -bound) return -1;
  if (bound === 0) return 0;
  const acu = difference(at(p, a, u), at(p, c, u));
  const acv = difference(at(p, a, v), at(p, c, v));
  const bcu = difference(at(p, b, u), at(p, c, u));
  const bcv = difference(at(p, b, v), at(p, c, v));
  return signOf(minus(times(acu, bcv), times(acv, bcu)));
}

/** True exactly when the three points lie on one line. */
export function collinear(p: Float64Array, a: number, b: number, c: number): boolean {
  return orient2d(p, a, b, c, 2) === 0 && orient2d(p, a, b, c, 0) === 0 && orient2d(p, a, b, c, 1) === 0;
}

function exact3d(p: Float64Array, a: number, b: number, c: number, d: number): number {
  const from = (i: number, k: number): Expansion => difference(at(p, i, k), at(p, d, k));
  const [ax, ay, az] = [from(a, 0), from(a, 1), from(a, 2)];
  const [bx, by, bz] = [from(b, 0), from(b, 1), from(b, 2)];
  const [cx, cy, cz] = [from(c, 0), from(c, 1), from(c, 2)];
  const first = times(az, minus(times(bx, cy), times(cx, by)));
  const second = times(bz, minus(times(cx, ay), times(ax, cy)));
  const third = times(cz, minus(times(ax, by), times(bx, ay)));
  return signOf(plus(plus(first, second), third));
}

function at(p: Float64Array, vertex: number, k: number): number {
  return p[3 * vertex + k] as number;
}
