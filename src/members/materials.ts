/**
 * Materials a member can be of, with their density and where it comes from.
 *
 * Densities only: stiffness and strength are inputs of the checks that use them, each with its own source.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";

/** A material of the table. */
export interface Material {
  /** kg/m³. */
  readonly density: number;
  readonly source: string;
}

/** Names in the table. */
export type MaterialName = "mild-steel" | "stainless-304" | "stainless-316";

/** The table, by name. */
export const MATERIALS: Readonly<Record<MaterialName, Material>> = {
  "mild-steel": { density: 7850, source: "EN 1991-1-1; notes to the UK section tables" },
  "stainless-304": { density: 7900, source: "EN 10088-1" },
  "stainless-316": { density: 8000, source: "EN 10088-1" },
};

/** True when the table has a material of this name. */
export function isMaterialName(name: string): name is MaterialName {
  return Object.hasOwn(MATERIALS, name);
}

/**
 * A material by name.
 *
 * @throws RakewrightError `unknown-material` when the table has none of that name
 * @example
 * materialOf("stainless-316").density; // 8000
 */
export function materialOf(name: string): Material {
  if (isMaterialName(name)) return MATERIALS[name];
  throw new RakewrightError({
    code: "unknown-material",
    message: `Material: expected one of ${Object.keys(MATERIALS).join(", ")}, got "${name}".`,
    hint: "Use a name of the table, or give the density yourself.",
    values: { name },
  });
}
