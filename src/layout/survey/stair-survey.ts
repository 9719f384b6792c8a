/**
 * From the readings of one flight to its nosings: datum the lower finished floor and the lowest nosing, every nosing tied.
 *
 * What the adjustment only warns of keeps a stair from being built: steps that go back, and readings that contradict each
 * other beyond any chance. The adjustment itself is still given, so that whoever taped can see where. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, hasErrors } from "../../kernel/diagnostic.js";
import type { TapedNosing } from "../site/nosing-line.js";
import { adjustKept, type KeptOptions, type KeptSurvey } from "./adjust-kept.js";
import type { Adjustment } from "./adjustment.js";
import { coordinatesIn, type FixedCoordinate, sayCoordinate } from "./datum.js";
import { nameOf, type Reading } from "./reading.js";
import { unitSlips } from "./unit-slip.js";

/** A surveyed flight, as far as its readings go. */
export interface StairSurvey extends KeptSurvey {
  /** From the lowest to the landing's edge; absent where the readings make no stair: then one of the diagnostics is an error. */
  readonly nosings?: readonly TapedNosing[];
}

/** Finished floor and lowest nosing. */
const DATUM: readonly FixedCoordinate[] = [
  { axis: "z", point: 0, value: 0 },
  { axis: "x", point: 1, value: 0 },
];

/** Nosings, from the lowest to the highest spoken of, whose height or place along no reading tells. */
function untold(readings: readonly Reading[]): Diagnostic[] {
  const spoken = coordinatesIn(readings);
  const names = new Set(spoken.map(nameOf));
  const highest = Math.max(...spoken.map((own) => Number(own.point)));
  const of = (count: number) =>
    diagnostic({
      code: "survey-incomplete",
      message: `Survey: expected readings to two nosings at least, got ${count === 1 ? "one nosing" : "none"}.`,
      hint: "Tape every nosing from the lowest to the landing's edge: its rise, its going, its height from the floor.",
      values: { nosings: count },
    });
  if (highest < 2) return [of(highest)];
  if (!names.has("z0")) {
    return [
      diagnostic({
        code: "survey-no-datum",
        message:
          "Survey: expected a height from the lower finished floor, got none: nothing ties the nosings to it.",
        hint: "Tape the rise to nosing 1, or a height hung from any nosing to the floor (`from` 0).",
      }),
    ];
  }
  const missing = Array.from({ length: highest }, (_, i) => i + 1).flatMap((point) =>
    (["z", "x"] as const).flatMap((axis) =>
      names.has(nameOf({ axis, point })) ? [] : [sayCoordinate({ axis, point })],
    ),
  );
  if (missing.length === 0) return [];
  const [listed, more] = [missing.slice(0, 6).join(", "), missing.length - 6];
  return [
    diagnostic({
      code: "survey-incomplete",
      message: `Survey: expected the height and the place along of every nosing from 1 to ${highest}, got no reading of the ${listed}${more > 0 ? ` and ${more} more` : ""}.`,
      hint: `Tape what is missing; or, if the stair has fewer than ${highest} risers, correct the nosing a reading runs to.`,
      values: { highest, missing: missing.length },
    }),
  ];
}

/** The nosings of an adjustment that has them all. */
function nosingsOf(adjustment: Adjustment): TapedNosing[] {
  return adjustment.points.flatMap((own) =>
    own.point === 0 || own.x === undefined || own.z === undefined ? [] : [{ run: own.x, height: own.z }],
  );
}

/**
 * Adjusts the survey of a flight.
 *
 * @param readings - as taken, also those that are left out; kinds of a stair only
 * @param options - tape, limit of suspicion, ids to leave out
 * @returns adjustment, nosings, and what is wrong: what `adjustReadings` finds, and `survey-unknown-reading`,
 *   `survey-incomplete`, `survey-units`; `survey-step-back` and `survey-contradictory` are errors here
 * @example
 * ```ts
 * surveyStair([
 *   { id: "R1", kind: "rise", to: 1, value: 190 },
 *   { id: "R2", kind: "rise", from: 1, to: 2, value: 192 },
 *   { id: "G1", kind: "run", from: 1, to: 2, value: 280 },
 * ]).nosings; // [{ run: 0, height: 190 }, { run: 280, height: 382 }]
 * ```
 */
export function surveyStair(readings: readonly Reading[], options: KeptOptions = {}): StairSurvey {
  const found = adjustKept(readings, { ...options, fixed: DATUM, check: untold, units: unitSlips });
  const sound = found.adjustment !== undefined && !hasErrors(found.diagnostics);
  return { ...found, ...(sound && { nosings: nosingsOf(found.adjustment) }) };
}
