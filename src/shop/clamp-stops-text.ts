/**
 * The CLAMP STOPS block of the cut list: how high to clamp a stop to each post, and how the rail lies on them.
 *
 * @packageDocumentation
 */
import type { LaidRailReport, StopReport } from "../layout/stops.js";
import { degrees, type FigureStyle, figure } from "./figure.js";
import { forceText } from "./force-text.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** A rail on two stops, with what its own weight does there; millimetres, newtons, N/mm². */
export interface LyingStretch {
  /** Marks of the posts. */
  readonly from: string;
  readonly to: string;
  readonly span: number;
  readonly sag: number;
  readonly stress: number;
  readonly prop: { readonly at: number; readonly force: number; readonly halfSag: number };
}

/** An end of a rail past its last stop: how far, how much below the line of the stops, turned down by how many degrees. */
export interface LyingTip {
  readonly past: number;
  readonly drop: number;
  readonly slope: number;
  readonly stress: number;
  /** True where it lifts the rail off its other stop. */
  readonly lifts: boolean;
}

/** A rail as it lies on its stops, as the checks say it. */
export interface LyingRailRow {
  readonly rail: string;
  readonly material: string;
  readonly stiffness: { readonly modulus: number; readonly density: number; readonly source: string };
  readonly depth: number;
  readonly on: readonly string[];
  readonly ends: LyingStretch;
  readonly tips: readonly [LyingTip, LyingTip];
  readonly longest: LyingStretch;
  readonly creep: number;
  readonly mostSag: number;
}

const CORNERS: Readonly<Record<StopReport["touches"], string>> = {
  downhill: "DOWNHILL corner",
  uphill: "UPHILL corner",
  face: "whole top",
};

/** Columns of a stop's row. */
const WIDTHS = [7, 13, 22, 22, 16] as const;

/**
 * The block's lines.
 *
 * @param laid - rails on their stops, from the layout's report
 * @param lying - how they lie, from the checks; a rail without a row is told without its sag
 * @param style - unit and fraction of the paper
 * @returns lines of at most 100 columns; none where no rail has a stop
 * @example
 * clampStopsText(guard.report.laid, railsAsLaid(guard.report.laid, guard.pieces, DEFAULT_SHOP), { unit: "in", denominator: 32 });
 */
export function clampStopsText(
  laid: readonly LaidRailReport[],
  lying: readonly LyingRailRow[],
  style: FigureStyle,
): string[] {
  if (laid.every((own) => own.stops.length === 0)) return [];
  return [
    ...wrap(
      "CLAMP STOPS  ",
      "flat blocks clamped level to the side of each post, centred on it, that the top rail is laid on. Heights are" +
        " plumb, to the TOP of the stop: from what that post stands on, and from the FOOT end of its tube (the top of" +
        " its plate, where it has one).",
      13,
    ),
    ...laid.flatMap((own) => [
      "-".repeat(PAPER_WIDTH),
      ...railLines(own, style),
      ...lying.filter((row) => row.rail === own.mark).flatMap((row) => lyingLines(row, style)),
    ]),
    ...assumedLines(lying),
  ];
}

function railLines({ mark, slope, stops }: LaidRailReport, style: FigureStyle): string[] {
  const lies = slope === 0 ? "level" : `${degrees(Math.abs(slope))} from level`;
  if (stops.length === 0) return [`${mark}   ${lies}; lies over no post: hold it at both ends`];
  const once = stops.length === 1 ? "; on ONE stop: hold its other end" : "";
  return [
    `${mark}   ${lies}${once}`,
    ...cells(["post", "stands on", "stop above that", "above FOOT end", "stop is wide", "rests on its"]),
    ...stops.flatMap((own) => cells(stopCells(own, style))),
  ];
}

function stopCells(own: StopReport, style: FigureStyle): string[] {
  const ground = own.tread === undefined ? own.leg : `tread ${own.tread}`;
  const figures = [own.aboveBase, own.aboveFoot, own.width].map((mm) => figure(mm, style));
  return [own.post, ground, ...figures, CORNERS[own.touches]];
}

