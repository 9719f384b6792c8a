/**
 * A length in a message, in both units: what the drawing says and what the tape says.
 *
 * @packageDocumentation
 */
import { formatLength } from "../kernel/length.js";

/**
 * A length in both units.
 *
 * @param mm - length, millimetres, any sign, finite
 * @example sayLength(1.27); // 1.3 mm (0.050 in)
 */
export function sayLength(mm: number): string {
  return `${formatLength(mm, { unit: "mm" })} (${formatLength(mm, { unit: "in" })})`;
}
