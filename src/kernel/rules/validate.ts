/**
 * All rules of validity together.
 *
 * `solidOfBar` runs the rules of topology on every solid it makes; the geometric ones cost about as much as the solid
 * itself and are for tests, for writers that promise validity, and for whoever wants to know.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";
import { curveEnds } from "./curve-ends.js";
import { faceLoops } from "./face-loops.js";
import { finite } from "./finite.js";
import { noKink } from "./no-kink.js";
import { onSurfaces } from "./on-surfaces.js";
import { positiveVolume } from "./positive-volume.js";
import { topologyProblems } from "./topology.js";

/**
 * Every fault of a solid; empty for a good one.
 *
 * Numbers that are not finite are reported alone: no geometric rule has an answer about them.
 *
 * @param solid - vertex and edge indices in range
 * @example
 * ```ts
 * const made = solidOfBar(bar);
 * if (made.ok) validateSolid(made.value); // []
 * ```
 */
export function validateSolid(solid: Solid): Diagnostic[] {
  const bad = finite(solid);
  if (bad.length > 0) return [...topologyProblems(solid), ...bad];
  return [
    ...topologyProblems(solid),
    ...curveEnds(solid),
    ...onSurfaces(solid),
    ...noKink(solid),
    ...faceLoops(solid),
    ...positiveVolume(solid),
  ];
}
