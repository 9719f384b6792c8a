/**
 * An earlier piece in place of a new one that is the same in every number.
 *
 * Whoever keeps solids or meshes beside pieces can then tell by identity what has changed. Compared value by value, so
 * that nothing has to be known of what a piece depends on, and a solution copied from another thread serves as well.
 *
 * @packageDocumentation
 */
import type { Piece } from "./piece.js";

/** The pieces, each the earlier object where one of the same id equals it. */
export function reusePieces(pieces: readonly Piece[], previous: readonly Piece[]): Piece[] {
  const before = new Map(previous.map((piece) => [piece.id, piece]));
  return pieces.map((piece) => {
    const old = before.get(piece.id);
    return old && sameData(piece, old) ? old : piece;
  });
}

/** True when two values of plain data are the same, numbers to the last bit. */
function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
  const [keys, others] = [Object.keys(a), Object.keys(b)];
  if (keys.length !== others.length || Array.isArray(a) !== Array.isArray(b)) return false;
  const [x, y] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return keys.every((key) => key in y && sameData(x[key], y[key]));
}
