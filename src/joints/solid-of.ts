/**
 * The exact solid of a piece, in the piece's own frame.
 *
 * @packageDocumentation
 */
import { solidOfBar } from "../kernel/bar-solid.js";
import type { Result } from "../kernel/diagnostic.js";
import type { Solid } from "../kernel/solid.js";
import type { Piece } from "./piece.js";

/**
 * The exact solid of a piece: faces on planes and cylinders, every edge used twice.
 *
 * @param piece - from `solveJoints`
 * @returns the solid in millimetres in the piece's frame (place it with `piece.frame`), or why there is none
 * @example
 * ```ts
 * const solid = solidOf(piece);
 * if (solid.ok) console.log(solid.value.faces.length);
 * ```
 */
export function solidOf(piece: Piece): Result<Solid> {
  return solidOfBar({ id: piece.id, section: piece.section.region, ends: piece.ends, bores: piece.bores });
}
