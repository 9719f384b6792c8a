/**
 * The changes as a plain-text paper: what to re-cut, what to re-mark, what is made and does not fit, at 100 columns.
 *
 * Old and new figures stand beside each other as the cut list prints them, each rounded on its own, and how far the number
 * moved. What did not move by more than the stated least is not listed: its marks may stay.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../../kernel/caution.js";
import type { MadeMisfit } from "../../layout/as-set/made-misfit.js";
import { degrees, type FigureStyle, figure, figureUp, roundingText } from "../figure.js";
import { groupBy } from "../group-by.js";
import { PAPER_WIDTH, wrap } from "../wrap.js";
import type { LonePiece, NumberChange, PieceChange, PieceChanges } from "./change-types.js";
import { SQUARE_CUT } from "./piece-changes.js";

/** What the head of the paper says. */
export interface ChangesHeader {
  /** Of the new pieces. */
  readonly job: string;
  /** How the two sets are called, e.g. their folders and what wrote them. */
  readonly old: string;
  readonly new: string;
  /** What must be known besides, e.g. that the two are of different jobs. */
  readonly notes?: readonly string[];
  /** Program and version. */
  readonly generator?: string;
}

const RULE = "=".repeat(PAPER_WIDTH);
/** Columns of a row: what, was, is now; the rest is how far it moved. */
const WHAT = 35;
const FIGURE = 22;
/** mm. Lengths that moved alike within this are one line: a tenth of what the finest paper prints. */
const ALIKE_MM = 0.01;

/**
 * The paper.
 *
 * @param changes - from `pieceChanges`
 * @param header - job, and what the two sets are called
 * @param style - unit and fraction of the paper
 * @returns text with a final line break; lines of at most 100 columns
 * @example
 * pieceChangesText(pieceChanges(old, now), { job, old: "issue 1", new: "issue 2" }, { unit: "in", denominator: 32 });
 */
export function pieceChangesText(changes: PieceChanges, header: ChangesHeader, style: FigureStyle): string {
  const { changed, added, gone, unchanged } = changes;
  const lines = [
    ...headText(changes, header, style),
    ...groupBy(changed, (own) => alikeKey(own, changes, style)).flatMap((same) => [
      "",
      "-".repeat(PAPER_WIDTH),
      ...pieceText(same, changes, style),
    ]),
    ...lonesText("NEW", added, "cut it from the new cut list", "the same to cut as the gone"),
    ...lonesText("GONE", gone, "do not cut it", "the same to cut as the new"),
    "",
    RULE,
    `unchanged: ${count(unchanged)}; their marks stay`,
    "",
    ...wrap("", CAUTION),
  ];
  return `${lines.join("\n")}\n`;
}

function count(pieces: number): string {
  return pieces === 1 ? "1 piece" : `${pieces} pieces`;
}

/** One line of print: nothing in a name may end the line or steer a terminal. */
const plain = (name: string): string => name.replace(/\p{Cc}+/gu, " ");

function headText(changes: PieceChanges, header: ChangesHeader, style: FigureStyle): string[] {
  const title = "CHANGES";
  const { over, overAngle, changed, added, gone } = changes;
  const has = (action: PieceChange["actions"][number]): number =>
    changed.filter((own) => own.actions.includes(action)).length;
  const sums = [
    [has("re-cut"), "to re-cut"],
    [has("re-mark"), "to re-mark"],
    [has("made-misfit"), "made already and not fitting"],
    [has("rename"), "with a new mark"],
    [added.length, "new"],
    [gone.length, "gone"],
  ] as const;
  const told = sums.flatMap(([n, what]) => (n > 0 ? [`${n} ${what}`] : []));
  return [
    header.generator ? `${title}${header.generator.padStart(PAPER_WIDTH - title.length)}` : title,
    ...wrap("Job      ", plain(header.job)),
    ...wrap("Old      ", plain(header.old)),
    ...wrap("New      ", plain(header.new)),
    ...wrap("Pieces   ", told.length === 0 ? "nothing moved" : told.join(", ")),
    ...wrap(
      "Listed   ",
      `lengths that moved by more than ${figure(over, { ...style, denominator: 128 })}, angles by more than ${angleText(overAngle)}; what is not listed stays as it is marked`,
    ),
    ...wrap("Lengths  ", `${roundingText(style)}. BLANKS alone are rounded UP, never short.`),
    ...wrap("Angles   ", "degrees from a SQUARE cut to 0.1."),
    ...wrap(
      "Points   ",
      "lengths run between the points the new cut list names; where a point is another one now, it is said. Holes are counted from the end the tape hooks.",
    ),
    ...(header.notes ?? []).flatMap((note) => wrap("NOTE     ", plain(note))),
    ...wrap("CAUTION  ", CAUTION),
  ];
}

