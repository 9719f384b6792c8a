/**
 * A force on a paper: newtons, with pounds beside it where the paper is in inches.
 *
 * @packageDocumentation
 */
import type { PaperUnit } from "./cut-list-types.js";

/** The pound-force, newtons; exact (0.45359237 kg at 9.80665 m/s²). */
const N_PER_POUND = 4.4482216152605;

/**
 * A force to the nearest newton and pound.
 *
 * @example forceText(151.28, "in"); // "151 N (34 lbf)"
 */
export function forceText(newtons: number, unit: PaperUnit): string {
  const pounds = unit === "in" ? ` (${Math.round(newtons / N_PER_POUND)} lbf)` : "";
  return `${Math.round(newtons)} N${pounds}`;
}
