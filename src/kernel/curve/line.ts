/**
 * Straight lines: P(t) = origin + t·direction, with a unit direction, so that t is millimetres.
 *
 * @packageDocumentation
 */
import { addScaled, type Vec3 } from "../vec.js";
import type { CurveDerivatives } from "./derivatives.js";

/** A straight line; `direction` is a unit vector. */
export interface LineCurve {
  readonly kind: "line";
  readonly origin: Vec3;
  readonly direction: Vec3;
}

/** The point `t` millimetres along the line. */
export function lineAt(c: LineCurve, t: number): Vec3 {
  return addScaled(c.origin, c.direction, t);
}

/** P, P′, P″ of a line. */
export function lineDerivatives(c: LineCurve, t: number): CurveDerivatives {
  return { p: lineAt(c, t), d1: c.direction, d2: [0, 0, 0] };
}
