/**
 * A length in a message, in both units: what the drawing says and what the tape says.
 *
 * @packageDocumentation
 */
import { MM_PER } from "../kernel/length.js";

/** `1.3 mm (0.050 in)`. */
export function sayLength(mm: number): string {
  return `${mm.toFixed(1)} mm (${(mm / MM_PER.in).toFixed(3)} in)`;
}
