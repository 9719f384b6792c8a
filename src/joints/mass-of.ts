/**
 * The mass properties of a piece.
 *
 * @packageDocumentation
 */
import { diagnostic, type Result } from "../kernel/diagnostic.js";
import { type MassProperties, massProperties } from "../kernel/mass.js";
import type { Solid } from "../kernel/solid.js";
import { isMaterialName, materialOf } from "../members/materials.js";
import type { Piece } from "./piece.js";
import { solidOf } from "./solid-of.js";

/** Exact mass properties with the mass that the piece's material gives them. */
export interface PieceMass extends MassProperties {
  /** kg */
  readonly mass: number;
  /** kg/m³ used. */
  readonly density: number;
}

/**
 * Volume, surface, mass, centroid and second moments of a piece, exact, in the piece's frame.
 *
 * @param piece - from `solveJoints`
 * @param solid - its solid when it is at hand already; made anew otherwise
 * @returns mass properties, or why there are none (`unknown-material`, or the reasons of `solidOf`)
 * @example
 * ```ts
 * const m = massOf(piece);
 * if (m.ok) console.log(m.value.mass, "kg");
 * ```
 */
export function massOf(piece: Piece, solid?: Solid): Result<PieceMass> {
  if (!isMaterialName(piece.material)) {
    const found = diagnostic({
      code: "unknown-material",
      members: [piece.id],
      message: `${piece.id} is of "${piece.material}", which the materials table does not have.`,
      hint: "Name a material of the table, or take the volume and your own density.",
      values: { material: piece.material },
    });
    return { ok: false, diagnostics: [found] };
  }
  const made = solid ? { ok: true as const, value: solid, diagnostics: [] } : solidOf(piece);
  if (!made.ok) return made;
  const properties = massProperties(made.value);
  const { density } = materialOf(piece.material);
  // kg/m³ × mm³: a cubic metre has 10⁹ mm³.
  const mass = (density * properties.volume) / 1e9;
  return { ok: true, value: { ...properties, mass, density }, diagnostics: made.diagnostics };
}
