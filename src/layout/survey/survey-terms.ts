/**
 * What a survey rests on besides its readings: tape, limit of suspicion, the line that is laid over the nosings, what was left out.
 *
 * @packageDocumentation
 */
import type { TapeClass } from "../tape.js";
import type { Reading } from "./reading.js";

/** Which line a straight rail follows: of least greatest miss, or of least squares. */
export type LineFit = "least-miss" | "least-squares";

/** Studentised residual above which a reading is to be taken again, when nobody says another (common practice, no source). */
export const SUSPECT_LIMIT = 2.5;

/** The terms of one survey. */
export interface SurveyTerms {
  /** In the words of whoever took it; absent when not told. */
  readonly date?: string;
  readonly tape: TapeClass;
  readonly limit: number;
  readonly fit: LineFit;
  /** Readings that do not count; mm and degrees. */
  readonly leftOut: readonly Reading[];
}
