/** Fillings keep every vertex, turn one way, cover the shoelace area and cross nothing. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillPolygon } from "../../../src/kernel/mesh/polygon.js";
import { type Point, shoelace } from "../../support/dense.js";

function fill(outer: readonly Point[], ...holes: readonly Point[][]) {
  const all = [outer, ...holes].flat();
  const index = (list: readonly Point[], start: number): number[] => list.map((_, i) => start + i);
  let start = outer.length;
  const names = holes.map((h) => {
    const own = index(h, start);
    start += h.length;
    return own;
  });
  const out: number[] = [];
  const points = { x: all.map((p) => p[0]), y: all.map((p) => p[1]) };
  const ok = fillPolygon(points, index(outer, 0), names, out);
  const triangles = Array.from({ length: out.length / 3 }, (_, t) => out.slice(3 * t, 3 * t + 3));
  return { ok, triangles, all };
}

/** Everything a filling must be. */
function check(outer: readonly Point[], ...holes: readonly Point[][]): void {
  const { ok, triangles, all } = fill(outer, ...holes);
  expect(ok).toBe(true);
  const areas = triangles.map((t) => shoelace(t.map((v) => all[v]!)));
  const expected = [outer, ...holes].reduce((sum, l) => sum + shoelace(l), 0);
  expect(Math.min(...areas)).toBeGreaterThan(0);
  // Positive areas that sum to the polygon's own, all sides of it used: nothing overlaps.
  expect(areas.reduce((a, b) => a + b) / expected).toBeCloseTo(1, 9);
  expect(triangles).toHaveLength(all.length - 2 + 2 * holes.length);
  const sides = new Map<string, number>();
  for (const t of triangles) {
    for (let k = 0; k < 3; k++)
      sides.set(`${t[k]},${t[(k + 1) % 3]}`, (sides.get(`${t[k]},${t[(k + 1) % 3]}`) ?? 0) + 1);
  }
  expect([...sides.values()].every((n) => n === 1)).toBe(true);
  let start = 0;
  for (const loop of [outer, ...holes]) {
    for (let i = 0; i < loop.length; i++)
      expect(sides.has(`${start + i},${start + ((i + 1) % loop.length)}`)).toBe(true);
    start += loop.length;
  }
}

const star = (radii: readonly number[], centre: Point = [0, 0]): Point[] =>
  radii.map((r, i) => {
    const angle = (2 * Math.PI * i) / radii.length;
    return [centre[0] + r * Math.cos(angle), centre[1] + r * Math.sin(angle)];
  });
const radius = fc.integer({ min: 40, max: 400 }).map((k) => k / 10);

describe("fillPolygon", () => {
  it("fills random stars", () => {
    fc.assert(fc.property(fc.array(radius, { minLength: 3, maxLength: 40 }), (radii) => check(star(radii))));
  });

  it("fills random stars with one and two holes", () => {
    const holes = fc.array(radius, { minLength: 3, maxLength: 15 });
    fc.assert(
      fc.property(fc.array(radius, { minLength: 8, maxLength: 40 }), holes, holes, (radii, a, b) => {
        const outer = star(radii.map((r) => r + 200));
        const hole = (r: readonly number[], at: Point): Point[] => star(r, at).reverse();
        check(outer, hole(a, [-70, 10]));
        check(outer, hole(a, [-70, 10]), hole(b, [70, -10]));
      }),
      { numRuns: 60 },
    );
  });

  it("keeps vertices on straight sides: they belong to the neighbours too", () => {
    check([
      [0, 0],
      [5, 0],
      [10, 0],
      [20, 0],
      [20, 5],
      [20, 10],
      [10, 10],
      [0, 10],
      [0, 4],
    ]);
    check(
      [
        [0, 0],
        [30, 0],
        [30, 30],
        [0, 30],
      ],
      [
        [10, 10],
        [10, 15],
        [10, 20],
        [20, 20],
        [20, 10],
      ],
    );
  });

  it("fills a comb and a spiral", () => {
    const comb = Array.from({ length: 12 }, (_, k): Point => [k, k % 2 === 0 ? 1 : 9]);
    check([[0, 0], [11, 0], ...comb.reverse()]);
    const arm = (r: number): Point[] =>
      Array.from({ length: 30 }, (_, k): Point => [(r + k) * Math.cos(k / 3), (r + k) * Math.sin(k / 3)]);
    check([...arm(14), ...arm(10).reverse()]);
  });

  it("says when sides cross", () => {
    expect(
      fill([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]).ok,
    ).toBe(false);
  });
});
