/**
 * Pairs of triangles by hand, and against a second route, separating axes in exact
 * small integers.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { relatePair } from "../../../src/kernel/mesh/triangle-pair.js";

type P = readonly [number, number, number];
const relate = (points: readonly P[], s: P, t: P) => relatePair(Float64Array.from(points.flat()), s, t);
const BASE: readonly P[] = [
  [0, 0, 0],
  [6, 0, 0],
  [0, 6, 0],
];

describe("relatePair", () => {
  it.each<[string, "apart" | "meet" | "folded", P[], P]>([
    [
      "pierced by an edge",
      "meet",
      [
        [1, 1, -1],
        [1, 1, 1],
        [9, 9, 0],
      ],
      [3, 4, 5],
    ],
    [
      "touched by a corner",
      "meet",
      [
        [1, 1, 0],
        [1, 1, 5],
        [2, 1, 5],
      ],
      [3, 4, 5],
    ],
    [
      "a corner a single bit above",
      "apart",
      [
        [1, 1, 5e-324],
        [1, 1, 5],
        [2, 1, 5],
      ],
      [3, 4, 5],
    ],
    [
      "in one plane, overlapping",
      "meet",
      [
        [1, 1, 0],
        [9, 1, 0],
        [9, 2, 0],
      ],
      [3, 4, 5],
    ],
    [
      "in one plane, one inside the other",
      "meet",
      [
        [1, 1, 0],
        [2, 1, 0],
        [1, 2, 0],
      ],
      [3, 4, 5],
    ],
    [
      "in one plane, apart",
      "apart",
      [
        [7, 7, 0],
        [9, 7, 0],
        [7, 9, 0],
      ],
      [3, 4, 5],
    ],
    [
      "edge in the plane, across it",
      "meet",
      [
        [-1, 1, 0],
        [9, 1, 0],
        [4, 4, 7],
      ],
      [3, 4, 5],
    ],
    [
      "edge in the plane, beside it",
      "apart",
      [
        [-1, 7, 0],
        [9, 7, 0],
        [4, 4, 7],
      ],
      [3, 4, 5],
    ],
    [
      "sharing a corner only",
      "apart",
      [
        [-3, 0, 0],
        [0, -3, 4],
        [0, 0, 0],
      ],
      [0, 3, 4],
    ],
    [
      "sharing a corner and running through",
      "meet",
      [
        [3, 3, 1],
        [3, 3, -1],
        [0, 0, 0],
      ],
      [0, 3, 4],
    ],
    [
      "sharing a corner, overlapping in one plane",
      "meet",
      [
        [3, 1, 0],
        [1, 3, 0],
        [0, 0, 0],
      ],
      [0, 3, 4],
    ],
    [
      "sharing a corner, apart in one plane",
      "apart",
      [
        [-3, -1, 0],
        [-1, -3, 0],
        [0, 0, 0],
      ],
      [0, 3, 4],
    ],
    [
      "sharing an edge, flat neighbours",
      "apart",
      [
        [3, -4, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
      [1, 0, 3],
    ],
    [
      "sharing an edge, at an angle",
      "apart",
      [
        [3, 4, 1],
        [0, 0, 0],
        [0, 0, 0],
      ],
      [1, 0, 3],
    ],
    [
      "sharing an edge, folded flat",
      "folded",
      [
        [3, 4, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
      [1, 0, 3],
    ],
  ])("%s: %s", (_, expected, more, t) => {
    expect(relate([...BASE, ...more], [0, 1, 2], t)).toBe(expected);
    expect(relate([...BASE, ...more], t, [0, 1, 2])).toBe(expected);
  });

  it("agrees with separating axes in exact integers on small random triangles", () => {
    const coordinate = fc.integer({ min: -3, max: 3 });
    const point: fc.Arbitrary<P> = fc.tuple(coordinate, coordinate, coordinate);
    const seen = { meet: 0, apart: 0 };
    fc.assert(
      fc.property(fc.array(point, { minLength: 6, maxLength: 6 }), (points) => {
        const [s, t] = [points.slice(0, 3), points.slice(3)];
        fc.pre(hasArea(s) && hasArea(t));
        const expected = overlaps(s, t) ? "meet" : "apart";
        seen[expected]++;
        expect(relate(points, [0, 1, 2], [3, 4, 5])).toBe(expected);
      }),
      { numRuns: 3000 },
    );
    expect(Math.min(seen.meet, seen.apart)).toBeGreaterThan(100);
  });
});

const minus = (a: P, b: P): P => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: P, b: P) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: P, b: P): P => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const hasArea = ([a, b, c]: readonly P[]) => cross(minus(b!, a!), minus(c!, a!)).some((x) => x !== 0);

/**
 * Separating axes: two convex sets are apart exactly when some axis of a finite list separates their shadows. For two
 * triangles: both normals, the nine products of edges, and each edge crossed with its normal (for one common plane).
 * Integers this small make every product exact.
 */
function overlaps(s: readonly P[], t: readonly P[]): boolean {
  const edges = (q: readonly P[]) => q.map((a, i) => minus(q[(i + 1) % 3]!, a));
  const normal = (q: readonly P[]) => cross(minus(q[1]!, q[0]!), minus(q[2]!, q[0]!));
  const axes = [
    normal(s),
    normal(t),
    ...edges(s).flatMap((e) => edges(t).map((f) => cross(e, f))),
    ...edges(s).map((e) => cross(e, normal(s))),
    ...edges(t).map((e) => cross(e, normal(t))),
  ];
  return !axes.some((axis) => {
    const [a, b] = [s.map((p) => dot(p, axis)), t.map((p) => dot(p, axis))];
    return Math.max(...a) < Math.min(...b) || Math.max(...b) < Math.min(...a);
  });
}
