/**
 * Which units of length people write, and how many millimetres each is.
 *
 * The inch is 25.4 mm exactly (international yard and pound agreement of 1959), the foot 12 inches.
 *
 * @packageDocumentation
 */

/** A unit a length can be given in. */
export type LengthUnit = "mm" | "cm" | "m" | "in" | "ft";

/** Millimetres in one of each unit; exact. */
export const MM_PER: Readonly<Record<LengthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };
