/**
 * What is known of the points along the edges of a solid: where they are, and how each turns about its faces' axes.
 *
 * @packageDocumentation
 */

/** All points of a mesh: first the solid's vertices, then the inner points of each edge from start to end. */
export interface EdgeSamples {
  readonly positions: readonly number[];
  /** Edge e owns the points first[e] to first[e + 1] − 1. */
  readonly first: readonly number[];
  /** For each vertex of the solid the one that stands for it: the ends of an edge too short to be seen are one point. */
  readonly same: readonly number[];
  /** Points of others that straight edges go through, by edge, from start to end (`needles.ts`, `fins.ts`); null when none does. */
  readonly feet: ReadonlyMap<number, readonly number[]> | null;
  /** Steps of a full turn of each face; 0 for planes. */
  readonly steps: readonly number[];
  /** See `nearRuling`. */
  readonly near: number;
  /**
   * By use of an edge (0 the first by face and loop, 1 the second): the angle about that face's axis in steps, of the
   * edge's start and end at 2e and 2e + 1 of `atEnds`, and of each point. A whole number is a ruling.
   */
  readonly turns: readonly [SideTurns, SideTurns];
}

/** Angles in steps, on one of the two faces of every edge. Without meaning on planes and along straight edges. */
export interface SideTurns {
  readonly atEnds: readonly number[];
  readonly atPoints: readonly number[];
}
