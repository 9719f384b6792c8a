/**
 * A plate of a layout, or the diagnostic that says why it cannot be one: sizes come from a document, so they may be wrong.
 *
 * @packageDocumentation
 */
import { type Diagnostic, RakewrightError } from "../../kernel/diagnostic.js";
import type { Member } from "../../members/member.js";
import { type PlateHole, type PlateInput, plate } from "../../members/plate.js";
import type { HoleRectangle } from "../document/foot-design.js";

/** Four holes; `across` along the plate's u, `along` along its v. */
export function holesOf(holes: HoleRectangle | undefined, u: number, v: number): readonly PlateHole[] {
  if (holes === undefined) return [];
  const ways = [1, -1] as const;
  return ways.flatMap((a) =>
    ways.map((b) => ({ at: [(a * u) / 2, (b * v) / 2] as const, diameter: holes.diameter })),
  );
}

/** A plate, or the diagnostic that says why it cannot be one. */
export function plateOr(
  input: PlateInput,
  path: string,
): { readonly plate?: Member; readonly diagnostics: Diagnostic[] } {
  try {
    return { plate: plate(input), diagnostics: [] };
  } catch (error) {
    if (!(error instanceof RakewrightError)) throw error;
    return { diagnostics: [{ ...error.diagnostic, path, members: [input.id] }] };
  }
}
