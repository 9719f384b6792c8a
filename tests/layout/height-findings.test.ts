/**
 * Heights over nosings against the design's own limits. Three nosings whose middle one is 20 mm proud of the chord: the best
 * straight line misses each by 10 mm (Chebyshev), so a rail needs limits 20 mm apart, and any one nosing mended lets it pass.
 */
import { describe, expect, it } from "vitest";
import { buildGuard } from "../../src/layout/index.js";
import type { Loose } from "./designs.js";

const guard = (heights: Loose, top: Loose = 1000, middle = 400): Loose => ({
  version: 1,
  job: "Three nosings (invented)",
  unit: "mm",
  side: "left",
  stair: {
    nosings: [
      { run: 0, height: 190 },
      { run: 280, height: middle },
      { run: 560, height: 570 },
    ],
  },
  sections: { rail: "round 48.3 x 3.2", post: "round 42.4 x 3.2" },
  rails: [{ role: "top", section: "rail" }],
  posts: { section: "post" },
  legs: [{ along: "stair", top, heights, posts: { onTreads: [1, 2], behindNosing: 80 } }],
});
const found = (document: Loose) => buildGuard(document).diagnostics;

describe("heights over nosings", () => {
  it("say when no straight rail keeps them, and which nosing is in the way", () => {
    const [own, ...others] = found(guard({ least: 990.5, most: 1009.5 }));
    expect(others).toEqual([]);
    expect(own).toMatchObject({ code: "heights-no-rail", severity: "warning", path: "legs[0].heights" });
    expect(own?.values.needs).toBeCloseTo(20, 9);
    expect(own?.message).toMatch(/in the way is nosing 1, 2 or 3; .* at least 20\.0 mm/);
  });

  it("name the one nosing out of five that is off", () => {
    const document = guard({ least: 998, most: 1002 });
    // 190 + 180 a step, the fourth 12 mm too high.
    document.stair.nosings = [190, 370, 550, 742, 910].map((height, i) => ({ run: 280 * i, height }));
    expect(found(document).map((own) => [own.code, own.values.nosing])).toEqual([["heights-no-rail", 4]]);
    expect(found(document)[0]?.message).toMatch(/in the way is nosing 4;/);
  });

  it("say nothing when the rail keeps them", () => {
    expect(found(guard({ least: 989.9, most: 1010.1 }))).toEqual([]);
    expect(found(guard(undefined))).toEqual([]);
  });

  it("say over which nosing the rail is outside though a straight one could keep them", () => {
    // Nosings 1 and 3 are 10 mm under the line, 2 as much over it: 1011, 991, 1011 over them.
    const [own] = found(guard({ least: 989.9, most: 1010.1 }, 1001));
    expect(own).toMatchObject({ code: "height-outside", severity: "warning", path: "legs[0].heights" });
    expect(own?.values.got).toBeCloseTo(1011, 9);
    expect(own?.message).toMatch(/over nosing 1 \(nosings 1, 3 are outside\)/);
    const [low] = found(guard({ least: 989.9, most: 1010.1 }, 999));
    expect(low?.values.got).toBeCloseTo(989, 9);
    expect(low?.message).toMatch(/over nosing 2\.$/);
  });

  it("have to be in order", () => {
    const [own] = found(guard({ least: 1010, most: 990 }));
    expect(own).toMatchObject({ code: "bad-value", path: "legs[0].heights" });
  });
});
