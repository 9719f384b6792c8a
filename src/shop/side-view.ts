/**
 * A side view of a piece in characters: enough to see which way each end leans, so that no piece is cut the wrong hand.
 *
 * Not to scale. The face named first is drawn above; the end at the left is the foot or the downhill end. A slash leans
 * as the cut does, a bracket is a saddle or a cope, a bar a square cut.
 *
 * @packageDocumentation
 */
import type { CutEndRow, CutRow } from "./cut-list-types.js";

/** Columns from the outermost left mark to the outermost right one. */
const WIDTH = 48;
const LEFT_NAMES: readonly string[] = ["FOOT", "DOWNHILL", "RIGHT"];

/** Which face is longer at an end: `above`, `below`, or neither in this view. */
type Lean = "above" | "below" | "even";

/**
 * The view, four lines of at most 80 columns.
 *
 * @example sideView(row).join("\n");
 */
export function sideView(row: CutRow): string[] {
  const [a, b] = row.ends;
  const [left, right] = LEFT_NAMES.includes(a.name) ? [a, b] : [b, a];
  const [start, stop] = [lean(left, row.view), lean(right, row.view)];
  const [open, close] = [glyph(left, start, "\\", "/", ")"), glyph(right, stop, "/", "\\", "(")];
  const margin = Math.max(row.view[0].length, row.view[1].length) + 3;
  const line = (name: string, from: number, to: number, ends: readonly [string, string], fill: string) =>
    `${name.padEnd(margin + from)}${ends[0]}${fill.repeat(to - from - 1)}${ends[1]}`.trimEnd();
  const [upperFrom, lowerFrom] = [start === "below" ? 1 : 0, start === "above" ? 1 : 0];
  const [upperTo, lowerTo] = [stop === "below" ? WIDTH - 1 : WIDTH, stop === "above" ? WIDTH - 1 : WIDTH];
  return [
    line("", upperFrom, upperTo, [" ", " "], "_"),
    line(row.view[0], upperFrom, upperTo, [open, close], " "),
    line(row.view[1], lowerFrom, lowerTo, [open, close], "_"),
    `${" ".repeat(margin)}${left.name.padEnd(WIDTH + 1 - right.name.length)}${right.name}`,
  ];
}

function lean(end: CutEndRow, view: readonly [string, string]): Lean {
  if (!end.long) return "even";
  const faces = end.long.face.split("-");
  if (faces.includes(view[0])) return "above";
  return faces.includes(view[1]) ? "below" : "even";
}

function glyph(end: CutEndRow, way: Lean, above: string, below: string, hollow: string): string {
  if (way === "above") return above;
  if (way === "below") return below;
  return end.kind === "cope" && end.lies === undefined ? hollow : "|";
}
