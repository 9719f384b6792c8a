/**
 * The exact curves that bound faces: lines, conics (circle, ellipse) and saddle curves.
 *
 * Curves are tagged plain data; `evaluate` and `derivatives` are functions. Parameters are dimensionless, except on a
 * line, where the parameter is millimetres.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "../vec.js";
import { type ConicCurve, conicAt, conicDerivatives } from "./conic.js";
import type { CurveDerivatives } from "./derivatives.js";
import { type LineCurve, lineAt, lineDerivatives } from "./line.js";
import { type SaddleCurve, saddleAt, saddleDerivatives } from "./saddle.js";

export type { CurveDerivatives } from "./derivatives.js";

/** Any exact curve of the kernel. */
export type Curve = LineCurve | ConicCurve | SaddleCurve;

/** The point of a curve at parameter `t`. */
export function evaluate(curve: Curve, t: number): Vec3 {
  switch (curve.kind) {
    case "line":
      return lineAt(curve, t);
    case "conic":
      return conicAt(curve, t);
    case "saddle":
      return saddleAt(curve, t);
  }
}

/** The point, first and second derivative of a curve at parameter `t`. */
export function derivatives(curve: Curve, t: number): CurveDerivatives {
  switch (curve.kind) {
    case "line":
      return lineDerivatives(curve, t);
    case "conic":
      return conicDerivatives(curve, t);
    case "saddle":
      return saddleDerivatives(curve, t);
  }
}
