/**
 * What of each piece is made already and where it stands, for the papers: one line a piece.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { madeWords, type PieceState } from "../layout/as-set/piece-state.js";
import { wrap } from "./wrap.js";

/** One piece that is no longer only drawn. */
export interface MadeAlready {
  readonly mark: string;
  /** In the shop's words, e.g. `FOOT end, holes`; empty where it only stands. */
  readonly made: string;
  readonly place: PieceState["place"];
  /** True where both its ends are made: there is nothing left to cut. */
  readonly whole: boolean;
}

/**
 * Those of some pieces that are no longer only drawn.
 *
 * @param pieces - in the order of the paper
 * @param states - from `buildGuard`; pieces that are missing here are only designed
 */
export function madeAlready(
  pieces: readonly Piece[],
  states: readonly PieceState[] | undefined,
): readonly MadeAlready[] {
  if (states === undefined || states.length === 0) return [];
  const byId = new Map(states.map((own) => [own.id, own]));
  return pieces.flatMap((piece) => {
    const state = byId.get(piece.id);
    if (!state) return [];
    const made = madeWords(piece, state);
    if (made === "" && state.place === "designed") return [];
    const whole = state.start === "made" && state.end === "made";
    return [{ mark: piece.mark, made, place: state.place, whole }];
  });
}

/** The lines, e.g. `P2   made already: FOOT end, holes; was dry-set`. */
export function madeAlreadyText(made: readonly MadeAlready[]): string[] {
  return made.flatMap((own) => {
    const done = own.made === "" ? [] : [`made already: ${own.made}`];
    const stands = own.place === "designed" ? [] : [own.place === "set" ? "is set" : "was dry-set"];
    const whole = own.whole ? ["do not cut it again"] : [];
    return wrap(`  ${own.mark}   `, [...done, ...stands, ...whole].join("; "), 6);
  });
}
