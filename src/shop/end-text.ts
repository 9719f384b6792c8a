/**
 * One end of a piece as a sentence of the trade: what cut, how many degrees in both conventions, which face is long.
 *
 * Angles from a square cut first, from the tube's length in brackets, to 0.1°. Lengths as the paper's style says.
 *
 * @packageDocumentation
 */
import { formatLength } from "../kernel/length.js";
import { NODE_MM } from "../kernel/tolerance.js";
import type { CutEndRow, SaddleRow } from "./cut-list-types.js";
import { degrees, type FigureStyle, figure } from "./figure.js";
import { sectionText } from "./section-text.js";

/** Degrees: the finest angle the paper prints is 0.1, so less than half of it reads as zero. */
const PRINTED_ZERO = 0.05;

/**
 * The sentences for one end, the first naming the end.
 *
 * @example
 * endText(row.ends[0], style)[0];
 * // "DOWNHILL end: plumb cut, 35.4° from square (54.6° from the tube), long point BOTTOM, long - short 1-11/32 (1.352)"
 */
export function endText(end: CutEndRow, style: FigureStyle): string[] {
  const shaped = end.lies === undefined;
  const lines =
    shaped && end.saddles.length > 0
      ? end.saddles.flatMap((s, i) => saddleText(end, s, i, style))
      : flatText(end, style);
  if (end.gap > 0 && !(shaped && end.saddles.length > 0)) {
    lines.push(
      `root gap ${figure(end.gap, style)} is ALREADY taken off here, square to the mate: do not take it off again`,
    );
  }
  if (end.arris.length > 0 && (shaped || compound(end))) {
    const marks = end.arris.map((a) => `${a.name} ${figure(a.offset, style)}`);
    lines.push(`marks past the axis point of the cut (+ outwards): ${marks.join("; ")}`);
  }
  if (end.dihedral) {
    const { least, greatest } = end.dihedral;
    lines.push(`angle between the skins where the weld goes: ${degrees(least)} to ${degrees(greatest)}`);
  }
  if (end.step >= NODE_MM)
    lines.push(`STEP: the two outsides miss each other by ${figure(end.step, style)} here`);
  return lines;
}

function flatText(end: CutEndRow, style: FigureStyle): string[] {
  const to = end.onto.length > 0 ? ` to ${end.onto.join(" and ")}` : "";
  if (end.lies === undefined) return [`${end.name} end: coped${to}${flatPartText(end)}`];
  if (end.lies === "square" || end.fromSquare === undefined) return [`${end.name} end: square cut${to}`];
  const cut = end.kind === "miter" ? `miter${to}` : `${end.lies} cut${to}`;
  const angle = `${degrees(end.fromSquare)} from square (${degrees(90 - end.fromSquare)} from the tube)`;
  const long = end.long && `long point ${end.long.face}, long - short ${figure(end.long.minusShort, style)}`;
  const lines = [[`${end.name} end: ${cut}`, angle, long].filter((part) => part !== undefined).join(", ")];
  if (end.saw && compound(end)) {
    const { miter, bevel, clock, fromSquare } = end.saw;
    lines.push(
      `compound: saw at miter ${degrees(miter)} (+ long point ${end.plus[0]}) and bevel ${degrees(bevel)}` +
        ` (+ long point ${end.plus[1]}), section upright; or roll the tube ${degrees(clock)} and cut ${degrees(fromSquare)} plain`,
    );
  }
  return lines;
}

/** A post under a flat rail is one saw cut but for the corners that reach up round the rail's radius. */
function flatPartText({ flatPart }: CutEndRow): string {
  if (!flatPart) return "";
  const { fromSquare } = flatPart;
  return `; the flat part is sawn ${degrees(fromSquare)} from square (${degrees(90 - fromSquare)} from the tube), only the corners are shaped to the radius`;
}

/** True when the saw needs both of its scales. */
function compound({ saw }: CutEndRow): boolean {
  return saw !== undefined && Math.abs(saw.miter) >= PRINTED_ZERO && Math.abs(saw.bevel) >= PRINTED_ZERO;
}

function saddleText(end: CutEndRow, s: SaddleRow, index: number, style: FigureStyle): string[] {
  const header = s.header ? ` (${sectionText(s.header, style.unit)})` : "";
  const start = index === 0 ? `${end.name} end:` : "and";
  const gap = s.gap > 0 ? `, root gap ${figure(s.gap, style)} built in` : "";
  const offset = s.offset !== 0 ? `, centrelines ${figure(Math.abs(s.offset), style)} apart` : "";
  const lines = [
    `${start} saddle to ${s.onto}${header} at ${degrees(s.angle)} between the centrelines${offset}${gap}; ${sidesText(s)}`,
  ];
  if (s.depth) {
    lines.push(
      `saddle depth, lowest to highest mark: ${figure(s.depth.effective, style)} with the wall cut square through (the inside` +
        ` edge lands first); ${figure(s.depth.outer, style)} to the outer edge, only with the inside chamfered away`,
    );
  }
  if (s.sizes) lines.push(`ordinates: ${saddleCommand(s, s.sizes, style)}`);
  return lines;
}

/** Which face is which; a saddle square on its header has neither heel nor toe. */
function sidesText(s: SaddleRow): string {
  if (90 - s.angle < PRINTED_ZERO) return `square on, alike at the ${s.toe} and the ${s.heel} face`;
  return `heel (acute side) = ${s.heel} face, toe (obtuse side) = ${s.toe} face`;
}

function saddleCommand(s: SaddleRow, sizes: NonNullable<SaddleRow["sizes"]>, style: FigureStyle): string {
  const number = (mm: number) =>
    formatLength(mm, { unit: style.unit, decimals: style.unit === "in" ? 4 : 2, mark: false }).replace(
      /\.?0+$/,
      "",
    );
  return [
    `rakewright saddle --branch ${number(sizes.od)}x${number(sizes.wall)} --header ${number(sizes.headerOd)}`,
    `--angle ${s.angle.toFixed(3)}`,
    ...(s.offset !== 0 ? [`--offset=${number(s.offset)}`] : []),
    ...(s.gap > 0 ? [`--gap ${number(s.gap)}`] : []),
    `--unit ${style.unit}`,
  ].join(" ");
}
