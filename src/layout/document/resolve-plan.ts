/**
 * Reads the survey in plan, and the lengths and turns of legs that are taken from it.
 *
 * @packageDocumentation
 */

import type { Adjustment } from "../survey/adjustment.js";
import { type PlanReading, planLength, planTurn, surveyPlan } from "../survey/plan-survey.js";
import { LIMITS } from "./defaults.js";
import type { PlanDesign, PlanTaken } from "./design.js";
import type { DesignInput, LengthInput } from "./design-input.js";
import type { Reader } from "./reader.js";
import { pushFindings, termsOf } from "./resolve-survey.js";
import { type DocumentPath, got, nearestName } from "./schema/path-text.js";
import type { PlanReadingInput, PlanSurveyInput, SurveyedLength, SurveyedTurn } from "./survey-input.js";

/** A survey in plan, read; without an adjustment where it could not be, which has been said. */
export interface ReadPlan {
  readonly readings: readonly PlanReading[];
  readonly adjustment?: Adjustment;
  readonly terms: PlanDesign["terms"];
}

function readingOf(own: PlanReadingInput, path: DocumentPath, read: Reader): PlanReading {
  if (own.kind === "corner") {
    const { sigma, ...angle } = own;
    return { ...angle, ...(sigma !== undefined && { sigma }) };
  }
  const { value, sigma, ...place } = own;
  const length = read.length(value, [...path, "value"], "any");
  if (sigma === undefined) return { ...place, value: length };
  return { ...place, value: length, sigma: read.length(sigma, [...path, "sigma"], "any") };
}

/** Reads and adjusts the survey in plan; findings go to the reader. */
export function resolvePlan(survey: PlanSurveyInput, path: DocumentPath, read: Reader): ReadPlan {
  const before = read.diagnostics.length;
  const readings = survey.readings.map((own, i) => readingOf(own, [...path, "readings", i], read));
  if (read.diagnostics.length > before) return { readings, terms: termsOf(survey, []) };
  const { tape, limit, without } = survey;
  const { adjustment, leftOut, diagnostics } = surveyPlan(readings, {
    ...(tape !== undefined && { tape }),
    ...(limit !== undefined && { limit }),
    ...(without !== undefined && { without }),
  });
  pushFindings(diagnostics, path, read);
  return { readings, ...(adjustment && { adjustment }), terms: termsOf(survey, leftOut) };
}

/** The adjustment when it has all the corners, each another one; what is wrong goes to the reader. */
function withCorners(
  corners: readonly string[],
  plan: ReadPlan | undefined,
  path: DocumentPath,
  read: Reader,
): Adjustment | undefined {
  if (plan === undefined) {
    const message = "expected a survey in plan to take it from, got none.";
    read.report("missing", path, message, "Add `plan` with its `readings` to the design.");
    return undefined;
  }
  const { adjustment } = plan;
  if (adjustment === undefined) return undefined;
  const known = adjustment.points.map((own) => `${own.point}`);
  const missing = corners.findIndex((own) => !known.includes(own));
  if (missing >= 0) {
    const name = corners[missing] as string;
    const near = nearestName(name, known);
    const hint = near === undefined ? "Name corners as the readings do." : `Did you mean \`${near}\`?`;
    const message = `expected a corner of the survey in plan (${known.join(", ")}), got ${got(name)}.`;
    read.report("survey-unknown-place", [...path, missing], message, hint);
    return undefined;
  }
  if (new Set(corners).size === corners.length) return adjustment;
  const message = `expected ${corners.length} different corners, got ${corners.join(", ")}.`;
  read.report("survey-bad-place", path, message, "Name each corner once, in walking order.");
  return undefined;
}

/** A length as it is typed, or from the survey in plan; a stand-in where it cannot be. */
export function lengthOrSurvey(
  input: LengthInput | SurveyedLength,
  plan: ReadPlan | undefined,
  path: DocumentPath,
  read: Reader,
): number {
  if (typeof input !== "object") return read.length(input, path, "positive");
  const adjustment = withCorners(input.survey, plan, [...path, "survey"], read);
  return adjustment === undefined ? 1 : planLength(adjustment, input.survey).value;
}

/** A turn as it is typed, or from the survey in plan; a stand-in where it cannot be. */
export function turnOrSurvey(
  input: number | SurveyedTurn,
  plan: ReadPlan | undefined,
  path: DocumentPath,
  read: Reader,
): number {
  if (typeof input !== "object") return input;
  const adjustment = withCorners(input.survey, plan, [...path, "survey"], read);
  if (adjustment === undefined) return input.to === "left" ? LIMITS.turn : -LIMITS.turn;
  const { value } = planTurn(adjustment, input.survey, input.to);
  if (Math.abs(value) > LIMITS.turn) {
    const message = `expected a turn of at most ${LIMITS.turn} degrees, got ${value.toFixed(1)} by the survey.`;
    read.report(
      "out-of-range",
      [...path, "survey"],
      message,
      "Name the corners in walking order: the guard turns at the second.",
    );
  }
  return value;
}

/** What the legs take from the survey in plan, for the papers. */
export function planDesign(
  document: DesignInput,
  ids: readonly string[],
  plan: ReadPlan | undefined,
): PlanDesign | undefined {
  const adjustment = plan?.adjustment;
  if (plan === undefined || adjustment === undefined) return undefined;
  const known = (corners: readonly string[]) =>
    corners.every((name) => adjustment.points.some(({ point }) => point === name));
  const taken = document.legs.flatMap((own, i): PlanTaken[] => {
    const leg = ids[i] ?? own.along;
    const length = own.along === "stair" ? undefined : own.length;
    const angle = own.turn?.angle;
    const found: PlanTaken[] = [];
    if (typeof length === "object" && known(length.survey)) {
      const corners = length.survey;
      found.push({ leg, what: "length", corners, ...planLength(adjustment, corners) });
    }
    if (typeof angle === "object" && known(angle.survey)) {
      const corners = angle.survey;
      found.push({ leg, what: "turn", corners, ...planTurn(adjustment, corners, angle.to) });
    }
    return found;
  });
  return { survey: adjustment, terms: plan.terms, taken };
}
