/**
 * From the readings of one flight to its nosings: datum the lower finished floor and the lowest nosing, every nosing tied.
 *
 * What the adjustment only warns of keeps a stair from being built: steps that go back, and readings that contradict each
 * other beyond any chance. The adjustment itself is still given, so that whoever taped can see where. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, hasErrors } from "../../kernel/diagnostic.js";
import type { TapedNosing } from "../nosing-line.js";
import { nearestName } from "../schema/path-text.js";
import { adjustReadings, type SurveyUnknowns } from "./adjust.js";
import type { Adjustment } from "./adjustment.js";
import { checkReadings } from "./check-readings.js";
import { coordinatesIn, type FixedCoordinate, sayCoordinate } from "./datum.js";
import { nameOf, type Reading } from "./reading.js";
import { unitSlips } from "./unit-slip.js";

/** A surveyed flight, as far as its readings go. */
export interface StairSurvey {
  /** Absent where the readings cannot be adjusted at all. */
  readonly adjustment?: Adjustment;
  /** From the lowest to the landing's edge; absent where the readings make no stair: then one of the diagnostics is an error. */
  readonly nosings?: readonly TapedNosing[];
  readonly leftOut: readonly Reading[];
  /** Paths are `readings[3]` or `without[0]`, into what was given; empty for the survey as a whole. */
  readonly diagnostics: readonly Diagnostic[];
}

/** How to adjust, and what not to count. */
export interface StairSurveyOptions extends Pick<SurveyUnknowns, "tape" | "limit"> {
  /** Ids of readings that are left out. */
  readonly without?: readonly string[];
}

/** Finished floor and lowest nosing. */
const DATUM: readonly FixedCoordinate[] = [
  { axis: "z", point: 0, value: 0 },
  { axis: "x", point: 1, value: 0 },
];

/** Warnings of an adjustment with which there is no stair. */
const NO_STAIR: readonly string[] = ["survey-step-back", "survey-contradictory"];

/** Ids to be left out that no reading has. */
export function checkWithout(readings: readonly Reading[], without: readonly string[]): Diagnostic[] {
  const ids = readings.map((own) => own.id);
  return without.flatMap((id, i) => {
    if (ids.includes(id)) return [];
    const near = nearestName(id, ids);
    return [
      diagnostic({
        code: "survey-unknown-reading",
        path: `without[${i}]`,
        members: [id],
        message: `Survey: expected the id of a reading to leave out, got "${id}".`,
        hint: near === undefined ? "Give it as it stands with the reading." : `Did you mean \`${near}\`?`,
      }),
    ];
  });
}

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

/** Findings at their readings, as grave as they are for a stair; steps between contradictory readings say nothing. */
function inDocument(findings: readonly Diagnostic[], readings: readonly Reading[]): Diagnostic[] {
  const lost = findings.some((own) => own.code === "survey-contradictory");
  return findings.flatMap((own): Diagnostic[] => {
    if (lost && own.code === "survey-step-back") return [];
    const suspect = own.code === "survey-suspect";
    const one = suspect || own.members.length === 1;
    const at = one ? readings.findIndex((reading) => reading.id === own.members[0]) : -1;
    return [
      {
        ...own,
        path: at < 0 ? "" : `readings[${at}]`,
        ...(suspect && { hint: `${own.hint} \`without\` leaves a reading out until then.` }),
        ...(NO_STAIR.includes(own.code) && { severity: "error" }),
      },
    ];
  });
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
export function surveyStair(readings: readonly Reading[], options: StairSurveyOptions = {}): StairSurvey {
  const { without = [], ...unknowns } = options;
  const leftOut = readings.filter((own) => without.includes(own.id));
  const wrong = [...checkReadings(readings), ...checkWithout(readings, without)];
  if (wrong.length > 0) return { leftOut, diagnostics: wrong };
  const kept = readings.filter((own) => !without.includes(own.id));
  const slips = unitSlips(readings).filter((own) => !without.includes(own.members[0] as string));
  if (kept.length === 0) return { leftOut, diagnostics: checkReadings(kept) };
  const missing = untold(kept);
  if (missing.length > 0) return { leftOut, diagnostics: [...missing, ...slips] };
  const found = adjustReadings(kept, { ...unknowns, fixed: DATUM });
  const findings = inDocument(found.diagnostics, readings);
  const diagnostics = [...slips, ...findings];
  if (!found.ok) return { leftOut, diagnostics };
  const nosings = hasErrors(diagnostics) ? {} : { nosings: nosingsOf(found.value) };
  return { adjustment: found.value, ...nosings, leftOut, diagnostics };
}
