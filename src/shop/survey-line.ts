/**
 * What surveys say of themselves on the set-out paper: what counts, how well it agrees, what fits worst, how well what is taken
 * from them is known.
 *
 * @packageDocumentation
 */
import type { PlanTaken } from "../layout/document/design.js";
import type { FlightSurveyReport, PlanSurveyReport, SurveyFacts } from "../layout/report-types.js";
import { type FigureStyle, figure } from "./figure.js";

/** A standard uncertainty or a residual: inches to a thousandth, or hundredths of a millimetre. */
export function fineFigure(mm: number, { unit }: Pick<FigureStyle, "unit">): string {
  return unit === "mm" ? `${mm.toFixed(2)} mm` : `${(mm / 25.4).toFixed(3)} in`;
}

/** Readings that cannot be told apart, by name: `one of R8, R9, R10`. */
export const groupText = (ids: readonly string[]): string =>
  ids.length === 1 ? `${ids[0]}` : `one of ${ids.join(", ")}`;

/** How well the readings agree, in words. */
export function agreementText({ chi2, dof }: Pick<SurveyFacts, "chi2" | "dof">): string {
  return dof === 0
    ? "redundancy 0: no check is possible, a wrong reading would not show"
    : `chi2 ${chi2.toFixed(2)} on ${dof} redundant (about ${dof} when the readings are as good as they are said to be)`;
}

function factsText(survey: SurveyFacts): string {
  const { readings, leftOut, worst, limit, suspects } = survey;
  const out =
    leftOut.length === 0
      ? ""
      : `, LEFT OUT ${leftOut.join(", ")}: ${leftOut.length === 1 ? "tape it" : "tape them"} again`;
  const fits =
    worst === null
      ? ""
      : `; worst is ${groupText(worst.ids)} at ${Math.abs(worst.studentised).toFixed(2)} times its standard uncertainty (suspect above ${limit})`;
  const bad = suspects === 0 ? "" : `; ${suspects} SUSPECT: tape again before cutting`;
  return `${readings} readings${out}; ${agreementText(survey)}${fits}${bad}`;
}

/** What the survey of a flight says. */
export function surveyLine(survey: FlightSurveyReport, style: FigureStyle): string {
  const { value, sigma } = survey.slope;
  return `${factsText(survey)}; lowest to top nosing along the slope ${figure(value, style)}, standard uncertainty ${fineFigure(sigma, style)}`;
}

/** A length or a turn that is taken from the survey in plan. */
export function takenText({ leg, what, corners, value, sigma }: PlanTaken, style: FigureStyle): string {
  const [says, off] =
    what === "length"
      ? [figure(value, style), fineFigure(sigma, style)]
      : [`${Math.abs(value).toFixed(2)}° to the ${value > 0 ? "left" : "right"}`, `${sigma.toFixed(2)}°`];
  const where = what === "length" ? corners.join(" to ") : `at ${corners[1]}`;
  return `${what} of ${leg}, ${where}: ${says}, standard uncertainty ${off}`;
}

/** What the survey in plan says. */
export function planLine(plan: PlanSurveyReport, style: FigureStyle): string {
  return [`plan: ${factsText(plan)}`, ...plan.taken.map((own) => takenText(own, style))].join("; ");
}
