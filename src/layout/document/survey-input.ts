/**
 * A survey as a person types it in from the sheet: readings in tape language or the document's unit.
 *
 * @packageDocumentation
 */

import type { TapeClass } from "../tape.js";
import type { LengthInput } from "./basic-input.js";

/** Between which nosings a reading runs: 1 is the lowest, the highest is the landing's edge, 0 the lower finished floor. */
interface StairReadingPlace {
  /** What the paper calls it, e.g. `R8`; each once. */
  readonly id: string;
  /** Default: the floor for `rise` and `height`, nosing 1 for `distance`; needed with `run`, `slope` and `level`. */
  readonly from?: number | undefined;
  readonly to: number;
}

/** One reading on a stair. */
export type StairReadingInput =
  | (StairReadingPlace & {
      /** `rise`, `height` plumb; `run`, `distance` level; `slope` by tape from nosing to nosing. */
      readonly kind: "rise" | "run" | "height" | "distance" | "slope";
      readonly value: LengthInput;
      /** Standard uncertainty; that of the tape and the hand when absent. */
      readonly sigma?: LengthInput | undefined;
    })
  | (StairReadingPlace & {
      /** A straightedge over both nosings; value and uncertainty in degrees from level. */
      readonly kind: "level";
      readonly value: number;
      readonly sigma?: number | undefined;
    });

/** What every survey may say of itself. */
export interface SurveyTermsInput {
  /** When it was taken, printed with everything that rests on it. */
  readonly date?: string | undefined;
  /** Class of the tape, for readings without an uncertainty. Default II. */
  readonly tape?: TapeClass | undefined;
  /** Studentised residual above which a reading is suspect. Default 2.5. */
  readonly limit?: number | undefined;
  /** Ids of readings that are not to count: to be taped again. */
  readonly without?: readonly string[] | undefined;
}

/** The survey of a flight. */
export interface StairSurveyInput extends SurveyTermsInput {
  /** The line the rail follows: of least greatest miss (default), or of least squares. */
  readonly fit?: "least-miss" | "least-squares" | undefined;
  readonly readings: readonly StairReadingInput[];
}

/** One reading in plan, between corners by their names. */
export type PlanReadingInput =
  | {
      readonly id: string;
      /** From corner to corner; `diagonal` is a side that is no edge. */
      readonly kind: "side" | "diagonal";
      readonly from: string;
      readonly to: string;
      readonly value: LengthInput;
      readonly sigma?: LengthInput | undefined;
    }
  | {
      readonly id: string;
      /** Square from the corner `at` to the line of a wall through `from` and `to`. */
      readonly kind: "offset";
      readonly at: string;
      readonly from: string;
      readonly to: string;
      readonly value: LengthInput;
      readonly sigma?: LengthInput | undefined;
    }
  | {
      readonly id: string;
      /** The angle at the corner `at` between two others; value and uncertainty in degrees. */
      readonly kind: "corner";
      readonly at: string;
      readonly from: string;
      readonly to: string;
      readonly value: number;
      readonly sigma?: number | undefined;
    };

/** The survey of floors and landings in plan. */
export interface PlanSurveyInput extends SurveyTermsInput {
  readonly readings: readonly PlanReadingInput[];
}

/** A length from one corner of the plan survey to another. */
export interface SurveyedLength {
  readonly survey: readonly [string, string];
}

/** The turn at the second of three corners, in walking order; a tape does not tell which way. */
export interface SurveyedTurn {
  readonly survey: readonly [string, string, string];
  readonly to: "left" | "right";
}