/** As it was asked for, so that a limit below 0.1 is not printed as zero. */
const angleText = (angle: number): string => `${Number(angle.toFixed(6))}°`;

const ACTIONS: Readonly<Record<PieceChange["actions"][number], string>> = {
  "re-cut": "RE-CUT",
  "re-mark": "RE-MARK",
  rename: "NEW MARK",
  "made-misfit": "MADE ALREADY, DOES NOT FIT",
};

/** Pieces with the same text but for their mark are one block. */
function alikeKey(own: PieceChange, changes: PieceChanges, style: FigureStyle): string {
  return pieceText(
    [{ ...own, mark: "", ...(own.oldMark !== undefined && { oldMark: "" }) }],
    changes,
    style,
  ).join("\n");
}

/** What a piece is, in a word or two. */
function thing({ kind, role, section }: Pick<PieceChange, "kind" | "role" | "section">): string {
  if (kind !== "member") return kind === "plate" ? "plate" : "bracket leg";
  return `${role.replace("-", " ")}, ${section}`;
}

/** The block of one or more pieces that moved alike. */
function pieceText(same: readonly PieceChange[], changes: PieceChanges, style: FigureStyle): string[] {
  const [own] = same as [PieceChange];
  const actions = own.actions.map((action) => ACTIONS[action]).join(" and ");
  const marks = same.map(({ mark, oldMark }) => (oldMark === undefined ? mark : `${mark} (was ${oldMark})`));
  const each = same.length > 1 ? " each of them" : "";
  const what = `${actions}${each}: ${thing(own)}`;
  const lines = wrap(`${marks.join(", ")}   `, what, 2);
  lines.push(...own.notes.flatMap((note) => wrap("  ", note, 4)));
  const rows = shown(own.numbers);
  if (rows.length > 0) {
    lines.push(`  ${"".padEnd(WHAT)}${"was".padEnd(FIGURE)}${"is now".padEnd(FIGURE)}moved by`);
  }
  lines.push(...rows.flatMap((row) => rowText(row, style)));
  return [
    ...lines,
    ...own.misfits.flatMap((misfit) => wrap("  ", misfitText(misfit, own, changes, style), 4)),
  ];
}

/**
 * The rows that are printed: where every length along a piece moved alike, the blank stands for all; saw settings only where
 * the saw needs both of its scales; marks past the axis point only beside a shaped or compound cut, as on the cut list.
 */
function shown(numbers: readonly NumberChange[]): readonly NumberChange[] {
  const others = numbers.filter((own) => own.between === undefined || own.part !== "length");
  const lengths = numbers.filter((own) => !others.includes(own));
  const printed = others.filter((own) => !isSawDetail(own) || isCompound(own, numbers));
  const stock = printed.filter((own) => own.part === "stock");
  return [...stock, ...shownLengths(lengths), ...printed.filter((own) => own.part !== "stock")];
}

/** Lengths along the piece: one line for all of them, or for all but the blank, where they are or moved alike. */
function shownLengths(lengths: readonly NumberChange[]): readonly NumberChange[] {
  const [blank, ...rest] = lengths;
  if (!blank || rest.length < 2) return lengths;
  const near = (a: NumberChange["old"], b: NumberChange["old"]): boolean =>
    typeof a === "number" && typeof b === "number" && Math.abs(a - b) <= ALIKE_MM;
  const moved = lengths.every((own) => near(own.difference, blank.difference) && !isTold(own));
  if (moved) return [blank, { ...blank, what: "every other length along it", old: "", new: "" }];
  const inner = rest.filter((own) => own.what !== SQUARE_CUT);
  const [first] = inner;
  const same =
    first !== undefined &&
    inner.every((own) => near(own.old, first.old) && near(own.new, first.new) && !isTold(own));
  const square = rest.filter(
    (own) => own.what === SQUARE_CUT && !(near(own.old, blank.old) && near(own.new, blank.new)),
  );
  return [blank, ...(same ? [{ ...first, what: "every line along it" }] : inner), ...square];
}

/** True of a length that runs between other points now. */
const isTold = ({ between }: NumberChange): boolean => between?.moved === true;

