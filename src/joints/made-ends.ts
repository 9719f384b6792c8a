/**
 * Which ends are cut already: those of pieces that stay as they are, and the made ones of pieces of which some is made.
 *
 * @packageDocumentation
 */
import { endKey } from "./decision.js";
import type { MemberEnd } from "./joint.js";
import type { Piece } from "./piece.js";
import type { JointModel } from "./solve-types.js";

/** The ends that are cut already, by `endKey`, each with its piece where it stands. */
export function madeEnds(model: JointModel): ReadonlyMap<string, Piece> {
  const ends = new Map<string, Piece>();
  const put = (piece: Piece, end: MemberEnd["end"]) => ends.set(endKey({ member: piece.id, end }), piece);
  for (const { piece, ends: made } of model.held ?? []) {
    for (const end of [0, 1] as const) if (made[end]) put(piece, end);
  }
  for (const piece of model.fixed ?? []) for (const end of [0, 1] as const) put(piece, end);
  return ends;
}
