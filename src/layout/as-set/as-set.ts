/**
 * What stands already, as it was measured: posts, far ends of legs; and what of each piece is made.
 *
 * It overrides what is designed: the layout puts a measured post where it stands, and what is cut or drilled stays as it was
 * made. Read from a document of its own. Millimetres, degrees; x along the guard from the top nosing of the last flight,
 * heights from that nosing.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";

/** How far a post has got: stood up to be measured and taken down again, or there to stay. */
export type PostStage = "dry-set" | "set";

/** One post as it was found. What was not measured is as designed. */
export interface AsSetPost {
  /** Mark, as on the papers. */
  readonly post: string;
  readonly stage: PostStage;
  /** Of the post's centre at its foot, where its tube starts, along the guard. */
  readonly x?: number;
  /** Of the tread, landing or floor under it; of a post on a stringer's side, of its lower end. */
  readonly baseZ?: number;
  /** Degrees from plumb along the guard, + uphill; default 0. */
  readonly lean: number;
  /** Degrees from plumb across the guard, + to its left, walking up; default 0. */
  readonly leanAcross: number;
  /** Of the post's centre from the guard's middle plane at its foot, + to its left; default 0. */
  readonly across: number;
  /** Standard uncertainties: of x and of the base's height, mm; of the lean, degrees. */
  readonly sigma: { readonly x: number; readonly z: number; readonly lean: number };
  /** In the document, e.g. `posts[2]`. */
  readonly path: string;
}

/** A leg whose far end was measured: a wall, a beam's end. */
export interface AsSetLeg {
  readonly leg: string;
  /** From where the leg starts to its far end. */
  readonly length: number;
  readonly sigma: number;
  readonly path: string;
}

/** What can be made of a piece: either end cut, its holes drilled. */
export type Feature = "start" | "end" | "holes";

/** What of a piece is made already, and the piece as it was solved when it was made. */
export interface MadePiece {
  readonly piece: Piece;
  readonly features: readonly Feature[];
  /** True of a piece that is fixed in place: nothing of it moves any more. */
  readonly set: boolean;
  readonly path: string;
}

/** Everything that is no longer only drawn. */
export interface AsSet {
  readonly posts: readonly AsSetPost[];
  readonly legs: readonly AsSetLeg[];
  readonly made: readonly MadePiece[];
}

/** Nothing stands yet. */
export const NOTHING_SET: AsSet = { posts: [], legs: [], made: [] };