const isSawDetail = ({ what }: NumberChange): boolean =>
  /, (saw miter|saw bevel|roll to long point|mark at .*)$/.test(what);

/** True where a flat cut turns on both scales, or the cut is shaped. */
function isCompound({ part, what }: NumberChange, numbers: readonly NumberChange[]): boolean {
  const same = numbers.filter((own) => own.part === part);
  const moved = (name: string): boolean => same.some((own) => own.what.endsWith(name));
  if (moved("saw miter") && moved("saw bevel")) return true;
  return what.includes("mark at") && !moved("from square");
}

function rowText(row: NumberChange, style: FigureStyle): string[] {
  const told = isTold(row) && row.between;
  const points = told ? wrap("      ", `now ${told.new}; it was ${told.old}`) : [];
  return [...figuresText(row, style), ...points];
}

function figuresText(row: NumberChange, style: FigureStyle): string[] {
  const [old, now] = [valueText(row, row.old, style), valueText(row, row.new, style)];
  if (row.unit === "word" && Math.max(old.length, now.length) >= FIGURE) {
    const made = row.made ? "; made already: does not fit any more" : "";
    return wrap("  ", `${row.what}: was ${old}, is now ${now}${made}`, 6);
  }
  const fits = row.what.length < WHAT;
  const figures = `${column(old)}${column(now)}${row.made ? "" : movedText(row, style)}`.trimEnd();
  return [
    ...(fits ? [] : [`  ${row.what}`]),
    `  ${fits ? row.what.padEnd(WHAT) : " ".repeat(WHAT)}${figures}`,
    ...(row.made ? wrap("      ", madeText(row, style)) : []),
  ];
}

/** A figure in its column; a wide one keeps a space behind it. */
const column = (text: string): string => `${text.padEnd(FIGURE - 1)} `;

/** A made part that no longer is what is wanted. */
function madeText(row: NumberChange, style: FigureStyle): string {
  if (row.difference === null) return "made already: does not fit any more";
  return `made already: no longer fits by ${movedText(row, style).slice(1)}`;
}

function valueText({ unit, what }: NumberChange, value: NumberChange["old"], style: FigureStyle): string {
  if (value === null) return "none";
  if (typeof value === "string") return value;
  if (unit === "degree") return degrees(value);
  return what === "BLANK" ? `${figureUp(value, style)} UP` : figure(value, style);
}

function movedText({ difference, unit, old }: NumberChange, style: FigureStyle): string {
  if (difference === null) return unit === "word" ? "" : old === null ? "new" : "gone";
  const size = Math.abs(difference);
  const sign = difference < 0 ? "-" : "+";
  return unit === "degree" ? `${sign}${degrees(size)}` : `${sign}${figure(size, style)}`;
}

function misfitText(
  misfit: MadeMisfit,
  { ends }: PieceChange,
  { marks }: PieceChanges,
  style: FigureStyle,
): string {
  const { kind, by, allowed, feature, hole, onto } = misfit;
  const mate = marks[onto] ?? onto;
  const own = feature === "holes" ? `hole ${hole}` : `its ${ends[feature === "start" ? 0 : 1]}`;
  const most = `${figure(allowed, style)} may be left`;
  const start = "made already: no longer fits";
  switch (kind) {
    case "stands-off":
      return `${start} by ${figure(by, style)}: ${own} stands off ${mate} by up to that; ${most}. Shim, move or make anew`;
    case "overlaps":
      return `${start} by ${figure(by, style)}: ${own} overlaps ${mate} by up to that; ${most}. Recut, or move`;
    case "off-line":
      return `${start} by ${figure(by, style)}: ${own} is that far off the line of ${mate}; ${most}. Open it up, or drill anew`;
    case "no-mate":
      return `made already: ${own} is to meet ${mate}, which it was not cut for. Recut`;
    case "no-hole":
      return `made already: a hole for ${mate} (${hole}) is not in it. Drill it`;
    case "spare-hole":
      return `made already: ${own} is not wanted any more. Plug it, or leave it`;
  }
}

function lonesText(title: string, pieces: readonly LonePiece[], what: string, same: string): string[] {
  if (pieces.length === 0) return [];
  const lines = pieces.flatMap((own) => {
    const alike = own.sameAs === undefined ? "" : `; ${same} ${own.sameAs}: only the mark differs`;
    return wrap(`  ${own.mark}   `, `${thing(own)}${alike}`, 6);
  });
  return ["", RULE, `${title}: ${count(pieces.length)}; ${what}`, ...lines];
}
