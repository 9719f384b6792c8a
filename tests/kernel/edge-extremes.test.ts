/**
 * Extremes along exact edges against closed forms, and against dense sampling where there is none.
 */
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/kernel/curve/curve.js";
import { extremesAlong, type Field } from "../../src/kernel/edge-extremes.js";
import type { Edge, Solid } from "../../src/kernel/solid.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { NAMED } from "../support/named-cases.js";
import { solidOf } from "../support/solve-case.js";

const from =
  (c: Vec3): Field =>
  (p) => {
    const w: Vec3 = [p[0] - c[0], p[1] - c[1], p[2] - c[2]];
    const d = Math.hypot(...w);
    return { value: d, gradient: [w[0] / d, w[1] / d, w[2] / d] };
  };

const caseOf = (name: string): Solid => solidOf(NAMED.find((c) => c.name === name)!);
const endEdges = (s: Solid, end: 0 | 1): Edge[] => {
  const faces = s.faces.filter((f) => f.provenance.from === "end" && f.provenance.end === end);
  return [...new Set(faces.flatMap((f) => f.loops.flat().map((u) => u.edge)))].map((e) => s.edges[e]!);
};

describe("extremes along edges", () => {
  it("of the distance from a point, on the rim of a square-cut 42.4 x 3.2 tube (closed form)", () => {
    const found = extremesAlong(endEdges(caseOf("tee 42.4 on 48.3"), 0), from([5, 12, 0]))!;
    // The point is 13 from the axis: 18 − 13 to the bore's edge, 13 + 21.2 to the far side of the outside.
    expect(found.least.value).toBeCloseTo(5, 12);
    expect(found.greatest.value).toBeCloseTo(34.2, 12);
    expect(found.least.at[0]).toBeCloseTo((18 * 5) / 13, 9);
    expect(found.greatest.at[1]).toBeCloseTo((-21.2 * 12) / 13, 9);
  });

  it("of no edges are none", () => {
    expect(extremesAlong([], from([0, 0, 0]))).toBeNull();
  });

  it.each(NAMED.map((c) => c.name))("of %s are what 2000 points an edge find, and never less", (name) => {
    const edges = endEdges(caseOf(name), 1);
    for (const c of [
      [3, -40, 60],
      [11, 7, 105],
      [0.5, 1, 160],
    ] as const) {
      const field = from(c);
      const { least, greatest } = extremesAlong(edges, field)!;
      let [low, high] = [Number.POSITIVE_INFINITY, 0];
      for (const e of edges) {
        for (let k = 0; k <= 2000; k++) {
          const { value } = field(evaluate(e.curve, e.t0 + ((e.t1 - e.t0) * k) / 2000));
          [low, high] = [Math.min(low, value), Math.max(high, value)];
        }
      }
      // Half a step of some 0.035 mm from an extreme the distance differs by less than step²/8 over the distance's own size.
      expect(least.value).toBeLessThan(low + 1e-12);
      expect(low - least.value).toBeLessThan(1e-4);
      expect(greatest.value).toBeGreaterThan(high - 1e-12);
      expect(greatest.value - high).toBeLessThan(1e-4);
    }
  });
});
