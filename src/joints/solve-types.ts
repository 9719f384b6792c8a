/**
 * What the joint solver takes and gives.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import type { Joint, JointRules } from "./joint.js";
import type { Contact, Piece } from "./piece.js";

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
  /** An earlier solution: a piece that comes out the same again is the same object. The result is that of a fresh solve. */
  readonly previous?: JointSolution;
}

/** One piece per member, in the members' order, and what was found on the way. */
export interface JointSolution {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  readonly diagnostics: readonly Diagnostic[];
}
