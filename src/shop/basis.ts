/**
 * What the figures of a paper rest on: steps that were counted, nosings that were taped, or a survey with its date.
 *
 * @packageDocumentation
 */
import type { FlightReport, LayoutReport, SurveyFacts } from "../layout/report-types.js";

/** The steps of one flight, in words. */
function stepsText({ survey, measured }: FlightReport): string {
  if (survey === undefined) return measured ? "nosings taped one by one, none checked" : "counted steps";
  return `survey${readingsText(survey)}`;
}

/** Date and readings of a survey, in words. */
function readingsText({ date, readings, leftOut, dof }: SurveyFacts): string {
  const without = leftOut.length === 0 ? "" : `, without ${leftOut.join(", ")}`;
  const checks = dof === 0 ? "none of them redundant: nothing is checked" : `${dof} of them redundant`;
  return `${date === undefined ? " (no date given)" : ` of ${date.replace(/\p{Cc}+/gu, " ")}`} of ${readings} readings${without}, ${checks}`;
}

/**
 * The words of a paper's line `Basis`.
 *
 * @param report - from `layOut` or `buildGuard`
 * @returns one or two sentences
 * @example basisText(guard.report); // "counted steps; all other figures as typed into the design document. No survey: …"
 */
export function basisText({ flights, plan }: Pick<LayoutReport, "flights" | "plan">): string {
  const several = flights.length > 1;
  const steps = flights.map((own) => `${several ? `${own.leg}: ` : ""}${stepsText(own)}`).join("; ");
  const counted = flights.some((own) => !own.measured);
  const surveyed = flights.some((own) => own.survey !== undefined);
  const taken = plan?.taken.map((own) => `${own.leg}: ${own.what}`) ?? [];
  const inPlan =
    plan === undefined || taken.length === 0
      ? ""
      : `; ${taken.join(", ")} by a survey in plan${readingsText(plan)}`;
  const anySurvey = surveyed || inPlan !== "";
  const rest = `${anySurvey ? " Counted" : " No survey: counted"} steps are not measured steps.`;
  return `${steps}${inPlan}; all other figures as typed into the design document.${counted ? rest : ""}`;
}
