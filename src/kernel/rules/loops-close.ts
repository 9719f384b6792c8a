/**
 * Rule: in every loop each edge starts at the vertex where the one before it ends.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Edge, EdgeUse, Solid } from "../solid.js";

/** Loops that do not close. */
export function loopsClose(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  for (const [f, face] of solid.faces.entries()) {
    for (const [l, loop] of face.loops.entries()) {
      const broken = loop.findIndex((use, k) => {
        const next = loop[(k + 1) % loop.length] as EdgeUse;
        const [e, n] = [solid.edges[use.edge] as Edge, solid.edges[next.edge] as Edge];
        return (use.forward ? e.to : e.from) !== (next.forward ? n.from : n.to);
      });
      if (loop.length > 0 && broken < 0) continue;
      out.push(
        diagnostic({
          code: "loop-open",
          message: `Loop ${l} of face ${f} does not close after edge ${broken}.`,
          hint: "Report the design: it is a fault of the kernel.",
          values: { face: f, loop: l, edge: broken },
        }),
      );
    }
  }
  return out;
}
