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
    return made === "" && state.place === "designed" ? [] : [{ mark: piece.mark, made, place: state.place }];
  });
}

/** The lines, e.g. `made already: P2 FOOT end, holes; P2 is dry-set`. */
export function madeAlreadyText(made: readonly MadeAlready[]): string[] {
  return made.flatMap((own) => {
    const done = own.made === "" ? [] : [`made already: ${own.made}`];
    const stands = own.place === "designed" ? [] : [own.place === "set" ? "is set" : "was dry-set"];
    return wrap("  ", `${own.mark}   ${[...done, ...stands].join("; ")}`, 4);
  });
}
