/**
 * How near do two straight stretches come to each other, and where?
 *
 * The two lines' common perpendicular, each parameter held to its stretch and the other one answered for it; of two that
 * run alike any nearest pair will do. Closed form. Millimetres.
 *
 * @packageDocumentation
 */
import { ROUNDING_SHARE } from "./tolerance.js";
import { addScaled, distance, dot, sub, type Vec3 } from "./vec.js";

/** Two nearest points and what lies between them. */
export interface Nearest {
  readonly distance: number;
  readonly onFirst: Vec3;
  readonly onSecond: Vec3;
}

const share = (x: number): number => Math.min(1, Math.max(0, x));

/**
 * Nearest points of the stretches a–b and c–d.
 *
 * @example
 * ```ts
 * segmentDistance([0, 0, 0], [10, 0, 0], [5, -5, 3], [5, 5, 3]).distance; // 3
 * ```
 */
export function segmentDistance(a: Vec3, b: Vec3, c: Vec3, d: Vec3): Nearest {
  const [u, v, w] = [sub(b, a), sub(d, c), sub(a, c)];
  const [uu, vv, uv, uw, vw] = [dot(u, u), dot(v, v), dot(u, v), dot(u, w), dot(v, w)];
  const turn = uu * vv - uv * uv;
  let s = turn > ROUNDING_SHARE * uu * vv ? share((uv * vw - vv * uw) / turn) : 0;
  const t = share((uv * s + vw) / vv);
  s = share((uv * t - uw) / uu);
  const [onFirst, onSecond] = [addScaled(a, u, s), addScaled(c, v, t)];
  return { distance: distance(onFirst, onSecond), onFirst, onSecond };
}
