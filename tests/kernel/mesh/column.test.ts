/** Columns: floors and ceilings with anything between them cover the shoelace area, every triangle the right way round. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addChain, fillColumn, newChains } from "../../../src/kernel/mesh/column.js";
import { flatRoom, NO_RULING } from "../../../src/kernel/mesh/flat-face.js";
import { fillLadder } from "../../../src/kernel/mesh/ladder.js";
import { type Point, shoelace } from "../../support/dense.js";

/** The column's rulings are x = 0 (number 0) and x = 10 (number 1). */
function lay(points: readonly Point[]) {
  const flat = flatRoom();
  for (const [v, [x, y]] of points.entries()) {
    const at = flat.size++;
    [flat.vertex[at], flat.x[at], flat.y[at]] = [v, x, y];
    flat.ruling[at] = x === 0 ? 0 : x === 10 ? 1 : NO_RULING;
  }
  return flat;
}

function covers(points: readonly Point[], out: readonly number[], area: number): void {
  let sum = 0;
  for (let t = 0; t < out.length; t += 3) {
    const own = shoelace(out.slice(t, t + 3).map((v) => points[v]!));
    expect(own).toBeGreaterThan(0);
    sum += own;
  }
  expect(sum / area).toBeCloseTo(1, 12);
}

const floor: Point[] = [
  [0, 0],
  [4, 0.5],
  [10, 0.2],
];
const ceiling: Point[] = [
  [10, 101],
  [6, 100],
  [0, 100.5],
];
/** Out of the right side and back to it, with its tip at x = 7: the hole's boundary has the material on its left. */
const notch = (y: number): Point[] => [
  [10, y - 2],
  [7, y],
  [10, y + 2],
];
const hole = (x: number, y: number): Point[] => [
  [x - 1, y],
  [x, y + 2],
  [x + 1, y],
  [x, y - 2],
  [x - 1, y],
];

describe("fillColumn", () => {
  it("fills between holes that end inside it, in whatever order they come (property)", () => {
    const order = fc.shuffledSubarray([20, 40, 60, 80], { minLength: 1 });
    fc.assert(
      fc.property(order, fc.boolean(), (heights, notched) => {
        const points = [...floor, ...ceiling];
        const chains = newChains();
        addChain(chains, false, 5, 3);
        addChain(chains, true, 0, 2);
        let area = shoelace(points);
        for (const y of heights) {
          const own = notched ? notch(y) : hole(5, y);
          const first = points.length;
          points.push(...own);
          area += notched ? shoelace(own) : shoelace(own.slice(1));
          if (notched) {
            addChain(chains, false, first + 1, first);
            addChain(chains, true, first + 1, first + 2);
          } else {
            addChain(chains, true, first, first + 2);
            addChain(chains, false, first + 4, first + 2);
          }
        }
        const flat = lay(points);
        // A closed hole comes back to where it began.
        if (!notched) for (const k of heights.keys()) flat.vertex[6 + 5 * k + 4] = 6 + 5 * k;
        const out: number[] = [];
        expect(fillColumn(flat, chains, 0, out)).toBe(true);
        covers(points, out, area);
        expect(new Set(out).size).toBe(points.length - (notched ? 0 : heights.length));
      }),
    );
  });

  it("keeps a point at which a neighbour's hole touches its side, and passes over one where it has no material", () => {
    const points: Point[] = [...floor, ...ceiling, [10, 50], [10, 200]];
    const chains = newChains();
    for (const v of [7, 6]) {
      addChain(chains, false, v, v);
      addChain(chains, true, v, v);
    }
    addChain(chains, true, 0, 2);
    addChain(chains, false, 5, 3);
    const out: number[] = [];
    expect(fillColumn(lay(points), chains, 0, out)).toBe(true);
    covers(points, out, shoelace(points.slice(0, 6)));
    expect(new Set(out)).toEqual(new Set([0, 1, 2, 3, 4, 5, 6]));
  });

  it("adds nothing where floors and ceilings do not take turns", () => {
    const chains = newChains();
    addChain(chains, true, 0, 2);
    addChain(chains, true, 0, 2);
    const out = [7];
    expect(fillColumn(lay([...floor, ...ceiling]), chains, 0, out)).toBe(false);
    expect(out).toEqual([7]);
  });
});

describe("fillLadder", () => {
  it("fills between chains that share one end or both, and says when a triangle would turn over", () => {
    const lens: Point[] = [
      [0, 0],
      [3, -2],
      [6, -2],
      [9, 0],
      [6, 3],
      [3, 3],
      [0, 0],
    ];
    const flat = lay(lens);
    flat.vertex[6] = 0;
    const out: number[] = [];
    expect(fillLadder(flat, 0, 3, 6, 3, out)).toBe(true);
    covers(lens, out, shoelace(lens.slice(0, 6)));
    const crossed = lens.map(([x, y], i): Point => [x, i === 4 ? -5 : y]);
    const bad = lay(crossed);
    bad.vertex[6] = 0;
    expect(fillLadder(bad, 0, 3, 6, 3, [])).toBe(false);
  });
});
