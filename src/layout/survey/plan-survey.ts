/**
 * From readings in plan to corners, and from corners to the lengths and turns a guard is built to.
 *
 * The corner that is read first is the origin, the next one lies on its x axis. Which way a guard turns at a corner no tape
 * tells, so whoever asks says it. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { hasErrors } from "../../kernel/diagnostic.js";
import { adjustKept, type KeptOptions, type KeptSurvey } from "./adjust-kept.js";
import type { Adjustment } from "./adjustment.js";
import { quantityOf } from "./quantity.js";
import type { PlannedReading, PlanPlace, Reading } from "./reading.js";
import { planUnitSlips } from "./unit-slip.js";

/** A reading in plan that was taken. */
export type PlanReading = PlanPlace & PlannedReading & Pick<Reading, "value">;

/**
 * Adjusts what was taped of a landing in plan.
 *
 * @param readings - sides, diagonals, corners, offsets; also those that are left out
 * @param options - tape, limit of suspicion, ids to leave out
 * @returns the adjustment and what is wrong: what `adjustReadings` finds, `survey-unknown-reading`, `survey-units`;
 *   `survey-contradictory` is an error here
 * @example surveyPlan([{ id: "AB", kind: "side", from: "A", to: "B", value: 2457 }]).adjustment?.points.length; // 2
 */
export function surveyPlan(readings: readonly PlanReading[], options: KeptOptions = {}): KeptSurvey {
  const found = adjustKept(readings, { ...options, units: planUnitSlips });
  if (hasErrors(found.diagnostics)) return found;
  return { ...found, diagnostics: found.diagnostics.filter((own) => own.code !== "survey-units") };
}

/** A length or a turn with its standard uncertainty, mm or degrees. */
export interface PlanFigure {
  readonly value: number;
  readonly sigma: number;
}

/**
 * From one corner to another, in plan.
 *
 * @throws RakewrightError `survey-unknown-place` for a corner that the survey does not have
 * @example planLength(adjustment, ["A", "B"]).value;
 */
export function planLength(adjustment: Adjustment, [from, to]: readonly [string, string]): PlanFigure {
  const { value, sigma } = quantityOf(adjustment, { kind: "side", from, to });
  return { value, sigma };
}

/**
 * How far a guard turns at the second corner that comes from the first and goes on to the third.
 *
 * @param adjustment - of a plan survey
 * @param corners - in walking order
 * @param to - the side it turns to, as one walks
 * @returns degrees, + to the left
 * @throws RakewrightError `survey-unknown-place` for a corner that the survey does not have
 * @example planTurn(adjustment, ["A", "B", "C"], "left").value; // about 90 in a square corner
 */
export function planTurn(
  adjustment: Adjustment,
  [from, at, to]: readonly [string, string, string],
  way: "left" | "right",
): PlanFigure {
  const { value, sigma } = quantityOf(adjustment, { kind: "corner", at, from, to });
  return { value: (way === "left" ? 1 : -1) * (180 - value), sigma };
}
