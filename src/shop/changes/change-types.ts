/**
 * What has moved between two sets of pieces, as plain data. Millimetres, degrees; words as on the cut list.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import type { MadeMisfit } from "../../layout/as-set/made-misfit.js";
import type { PieceState } from "../../layout/as-set/piece-state.js";

/** What counts as moved, and what is made already. */
export interface ChangeOptions {
  /** Lengths that moved by no more are left out, mm; default 1/32 in, the finest mark of the papers. */
  readonly over?: number;
  /** Angles likewise, degrees; default 0.1, the finest angle of the papers. */
  readonly overAngle?: number;
  /** How far each piece has got. Default: all are only designed. */
  readonly states?: readonly PieceState[];
  /** What is made and does not fit any more. */
  readonly misfits?: readonly MadeMisfit[];
}

/** What a number is a number of: the stock, the whole length, either end cut, holes. */
export type ChangedPart = "stock" | "length" | "start" | "end" | "holes";

/** One number, or word, that is another one now. */
export interface NumberChange {
  readonly part: ChangedPart;
  /** In the shop's words, e.g. `BLANK` or `TOP end, from square`. */
  readonly what: string;
  readonly unit: "mm" | "degree" | "word";
  /** Null where there was none, or is none now. */
  readonly old: number | string | null;
  readonly new: number | string | null;
  /** Of a length: the two points it runs between, in words; empty where there is none. */
  readonly between?: {
    readonly old: string;
    readonly new: string;
    /** True where they are other points now, and not by chance among lines of one length. */
    readonly moved: boolean;
  };
  /** New less old; of directions round a tube the short way; null of words and of what was not there before. */
  readonly difference: number | null;
  /** True where the part is made already: the number is that of a piece that does not fit any more. */
  readonly made: boolean;
}

/** One piece of which something moved. */
export interface PieceChange {
  readonly id: string;
  readonly mark: string;
  /** Where the piece had another mark. */
  readonly oldMark?: string;
  readonly kind: Piece["kind"];
  readonly role: string;
  /** Name of its section now. */
  readonly section: string;
  /** `re-cut`: stock, a length or an end cut; `re-mark`: holes; `rename`: the mark; `made-misfit`: made and does not fit. */
  readonly actions: readonly ("re-cut" | "re-mark" | "rename" | "made-misfit")[];
  readonly numbers: readonly NumberChange[];
  /** What must be known to read the numbers: which end a tape hooks, and that it is cut anew. */
  readonly notes: readonly string[];
  /** Names of its two ends. */
  readonly ends: readonly [string, string];
  readonly misfits: readonly MadeMisfit[];
}

/** A piece that only one of the two sets has. */
export interface LonePiece {
  readonly id: string;
  readonly mark: string;
  readonly kind: Piece["kind"];
  readonly role: string;
  readonly section: string;
  /** Mark of a piece of the other set, lone there too, of which no number differs. */
  readonly sameAs?: string;
}

/** Everything that moved. */
export interface PieceChanges {
  readonly over: number;
  readonly overAngle: number;
  readonly changed: readonly PieceChange[];
  readonly added: readonly LonePiece[];
  readonly gone: readonly LonePiece[];
  /** Number of pieces of which nothing moved. */
  readonly unchanged: number;
  /** Marks of all pieces by id, the new ones first: how misfits name their mates. */
  readonly marks: Readonly<Record<string, string>>;
}
