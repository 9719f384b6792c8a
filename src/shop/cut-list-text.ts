/**
 * The cut list as a plain-text paper that a person of the trade reads without help, at 100 columns.
 *
 * Every length stands with the two points it runs between; blanks are rounded up and say so, everything else to the
 * nearest mark; angles in both conventions. Kerf and leave-long are never added: the paper says that too.
 *
 * @packageDocumentation
 */

import type { MeasuredLength } from "../joints/piece.js";
import { CAUTION } from "../kernel/caution.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { Shop } from "../layout/document/shop.js";
import type { LayoutReport } from "../layout/report-types.js";
import type { EndDecision } from "../layout/uncertainty/end-decision.js";
import type { AssemblyReport } from "./assemblies.js";
import { assembliesText } from "./assemblies-text.js";
import { buyingText } from "./buying-text.js";
import type { BuyingList } from "./buying-types.js";
import { clampStopsText, type LyingRailRow } from "./clamp-stops-text.js";
import type { CutGroup, CutList, CutRow } from "./cut-list-types.js";
import { cutOrScribeText } from "./cut-or-scribe-text.js";
import { endText } from "./end-text.js";
import { type FigureStyle, figure, figureUp, massText, roundingText } from "./figure.js";
import { madeAlreadyText } from "./made-already.js";
import { platesText } from "./plates-text.js";
import { sectionText } from "./section-text.js";
import { settingOutText } from "./setting-out.js";
import { shopText } from "./shop-text.js";
import { sideView } from "./side-view.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** What the head of the paper says besides the list. */
export interface PaperHeader {
  /** Name of the job. */
  readonly job: string;
  /** What the numbers rest on, e.g. a survey with its date, or that there was none. */
  readonly basis: string;
  /** What the person who cuts must know besides, one sentence or two each: warnings of the model. */
  readonly notes?: readonly string[];
  /** Where everything stands, printed before the pieces. */
  readonly settingOut?: LayoutReport;
  /** Whose tape, seams and finish the head speaks of. */
  readonly shop?: Shop;
  /** What is put together in the shop, and the longest piece that is carried in by itself. */
  readonly assemblies?: readonly AssemblyReport[];
  readonly loose?: AssemblyReport;
  /** How the top rails lie on their stops; printed after the pieces, with the stops of `settingOut`. */
  readonly lying?: readonly LyingRailRow[];
  /** Which ends are cut to length and which are left long, printed after the setting-out. */
  readonly fits?: readonly EndDecision[];
  /** What is bought, printed last. */
  readonly buying?: BuyingList;
  /** Program and version. */
  readonly generator?: string;
}

/**
 * The paper.
 *
 * @param list - from `cutList`
 * @param header - job and basis
 * @returns text with a final line break; lines of at most 100 columns
 * @example
 * cutListText(cutList(guard.pieces, { unit: "in" }), { job: "Kiln room stair", basis: "typed figures, no survey" });
 */
export function cutListText(list: CutList, header: PaperHeader): string {
  const rule = "=".repeat(PAPER_WIDTH);
  const placed = header.settingOut ? ["", rule, ...settingOutText(header.settingOut, list)] : [];
  const stops = clampStopsText(header.settingOut?.laid ?? [], header.lying ?? [], list);
  const fits = cutOrScribeText(header.fits ?? [], list);
  const carried = assembliesText(header.assemblies ?? [], list, header.loose);
  const lines = [
    ...headText(list, header),
    ...placed,
    ...(fits.length > 0 ? ["", rule, ...fits] : []),
    ...list.groups.flatMap((g) => ["", rule, ...groupText(g, list)]),
    ...(list.plates.length > 0 ? ["", rule, ...platesText(list.plates, list)] : []),
    ...(stops.length > 0 ? ["", rule, ...stops] : []),
    ...(carried.length > 0 ? ["", rule, ...carried] : []),
    ...(header.buying ? ["", rule, ...buyingText(header.buying, list)] : []),
  ];
  return `${[...lines, "", rule, ...wrap("", CAUTION)].join("\n")}\n`;
}

