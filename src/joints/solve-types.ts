/**
 * What the joint solver takes and gives.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import type { Joint, JointRules } from "./joint.js";
import type { Contact, Piece } from "./piece.js";

/** A piece of which some is made, as it was solved when it was made. */
export interface HeldPiece {
  readonly piece: Piece;
  /** Which of its ends are cut. */
  readonly ends: readonly [boolean, boolean];
  /** True when its holes are drilled; it has no others than those. */
  readonly holes: boolean;
  /** True of a piece that stands where its own frame says, whatever the model says of its member. */
  readonly stands?: boolean;
}

/** Members, the joints asked for, and what may be assumed elsewhere. */
export interface JointModel {
  readonly members: readonly Member[];
  readonly joints?: readonly Joint[];
  readonly rules?: JointRules;
  /**
   * Pieces that are cut already and stay as they are, each with the id of its member. They stand where their own frame
   * says, in their own section; the others are fitted to them.
   */
  readonly fixed?: readonly Piece[];
  /**
   * Pieces of which some is made, each with the id of its member: what is made stays as it is and stands where the model puts
   * its member, the rest is cut anew; others are fitted to it.
   */
  readonly held?: readonly HeldPiece[];
  /** An earlier solution: a piece that comes out the same again is the same object. The result is that of a fresh solve. */
  readonly previous?: JointSolution;
}

/** One piece per member, in the members' order, and what was found on the way. */
export interface JointSolution {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  readonly diagnostics: readonly Diagnostic[];
}
