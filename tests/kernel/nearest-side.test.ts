/** The nearest place on an outline, against a search over dense points of it. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestOnLoops } from "../../src/kernel/nearest-side.js";
import { loopsOf, pointOn } from "../../src/kernel/region.js";
import { rectTube, roundTube } from "../../src/members/index.js";

const SECTIONS = [
  rectTube({ width: 60, depth: 40, wall: 4, outerRadius: 8, innerRadius: 4 }).region,
  rectTube({ width: 50, depth: 50, wall: 5, outerRadius: 0, innerRadius: 0 }).region,
  roundTube({ od: 42.4, wall: 3.2 }).region,
];

describe("nearestOnLoops", () => {
  it.each(SECTIONS)("is no farther than any of 200 places on every side", (section) => {
    fc.assert(
      fc.property(
        fc.double({ min: -45, max: 45, noNaN: true }),
        fc.double({ min: -45, max: 45, noNaN: true }),
        (u, v) => {
          const away = (p: readonly [number, number]): number => Math.hypot(p[0] - u, p[1] - v);
          const { loop, segment, t } = nearestOnLoops(section, [u, v]);
          expect(t >= 0 && t <= 1).toBe(true);
          const found = away(pointOn(loopsOf(section)[loop]![segment]!, t));
          for (const s of loopsOf(section).flat()) {
            for (let k = 0; k <= 200; k++) expect(found).toBeLessThan(away(pointOn(s, k / 200)) + 1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
