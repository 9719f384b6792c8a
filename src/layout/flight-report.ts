/**
 * What a report says of a flight: its line, how far each nosing is off it, and what the surveys under it say of themselves.
 *
 * @packageDocumentation
 */
import type { Design, StairDesign } from "./document/design.js";
import type { FlightReport, FlightSurveyReport, PlanSurveyReport, SurveyFacts } from "./report-types.js";
import type { NosingLine } from "./site/nosing-line.js";
import type { LegGround } from "./site/site.js";
import type { Adjustment } from "./survey/adjustment.js";
import { quantityOf } from "./survey/quantity.js";
import type { SurveyTerms } from "./survey/survey-terms.js";

/** Counted steps are on their line; a difference in the last place is no miss. */
function missesOf({ nosings, slope, z0 }: NosingLine, measured: boolean): number[] {
  return nosings.map((own) => (measured ? own.z - z0 - slope * own.x : 0));
}

function factsOf(survey: Adjustment, { date, limit, leftOut }: SurveyTerms): SurveyFacts {
  return {
    ...(date !== undefined && { date }),
    readings: survey.readings.length,
    leftOut: leftOut.map((own) => own.id),
    chi2: survey.chi2,
    dof: survey.dof,
    worst: survey.worst,
    limit,
    suspects: survey.suspects.length,
  };
}

/** The survey in plan, where there is one. */
export function planReport({ plan }: Design): PlanSurveyReport | undefined {
  return plan && { ...factsOf(plan.survey, plan.terms), taken: plan.taken };
}

function flightSurvey(stair: StairDesign): FlightSurveyReport | undefined {
  if (stair.nosings === undefined || stair.survey === undefined || stair.terms === undefined)
    return undefined;
  const { survey, terms, nosings } = stair;
  const { value, sigma } = quantityOf(survey, { kind: "slope", from: 1, to: nosings.length });
  return { ...factsOf(survey, terms), fit: terms.fit, slope: { value, sigma } };
}

/** The flights of a site. */
export function flightReports(legs: readonly LegGround[]): FlightReport[] {
  return legs.flatMap(({ leg, flight }): FlightReport[] => {
    if (flight === undefined || leg.stair === undefined) return [];
    const { pitch, riser, going, slopePerStep, worstMiss } = flight.line;
    const measured = leg.stair.nosings !== undefined;
    const survey = flightSurvey(leg.stair);
    return [
      {
        ...{ leg: leg.id, pitch, riser, going, slopePerStep, measured, worstMiss },
        misses: missesOf(flight.line, measured),
        ...(survey && { survey }),
      },
    ];
  });
}
