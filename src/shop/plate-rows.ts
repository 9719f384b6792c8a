/**
 * Plates and brackets' legs as they are ordered, marked out and drilled: the rows of the list's PLATES block.
 *
 * Plates with the same outline, holes, thickness and material make one row. Centres of holes are told from the left and
 * the bottom edge, which a tape can hook. Plain data, millimetres, kilograms, unrounded.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { endWord, faceWord, sightOf } from "../joints/words.js";
import type { PieceState } from "../layout/as-set/piece-state.js";
import { type PlateSizes, plateSizes } from "../members/plate-sizes.js";
import { groupBy } from "./group-by.js";
import { type MadeAlready, madeAlready } from "./made-already.js";

/** Plates that are the same to cut. */
export interface PlateRow extends PlateSizes {
  readonly marks: readonly string[];
  readonly ids: readonly string[];
  readonly quantity: number;
  readonly kind: "plate" | "bracket";
  readonly material: string;
  readonly thickness: number;
  /** True where the outline is a rectangle with square corners. */
  readonly rectangle: boolean;
  /** The face the row is read from, and which side of it is up, in the shop's words. */
  readonly seenOn: string;
  readonly up: string;
  /** Holes that are not square through; they are not in `holes`. */
  readonly bores: number;
  readonly blocked: boolean;
  /** What of them is made already or stands. */
  readonly made: readonly MadeAlready[];
  /** Each, kilograms. */
  readonly mass?: number;
}

/** Rows of the plates among some pieces, in their order. */
export function plateRows(
  pieces: readonly Piece[],
  masses: ReadonlyMap<string, number> | undefined,
  states?: readonly PieceState[],
): readonly PlateRow[] {
  const plates = pieces.filter((p) => p.kind !== "member");
  return groupBy(plates, (p) => p.identity).map((same): PlateRow => {
    const [first] = same as [Piece];
    const mass = masses?.get(first.id);
    const { outer } = first.section.region;
    return {
      marks: same.map((p) => p.mark),
      ids: same.map((p) => p.id),
      quantity: same.length,
      kind: first.kind === "bracket" ? "bracket" : "plate",
      material: first.material,
      ...plateSizes(first.section),
      thickness: first.lengths.blank.value,
      rectangle: outer.length === 4 && outer.every((s) => s.kind === "line" && isAlongAxis(s.from, s.to)),
      seenOn: endWord(sightOf(first), 1),
      up: faceWord(sightOf(first), 0, 1),
      bores: first.bores.length,
      blocked: same.some((p) => p.status === "blocked"),
      made: madeAlready(same, states),
      ...(mass !== undefined && { mass }),
    };
  });
}

function isAlongAxis(a: readonly number[], b: readonly number[]): boolean {
  return a[0] === b[0] || a[1] === b[1];
}
