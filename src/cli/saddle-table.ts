/**
 * The table of `rakewright saddle`: one line per station, fraction and decimal, with the arc length to mark it at.
 *
 * The arc runs round the outside of the branch from the toe, clockwise or counter-clockwise alike unless the tubes are
 * offset. Lengths are rounded each on its own; the table says to what.
 *
 * @packageDocumentation
 */
import type { Saddle, SaddleInput } from "../joints/saddle.js";
import { CAUTION } from "../kernel/caution.js";
import { formatLength } from "../kernel/length.js";
import { wrap } from "../shop/wrap.js";

type Unit = "in" | "mm";
const COLUMN = 18;

/** A length as a column of the table. */
function cell(mm: number | null, unit: Unit): string {
  return (mm === null ? "miss" : lengthText(mm, unit)).padStart(COLUMN);
}

function lengthText(mm: number, unit: Unit): string {
  if (unit === "mm") return formatLength(mm, { unit: "mm", decimals: 2, mark: false });
  const fraction = formatLength(mm, { unit: "in-fraction", denominator: 64, mark: false });
  return `${fraction} (${formatLength(mm, { unit: "in", decimals: 3, mark: false })})`;
}

/**
 * The table.
 *
 * @example saddleTable(input, saddle(input), "in");
 */
export function saddleTable(input: SaddleInput, result: Saddle, unit: Unit): string {
  const circumference = Math.PI * input.branch.od;
  const n = result.stations.length;
  const rows = result.stations.map((s, i) => {
    const name = i === 0 ? "toe" : 2 * i === n ? "heel" : "";
    const angle = s.dihedral === null ? "miss" : s.dihedral.toFixed(1);
    const lengths = [(circumference * i) / n, s.outer, s.inner, s.effective].map((mm) => cell(mm, unit));
    return `${s.phi.toFixed(1).padStart(7)}${lengths.join("")}${angle.padStart(8)}  ${name}`.trimEnd();
  });
  return `${[...head(input, unit), ...rows, "", ...foot(input, result, unit)].join("\n")}\n`;
}

function head(input: SaddleInput, unit: Unit): string[] {
  const { branch, header, angle, offset = 0, gap = 0 } = input;
  const say = (mm: number) => lengthText(mm, unit);
  return [
    `SADDLE of a tube ${say(branch.od)} x ${say(branch.wall)} wall on a round ${say(header.od)}`,
    `${angle}° between the centrelines, centrelines ${say(offset)} apart, root gap ${say(gap)}`,
    unit === "in"
      ? "Inches to the nearest 1/64, decimal inches in brackets. Each figure is rounded on its own."
      : "Millimetres to the nearest 0.01. Each figure is rounded on its own.",
    "Distances run along the branch from the point nearest the header's axis; more is farther back.",
    "phi 0 = toe (obtuse side), 180 = heel (acute side), 90 = the side an offset above zero goes to.",
    "",
    `${"phi °".padStart(7)}${["arc from toe", "outer edge", "inner edge", "cut square"].map((t) => t.padStart(COLUMN)).join("")}${"weld °".padStart(8)}`,
  ];
}

function foot(input: SaddleInput, result: Saddle, unit: Unit): string[] {
  const reach = result.stations.flatMap((s) => (s.effective === null ? [] : [s.effective]));
  const outer = result.stations.flatMap((s) => (s.outer === null ? [] : [s.outer]));
  const spread = (values: readonly number[]) =>
    values.length === 0 ? "none" : lengthText(Math.max(...values) - Math.min(...values), unit);
  const lines = [
    "cut square = where a wall cut square through (saw, grinder, plasma) lands: mark this one unless the",
    "inside is chamfered to a feather edge; then mark the outer edge.",
    `Depth over these stations: ${spread(reach)} cut square, ${spread(outer)} outer edge.`,
    `Circumference ${lengthText(Math.PI * input.branch.od, unit)}: tape the real tube and scale the arcs by what it has.`,
  ];
  if (result.leastDihedral !== null && result.leastDihedralAt !== null) {
    lines.push(
      `Tightest weld angle ${result.leastDihedral.toFixed(1)}° at phi ${result.leastDihedralAt.toFixed(1)}°.`,
    );
  }
  if (result.missBy > 0) {
    lines.push(
      `HANGS OFF: the branch reaches ${lengthText(result.missBy, unit)} past the side of the header; close it by hand.`,
    );
  }
  return [...lines, ...wrap("", CAUTION)];
}
