/**
 * Circles and ellipses: P(t) = centre + cos t·major + sin t·minor.
 *
 * `major` and `minor` are square to each other and |major| ≥ |minor|; equal lengths make a circle.
 *
 * @packageDocumentation
 */
import { ROUNDING_SHARE } from "../tolerance.js";
import { add, addScaled, dot, length, scale, type Vec3 } from "../vec.js";
import type { CurveDerivatives } from "./derivatives.js";

/** A circle or an ellipse by its centre and two semi-axis vectors, millimetres. */
export interface ConicCurve {
  readonly kind: "conic";
  readonly centre: Vec3;
  readonly major: Vec3;
  readonly minor: Vec3;
}

/** The point at parameter `t` (radians, dimensionless). */
export function conicAt(c: ConicCurve, t: number): Vec3 {
  const [cos, sin] = [Math.cos(t), Math.sin(t)];
  const { centre: o, major: a, minor: b } = c;
  return [o[0] + cos * a[0] + sin * b[0], o[1] + cos * a[1] + sin * b[1], o[2] + cos * a[2] + sin * b[2]];
}

/** P, P′, P″ of a conic. */
export function conicDerivatives(c: ConicCurve, t: number): CurveDerivatives {
  const [cos, sin] = [Math.cos(t), Math.sin(t)];
  const fromCentre = addScaled(scale(c.major, cos), c.minor, sin);
  return {
    p: add(c.centre, fromCentre),
    d1: addScaled(scale(c.major, -sin), c.minor, cos),
    d2: scale(fromCentre, -1),
  };
}

/** Times that an ellipse is longer than wide, beyond which the place of a point on it is told from nearby. */
const SLENDER = 1000;

/** The parameter in (−π, π] of a point on the conic. */
export function conicParameter(c: ConicCurve, p: Vec3): number {
  const w: Vec3 = [p[0] - c.centre[0], p[1] - c.centre[1], p[2] - c.centre[2]];
  const [aa, bb] = [dot(c.major, c.major), dot(c.minor, c.minor)];
  const t = Math.atan2(dot(w, c.minor) / bb, dot(w, c.major) / aa);
  if (aa < SLENDER * SLENDER * bb) return t;
  // The centre is far off, and its digits are lost to the short way across: one step of Newton's finds them again.
  const near = conicAt(c, t);
  const d1 = addScaled(scale(c.major, -Math.sin(t)), c.minor, Math.cos(t));
  return t + ((p[0] - near[0]) * d1[0] + (p[1] - near[1]) * d1[1] + (p[2] - near[2]) * d1[2]) / dot(d1, d1);
}

/** The conic through two conjugate semi-diameters p and q (P = centre + cos·p + sin·q), put on its own axes. */
export function conicFromConjugates(centre: Vec3, p: Vec3, q: Vec3): ConicCurve {
  // Turning the pair by t0 makes it square: tan 2·t0 = 2 p·q / (|p|² − |q|²).
  const [pp, qq, pq] = [dot(p, p), dot(q, q), dot(p, q)];
  const t0 = 0.5 * Math.atan2(2 * pq, pp - qq);
  const major = addScaled(scale(p, Math.cos(t0)), q, Math.sin(t0));
  let minor = addScaled(scale(p, -Math.sin(t0)), q, Math.cos(t0));
  // Rounding leaves a residue along `major`; taking it out keeps the pair square to the last bit.
  minor = addScaled(minor, major, -dot(minor, major) / dot(major, major));
  return length(major) >= length(minor)
    ? { kind: "conic", centre, major, minor }
    : { kind: "conic", centre, major: minor, minor: scale(major, -1) };
}

/** True when both semi-axes have the same length within rounding. */
export function isCircle(c: ConicCurve): boolean {
  const [a, b] = [length(c.major), length(c.minor)];
  return Math.abs(a - b) <= ROUNDING_SHARE * a;
}
