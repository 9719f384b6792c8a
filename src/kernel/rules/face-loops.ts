/**
 * Rule: seen from outside, a face's outer loop runs counter-clockwise and its holes clockwise.
 *
 * The signed area of each loop in the surface's own coordinates, by Green's theorem along the exact edges: ∮ x dy on a
 * plane, −∮ z r dφ on a cylinder. The surface's normal points to the eye where the face's sense is +1.
 *
 * @packageDocumentation
 */
import { derivatives } from "../curve/curve.js";
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import { GAUSS_12 } from "../gauss.js";
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { dot, sub } from "../vec.js";

const RULE = GAUSS_12;
/** Panels per edge. Only the sign of the area is used. */
const PANELS = 8;

/**
 * Loops that run the wrong way round; empty for a good solid.
 *
 * @param solid - finite numbers, edge indices in range
 * @example
 * ```ts
 * faceLoops(solid).map((d) => [d.values.face, d.values.loop]); // which loop of which face
 * ```
 */
export function faceLoops(solid: Solid): Diagnostic[] {
  const out: Diagnostic[] = [];
  for (const [f, face] of solid.faces.entries()) {
    for (const [l, loop] of face.loops.entries()) {
      const area = face.sense * loopArea(solid, face, loop);
      if (l === 0 ? area > 0 : area < 0) continue;
      out.push(
        diagnostic({
          code: "loop-runs-wrong",
          message: `Loop ${l} of face ${f} encloses ${area} mm2 seen from outside; expected ${l === 0 ? "more" : "less"} than zero.`,
          hint: "Report the design: it is a fault of the kernel.",
          values: { face: f, loop: l, area },
        }),
      );
    }
  }
  return out;
}

/** Signed area of a loop in the surface's coordinates, mm². */
function loopArea(solid: Solid, face: Face, loop: readonly EdgeUse[]): number {
  const { surface } = face;
  const { frame } = surface;
  let sum = 0;
  for (const use of loop) {
    const { curve, t0, t1 } = solid.edges[use.edge] as Edge;
    const half = ((t1 - t0) / PANELS / 2) * (use.forward ? 1 : -1);
    for (let k = 0; k < PANELS; k++) {
      const mid = t0 + ((t1 - t0) * (k + 0.5)) / PANELS;
      for (const [i, node] of RULE.nodes.entries()) {
        const { p, d1 } = derivatives(curve, mid + half * node);
        const w = sub(p, frame.origin);
        const [x, y] = [dot(w, frame.x), dot(w, frame.y)];
        const weight = half * (RULE.weights[i] as number);
        if (surface.kind === "plane") {
          sum += weight * x * dot(d1, frame.y);
        } else {
          const turned = (x * dot(d1, frame.y) - y * dot(d1, frame.x)) / (x * x + y * y);
          sum -= weight * dot(w, frame.z) * surface.radius * turned;
        }
      }
    }
  }
  return sum;
}
