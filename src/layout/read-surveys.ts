/**
 * The surveys of a design document, read and adjusted by themselves: the rest of the design need not be right yet.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { StepsInput } from "./document/design-input.js";
import { readerOf } from "./document/reader.js";
import { resolvePlan } from "./document/resolve-plan.js";
import { resolveSurvey } from "./document/resolve-survey.js";
import { checkShape } from "./document/schema/check-shape.js";
import type { DocumentPath } from "./document/schema/path-text.js";
import { planSurveyReport } from "./survey/plan-report.js";
import { surveyReport } from "./survey/survey-report.js";
import type { PlanReport, SurveyReport } from "./survey/survey-report-types.js";

/** Every survey of a document. */
export interface DesignSurveys {
  /** Absent where the document has not the shape of a design. */
  readonly job?: string;
  readonly unit?: "in" | "mm";
  /** How many surveys the document has, adjusted or not. */
  readonly count: number;
  /** Those that could be adjusted, in the document's order. */
  readonly flights: readonly SurveyReport[];
  /** The survey in plan, where there is one that could be adjusted. */
  readonly plan?: PlanReport;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads and adjusts every survey of a design document.
 *
 * @param json - parsed JSON of any shape
 * @returns reports and findings; of a document of another shape only what is wrong with it. Never throws on JSON.
 * @example readSurveys(document).flights[0]?.suspects;
 */
export function readSurveys(json: unknown): DesignSurveys {
  const checked = checkShape(json);
  if (!checked.ok) return { count: 0, flights: [], diagnostics: checked.diagnostics };
  const document = checked.value;
  const read = readerOf(document, document.unit, {});
  const flight = (name: string, steps: StepsInput | undefined, path: DocumentPath) => {
    if (steps === undefined || !("survey" in steps)) return [];
    const { readings, found, terms } = resolveSurvey(steps.survey, [...path, "survey"], read);
    return [found.adjustment && surveyReport(name, found.adjustment, readings, terms)];
  };
  const all = [
    ...flight("stair", document.stair, ["stair"]),
    ...document.legs.flatMap((leg, i) =>
      leg.along === "stair" ? flight(leg.id ?? `legs[${i}]`, leg.stair, ["legs", i, "stair"]) : [],
    ),
  ];
  const plan = document.plan && resolvePlan(document.plan, ["plan"], read);
  return {
    job: document.job,
    unit: document.unit,
    count: all.length + (plan === undefined ? 0 : 1),
    flights: all.filter((own) => own !== undefined),
    ...(plan?.adjustment && { plan: planSurveyReport(plan.adjustment, plan.readings, plan.terms) }),
    diagnostics: read.diagnostics,
  };
}
