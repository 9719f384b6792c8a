/**
 * Readings of a survey as lines of a paper: what was read, what it should have read, how far off, how much checks it.
 *
 * @packageDocumentation
 */

import { MOST_NAMES } from "../layout/survey/survey-findings.js";
import type { LeftOutRow, ReadingRow, SuspectRow } from "../layout/survey/survey-report-types.js";
import { type FigureStyle, figure } from "./figure.js";

const ANGLES: readonly string[] = ["level", "corner"];

/** A reading's value: a length as on every paper, an angle to a hundredth of a degree. */
export function readingFigure({ kind }: Pick<ReadingRow, "kind">, value: number, style: FigureStyle): string {
  return ANGLES.includes(kind) ? `${value.toFixed(2)}°` : figure(value, style);
}

/** How far off a reading is: sixteenths, tenths of a millimetre or hundredths of a degree; + read too much. */
export function offFigure({ kind }: Pick<ReadingRow, "kind">, off: number, style: FigureStyle): string {
  const signed = (value: number, decimals: number) => {
    const digits = Math.abs(value).toFixed(decimals);
    return Number(digits) === 0 ? digits : `${value < 0 ? "-" : "+"}${digits}`;
  };
  if (ANGLES.includes(kind)) return `${signed(off, 2)}°`;
  return style.unit === "in" ? `${signed((off * 16) / 25.4, 1)}/16` : signed(off, 1);
}

/** `0 to 1`, `A to B`, `B: A to C`. */
export function placeText({ from, to, at }: Pick<ReadingRow, "from" | "to" | "at">): string {
  return `${at === undefined ? "" : `${at}: `}${from === 0 ? "floor" : from} to ${to}`;
}

const COLUMNS = [9, 10, 12, 20, 20, 10, 9] as const;

function columns(cells: readonly string[]): string {
  return cells
    .map((cell, i) => (i < 3 ? cell.padEnd(COLUMNS[i] as number) : cell.padStart(COLUMNS[i] as number)))
    .join("");
}

/** Heading of the table. */
const HEADING = columns(["reading", "kind", "between", "read", "should read", "off", "times σ"]);

function remark(own: ReadingRow, suspects: readonly SuspectRow[]): string {
  if (own.redundancy === 0) return "  unchecked";
  const found = suspects.find(({ ids }) => ids.includes(own.id));
  if (found !== undefined) return found.ids.length === 1 ? "  SUSPECT" : "  one of";
  const few = suspects.filter(({ alsoLikely }) => alsoLikely.length <= MOST_NAMES);
  return few.some(({ alsoLikely }) => alsoLikely.includes(own.id)) ? "  perhaps" : "";
}

/** The table of the readings that count. */
export function readingRowsText(
  rows: readonly ReadingRow[],
  suspects: readonly SuspectRow[],
  style: FigureStyle,
): string[] {
  const line = (own: ReadingRow) =>
    columns([
      own.id,
      own.kind,
      placeText(own),
      readingFigure(own, own.value, style),
      readingFigure(own, own.adjusted, style),
      offFigure(own, own.residual, style),
      own.studentised === null ? "-" : own.studentised.toFixed(2),
    ]) + remark(own, suspects);
  return [HEADING, ...rows.map(line)];
}

/** A reading that was left out, beside what the others make of it. */
export function leftOutText(own: LeftOutRow, style: FigureStyle): string {
  const read = `${own.id} read ${readingFigure(own, own.value, style)}`;
  if (own.should === null) return `${read}; no other reading tells what it should be. Tape it again`;
  const off = offFigure(own, own.value - own.should, style);
  return `${read}; by the others it should read ${readingFigure(own, own.should, style)}, which makes it ${off} off. Tape it again`;
}
