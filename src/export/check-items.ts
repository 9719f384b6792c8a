/**
 * May these pieces be written? What every mesh writer asks first.
 *
 * Each piece passes the mesh gate at level `edges` on its own; writers of 32-bit floats also ask whether those are fine
 * enough. One bad piece refuses the file: a file with a piece left out would look complete.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { float32Check } from "../kernel/mesh/float32.js";
import { checkMesh } from "../kernel/mesh/gate.js";
import type { NamedMesh } from "./named.js";

/**
 * Diagnostics for the pieces of a file, each with the piece's name in `members`.
 *
 * @param items - the pieces
 * @param float32Tolerance - millimetres; given when the file keeps 32-bit floats
 */
export function checkItems(items: readonly NamedMesh[], float32Tolerance?: number): readonly Diagnostic[] {
  if (items.length === 0) {
    return [
      diagnostic({
        code: "nothing-to-write",
        message: "The file would be empty: expected at least one piece, got none.",
        hint: "Pass the pieces that were solved; look at the diagnostics of those that were not.",
      }),
    ];
  }
  return items.flatMap((item, i) => {
    const name = item.name === "" ? `Piece number ${i + 1}` : `Piece ${item.name}`;
    const report = checkMesh(item.mesh, "edges", { name });
    const spacing =
      report.ok && float32Tolerance !== undefined
        ? float32Check(item.mesh, float32Tolerance, name).diagnostics
        : [];
    const found = [...report.diagnostics, ...spacing, ...checkColour(item, name)];
    return found.map((d) => ({ ...d, path: `items[${i}]`, members: [item.name] }));
  });
}

export function checkColour({ colour }: Pick<NamedMesh, "colour">, name: string): readonly Diagnostic[] {
  if (!colour || colour.every((c) => c >= 0 && c <= 1)) return [];
  return [
    diagnostic({
      code: "colour-out-of-range",
      message: `${name}: expected red, green and blue from 0 to 1, got ${colour.join(", ")}.`,
      hint: "Divide 8-bit values by 255.",
    }),
  ];
}
