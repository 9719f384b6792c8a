/**
 * The PLATES block of the cut list: mark, size, thickness, holes.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../kernel/tolerance.js";
import type { MarkedHole } from "../members/plate-sizes.js";
import { type FigureStyle, figure, massText } from "./figure.js";
import { groupBy } from "./group-by.js";
import { madeAlreadyText } from "./made-already.js";
import type { PlateRow } from "./plate-rows.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** The block's lines; none without plates. */
export function platesText(rows: readonly PlateRow[], style: FigureStyle): string[] {
  if (rows.length === 0) return [];
  const pieces = rows.reduce((sum, r) => sum + r.quantity, 0);
  return [
    ...wrap(
      "PLATES   ",
      `${pieces} piece${pieces === 1 ? "" : "s"}; sizes over all, cutting allowance NOT added`,
    ),
    ...rows.flatMap((row) => ["-".repeat(PAPER_WIDTH), ...rowText(row, style)]),
  ];
}

function rowText(row: PlateRow, style: FigureStyle): string[] {
  const say = (mm: number): string => figure(mm, style);
  const each = row.mass === undefined ? "" : `, ${massText(row.mass)} each`;
  const what = `${row.quantity} off, ${row.kind === "bracket" ? "bracket leg" : "plate"}, ${row.material.replaceAll("-", " ")}${each}`;
  const shape = row.rectangle ? "square corners" : "outline as drawn";
  const lines = [
    ...wrap(`${row.marks.join(", ")}   `, what, 2),
    ...wrap("  SIZE     ", `${say(row.width)} x ${say(row.depth)}, ${say(row.thickness)} thick; ${shape}`),
  ];
  if (row.blocked) lines.push(...wrap("  ", "DO NOT CUT: an error keeps this piece from being made."));
  lines.push(...madeAlreadyText(row.made));
  if (row.holes.length + row.otherHoles + row.bores === 0) return [...lines, "  no holes"];
  lines.push(
    ...wrap(
      "  HOLES    ",
      `seen on the ${row.seenOn} face with ${row.up} up; centres from its left and its bottom edge as seen`,
    ),
  );
  for (const alike of groupBy(row.holes, ({ diameter }) => String(Math.round(diameter / STATION_MM)))) {
    const [first] = alike as [MarkedHole];
    const places = alike.map((h) => `${say(h.fromLeft)} and ${say(h.fromBottom)}`).join("; ");
    lines.push(...wrap("  ", `${alike.length} off ${say(first.diameter)} dia at ${places}`, 9));
  }
  const rest = row.otherHoles + row.bores;
  if (rest > 0) lines.push(`  ${rest} other hole${rest === 1 ? "" : "s"}: not on this list`);
  return lines;
}
