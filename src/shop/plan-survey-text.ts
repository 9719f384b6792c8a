/**
 * A survey in plan as a plain-text paper: what does not agree, the readings, and where every corner is.
 *
 * @packageDocumentation
 */
import type { PlanReport, SurveyedCorner } from "../layout/survey/survey-report-types.js";
import { type FigureStyle, figure } from "./figure.js";
import { fineFigure } from "./survey-line.js";
import { type SurveyPaper, surveyPaper } from "./survey-paper.js";
import { wrap } from "./wrap.js";

function cornerText(own: SurveyedCorner, style: FigureStyle): string {
  return [
    `  ${own.name.padEnd(9)}`,
    figure(own.x, style).padStart(20),
    fineFigure(own.xSigma, style).padStart(11),
    figure(own.y, style).padStart(20),
    fineFigure(own.ySigma, style).padStart(11),
  ].join("");
}

function cornersText({ corners }: PlanReport, style: FigureStyle): string[] {
  const [origin, second] = corners;
  const heads = ["x".padStart(20), "σ".padStart(11), "y".padStart(20), "σ".padStart(11)];
  return [
    ...wrap(
      "CORNERS  ",
      `from ${origin?.name ?? "-"}, x towards ${second?.name ?? "-"}, y square to it; level. A tape does not tell left from right: the mirror image reads the same.`,
    ),
    `  corner   ${heads.join("")}`,
    ...corners.map((own) => cornerText(own, style)),
  ];
}

/**
 * The paper of a survey in plan.
 *
 * @param report - from `readSurveys` or `planSurveyReport`
 * @param paper - job, unit and fraction
 * @returns text with a final line break; lines of at most 100 columns
 * @example planSurveyText(report, { job: "Kiln loft", unit: "in", denominator: 32 });
 */
export function planSurveyText(report: PlanReport, paper: SurveyPaper): string {
  return surveyPaper("SURVEY in plan", report, paper, { head: [], places: cornersText(report, paper) });
}