function headText(list: CutList, header: PaperHeader): string[] {
  const title = "CUT LIST";
  const pieces = list.groups.reduce((sum, g) => sum + g.pieces, 0);
  const plates = list.plates.reduce((sum, p) => sum + p.quantity, 0);
  const longest = Math.max(0, ...list.groups.map((g) => g.longestBlank));
  return [
    header.generator ? `${title}${header.generator.padStart(PAPER_WIDTH - title.length)}` : title,
    // A name is one line of print: nothing in it may end the line or steer a terminal.
    ...wrap("Job      ", header.job.replace(/\p{Cc}+/gu, " ")),
    ...wrap("Basis    ", header.basis),
    ...wrap(
      "Pieces   ",
      `${pieces} in ${list.groups.length} section${list.groups.length === 1 ? "" : "s"}${plates > 0 ? `; ${plates} plate${plates === 1 ? "" : "s"}, listed last` : ""}`,
    ),
    ...wrap(
      "Lengths  ",
      `${roundingText(list)}. BLANKS alone are rounded UP, never short. All lengths run along the piece's axis.`,
    ),
    ...wrap(
      "Angles   ",
      "degrees from a SQUARE cut to 0.1; in brackets the same angle from the tube's length.",
    ),
    ...wrap(
      "Words    ",
      "UPHILL is along the guard, walking up and on over the landing; LEFT and RIGHT are seen looking uphill.",
    ),
    ...wrap("Not in   ", "kerf, leave-long and weld gaps are NOT added unless a line says so."),
    ...(header.shop ? shopText(header.shop, longest, list) : []),
    ...(header.notes ?? []).flatMap((note) => wrap("NOTE     ", note)),
    ...wrap("CAUTION  ", CAUTION),
  ];
}

function groupText(group: CutGroup, style: FigureStyle): string[] {
  const mass = group.mass === undefined ? "" : `, ${massText(group.mass)}`;
  return [
    ...wrap(
      "SECTION  ",
      `${sectionText(group.section, style.unit)}; ${group.material.replaceAll("-", " ")}; sizes: ${group.section.source}`,
    ),
    ...wrap("         ", `${count(group.pieces)}${mass}`),
    ...wrap(
      "BUY      ",
      `sum of blanks ${figureUp(group.totalBlank, style)}, longest ${figureUp(group.longestBlank, style)};` +
        " kerf and drops NOT included, add one kerf per cut",
    ),
    ...group.rows.flatMap((row) => ["-".repeat(PAPER_WIDTH), ...rowText(row, style)]),
  ];
}

function count(pieces: number): string {
  return pieces === 1 ? "1 piece" : `${pieces} pieces`;
}

function rowText(row: CutRow, style: FigureStyle): string[] {
  const each = row.mass === undefined ? "" : `, ${massText(row.mass)} each`;
  const lines = wrap(
    `${row.marks.join(", ")}   `,
    `${row.quantity} off, ${row.role.replace("-", " ")}${each}`,
    2,
  );
  if (row.blocked) lines.push(...wrap("  ", "DO NOT CUT: an error keeps this piece from being made."));
  lines.push(...madeAlreadyText(row.made));
  if (row.quantity > 1) {
    lines.push(
      ...wrap(
        "  ",
        `all alike; written for ${row.marks[0]}. Another may lie end for end or rolled: mark its own ends when set.`,
      ),
    );
  }
  if (row.handOf.length > 0)
    lines.push(...wrap("  ", `HAND: mirror image of ${row.handOf.join(", ")}; not interchangeable`));
  lines.push(...sideView(row).map((line) => `  ${line}`));
  lines.push(...lengthsText(row, style));
  for (const end of row.ends) {
    endText(end, style).forEach((text, i) => {
      lines.push(...wrap(i === 0 ? "  " : "      ", text, 6));
    });
  }
  if (row.holes > 0) lines.push(`  ${row.holes} hole${row.holes === 1 ? "" : "s"}: not on this list`);
  return [...lines, ...wrap("  ", `hook the tape on the ${row.hook}; on the bench ${row.faceUp} faces up`)];
}

/** Every length of the piece; a piece square at both ends has only one. */
function lengthsText(row: CutRow, style: FigureStyle): string[] {
  const blank = lengthText("BLANK to cut", `${figureUp(row.blank.value, style)} UP`, row.blank);
  if (row.ends.every((end) => end.lies === "square")) {
    return [...blank, "  square at both ends: every line along it is this long"];
  }
  const line = (label: string, length: MeasuredLength) =>
    lengthText(label, figure(length.value, style), length);
  return [
    ...blank,
    ...line("LONG POINT to LONG POINT", row.longPoint),
    ...line("shortest line", row.shortPoint),
    ...row.faces.flatMap(({ face, length }) => line(`along ${face}`, length)),
    ...(row.axis ? line("along the axis", row.axis) : []),
    ...(row.ends.some((end) => end.lies === undefined) &&
    Math.abs(row.squareCut.value - row.blank.value) > STATION_MM
      ? line("if walls are cut square", row.squareCut)
      : []),
  ];
}

function lengthText(label: string, value: string, length: MeasuredLength): string[] {
  return wrap(`  ${label.padEnd(25)}${value.padEnd(22)}`, `from ${length.from.name} to ${length.to.name}`);
}
