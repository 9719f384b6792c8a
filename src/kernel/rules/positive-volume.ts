/**
 * Rule: a solid holds material: its exact volume is above zero.
 *
 * A solid turned inside out (every sense flipped) has the volume of its own negative.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import { massProperties } from "../mass.js";
import type { Solid } from "../solid.js";

/**
 * The volume when it is not positive; empty for a good solid.
 *
 * @param solid - finite numbers: the integral of a number that is not finite has no end
 * @example
 * ```ts
 * positiveVolume(solid).length; // 0
 * ```
 */
export function positiveVolume(solid: Solid): Diagnostic[] {
  const { volume } = massProperties(solid);
  if (volume > 0) return [];
  return [
    diagnostic({
      code: "volume-not-positive",
      message: `The solid holds ${volume} mm3; expected more than zero.`,
      hint: "Its faces look inwards. Report the design: it is a fault of the kernel.",
      values: { volume },
    }),
  ];
}
