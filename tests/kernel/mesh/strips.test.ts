/** Strips between rulings: every triangle keeps to one strip, and together they cover the unrolled face. */
import { describe, expect, it } from "vitest";
import { flatRoom, NO_RULING } from "../../../src/kernel/mesh/flat-face.js";
import { newRuns, splitLoop } from "../../../src/kernel/mesh/runs.js";
import { fillStrips } from "../../../src/kernel/mesh/strips.js";
import { type Point, shoelace } from "../../support/dense.js";

const STEP = 2;

function strips(...loops: readonly (readonly Point[])[]) {
  const all = loops.flat();
  const [flat, runs] = [flatRoom(), newRuns()];
  const out: number[] = [];
  let v = 0;
  for (const loop of loops) {
    const start = flat.size;
    for (const [x, y] of loop) {
      const at = flat.size++;
      [flat.vertex[at], flat.x[at], flat.y[at]] = [v++, x, y];
      flat.ruling[at] = Number.isInteger(x / STEP) ? x / STEP : NO_RULING;
    }
    splitLoop(flat, start, STEP, runs);
  }
  const ok = fillStrips(flat, runs, () => 0, out);
  const triangles = Array.from({ length: out.length / 3 }, (_, t) =>
    out.slice(3 * t, 3 * t + 3).map((v) => all[v]!),
  );
  return { ok, out, triangles, area: loops.reduce((sum, l) => sum + shoelace(l), 0), count: all.length };
}

function check(...loops: readonly (readonly Point[])[]): void {
  const { ok, out, triangles, area, count } = strips(...loops);
  expect(ok).toBe(true);
  expect(new Set(out).size).toBe(count);
  const areas = triangles.map((t) => shoelace(t));
  expect(Math.min(...areas)).toBeGreaterThan(0);
  expect(areas.reduce((a, b) => a + b) / area).toBeCloseTo(1, 12);
  for (const t of triangles) {
    const xs = t.map((p) => p[0] / STEP);
    expect(Math.ceil(Math.max(...xs) - 1e-12) - Math.floor(Math.min(...xs) + 1e-12)).toBeLessThanOrEqual(1);
  }
}

/** A chain over x = 0, 2, 4 … with points between rulings where `extra` says so. */
const chain = (n: number, z: (x: number) => number, extra: readonly number[] = []): Point[] =>
  [...Array.from({ length: n + 1 }, (_, k) => k * STEP), ...extra]
    .sort((a, b) => a - b)
    .map((x): Point => [x, z(x)]);

describe("fillStrips", () => {
  it("fills a half wall between a square cut and a cope", () => {
    check([...chain(10, () => 0), ...chain(10, (x) => 100 + 5 * Math.sin(x / 3)).reverse()]);
  });

  it("fills it with points between the rulings on either side", () => {
    check([
      ...chain(10, (x) => -Math.cos(x / 4), [0.7, 5, 13.3]),
      ...chain(10, (x) => 100 + 5 * Math.sin(x / 3), [1, 1.5, 9.2, 19]).reverse(),
    ]);
  });

  it("fills a face that begins and ends between rulings", () => {
    const low: Point[] = [
      [0.5, 0],
      [2, 0.2],
      [4, 0],
      [5.5, 0],
    ];
    const high: Point[] = [
      [0.5, 30],
      [2, 31],
      [4, 32],
      [5.5, 30],
    ];
    check([...low, ...high.reverse()]);
  });

  it("fills a lens that comes to a point at both ends", () => {
    check([
      ...chain(6, (x) => -x * (12 - x)),
      ...chain(6, (x) => x * (12 - x))
        .slice(1, -1)
        .reverse(),
    ]);
  });

  it("fills a face with a hole across several rulings", () => {
    const hole: Point[] = [
      [5, 50],
      [6, 54],
      [8, 56],
      [10, 54],
      [11, 50],
      [10, 46],
      [8, 44],
      [6, 46],
    ];
    check([...chain(10, () => 0), ...chain(10, () => 100).reverse()], hole);
  });

  it("fills a face with a hole inside one strip", () => {
    check(
      [...chain(3, () => 0), ...chain(3, () => 20).reverse()],
      [
        [2.5, 10],
        [3, 12],
        [3.5, 10],
      ],
    );
  });

  it("says when the loop crosses a ruling without a point there", () => {
    expect(
      strips([
        [0, 0],
        [5, 0],
        [5, 10],
        [0, 10],
      ]).ok,
    ).toBe(false);
  });
});
