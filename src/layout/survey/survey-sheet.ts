/**
 * Which readings does a survey sheet ask for, in which order? As one person with one tape walks the stair, from its foot up.
 *
 * First walk: the tape hooked on the lowest nosing, read along the slope at every nosing (running, one datum). Second walk, at
 * each step: the rise stood on the step below, the height hung to the floor (running, one datum), the going to the next nosing.
 * Last, one slope hooked half-way. N risers have 2N − 1 unknowns and 4N − 1 readings, so that every one is checked.
 *
 * @packageDocumentation
 */
import type { TapeClass } from "../tape.js";
import { sheetId } from "./candidates.js";
import type { LandingPlace, PlannedReading, StairPlace } from "./reading.js";
import { readingSigma } from "./reading-sigma.js";

/** A reading of the sheet. */
export type SheetReading = StairPlace & PlannedReading & { readonly from: number };

/** The sheet, walk by walk. */
export interface SurveySheet {
  readonly risers: number;
  /** Along the slope from nosing 1. */
  readonly slopes: readonly SheetReading[];
  /** At each step from the lowest: rise, height, and going where one follows. */
  readonly steps: readonly {
    readonly number: number;
    readonly rise: SheetReading;
    readonly height: SheetReading;
    readonly going?: SheetReading;
  }[];
  /** From half-way to the top, where that is not a slope of the first walk. */
  readonly check?: SheetReading;
  /** What may be missing at most, mm: all rises from the total height, and one rise from the difference of its two heights. */
  readonly closing: { readonly sum: number; readonly step: number };
}

/** How many standard uncertainties a sheet may fail to close by. */
const TIMES = 3;
/** mm. A usual riser (common practice, no source), only for how well it is read. */
const RISER = 180;

const reading = (kind: SheetReading["kind"], from: number, to: number): SheetReading => ({
  id: sheetId({ kind, from, to }),
  kind,
  from,
  to,
});

/**
 * A blank survey sheet.
 *
 * @param risers - of the stair, a whole number ≥ 2
 * @param tape - class of the tape, for how well it has to close; default II
 * @returns the readings in the order of the walk
 * @example surveySheet(13).steps[7]?.rise.id; // "R8"
 */
export function surveySheet(risers: number, tape: TapeClass = "II"): SurveySheet {
  const numbers = Array.from({ length: risers }, (_, i) => i + 1);
  const middle = Math.floor((risers + 1) / 2);
  const rise = readingSigma({ kind: "rise", to: 1 }, RISER, tape);
  const height = readingSigma({ kind: "height", to: risers }, RISER * risers, tape);
  return {
    risers,
    slopes: numbers.slice(1).map((to) => reading("slope", 1, to)),
    steps: numbers.map((number) => ({
      number,
      rise: reading("rise", number - 1, number),
      height: reading("height", 0, number),
      ...(number < risers && { going: reading("run", number, number + 1) }),
    })),
    ...(middle > 1 && { check: reading("slope", middle, risers) }),
    closing: {
      sum: TIMES * Math.hypot(rise * Math.sqrt(risers), height),
      step: TIMES * Math.hypot(rise, height, height),
    },
  };
}

/** All readings of a sheet in the order of the walk. */
export function sheetReadings(sheet: SurveySheet): SheetReading[] {
  const steps = sheet.steps.flatMap(({ rise, height, going }) => [rise, height, ...(going ? [going] : [])]);
  return [...sheet.slopes, ...steps, ...(sheet.check ? [sheet.check] : [])];
}

/** Round the landing, then across it. */
const PAIRS = [
  ["side", "A", "B"],
  ["side", "B", "C"],
  ["side", "C", "D"],
  ["side", "D", "A"],
  ["diagonal", "A", "C"],
  ["diagonal", "B", "D"],
] as const;

/**
 * What a blank sheet asks for of a landing with four corners: its sides, which alone are a linkage, and both diagonals, of which
 * one is needed and the other checks all.
 *
 * @returns readings of a survey in plan, in the order of the walk
 * @example landingSheet()[0]; // { id: "A-B", kind: "side", from: "A", to: "B" }
 */
export function landingSheet(): (LandingPlace & PlannedReading)[] {
  return PAIRS.map(([kind, from, to]) => ({ id: `${from}-${to}`, kind, from, to }));
}
