/**
 * The best filling against areas and counts (Euler: a ring of n vertices has n − 2 triangles), and a ring that greedy ears
 * strand.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillPolygon } from "../../../src/kernel/mesh/polygon.js";
import { bestFilling } from "../../../src/kernel/mesh/polygon-best.js";

type Point = readonly [number, number];

function twiceArea(a: Point, b: Point, c: Point): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
}

function shoelace(ring: readonly Point[]): number {
  return ring.reduce((sum, p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return sum + p[0] * q[1] - p[1] * q[0];
  }, 0);
}

describe("bestFilling", () => {
  it("covers a star-shaped ring exactly once (property: areas all positive and adding up)", () => {
    const star = fc
      .array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 24 })
      .map((radii) =>
        radii.map((r, k): Point => {
          const a = (2 * Math.PI * k) / radii.length;
          return [r * Math.cos(a), r * Math.sin(a)];
        }),
      );
    fc.assert(
      fc.property(star, (ring) => {
        const area = (i: number, k: number, j: number): number => twiceArea(ring[i]!, ring[k]!, ring[j]!);
        const found = bestFilling(ring.length, (i, k, j) =>
          area(i, k, j) > 0 ? 0 : Number.NEGATIVE_INFINITY,
        )!;
        expect(found).toHaveLength(ring.length - 2);
        expect(found.reduce((sum, [i, k, j]) => sum + area(i, k, j), 0)).toBeCloseTo(shoelace(ring), 12);
      }),
    );
  });

  it("finds nothing where there is nothing: all on one line", () => {
    expect(bestFilling(4, () => Number.NEGATIVE_INFINITY)).toBeNull();
  });
});

describe("a ring with four vertices a rounding off one line", () => {
  // The cope of a 40 x 30 x 2.5 tube with 5 mm corners, 0.205 mm off a 48.3 header: greedy ears leave 68, 31, 24, 111.
  const ring: readonly Point[] = [
    [20.42639377266748, 1013.772504923523],
    [19.278255420941232, 1014.3301270189222],
    [17.60835020498765, 1014.8296291314454],
    [17.50833751942927, 1014.8490340735414],
    [17.50833751942927, 1012.1824599529809],
    [18.251224325761868, 1011.7677669529663],
    [19.00715207357731, 1010.9567085809127],
    [19.27825542094115, 1010],
    [19.27825542094115, 990],
    [19.00715207357731, 989.0432914190873],
    [18.251224325761868, 988.2322330470337],
    [17.50833751942927, 987.8175400470191],
    [17.50833751942927, 985.1509659264586],
    [17.60835020498765, 985.1703708685546],
    [19.278255420941232, 985.6698729810778],
    [20.42639377266748, 986.227495076477],
  ];

  it("is filled without a flat triangle", () => {
    // Walked so that the material is on the left.
    const ccw = shoelace(ring) > 0 ? ring : [...ring].reverse();
    const points = { x: ccw.map((p) => p[0]), y: ccw.map((p) => p[1]) };
    const out: number[] = [];
    expect(
      fillPolygon(
        points,
        ccw.map((_, i) => i),
        [],
        out,
      ),
    ).toBe(true);
    expect(out).toHaveLength(3 * (ring.length - 2));
    let sum = 0;
    for (let t = 0; t < out.length; t += 3) {
      const area = twiceArea(ccw[out[t]!]!, ccw[out[t + 1]!]!, ccw[out[t + 2]!]!);
      expect(area).toBeGreaterThan(1e-6);
      sum += area;
    }
    expect(sum).toBeCloseTo(Math.abs(shoelace(ring)), 9);
  });
});
