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
  CornerReport,
  FlightReport,
  HandrailReport,
  InfillReport,
  LayoutReport,
  NosingReport,
  PostReport,
} from "../layout/report-types.js";
import { degrees, type FigureStyle, figure } from "./figure.js";
import { fineFigure, planLine, surveyLine } from "./survey-line.js";
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
    ...wrap(
      "Datum    ",
      report.corners.length === 0 && report.flights.length === 1
        ? "top nosing; distances level, + over the landing, - over the stair; heights plumb."
        : "top nosing of the last flight; distances level along the guard, round its corners, + onward; heights plumb.",
    ),
    ...report.flights.flatMap((f) => wrap("Pitch    ", flightText(f, report.flights.length > 1, say))),
    ...report.flights.flatMap(({ leg, survey }) =>
      survey === undefined
        ? []
        : wrap("Survey   ", `${report.flights.length > 1 ? `${leg}: ` : ""}${surveyLine(survey, style)}`),
    ),
    ...(report.plan ? wrap("Survey   ", planLine(report.plan, style)) : []),
    ...report.corners.flatMap((c) => wrap("Corner   ", cornerText(c, say))),
    ...report.breaks.flatMap((b) => wrap("Break    ", breakText(b, say))),
    ...report.nosings.flatMap((n) =>
      wrap(`Nosing ${`${n.number}`.padEnd(3)}`, nosingText(n, report.flights, style)),
    ),
    ...report.posts.flatMap((p) => wrap(`Post ${p.mark.padEnd(4)}`, postText(p, say))),
    ...report.spacing.flatMap((s) =>
      wrap("Spacing  ", `${s.from} to ${s.to}: ${say(s.plan)} in plan, ${say(s.alongRail)} along the rail`),
    ),
    ...report.handrails.flatMap((h) => wrap("Handrail ", handrailText(h, say))),
    ...report.infill.flatMap((i) => wrap("Infill   ", infillText(i, say))),
    ...report.assumptions.flatMap((a) => wrap("Assumed  ", a)),
  ];
}

type Say = (mm: number) => string;

function flightText(f: FlightReport, several: boolean, say: Say): string {
  const line = f.survey?.fit === "least-squares" ? "line of least squares" : "line";
  const steps = f.measured
    ? `${f.survey ? "surveyed" : "taped"} nosings, worst ${say(f.worstMiss)} off the ${line}; mean riser ${say(f.riser)}, mean going ${say(f.going)}`
    : `riser ${say(f.riser)}, going ${say(f.going)}, along the slope per step ${say(f.slopePerStep)}`;
  return `${several ? `${f.leg}: ` : ""}${degrees(f.pitch)}: ${steps}`;
}

const CORNERS: Readonly<Record<CornerReport["kind"], string>> = {
  post: "corner post, both rails cut to it",
  level: "the rake turns level first, then a plain miter in plan",
  round: "round rails mitred directly",
  twist: "rails mitred directly, each rolled by half the twist",
};

function cornerText(c: CornerReport, say: Say): string {
  const way = c.turn > 0 ? "left" : "right";
  const step = c.heightAfter - c.heightBefore;
  const heights = `top of rail ${say(c.heightBefore)} before, ${say(c.heightAfter)} after${Math.abs(step) < 0.01 ? "" : `: a step of ${say(step)}`}`;
  const twist = c.kind === "post" || Math.abs(c.twist) < 0.005 ? "" : `; twist ${degrees(Math.abs(c.twist))}`;
  const short =
    c.shortestEdge === undefined ? "" : `; shortest edge of the level piece ${say(c.shortestEdge)}`;
  return `at ${say(c.x)}, turn ${degrees(Math.abs(c.turn))} to the ${way}; ${CORNERS[c.kind]}; ${heights}${twist}${short}`;
}

const BREAKS: Readonly<Record<BreakReport["type"], string>> = {
  meet: "",
  drop: "",
  compromise: "; the raking rail is laid straight between the two heights",
  riser: "; the level rail's height puts it over the riser face",
};

