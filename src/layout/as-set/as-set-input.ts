/**
 * The as-set document as a person writes it: what was measured of what stands already, and what is made already.
 *
 * Lengths are in its own unit or in tape language, angles in degrees.
 *
 * @packageDocumentation
 */
import type { LengthInput } from "../document/design-input.js";
import type { TapeClass } from "../tape.js";
import type { PostStage } from "./as-set.js";

/** One post; what is left out is as designed. At most one of `x`, `behindNosing` and `at`. */
export interface AsSetPostInput {
  readonly post: string;
  readonly stage?: PostStage | undefined;
  readonly x?: LengthInput | undefined;
  readonly behindNosing?: LengthInput | undefined;
  readonly at?: LengthInput | undefined;
  readonly base?: LengthInput | undefined;
  readonly lean?: number | undefined;
  readonly leanAcross?: number | undefined;
  readonly across?: LengthInput | undefined;
  readonly sigma?: LengthInput | undefined;
  readonly sigmaLean?: number | undefined;
}

/** A leg whose far end was measured. */
export interface AsSetLegInput {
  readonly leg: string;
  readonly length: LengthInput;
  readonly sigma?: LengthInput | undefined;
}

/** The words for what can be made of a piece. */
export const MADE_WORDS = ["foot", "top", "downhill", "uphill", "left", "right", "holes"] as const;
/** One of them. */
export type MadeWord = (typeof MADE_WORDS)[number];

/** A piece of which something is made already. */
export interface MadeInput {
  readonly piece: string;
  readonly from: string;
  readonly features: "all" | readonly MadeWord[];
  readonly set?: boolean | undefined;
}

/** The document. */
export interface AsSetInput {
  readonly $schema?: string | undefined;
  readonly version: 1;
  readonly job?: string | undefined;
  readonly unit: "in" | "mm";
  readonly tape?: TapeClass | undefined;
  readonly posts?: readonly AsSetPostInput[] | undefined;
  readonly legs?: readonly AsSetLegInput[] | undefined;
  readonly made?: readonly MadeInput[] | undefined;
}
