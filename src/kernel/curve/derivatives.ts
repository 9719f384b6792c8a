/**
 * A point of a curve with its first two derivatives.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "../vec.js";

/** P, P′ and P″ at a parameter. */
export interface CurveDerivatives {
  readonly p: Vec3;
  readonly d1: Vec3;
  readonly d2: Vec3;
}
