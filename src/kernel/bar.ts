/**
 * The definition of a trimmed bar: { (u, v, s) : (u, v) in the section, s₀(u, v) ≤ s ≤ s₁(u, v) }.
 *
 * A definition is small plain data in the bar's own frame (section in the x-y plane, axis along +z). `solidOf` makes
 * its exact solid.
 *
 * @packageDocumentation
 */
import type { EndExpression } from "./end.js";
import type { Region } from "./region.js";
import type { Vec3 } from "./vec.js";

/** A round hole, drilled straight, in the frame of the bar it is in. */
export interface Bore {
  readonly id: string;
  /** A point on the axis of the hole, millimetres. */
  readonly point: Vec3;
  /** Direction of the hole, any length above zero. */
  readonly direction: Vec3;
  readonly diameter: number;
  /** Which walls it goes through, seen along the direction. */
  readonly through: "first" | "both";
}

/** A trimmed bar. `ends[0]` closes the low end of the axis, `ends[1]` the high one. */
export interface Bar {
  readonly id: string;
  readonly section: Region;
  readonly ends: readonly [EndExpression, EndExpression];
  readonly bores: readonly Bore[];
}
