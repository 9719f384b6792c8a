/**
 * Rule: every number of a solid is finite: vertices, parameters, curves and surfaces.
 *
 * The other geometric rules compare numbers, and a comparison with NaN is false: they are asked only after this one.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";

/** Where the first number that is not finite stands inside plain data; null when all are finite. */
function firstBad(value: unknown, path: string): string | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : path;
  if (typeof value !== "object" || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    const bad = firstBad(inner, path === "" ? key : `${path}.${key}`);
    if (bad !== null) return bad;
  }
  return null;
}

/**
 * Vertices, edges and faces that hold a number that is not finite; empty for a good solid.
 *
 * @example
 * ```ts
 * finite({ vertices: [[0, Number.NaN, 0]], edges: [], faces: [] })[0]?.code; // "not-finite"
 * ```
 */
export function finite(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  const look = (what: string, index: number, value: unknown): void => {
    const at = firstBad(value, "");
    if (at === null) return;
    out.push(
      diagnostic({
        code: "not-finite",
        message: `${what} ${index} holds a number that is not finite, at ${at}; expected finite numbers only.`,
        hint: "Report the design: it is a fault of the kernel.",
        values: { what, index, at },
      }),
    );
  };
  for (const [i, v] of solid.vertices.entries()) look("vertex", i, v);
  for (const [i, { curve, t0, t1 }] of solid.edges.entries()) look("edge", i, { curve, t0, t1 });
  for (const [i, { surface }] of solid.faces.entries()) look("face", i, { surface });
  return out;
}
