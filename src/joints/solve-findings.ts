/**
 * What the solver itself finds wrong: two members of one name, and a piece of which nothing is left.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import type { Piece } from "./piece.js";

/** Two members with one id. */
export function sameId(m: Member): Diagnostic {
  return diagnostic({
    code: "same-id",
    members: [m.id],
    message: `Two members have the id ${m.id}; only the first is looked at, and it is not cut.`,
    hint: "Give every member an id of its own.",
  });
}

/** The two ends of a piece meet or cross. */
export function tooShort(piece: Piece, shortest: number): Diagnostic {
  return diagnostic({
    code: "piece-too-short",
    members: [piece.id, ...piece.dependsOn],
    message: `The two ends of ${piece.id} meet or cross: its shortest fibre would be ${shortest.toFixed(3)} mm.`,
    hint: "Move the neighbouring members apart, or leave this piece out.",
    values: { shortest },
  });
}
