/**
 * Rule: an edge lies on the surfaces of both faces that use it, within `ON_SURFACE_MM`.
 *
 * Looked at on equally spaced parameters, the ends included.
 *
 * @packageDocumentation
 */
import { evaluate } from "../curve/curve.js";
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Edge, Solid } from "../solid.js";
import { distanceTo } from "../surface.js";
import { ON_SURFACE_MM } from "../tolerance.js";

/** Parameters looked at per edge, less one. A coprime of the section's quarter turns, so that no symmetry hides a fault. */
const PARTS = 11;

/**
 * Edges that leave the surface of a face that uses them; empty for a good solid.
 *
 * @param solid - finite numbers, edge indices in range
 * @example
 * ```ts
 * onSurfaces(solid).map((d) => [d.values.edge, d.values.face]); // who misses whom
 * ```
 */
export function onSurfaces(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  for (const [f, face] of solid.faces.entries()) {
    for (const use of face.loops.flat()) {
      const { curve, t0, t1 } = solid.edges[use.edge] as Edge;
      let off = 0;
      for (let k = 0; k <= PARTS; k++) {
        const p = evaluate(curve, t0 + ((t1 - t0) * k) / PARTS);
        off = Math.max(off, Math.abs(distanceTo(face.surface, p)));
      }
      if (off <= ON_SURFACE_MM) continue;
      out.push(
        diagnostic({
          code: "edge-off-surface",
          message: `Edge ${use.edge} leaves the ${face.surface.kind} of face ${f} by ${off.toExponential(2)} mm; expected at most ${ON_SURFACE_MM} mm.`,
          hint: "Report the design: it is a fault of the kernel.",
          values: { edge: use.edge, face: f, off },
        }),
      );
    }
  }
  return out;
}
