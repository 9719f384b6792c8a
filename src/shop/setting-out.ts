/**
 * Setting out as text: pitch, breaks, the rail's height over every nosing, and where every post stands and what it reaches.
 *
 * All distances are level and from the top nosing, + over the landing, − over the stair; all heights are plumb. Figures are
 * rounded one by one from one datum, so that they do not add up an error.
 *
 * @packageDocumentation
 */
import type {
  BreakReport,
  InfillReport,
  LayoutReport,
  NosingReport,
  PostReport,
} from "../layout/report-types.js";
import { degrees, type FigureStyle, figure } from "./figure.js";
import { wrap } from "./wrap.js";

/**
 * The block of the paper.
 *
 * @param report - from `layOut` or `buildGuard`
 * @param style - unit and fraction of the paper
 * @returns lines of at most 100 columns
 * @example
 * settingOutText(guard.report, { unit: "in", denominator: 32 }).join("\n");
 */
export function settingOutText(report: LayoutReport, style: FigureStyle): string[] {
  const say = (mm: number): string => figure(mm, style);
  return [
    `SETTING OUT   open side ${report.side.toUpperCase()}, looking uphill`,
    ...wrap("Datum    ", "top nosing; distances level, + over the landing, - over the stair; heights plumb."),
    ...wrap(
      "Pitch    ",
      `${degrees(report.pitch)}: riser ${say(report.riser)}, going ${say(report.going)}, along the slope per step ${say(report.slopePerStep)}`,
    ),
    ...report.breaks.flatMap((b) => wrap("Break    ", breakText(b, say))),
    ...report.nosings.flatMap((n) => wrap(`Nosing ${`${n.number}`.padEnd(3)}`, nosingText(n, say))),
    ...report.posts.flatMap((p) => wrap(`Post ${p.mark.padEnd(4)}`, postText(p, say))),
    ...report.spacing.flatMap((s) =>
      wrap("Spacing  ", `${s.from} to ${s.to}: ${say(s.plan)} in plan, ${say(s.alongRail)} along the rail`),
    ),
    ...report.infill.flatMap((i) => wrap("Infill   ", infillText(i, say))),
    ...report.assumptions.flatMap((a) => wrap("Assumed  ", a)),
  ];
}

type Say = (mm: number) => string;

function breakText(b: BreakReport, say: Say): string {
  return `top edge at ${say(b.topEdge)}, mid-depth at ${say(b.midDepth)}, underside at ${say(b.underside)}; each rail sawn ${degrees(b.miter)} from square`;
}

function nosingText(n: NosingReport, say: Say): string {
  return `at ${say(n.x)}, ${say(n.z)} high; top of rail ${say(n.railTop)} above it`;
}

function postText(p: PostReport, say: Say): string {
  const stands =
    p.tread === undefined ? `on the ${p.along}` : `on tread ${p.tread}, ${say(p.offset)} behind its nosing`;
  return (
    `centre at ${say(p.x)}, ${stands}, base ${say(p.baseZ)} high; above the base: top of rail ${say(p.railTopAboveBase)},` +
    ` underside ${say(p.railUndersideAboveBase)}`
  );
}

const NOUN = { bars: "plumb bar", rails: "bar along the rails", panel: "panel" } as const;
const PLURAL = { bars: "plumb bars", rails: "bars along the rails", panel: "panels" } as const;
const MEASURED = {
  bars: "clear at most, level",
  rails: "clear at most, square to the bars",
  panel: "clear all round",
} as const;

function infillText(i: InfillReport, say: Say): string {
  const row = i.row === 1 ? "" : `, row ${i.row}`;
  const pitch =
    i.pitch === undefined
      ? ""
      : `; ${say(i.pitch)} centre to centre ${i.type === "bars" ? "level" : "plumb"}`;
  const what = (i.count === 1 ? NOUN : PLURAL)[i.type];
  return `${i.from} to ${i.to}${row}: ${i.count} ${what}, ${say(i.clear)} ${MEASURED[i.type]}${pitch}`;
}
