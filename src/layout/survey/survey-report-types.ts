/**
 * What the report of a surveyed flight holds: plain data, millimetres and degrees.
 *
 * @packageDocumentation
 */
import type { AdjustedReading } from "./adjustment.js";
import type { Candidate } from "./candidates.js";
import type { TieSplit } from "./next-reading.js";
import type { PlannedReading, Reading } from "./reading.js";
import type { SurveyTerms } from "./survey-terms.js";
import type { Suspect } from "./suspects.js";

/** A reading after the adjustment, with where it runs. */
export interface ReadingRow extends AdjustedReading {
  readonly from: number | string;
  readonly to: number | string;
  /** Of an angle or an offset: the corner it is at. */
  readonly at?: string;
}

/** A reading that did not count, beside what the others say it should have been. */
export interface LeftOutRow {
  readonly id: string;
  readonly kind: Reading["kind"];
  readonly value: number;
  /** Null where the others do not tell. */
  readonly should: number | null;
}

/** A suspect, and where one of several cannot be told apart, the one reading that would. */
export interface SuspectRow extends Suspect {
  readonly split: (TieSplit & { readonly candidate: PlannedReading }) | null;
}

/** One nosing. */
export interface SurveyedNosing {
  readonly number: number;
  readonly run: number;
  readonly runSigma: number;
  readonly height: number;
  readonly heightSigma: number;
  /** Plumb from either line up to it; null where the nosings make no line. */
  readonly missLeastMiss: number | null;
  readonly missLeastSquares: number | null;
}

/** The survey of one flight, adjusted. */
export interface SurveyReport extends SurveyTerms {
  /** Id of the leg, or `stair`. */
  readonly name: string;
  readonly chi2: number;
  readonly dof: number;
  readonly readings: readonly ReadingRow[];
  readonly notCounted: readonly LeftOutRow[];
  readonly worst: Suspect | null;
  readonly suspects: readonly SuspectRow[];
  /** The one more reading that would make the length from the lowest to the top nosing best known. */
  readonly next: {
    readonly candidate: Candidate;
    /** True where it was taken already. */
    readonly again: boolean;
    readonly sigmaNow: number;
    readonly sigmaAfter: number;
  } | null;
  /** Null where the nosings make no line. */
  readonly lines: {
    readonly leastMiss: { readonly pitch: number; readonly worstMiss: number };
    readonly leastSquares: { readonly pitch: number; readonly worstMiss: number };
  } | null;
  readonly nosings: readonly SurveyedNosing[];
  /** From the lowest to the top nosing. */
  readonly slope: { readonly value: number; readonly sigma: number };
  readonly pitch: { readonly value: number; readonly sigma: number };
}

/** A corner of a landing, from the first one that was read, x towards the second. */
export interface SurveyedCorner {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly xSigma: number;
  readonly ySigma: number;
}

/** The survey in plan, adjusted. */
export interface PlanReport extends Omit<SurveyTerms, "fit"> {
  readonly chi2: number;
  readonly dof: number;
  readonly readings: readonly ReadingRow[];
  readonly notCounted: readonly LeftOutRow[];
  readonly worst: Suspect | null;
  readonly suspects: readonly SuspectRow[];
  readonly corners: readonly SurveyedCorner[];
}