function breakText(b: BreakReport, say: Say): string {
  if (b.leg !== undefined) {
    const way = b.leg.length > 0 ? "up" : "down";
    return `held by a plumb leg at ${say(b.midDepth)}: ${say(Math.abs(b.leg.length))} ${way} between centrelines, shortest edge ${say(b.leg.shortEdge)}; sawn ${b.leg.miters.map(degrees).join(" and ")} from square`;
  }
  return `top edge at ${say(b.topEdge)}, mid-depth at ${say(b.midDepth)}, underside at ${say(b.underside)}; each rail sawn ${degrees(b.miter)} from square${BREAKS[b.type]}`;
}

function nosingText(n: NosingReport, flights: readonly FlightReport[], style: FigureStyle): string {
  const say = (mm: number): string => figure(mm, style);
  const flight = flights.find((own) => own.leg === n.leg);
  const miss = flight?.measured ? `; ${missText(flight.misses[n.number - 1] ?? 0, style)}` : "";
  return `${flights.length > 1 ? `${n.leg}, ` : ""}at ${say(n.x)}, ${say(n.z)} high; top of rail ${say(n.railTop)} above it${miss}`;
}

/** How far a nosing is off the line. */
function missText(miss: number, style: FigureStyle): string {
  return `${fineFigure(Math.abs(miss), style)} ${miss < 0 ? "below" : "above"} the line`;
}

function postText(p: PostReport, say: Say): string {
  const stands =
    p.corner !== undefined
      ? `at corner ${p.corner} (heights of the rail before it)`
      : p.tread === undefined
        ? `on the ${p.leg}`
        : `on tread ${p.tread}, ${say(p.offset)} behind its nosing`;
  return (
    `centre at ${say(p.x)}, ${stands}, base ${say(p.baseZ)} high${asSetText(p, say)}; above the base: top of rail ${say(p.railTopAboveBase)},` +
    ` underside ${say(p.railUndersideAboveBase)}`
  );
}

/** What was measured: how it leans, and the designed place beside the one above. */
function asSetText({ asSet }: PostReport, say: Say): string {
  if (asSet === undefined) return "";
  const { lean, leanAcross, across, designed } = asSet;
  const ways = [
    ...(lean === 0 ? [] : [`${degrees(Math.abs(lean))} ${lean > 0 ? "uphill" : "downhill"}`]),
    ...(leanAcross === 0
      ? []
      : [`${degrees(Math.abs(leanAcross))} to the ${leanAcross > 0 ? "left" : "right"}`]),
  ];
  const leans = ways.length === 0 ? "plumb" : `leaning ${ways.join(" and ")}`;
  const aside =
    across === 0 ? "" : `, ${say(Math.abs(across))} to the ${across > 0 ? "left" : "right"} of the middle`;
  return `: AS SET, ${leans}${aside} (designed: centre at ${say(designed.x)}, base ${say(designed.baseZ)} high)`;
}

function handrailText(h: HandrailReport, say: Say): string {
  const over =
    h.heights === null
      ? "over no nosing"
      : `over its nosings from ${say(h.heights.least.railTop)} to ${say(h.heights.greatest.railTop)}`;
  const past = ({ sloped, level, alongRake }: HandrailReport["bottom"]) =>
    `${say(sloped)} in plan at the slope (${say(alongRake)} along it) and ${say(level)} level`;
  const brackets =
    h.brackets.length === 0
      ? "no brackets"
      : `brackets at ${h.brackets.map(({ x }) => say(x)).join(", ")}, ${say(Math.min(...h.brackets.map(({ clear }) => clear)))} clear under it`;
  return (
    `${h.id} (${h.section}), centre ${say(h.inward)} inward of the guard's middle; top ${say(h.height)} up, ${over};` +
    ` past the lowest nosing ${past(h.bottom)}; past the top nosing ${past(h.top)};` +
    ` ${brackets}; perimeter ${say(h.perimeter)}, greatest size ${say(h.greatest)}`
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
