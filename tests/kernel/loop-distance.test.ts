/**
 * Distances from outlines against closed forms and against dense polygons (tests/support/dense.ts).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loopDistance } from "../../src/kernel/loop-distance.js";
import { circleLoop, type Loop } from "../../src/kernel/region.js";
import { polygonLoop, rectTube } from "../../src/members/index.js";
import { angleWinding, densePolygon, distanceFrom } from "../support/dense.js";

const circle = circleLoop([0, 0], 10, "wall");
const rounded = rectTube({ width: 60, depth: 40, wall: 3, outerRadius: 6, innerRadius: 3 }).region.outer;
/** An angle's outline: one corner turns inwards. */
const angle = polygonLoop([
  [0, 0],
  [40, 0],
  [40, 5],
  [5, 5],
  [5, 40],
  [0, 40],
]);

const LOOPS: readonly [string, Loop][] = [
  ["circle", circle],
  ["rounded rectangle", rounded],
  ["angle", angle],
];

describe("the distance from an outline", () => {
  it("of a circle is the radius short of or past it, in the middle too (closed form)", () => {
    expect(loopDistance(circle, [0, 13])).toEqual({ distance: 3, normal: [0, 1], foot: [0, 10] });
    expect(loopDistance(circle, [-4, 0]).distance).toBeCloseTo(-6, 14);
    expect(loopDistance(circle, [0, 0]).distance).toBe(-10);
  });

  it("is to the corner where that is nearest: 3-4-5 outside, and inside the angle's elbow (closed form)", () => {
    const out = loopDistance(angle, [43, -4]);
    expect(out.distance).toBeCloseTo(5, 14);
    expect(out.foot).toEqual([40, 0]);
    expect(out.normal[0]).toBeCloseTo(0.6, 14);
    expect(out.normal[1]).toBeCloseTo(-0.8, 14);
    // In the heel of the angle the outer sides are nearest until the elbow at (5, 5) is.
    expect(loopDistance(angle, [2.5, 2.4]).distance).toBeCloseTo(-2.4, 14);
    expect(loopDistance(angle, [4, 4]).distance).toBeCloseTo(-Math.SQRT2, 14);
  });

  it.each(LOOPS)(
    "of a %s agrees with a dense polygon, and its sign with a winding number (property)",
    (_, loop) => {
      const polygon = densePolygon(loop);
      const size = fc.double({ min: -60, max: 60, noNaN: true });
      fc.assert(
        fc.property(size, size, (u, v) => {
          const { distance, foot, normal } = loopDistance(loop, [u, v]);
          // A chord of a 2000th of a half turn on 10 mm has a sagitta of 3e-6 mm.
          expect(Math.abs(Math.abs(distance) - distanceFrom(polygon, [u, v]))).toBeLessThan(4e-6);
          if (Math.abs(distance) > 1e-5) expect(distance < 0).toBe(angleWinding(polygon, [u, v]) !== 0);
          expect(u - distance * normal[0]).toBeCloseTo(foot[0], 9);
          expect(v - distance * normal[1]).toBeCloseTo(foot[1], 9);
        }),
        { numRuns: 200 },
      );
    },
  );
});
