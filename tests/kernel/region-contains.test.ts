/** Inside or outside, against the winding number of a dense polygon by summed angles. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loopsOf } from "../../src/kernel/region.js";
import { regionContains } from "../../src/kernel/region-contains.js";
import { mapRegion, turnLoop } from "../support/bar-moves.js";
import { box, rect, rod, tube } from "../support/bars.js";
import { angleWinding, densePolygon, distanceFrom } from "../support/dense.js";

describe("regionContains", () => {
  it.each([
    ["rod", rod(48)],
    ["tube", tube(48, 5)],
    ["flat bar", box(50, 10)],
    ["rounded tube", rect(50, 40, 4, 9, 5)],
    ["turned tube", mapRegion(rect(50, 40, 4, 9, 5), (l) => turnLoop(l, 0.4))],
    ["turned rod", mapRegion(tube(48, 5), (l) => turnLoop(l, 1.1))],
  ])("agrees on a %s", (_, region) => {
    const polygons = loopsOf(region).map((l) => densePolygon(l, 400));
    const place = fc.integer({ min: -300, max: 300 }).map((k) => k / 10);
    fc.assert(
      fc.property(place, place, (u, v) => {
        // A chord of 400 to half a turn leaves the arc by less than 1e-3 mm.
        fc.pre(polygons.every((p) => distanceFrom(p, [u, v]) > 1e-3));
        const inside = polygons.reduce((sum, p) => sum + angleWinding(p, [u, v]), 0) === 1;
        expect(regionContains(region, [u, v])).toBe(inside);
      }),
      { numRuns: 150 },
    );
  });

  it("is not led astray by a ray through corners and crowns", () => {
    expect(regionContains(rod(48), [-20, 0])).toBe(true);
    expect(regionContains(rod(48), [-30, 0])).toBe(false);
    expect(regionContains(rod(48), [-30, 24])).toBe(false);
    expect(regionContains(box(40, 20), [-30, 10])).toBe(false);
    expect(regionContains(tube(48, 5), [0, 0])).toBe(false);
  });
});
