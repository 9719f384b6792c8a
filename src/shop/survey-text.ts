/**
 * An adjusted survey as a plain-text paper: what does not agree comes first, then what to tape next, the line, and every nosing.
 *
 * Residuals are + where a reading is too long. σ is the standard uncertainty of what stands before it.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../kernel/caution.js";
import type { Candidate } from "../layout/survey/candidates.js";
import type { SurveyedNosing, SurveyReport, SuspectRow } from "../layout/survey/survey-report-types.js";
import { type FigureStyle, figure, roundingText } from "./figure.js";
import { leftOutText, offFigure, placeText, readingRowsText } from "./reading-rows.js";
import { agreementText, fineFigure, groupText } from "./survey-line.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** What stands at the head of the paper. */
export interface SurveyPaper extends FigureStyle {
  readonly job: string;
  /** Program and version. */
  readonly generator?: string;
}

const candidateText = (own: Candidate): string =>
  own.kind === "height"
    ? `${own.id} (height, floor to ${own.to})`
    : `${own.id} (${own.kind}, ${placeText(own)})`;

function suspectText({ ids, studentised, split }: SuspectRow): string {
  const [way, times] = [studentised > 0 ? "long" : "short", Math.abs(studentised).toFixed(2)];
  if (ids.length === 1)
    return `${ids[0]} reads too ${way}: ${times} times its standard uncertainty. Tape it again.`;
  const next =
    split === null
      ? ""
      : ` Or read ${candidateText(split.candidate)}: that parts them into ${split.groups.map((own) => own.join(" or ")).join(" | ")}.`;
  return `${groupText(ids)} is off by ${times} times its standard uncertainty; they cannot be told apart: tape these again.${next}`;
}

function doubtText({ suspects, worst, limit, dof }: SurveyReport): string[] {
  if (dof === 0 || worst === null)
    return wrap("Suspect  ", "nothing can be said: no reading is checked by another.");
  if (suspects.length > 0) return suspects.flatMap((own) => wrap("SUSPECT  ", suspectText(own)));
  const times = Math.abs(worst.studentised).toFixed(2);
  return wrap(
    "Suspect  ",
    `none above ${limit}; ${groupText(worst.ids)} fits worst, at ${times} times its standard uncertainty.`,
  );
}

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
  const title = `SURVEY of ${report.name}`;
  const rule = "=".repeat(PAPER_WIDTH);
  const out = report.leftOut.length;
  const counted = `${report.readings.length} count${out === 0 ? "" : `, ${out} left out`}; `;
  const lines = [
    paper.generator ? `${title}${paper.generator.padStart(PAPER_WIDTH - title.length)}` : title,
    ...wrap("Job      ", paper.job.replace(/\p{Cc}+/gu, " ")),
    ...(report.date === undefined ? [] : wrap("Date     ", report.date.replace(/\p{Cc}+/gu, " "))),
    ...wrap("Readings ", `${counted}${agreementText(report)}.`),
    ...wrap(
      "Figures  ",
      `${roundingText(paper)}; off: + reads too long; σ: standard uncertainty, from those of the readings (tape class ${report.tape} and the hand where none is stated); times σ: off over its own.`,
    ),
    ...doubtText(report),
    ...report.notCounted.flatMap((own) => wrap("LEFT OUT ", `${leftOutText(own, paper)}.`)),
    ...nextText(report, paper),
    ...lineText(report, paper),
    "",
    rule,
    ...readingRowsText(report.readings, report.suspects, paper),
    "",
    rule,
    ...nosingsText(report, paper),
    "",
    rule,
    ...wrap("", CAUTION),
  ];
  return `${lines.join("\n")}\n`;
}
