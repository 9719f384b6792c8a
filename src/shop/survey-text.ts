/**
 * An adjusted survey as a plain-text paper: what does not agree comes first, then what to tape next, the line, and every nosing.
 *
 * Residuals are + where a reading is too long. σ is the standard uncertainty of what stands before it.
 *
 * @packageDocumentation
 */
import type { SurveyedNosing, SurveyReport } from "../layout/survey/survey-report-types.js";
import { type FigureStyle, figure } from "./figure.js";
import { offFigure } from "./reading-rows.js";
import { fineFigure } from "./survey-line.js";
import { candidateText, type SurveyPaper, surveyPaper } from "./survey-paper.js";
import { wrap } from "./wrap.js";

function nextText({ next }: SurveyReport, style: FigureStyle): string[] {
  if (next === null) return [];
  const { candidate, again, sigmaNow, sigmaAfter } = next;
  return wrap(
    "Next     ",
    `the one more reading that tells most of the length from the lowest to the top nosing: ${candidateText(candidate)}${again ? ", once more" : ""}; σ of that length goes from ${fineFigure(sigmaNow, style)} to ${fineFigure(sigmaAfter, style)}.`,
  );
}

function lineText({ lines, slope, pitch, fit }: SurveyReport, style: FigureStyle): string[] {
  const length = wrap(
    "Slope    ",
    `lowest to top nosing ${figure(slope.value, style)}, σ ${fineFigure(slope.sigma, style)}; at ${pitch.value.toFixed(3)}°, σ ${pitch.sigma.toFixed(3)}°.`,
  );
  if (lines === null) return [...length, ...wrap("Line     ", "none: the steps as read go back somewhere.")];
  const { leastMiss, leastSquares } = lines;
  const rail = fit === "least-miss" ? "least miss" : "least squares";
  return [
    ...length,
    ...wrap(
      "Line     ",
      `least miss ${leastMiss.pitch.toFixed(4)}°, worst nosing ${fineFigure(leastMiss.worstMiss, style)} off; least squares ${leastSquares.pitch.toFixed(4)}°, worst nosing ${fineFigure(leastSquares.worstMiss, style)} off. The rail follows the line of ${rail}.`,
    ),
  ];
}

function nosingText(own: SurveyedNosing, style: FigureStyle): string {
  const off = (miss: number | null) => (miss === null ? "-" : offFigure({ kind: "height" }, miss, style));
  const cells = [
    figure(own.run, style).padStart(20),
    fineFigure(own.runSigma, style).padStart(11),
    figure(own.height, style).padStart(19),
    fineFigure(own.heightSigma, style).padStart(11),
    off(own.missLeastMiss).padStart(14),
    off(own.missLeastSquares).padStart(17),
  ];
  return `${`${own.number}`.padStart(4)}${cells.join("")}`;
}

function nosingsText({ nosings }: SurveyReport, style: FigureStyle): string[] {
  const heads = ["along".padStart(20), "σ".padStart(11), "height".padStart(19), "σ".padStart(11)];
  return [
    ...wrap(
      "NOSINGS  ",
      "along from nosing 1, level; height from the lower finished floor, plumb; then how far each stands above (+) or below (-) either line, plumb.",
    ),
    `  no${heads.join("")}${"of least miss".padStart(14)}${"least squares".padStart(17)}`,
    ...nosings.map((own) => nosingText(own, style)),
  ];
}

/**
 * The paper of one flight's survey.
 *
 * @param report - from `readSurveys` or `surveyReport`
 * @param paper - job, unit and fraction
 * @returns text with a final line break; lines of at most 100 columns
 * @example surveyText(report, { job: "Kiln room stair", unit: "in", denominator: 32 });
 */
export function surveyText(report: SurveyReport, paper: SurveyPaper): string {
  return surveyPaper(`SURVEY of ${report.name}`, report, paper, {
    head: [...nextText(report, paper), ...lineText(report, paper)],
    places: nosingsText(report, paper),
  });
}
