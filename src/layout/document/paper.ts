/**
 * Sheets of paper that a shop prints on, with their trimmed sizes upright.
 *
 * @packageDocumentation
 */

/** A sheet by its name. */
export type PaperSize = "a4" | "a3" | "letter" | "legal" | "tabloid";

/** Width and height upright, mm: ISO 216 (A sizes); ANSI/ASME Y14.1 (letter, tabloid), legal 8.5 x 14 in. */
export const PAPERS: Readonly<Record<PaperSize, readonly [width: number, height: number]>> = {
  a4: [210, 297],
  a3: [297, 420],
  letter: [215.9, 279.4],
  legal: [215.9, 355.6],
  tabloid: [279.4, 431.8],
};

/** Their names, in the order of the table. */
export const PAPER_SIZES = ["a4", "a3", "letter", "legal", "tabloid"] as const satisfies readonly PaperSize[];
