/**
 * Rule: an edge's curve begins and ends at the edge's vertices, within `ON_SURFACE_MM`.
 *
 * @packageDocumentation
 */
import { evaluate } from "../curve/curve.js";
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";
import { ON_SURFACE_MM } from "../tolerance.js";
import { distance, type Vec3 } from "../vec.js";

/**
 * Ends of edges that miss their vertex; empty for a good solid.
 *
 * @param solid - finite numbers, vertex indices in range
 * @example
 * ```ts
 * curveEnds(solid).map((d) => d.values.edge); // the edges at fault
 * ```
 */
export function curveEnds(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  for (const [e, edge] of solid.edges.entries()) {
    for (const [end, t, v] of [
      ["start", edge.t0, edge.from],
      ["end", edge.t1, edge.to],
    ] as const) {
      const miss = distance(evaluate(edge.curve, t), solid.vertices[v] as Vec3);
      if (miss <= ON_SURFACE_MM) continue;
      out.push(
        diagnostic({
          code: "curve-misses-vertex",
          message: `The ${end} of edge ${e} lies ${miss.toExponential(2)} mm from vertex ${v}; expected at most ${ON_SURFACE_MM} mm.`,
          hint: "Report the design: it is a fault of the kernel.",
          values: { edge: e, end, vertex: v, miss },
        }),
      );
    }
  }
  return out;
}
