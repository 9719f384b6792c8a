/**
 * Compiles an end, as one flat cut where the header shows the branch a single flat face.
 *
 * A rail that dies into the face of a square post is cut to the post's skin, but to the shop it is one saw cut. The plane
 * is the face's own, so the solid is the same.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { EndExpression } from "../kernel/end.js";
import { boundaryOf } from "../kernel/end-boundary.js";
import { type CompiledEnd, compileEnd } from "../kernel/end-compile.js";
import type { Region } from "../kernel/region.js";
import type { Sheet } from "../kernel/sheet.js";

/** A compiled end with the expression it stands for. */
export interface FlattestEnd {
  readonly end: CompiledEnd | null;
  readonly expression: EndExpression;
  readonly diagnostics: readonly Diagnostic[];
}

/** Compiles an expression; a header met on one flat face only becomes a plane. */
export function compileFlattest(expression: EndExpression, dir: 1 | -1, section: Region): FlattestEnd {
  const made = compileEnd(expression, dir, section);
  if (made.end?.root.kind !== "hit") return { ...made, expression };
  const met = new Set(boundaryOf(made.end, section).map((i) => i.sheet));
  const [only] = met;
  const sheet = only === undefined || met.size > 1 ? undefined : made.end.sheets[only];
  if (sheet?.surface.kind !== "plane") return { ...made, expression };
  return flat(sheet, dir, section, made.diagnostics);
}

function flat(sheet: Sheet, dir: 1 | -1, section: Region, found: readonly Diagnostic[]): FlattestEnd {
  const { origin, z } = sheet.surface.frame;
  const expression: EndExpression = { kind: "plane", point: origin, normal: z, source: sheet.source };
  const made = compileEnd(expression, dir, section);
  return { end: made.end, expression, diagnostics: [...found, ...made.diagnostics] };
}
