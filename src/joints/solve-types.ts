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
}

/** One piece per member, in the members' order, and what was found on the way. */
export interface JointSolution {
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  readonly diagnostics: readonly Diagnostic[];
}