/** One row; a name longer than its column pushes the rest aside, or into a line of its own. */
function cells(texts: readonly string[]): string[] {
  const row = `  ${texts.map((text, i) => `${text} `.padEnd(WIDTHS[i] ?? 0)).join("")}`.trimEnd();
  return row.length <= PAPER_WIDTH ? [row] : wrap("  ", texts.join(" "), 9);
}

function lyingLines(row: LyingRailRow, style: FigureStyle): string[] {
  const { ends, longest, tips, on } = row;
  const say = (mm: number): string => figure(mm, style);
  const stress = Math.max(ends.stress, ...tips.map((own) => own.stress));
  const alone = on.length === 2 ? "" : " alone, the worst case";
  const loose = tips.some((own) => own.lifts)
    ? "; its far end LIFTS it off the other stop: hold it down"
    : "";
  return [
    ...wrap(
      "  as it lies  ",
      `on ${ends.from} and ${ends.to}${alone} (${say(ends.span)} along it): sags ${say(ends.sag)} in the middle;` +
        ` ${propText(ends, style)}; bending stress ${stress.toFixed(0)} N/mm²${loose}`,
    ),
    ...wrap("              ", endsText(row, style)),
    ...(on.length === 2
      ? []
      : wrap(
          "              ",
          `on all of ${on.join(", ")}: sags no more than ${say(longest.sag)} in its longest bay, ${longest.from} to ${longest.to} (${say(longest.span)})` +
            (longest.sag > row.mostSag ? `; ${propText(longest, style)}` : ""),
        )),
    ...wrap("  scribe      ", scribeText(row, style)),
    ...(row.creep === 0
      ? []
      : wrap(
          "  creep       ",
          `its weight pulls it downhill with ${forceText(row.creep, style.unit)}: stop its lower end first`,
        )),
  ];
}

function propText({ from, prop }: LyingStretch, style: FigureStyle): string {
  return (
    `prop at ${figure(prop.at, style)} along it from ${from} with about ${forceText(prop.force, style.unit)} square to it` +
    ` to get it straight, each half then sags ${figure(prop.halfSag, style)}`
  );
}

function endsText({ ends, tips, depth }: LyingRailRow, style: FigureStyle): string {
  const say = (mm: number): string => figure(mm, style);
  const [low, high] = tips.map(({ past, drop, slope }, i) => {
    const taper = Math.tan((Math.abs(slope) * Math.PI) / 180) * depth;
    const side = drop > 0 ? "low" : "high";
    const where = `${i === 0 ? "lower" : "upper"} end, ${say(past)} past ${i === 0 ? ends.from : ends.to}`;
    return `${where}, lies ${say(Math.abs(drop))} ${side} and ${Math.abs(slope).toFixed(2)}° off, ${say(taper)} over its depth`;
  });
  return `its ${low}; its ${high}`;
}

function scribeText({ ends, longest, mostSag, on }: LyingRailRow, style: FigureStyle): string {
  const limit = `the ${figure(mostSag, style)} above which the shop props a rail`;
  if (longest.sag > mostSag) return `AFTER PROPPING: it sags more than ${limit}`;
  if (ends.sag > mostSag)
    return `on all its stops, or AFTER PROPPING: on ${on[0]} and ${on.at(-1)} alone it sags more than ${limit}`;
  return `it sags no more than ${limit}`;
}

function assumedLines(lying: readonly LyingRailRow[]): string[] {
  const all = new Map(lying.map((own) => [own.material, own.stiffness]));
  return [...all].flatMap(([material, { modulus, density, source }]) =>
    wrap(
      "  assumed     ",
      `${material.replaceAll("-", " ")} E ${modulus / 1000} GPa (${source}), ${density} kg/m³; the bare rail's own weight, no coating, nothing on it`,
    ),
  );
}
