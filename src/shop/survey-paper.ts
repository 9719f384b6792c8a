/**
 * What the papers of all surveys have in common: what counts, what does not agree, the table of readings, the caution.
 *
 * @packageDocumentation
 */
import { CAUTION } from "../kernel/caution.js";
import { fromOf, type PlannedReading } from "../layout/survey/reading.js";
import { MOST_NAMES } from "../layout/survey/survey-findings.js";
import type { PlanReport, SuspectRow } from "../layout/survey/survey-report-types.js";
import { type FigureStyle, roundingText } from "./figure.js";
import { leftOutText, placeText, readingRowsText } from "./reading-rows.js";
import { agreementText, groupText } from "./survey-line.js";
import { PAPER_WIDTH, wrap } from "./wrap.js";

/** What stands at the head of the paper. */
export interface SurveyPaper extends FigureStyle {
  readonly job: string;
  /** Program and version. */
  readonly generator?: string;
}

/** What every report has. */
type AnyReport = Omit<PlanReport, "corners">;

/** A reading that could be taken, by its name on the sheet. */
export function candidateText(own: PlannedReading): string {
  return `${own.id} (${own.kind}, ${placeText({ ...own, from: fromOf(own) })})`;
}

/** What noise may have hidden behind a suspect; of many only how many. */
function alsoText({ alsoLikely }: SuspectRow): string {
  if (alsoLikely.length === 0) return "";
  if (alsoLikely.length > MOST_NAMES)
    return ` It could also be any of ${alsoLikely.length} others: this is not far above the noise.`;
  return ` Noise of this size can hide which: it could also be ${alsoLikely.join(" or ")}.`;
}

function suspectText(suspect: SuspectRow): string {
  const { ids, studentised, split } = suspect;
  const [way, times] = [studentised > 0 ? "long" : "short", Math.abs(studentised).toFixed(2)];
  if (ids.length === 1)
    return `${ids[0]} reads too ${way}: ${times} times its standard uncertainty. Tape it again.${alsoText(suspect)}`;
  const next =
    split === null
      ? ""
      : ` Or read ${candidateText(split.candidate)}: that parts them into ${split.groups.map((own) => own.join(", ")).join(" | ")}.`;
  return `${groupText(ids)} is off by ${times} times its standard uncertainty; they cannot be told apart: tape these again.${next}${alsoText(suspect)}`;
}

function doubtText({ suspects, worst, limit, dof }: AnyReport): string[] {
  if (dof === 0 || worst === null)
    return wrap("Suspect  ", "nothing can be said: no reading is checked by another.");
  if (suspects.length > 0) return suspects.flatMap((own) => wrap("SUSPECT  ", suspectText(own)));
  const times = Math.abs(worst.studentised).toFixed(2);
  return wrap(
    "Suspect  ",
    `none above ${limit}; ${groupText(worst.ids)} fits worst, at ${times} times its standard uncertainty.`,
  );
}

/** A paper: head, readings, places. */
export function surveyPaper(
  title: string,
  report: AnyReport,
  paper: SurveyPaper,
  own: { readonly head: readonly string[]; readonly places: readonly string[] },
): string {
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
    ...report.notCounted.flatMap((row) => wrap("LEFT OUT ", `${leftOutText(row, paper)}.`)),
    ...own.head,
    "",
    rule,
    ...readingRowsText(report.readings, report.suspects, paper),
    "",
    rule,
    ...own.places,
    "",
    rule,
    ...wrap("", CAUTION),
  ];
  return `${lines.join("\n")}\n`;
}
