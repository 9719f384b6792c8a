/**
 * How does each top rail lie on its stops before anything is scribed to it?
 *
 * Twice: on its first and last stop alone, the worst that can be; and on all of them, where its longest bay is taken as if
 * the rail were cut over its stops: going on over them it sags less. On a rake its weight also pulls it downhill, w sin θ of
 * its whole length, whatever it lies on; friction is left out. Millimetres, newtons, degrees.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { sectionExtent } from "../layout/section-extent.js";
import type { LaidRailReport, StopReport } from "../layout/stops.js";
import { type RailSag, railSag } from "./rail-sag.js";
import { type RailTip, railTips } from "./rail-tips.js";
import { type Stiffness, stiffnessOf } from "./stiffness.js";

/** A rail between two of its stops, what reaches out past them left out: that lifts the middle. */
export interface LyingBay extends RailSag {
  /** Marks of the posts. */
  readonly from: string;
  readonly to: string;
  /** Along the rail, between the places it is carried at, mm. */
  readonly span: number;
}

/** A rail as it lies. */
export interface RailAsLaid {
  readonly rail: string;
  readonly material: string;
  readonly stiffness: Stiffness;
  /** Square to the rail in its plumb plane, mm. */
  readonly depth: number;
  /** Marks of the posts it lies on. */
  readonly on: readonly string[];
  /** On its first and last stop alone. */
  readonly ends: LyingBay;
  /** Its lower and its upper end then, with what reaches out past the stops. */
  readonly tips: readonly [RailTip, RailTip];
  /** Its longest bay, on all of its stops; the same as `ends` where there are but two. */
  readonly longest: LyingBay;
  /** Pull downhill along the rake, N. */
  readonly creep: number;
  /** The sag from which on the shop props a rail, mm. */
  readonly mostSag: number;
}

function bayOf(piece: Piece, material: Stiffness, slope: number, a: StopReport, b: StopReport): LyingBay {
  const span = Math.hypot(b.x - a.x, b.z - a.z);
  return { from: a.post, to: b.post, span, ...railSag({ section: piece.section, material, span, slope }) };
}

/**
 * Top rails as they lie, those on two stops or more.
 *
 * @param laid - of the layout's report
 * @param pieces - of the same guard
 * @param shop - the sag from which on it props a rail
 * @returns one entry a rail, from the foot upward
 * @example
 * ```ts
 * railsAsLaid(guard.report.laid, guard.pieces, DEFAULT_SHOP)[0]?.ends.prop.force; // N
 * ```
 */
export function railsAsLaid(
  laid: readonly LaidRailReport[],
  pieces: readonly Piece[],
  { mostSag }: { readonly mostSag: number },
): RailAsLaid[] {
  return laid.flatMap(({ id, mark, slope, stops, past }): RailAsLaid[] => {
    const piece = pieces.find((own) => own.id === id);
    const [first, last] = [stops[0], stops.at(-1)];
    if (piece === undefined || first === undefined || last === undefined || stops.length < 2) return [];
    const { section, material, lengths } = piece;
    const stiffness = stiffnessOf(material);
    const bay = (a: StopReport, b: StopReport) => bayOf(piece, stiffness, slope, a, b);
    const ends = bay(first, last);
    const bays = stops.slice(1).map((own, i) => bay(stops[i] as StopReport, own));
    const length = lengths.axis?.value ?? lengths.blank.value;
    return [
      {
        ...{ rail: mark, material, stiffness, depth: sectionExtent(section).depth },
        ...{ on: stops.map((own) => own.post), ends, mostSag },
        tips: railTips({ section, material: stiffness, span: ends.span, slope, past }),
        longest: bays.reduce((most, own) => (own.span > most.span ? own : most)),
        creep: ends.weightPerLength * length * Math.abs(Math.sin((slope * Math.PI) / 180)),
      },
    ];
  });
}
