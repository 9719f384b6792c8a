/**
 * How stiff a material is: modulus of elasticity by name, with where the figure is from.
 *
 * @packageDocumentation
 */
import { type MaterialName, materialOf } from "../members/materials.js";

/** A material as a bending check takes it. */
export interface Stiffness {
  /** Modulus of elasticity, N/mm². */
  readonly modulus: number;
  /** kg/m³. */
  readonly density: number;
  readonly source: string;
}

const MODULUS: Readonly<Record<MaterialName, { readonly modulus: number; readonly source: string }>> = {
  // The lower of the two usual figures: it sags more.
  "mild-steel": {
    modulus: 200_000,
    source: "AISC 360, 29,000 ksi; EN 1993-1-1, 3.2.6 has 210,000",
  },
  "stainless-304": { modulus: 200_000, source: "EN 1993-1-4, 2.1.3" },
  "stainless-316": { modulus: 200_000, source: "EN 1993-1-4, 2.1.3" },
};

/**
 * Modulus and density of a material of the table.
 *
 * @param name - a name that `materialOf` knows
 * @throws RakewrightError `unknown-material` when the table has none of that name
 * @example stiffnessOf("mild-steel").modulus; // 200000
 */
export function stiffnessOf(name: string): Stiffness {
  const { density } = materialOf(name);
  return { density, ...MODULUS[name as MaterialName] };
}
