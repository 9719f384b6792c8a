/**
 * Everything an adjusted survey in plan has to say, as plain data. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import type { Adjustment } from "./adjustment.js";
import type { PlannedReading, Reading } from "./reading.js";
import { leftOutRows, readingRows, splitOf } from "./survey-report.js";
import type { PlanReport, SurveyedCorner } from "./survey-report-types.js";
import type { SurveyTerms } from "./survey-terms.js";

/** Every corner to every other: what a tape can be pulled between. Good as the lengths that were read, or by the tape. */
function candidatesBetween(adjustment: Adjustment, corners: readonly SurveyedCorner[]): PlannedReading[] {
  const sigmas = adjustment.readings
    .filter((own) => own.kind === "side" || own.kind === "diagonal")
    .map((own) => own.sigma);
  const sigma = sigmas.length > 0 ? { sigma: Math.max(...sigmas) } : {};
  return corners.flatMap(({ name: to }, i) =>
    corners
      .slice(0, i)
      .map(
        ({ name: from }): PlannedReading => ({ id: `${from}-${to}`, kind: "diagonal", from, to, ...sigma }),
      ),
  );
}

function cornersOf({ points, coordinates }: Adjustment): SurveyedCorner[] {
  return points.flatMap(({ point, x, y }): SurveyedCorner[] => {
    if (typeof point !== "string") return [];
    const sigma = (axis: "x" | "y") =>
      coordinates.find((own) => own.point === point && own.axis === axis)?.sigma ?? 0;
    return [{ name: point, x: x ?? 0, y: y ?? 0, xSigma: sigma("x"), ySigma: sigma("y") }];
  });
}

/**
 * The report of a survey in plan.
 *
 * @param adjustment - from `surveyPlan`
 * @param readings - those that were adjusted and those left out
 * @param terms - what the survey was taken with
 * @returns plain data
 * @example planSurveyReport(adjustment, readings, terms).corners[0]; // { name: "A", x: 0, y: 0, xSigma: 0, ySigma: 0 }
 */
export function planSurveyReport(
  adjustment: Adjustment,
  readings: readonly Reading[],
  { fit: _, ...terms }: SurveyTerms,
): PlanReport {
  const corners = cornersOf(adjustment);
  const candidates = candidatesBetween(adjustment, corners);
  return {
    ...terms,
    chi2: adjustment.chi2,
    dof: adjustment.dof,
    readings: readingRows(adjustment, readings),
    notCounted: leftOutRows(adjustment, terms.leftOut),
    worst: adjustment.worst,
    suspects: adjustment.suspects.map((own) => ({ ...own, split: splitOf(adjustment, own, candidates) })),
    corners,
  };
}
