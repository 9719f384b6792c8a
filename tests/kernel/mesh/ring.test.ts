/** Rings: strips between two chains round one centre cover the shoelace area with every vertex. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ringStrip } from "../../../src/kernel/mesh/ring.js";
import { type Point, shoelace } from "../../support/dense.js";

function strip(outer: readonly Point[], inner: readonly Point[]) {
  const all = [...outer, ...inner];
  const out: number[] = [];
  const ok = ringStrip(
    { x: all.map((p) => p[0]), y: all.map((p) => p[1]) },
    outer.map((_, i) => i),
    inner.map((_, i) => outer.length + i),
    out,
  );
  const triangles = Array.from({ length: out.length / 3 }, (_, t) =>
    out.slice(3 * t, 3 * t + 3).map((v) => all[v]!),
  );
  return { ok, out, triangles };
}

const ellipse = (n: number, a: number, b: number, phase: number): Point[] =>
  Array.from({ length: n }, (_, k) => {
    const angle = phase + (2 * Math.PI * k) / n;
    return [a * Math.cos(angle), b * Math.sin(angle)];
  });

describe("ringStrip", () => {
  it("fills rings of any two counts and phases", () => {
    const count = fc.integer({ min: 8, max: 60 });
    const phase = fc.integer({ min: 0, max: 60 }).map((k) => k / 10);
    fc.assert(
      fc.property(count, count, phase, phase, (n, m, p, q) => {
        const [outer, inner] = [ellipse(n, 30, 24, p), ellipse(m, 18, 15, q).reverse()];
        const { ok, out, triangles } = strip(outer, inner);
        expect(ok).toBe(true);
        expect(triangles).toHaveLength(n + m);
        expect(new Set(out).size).toBe(n + m);
        const areas = triangles.map((t) => shoelace(t));
        expect(Math.min(...areas)).toBeGreaterThan(0);
        expect(areas.reduce((a, b) => a + b) / (shoelace(outer) + shoelace(inner))).toBeCloseTo(1, 12);
      }),
    );
  });

  it("adds nothing where the chains do not turn round one centre", () => {
    const far = ellipse(12, 5, 5, 0).map(([x, y]): Point => [x + 22, y]);
    const notch: Point[] = [
      [0, 0],
      [40, 0],
      [40, 40],
      [20, 5],
      [0, 40],
    ];
    for (const outer of [ellipse(20, 30, 24, 0).map(([x, y]): Point => [x - 20, y]), notch]) {
      const { ok, out } = strip(outer, [...far].reverse());
      expect(ok).toBe(false);
      expect(out).toEqual([]);
    }
  });
});
