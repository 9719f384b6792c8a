/** How far sections reach, against their own nominal sizes and a brute-force walk round the outline. */
import { describe, expect, it } from "vitest";
import { pointOn } from "../../src/kernel/region.js";
import { sectionExtent } from "../../src/layout/section-extent.js";
import { parseSection } from "../../src/members/sections/parse-section.js";

describe("sectionExtent", () => {
  it.each([
    ["round 48.3 x 3.2", 48.3, 48.3],
    ["square 40 x 3", 40, 40],
    ["rect 60 x 30 x 2.5", 60, 30],
    ["flat 50 x 10", 50, 10],
    ["round bar 16", 16, 16],
  ])("of %s is its nominal size", (words, width, depth) => {
    const read = parseSection(words, "mm");
    if (!read.ok) throw new Error(words);
    const extent = sectionExtent(read.value);
    expect(extent.depth).toBeCloseTo(depth, 12);
    expect(extent.halfWidth).toBeCloseTo(width / 2, 12);
    expect(extent.above).toBeCloseTo(depth / 2, 12);
    const walk = read.value.region.outer.flatMap((own) =>
      Array.from({ length: 2001 }, (_, i) => pointOn(own, i / 2000)),
    );
    expect(Math.max(...walk.map((p) => p[1]))).toBeCloseTo(extent.above, 4);
    expect(-Math.min(...walk.map((p) => p[1]))).toBeCloseTo(extent.below, 4);
  });
});
