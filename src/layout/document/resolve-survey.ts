/**
 * Reads the survey of a flight: lengths to millimetres, readings adjusted, findings at the paths of their readings.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../../kernel/diagnostic.js";
import type { Reading } from "../survey/reading.js";
import { type StairSurvey, surveyStair } from "../survey/stair-survey.js";
import { SUSPECT_LIMIT, type SurveyTerms } from "../survey/survey-terms.js";
import type { Reader } from "./reader.js";
import { type DocumentPath, pathText } from "./schema/path-text.js";
import type { StairReadingInput, StairSurveyInput, SurveyTermsInput } from "./survey-input.js";

/** A survey as it stands in a document, read. */
export interface ReadSurvey {
  /** All of them, also those that are left out; mm and degrees. */
  readonly readings: readonly Reading[];
  readonly found: StairSurvey;
  readonly terms: SurveyTerms;
}

function readingOf(own: StairReadingInput, path: DocumentPath, read: Reader): Reading {
  const place = { id: own.id, kind: own.kind, ...(own.from !== undefined && { from: own.from }), to: own.to };
  if (own.kind === "level") {
    return { ...place, value: own.value, ...(own.sigma !== undefined && { sigma: own.sigma }) };
  }
  const value = read.length(own.value, [...path, "value"], "any");
  const sigma = own.sigma === undefined ? {} : { sigma: read.length(own.sigma, [...path, "sigma"], "any") };
  return { ...place, value, ...sigma };
}

/** Terms of a survey, defaults filled in. */
export function termsOf(
  survey: SurveyTermsInput & Pick<StairSurveyInput, "fit">,
  leftOut: readonly Reading[],
): SurveyTerms {
  return {
    ...(survey.date !== undefined && { date: survey.date }),
    tape: survey.tape ?? "II",
    limit: survey.limit ?? SUSPECT_LIMIT,
    fit: survey.fit ?? "least-miss",
    leftOut,
  };
}

/** Hands findings with paths into a survey to the reader, with paths into the document. */
export function pushFindings(findings: readonly Diagnostic[], path: DocumentPath, read: Reader): void {
  const base = pathText(path);
  for (const own of findings) {
    read.diagnostics.push({ ...own, path: own.path === "" ? base : `${base}.${own.path}` });
  }
}

/** Reads and adjusts a survey; findings go to the reader. */
export function resolveSurvey(survey: StairSurveyInput, path: DocumentPath, read: Reader): ReadSurvey {
  const before = read.diagnostics.length;
  const readings = survey.readings.map((own, i) => readingOf(own, [...path, "readings", i], read));
  // A length that cannot be read has a stand-in, about which nothing more is said.
  const sound = read.diagnostics.length === before;
  const { tape, limit, without } = survey;
  const found: StairSurvey = sound
    ? surveyStair(readings, {
        ...(tape !== undefined && { tape }),
        ...(limit !== undefined && { limit }),
        ...(without !== undefined && { without }),
      })
    : { leftOut: [], diagnostics: [] };
  pushFindings(found.diagnostics, path, read);
  return { readings, found, terms: termsOf(survey, found.leftOut) };
}
