/**
 * Does the surface of a mesh run through itself, touch itself or fold back onto itself?
 *
 * Pairs of triangles whose boxes overlap are compared exactly (`triangle-pair`). Shared corners and edges are where
 * neighbours may meet; anything more is counted.
 *
 * @packageDocumentation
 */
import { forEachOverlap } from "./box-tree.js";
import { relatePair } from "./triangle-pair.js";

/** What was found, with the triangle numbers of the first of each kind. */
export interface IntersectionSurvey {
  readonly intersections: number;
  readonly firstPair?: readonly [number, number];
  readonly folded: number;
  readonly firstFold?: readonly [number, number];
}

/**
 * Counts pairs of triangles that meet beyond what they share.
 *
 * @param positions - finite
 * @param triangles - in range, none degenerate
 * @param shellOf - when given, pairs of different shells are passed over
 */
export function surveyIntersections(
  positions: Float64Array,
  triangles: Uint32Array,
  shellOf?: Uint32Array,
): IntersectionSurvey {
  let intersections = 0;
  let folded = 0;
  let firstPair: readonly [number, number] | undefined;
  let firstFold: readonly [number, number] | undefined;
  const corners = (t: number) =>
    [triangles[3 * t] as number, triangles[3 * t + 1] as number, triangles[3 * t + 2] as number] as const;
  forEachOverlap(triangleBoxes(positions, triangles), (i, j) => {
    if (shellOf && shellOf[i] !== shellOf[j]) return;
    const relation = relatePair(positions, corners(i), corners(j));
    if (relation === "meet") {
      intersections++;
      firstPair ??= [Math.min(i, j), Math.max(i, j)];
    } else if (relation === "folded") {
      folded++;
      firstFold ??= [Math.min(i, j), Math.max(i, j)];
    }
  });
  return { intersections, folded, ...(firstPair && { firstPair }), ...(firstFold && { firstFold }) };
}

function triangleBoxes(p: Float64Array, triangles: Uint32Array): Float64Array {
  const boxes = new Float64Array(2 * triangles.length);
  for (let h = 0; h < triangles.length; h += 3) {
    for (let k = 0; k < 3; k++) {
      const a = p[3 * (triangles[h] as number) + k] as number;
      const b = p[3 * (triangles[h + 1] as number) + k] as number;
      const c = p[3 * (triangles[h + 2] as number) + k] as number;
      boxes[2 * h + k] = Math.min(a, b, c);
      boxes[2 * h + 3 + k] = Math.max(a, b, c);
    }
  }
  return boxes;
}
