/** Overlapping boxes against trying every pair. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { forEachOverlap } from "../../../src/kernel/mesh/box-tree.js";

function found(boxes: Float64Array): string[] {
  const pairs: string[] = [];
  forEachOverlap(boxes, (i, j) => pairs.push(`${Math.min(i, j)}-${Math.max(i, j)}`));
  return pairs.sort();
}

function everyPair(boxes: Float64Array): string[] {
  const pairs: string[] = [];
  for (let i = 0; i < boxes.length / 6; i++) {
    for (let j = i + 1; j < boxes.length / 6; j++) {
      const apart = [0, 1, 2].some(
        (k) => boxes[6 * i + k]! > boxes[6 * j + 3 + k]! || boxes[6 * j + k]! > boxes[6 * i + 3 + k]!,
      );
      if (!apart) pairs.push(`${i}-${j}`);
    }
  }
  return pairs.sort();
}

describe("forEachOverlap", () => {
  const corner = fc.integer({ min: 0, max: 20 });
  const size = fc.integer({ min: 0, max: 6 });
  const box = fc
    .tuple(corner, corner, corner, size, size, size)
    .map(([x, y, z, a, b, c]) => [x, y, z, x + a, y + b, z + c]);

  it("visits each overlapping pair once and no other", () => {
    let pairs = 0;
    fc.assert(
      fc.property(fc.array(box, { minLength: 40, maxLength: 90 }), (list) => {
        const boxes = Float64Array.from(list.flat());
        const expected = everyPair(boxes);
        pairs += expected.length;
        expect(found(boxes)).toEqual(expected);
      }),
    );
    expect(pairs).toBeGreaterThan(1000);
  });

  it("takes boxes all in one place or in one line", () => {
    for (const step of [0, 1, 100]) {
      const boxes = Float64Array.from({ length: 6 * 33 }, (_, i) =>
        i % 6 === 0 || i % 6 === 3 ? step * Math.floor(i / 6) : 0,
      );
      expect(found(boxes)).toEqual(everyPair(boxes));
    }
  });
});
