/**
 * What fills the space between the rails, as a person writes it.
 *
 * @packageDocumentation
 */
import type { LengthInput } from "./basic-input.js";

/** What every kind of infill may have. */
interface AnyInfillInput {
  /** Between which rails: the `lowest` two of a bay (default), or `all` of them. */
  readonly rows?: "lowest" | "all" | undefined;
}

/** Plumb bars in equal spaces. */
export interface BarsInput extends AnyInfillInput {
  readonly type: "bars";
  /** Name of a section. */
  readonly section: string;
  /** Greatest clear space between bars, and between a bar and a post, level. */
  readonly clear: LengthInput;
}

/** Bars that run with the rails, in equal spaces. */
export interface LinesInput extends AnyInfillInput {
  readonly type: "rails";
  /** Name of a section. */
  readonly section: string;
  /** Number of bars; or `clear`. */
  readonly count?: number | undefined;
  /** Greatest clear space, square to the bars. */
  readonly clear?: LengthInput | undefined;
  /** Round bars through drilled posts, one for as many bays as are in line. Default false: one piece a bay, cut to the posts. */
  readonly through?: boolean | undefined;
  /** Of the holes, all round. */
  readonly clearance?: LengthInput | undefined;
  /** Level past the far faces of the guard's first and last post; needed with `through`. */
  readonly past?: LengthInput | undefined;
}

/** A sheet a bay. */
export interface PanelInput extends AnyInfillInput {
  readonly type: "panel";
  readonly thickness: LengthInput;
  /** Left free all round. */
  readonly clear: LengthInput;
  /** A hole in each corner, `edge` from both edges to its centre. */
  readonly holes?: { readonly diameter: LengthInput; readonly edge: LengthInput } | undefined;
}

/** Infill. */
export type InfillInput = BarsInput | LinesInput | PanelInput;
