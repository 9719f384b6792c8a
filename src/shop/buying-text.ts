/**
 * The BUYING LIST block of the cut list: what to order, and what the sums do not have in them.
 *
 * @packageDocumentation
 */
import { MM_PER } from "../kernel/length.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { BoughtSection, BuyingList, StockBound } from "./buying-types.js";
import { type FigureStyle, figure, figureUp, massText } from "./figure.js";
import { sectionText } from "./section-text.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/**
 * The block's lines.
 *
 * @param list - from `buyingList`
 * @param style - unit and fraction of the paper
 * @returns lines of at most 100 columns
 * @example
 * buyingText(buyingList(guard.pieces, masses), { unit: "in", denominator: 32 }).join("\n");
 */
export function buyingText(list: BuyingList, style: FigureStyle): string[] {
  const kerf =
    list.kerf === undefined
      ? "the shop's kerf and stock lengths are not known (no shop file)"
      : `one cut takes ${figure(list.kerf, style)}, which is in no sum`;
  return [
    ...wrap("BUYING LIST  ", `sums of blanks; kerf and drops NOT in them: ${kerf}`, 13),
    ...(list.mass === undefined ? [] : wrap("             ", `all finished pieces ${massText(list.mass)}`)),
    ...(list.blocked.length === 0 ? [] : wrap("  ", `NOT IN IT, blocked: ${list.blocked.join(", ")}`)),
    ...list.sections.flatMap((own) => ["-".repeat(PAPER_WIDTH), ...sectionLines(own, style)]),
    ...platesLines(list, style),
    ...fastenerLines(list, style),
  ];
}

function sectionLines(own: BoughtSection, style: FigureStyle): string[] {
  const mass = own.mass === undefined ? "" : `; finished ${massText(own.mass)}`;
  const kerfs =
    own.stock.length === 0
      ? []
      : own.stock.flatMap((bound) => wrap("  stock    ", stockText(bound, own, style)));
  return [
    ...wrap("", `${sectionText(own.section, style.unit)}; ${plain(own.material)}`, 2),
    ...wrap(
      "  length   ",
      `${figureUp(own.total, style)} in ${own.pieces} blank${own.pieces === 1 ? "" : "s"} = ${runText(own.total, style)}` +
        `; longest ${own.longest.mark}, ${figureUp(own.longest.length, style)}`,
    ),
    ...wrap("  mass     ", `blanks ${massText(own.blankMass)} at ${own.massPerMetre.toFixed(2)} kg/m${mass}`),
    ...kerfs,
    ...(own.remnants.length === 0
      ? []
      : wrap(
          "  on hand  ",
          `remnants ${own.remnants.map((mm) => figure(mm, style)).join(", ")}: NOT taken off`,
        )),
  ];
}

/** Metres, and feet on a paper in inches; rounded up. */
function runText(mm: number, style: FigureStyle): string {
  const up = (unit: "m" | "ft"): string =>
    `${(Math.ceil(((mm - STATION_MM) * 100) / MM_PER[unit]) / 100).toFixed(2)} ${unit}`;
  return style.unit === "mm" ? up("m") : `${up("ft")}, ${up("m")}`;
}

function stockText(bound: StockBound, own: BoughtSection, style: FigureStyle): string {
  const { stock, atLeast, withKerf, takesLongest } = bound;
  const length = figure(stock, style);
  if (!takesLongest) {
    const over = figure(own.longest.length - stock, style);
    return `of ${length}: ${own.longest.mark} is ${over} LONGER than that: buy longer stock, or splice it`;
  }
  const lengths = `${atLeast} length${atLeast === 1 ? "" : "s"}`;
  const kerf = withKerf > atLeast ? `, ${withKerf} with a kerf between neighbours` : "";
  return `of ${length}: AT LEAST ${lengths}${kerf} (${(own.total / stock).toFixed(2)} by the sum: a lower bound, no cutting plan)`;
}

function platesLines({ plates }: BuyingList, style: FigureStyle): string[] {
  if (plates.length === 0) return [];
  return [
    "-".repeat(PAPER_WIDTH),
    "plates, over all; cutting allowance NOT added",
    ...plates.flatMap((own) => {
      const size = [own.length, own.width, own.thickness].map((mm) => figure(mm, style)).join(" x ");
      const mass = own.mass === undefined ? "" : `, ${massText(own.mass)} in all`;
      return wrap(
        "  ",
        `${own.quantity} off ${size}, ${plain(own.material)}${mass}: ${own.marks.join(", ")}`,
        9,
      );
    }),
  ];
}

function fastenerLines({ fasteners, otherHoles }: BuyingList, style: FigureStyle): string[] {
  if (fasteners.length === 0 && otherHoles === 0) return [];
  const other = `${otherHoles} hole${otherHoles === 1 ? " that is" : "s that are"} not round: not counted`;
  return [
    "-".repeat(PAPER_WIDTH),
    "fasteners, one for each hole, or for a stack of plates; the size is the hole's, the fastener is thinner",
    ...fasteners.map((own) => `  ${own.count} for holes of ${figure(own.hole, style)} dia`),
    ...(otherHoles > 0 ? [`  ${other}`] : []),
  ];
}

const plain = (material: string): string => material.replaceAll("-", " ");
