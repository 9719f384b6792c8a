/**
 * Compiles an end, as one flat cut where the header shows the branch a single flat face.
 *
 * A rail that dies into the face of a square post is cut to the post's skin, but to the shop it is one saw cut. The plane
 * is the face's own, so the solid is the same.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import type { EndExpression } from "../kernel/end.js";
import { boundaryOf } from "../kernel/end-boundary.js";
import { type CompiledEnd, compileEnd } from "../kernel/end-compile.js";
import { loopsOf, pointOn, type Region } from "../kernel/region.js";
import type { Sheet } from "../kernel/sheet.js";

/** A compiled end with the expression it stands for. */
export interface FlattestEnd {
  readonly end: CompiledEnd | null;
  readonly expression: EndExpression;
  readonly diagnostics: readonly Diagnostic[];
}

/** Compiles an expression; a header met on one flat face only becomes a plane, and an end left open is refused. */
export function compileFlattest(expression: EndExpression, dir: 1 | -1, section: Region): FlattestEnd {
  const made = compileEnd(expression, dir, section);
  if (!made.end || made.end.root.kind === "leaf") return { ...made, expression };
  if (made.end.root.kind !== "hit") {
    const open = openProblem(made.end, section);
    return open
      ? { end: null, expression, diagnostics: [...made.diagnostics, open] }
      : { ...made, expression };
  }
  const met = new Set(boundaryOf(made.end, section).map((i) => i.sheet));
  const [only] = met;
  const sheet = only === undefined || met.size > 1 ? undefined : made.end.sheets[only];
  if (sheet?.surface.kind !== "plane") return { ...made, expression };
  return flat(sheet, dir, section, made.diagnostics);
}

/** Each of several headers may be missed on part of the section, but not all of them at one place. */
function openProblem(end: CompiledEnd, section: Region): Diagnostic | null {
  const miss = boundaryOf(end, section).find((i) => i.sheet < 0);
  const side = miss && loopsOf(section)[miss.loop]?.[miss.segment];
  if (!side) return null;
  const [u, v] = pointOn(side, (miss.t0 + miss.t1) / 2);
  const headers = [...new Set(end.sheets.map((s) => s.source.onto))];
  return diagnostic({
    code: "branch-hangs-off",
    message: `The branch hangs off all of its headers (${headers.join(", ")}) at (${u.toFixed(1)}, ${v.toFixed(1)}) mm of its section.`,
    hint: "Use a narrower branch or wider headers, or cut it to one of them and close the rest with a plane.",
    values: { u, v },
  });
}

function flat(sheet: Sheet, dir: 1 | -1, section: Region, found: readonly Diagnostic[]): FlattestEnd {
  const { origin, z } = sheet.surface.frame;
  const expression: EndExpression = { kind: "plane", point: origin, normal: z, source: sheet.source };
  const made = compileEnd(expression, dir, section);
  return { end: made.end, expression, diagnostics: [...found, ...made.diagnostics] };
}
