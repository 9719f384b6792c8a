/**
 * Section constructors. Sources: closed forms of area and length (textbook), the definition of a closed loop, EN 10219-2
 * radii (in properties.test.ts).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../../src/kernel/diagnostic.js";
import { pointOn } from "../../../src/kernel/region.js";
import { LEAST_RADIUS_MM } from "../../../src/kernel/tolerance.js";
import { sectionProperties } from "../../../src/members/properties.js";
import { rectBar, rectTube } from "../../../src/members/sections/rect.js";
import { roundBar, roundTube } from "../../../src/members/sections/round.js";
import { expectSound, labels } from "../sound.js";

describe("round", () => {
  it("tube: two circles, wall outside and bore inside", () => {
    const section = roundTube({ od: 48.3, wall: 3.2 });
    expectSound(section);
    expect(section).toMatchObject({
      name: "round 48.3 x 3.2",
      source: "as given",
      shape: { kind: "round-tube", od: 48.3, wall: 3.2 },
    });
    expect(labels(section.region.outer)).toEqual(["wall", "wall"]);
    expect(labels(section.region.holes[0]!)).toEqual(["bore", "bore"]);
  });

  it("bar: one circle", () => {
    expectSound(roundBar({ od: 16 }));
    expect(roundBar({ od: 15.875 }).name).toBe("round bar 15.88");
    expect(roundBar({ od: 16, name: "picket", source: "mill sheet" })).toMatchObject({
      name: "picket",
      source: "mill sheet",
    });
  });
});

describe("rectangular", () => {
  it("names the sides after the section's axes: +u is where u is greatest, top where v is", () => {
    const section = rectTube({ width: 60, depth: 40, wall: 3 });
    expect(labels(section.region.outer)).toEqual([
      "+u",
      "corner",
      "top",
      "corner",
      "-u",
      "corner",
      "bottom",
      "corner",
    ]);
    expect(new Set(labels(section.region.holes[0]!))).toEqual(
      new Set(["inner +u", "inner corner", "inner top", "inner -u", "inner bottom"]),
    );
    const middle = (label: string) =>
      pointOn(section.region.outer.find((side) => side.label === label)!, 0.5);
    expect([middle("+u"), middle("top"), middle("-u"), middle("bottom")]).toEqual([
      [30, 0],
      [0, 20],
      [-30, 0],
      [0, -20],
    ]);
  });

  it("sharp corners have no arcs, full rounding has no straights", () => {
    expect(labels(rectBar({ width: 50, depth: 10 }).region.outer)).toEqual(["+u", "top", "-u", "bottom"]);
    expect(labels(rectBar({ width: 50, depth: 10, edgeRadius: 5 }).region.outer)).toEqual([
      ...["corner", "top", "corner", "corner", "bottom", "corner"],
    ]);
    const disc = rectBar({ width: 20, depth: 20, edgeRadius: 10 });
    expect(labels(disc.region.outer)).toEqual(["corner", "corner", "corner", "corner"]);
    expect(sectionProperties(disc).area).toBeCloseTo(Math.PI * 100, 9);
    expect(labels(rectTube({ width: 30, depth: 30, wall: 2, outerRadius: 2 }).region.holes[0]!)).toHaveLength(
      4,
    );
  });

  it("names square and flat as the trade does, width before depth", () => {
    expect(rectTube({ width: 40, depth: 40, wall: 3 }).name).toBe("square 40 x 3");
    expect(rectTube({ width: 50.8, depth: 25.4, wall: 2.1082 }).name).toBe("rect 50.8 x 25.4 x 2.11");
    expect(rectBar({ width: 50, depth: 10 }).name).toBe("flat 50 x 10");
    expect(rectBar({ width: 12, depth: 12 }).name).toBe("square bar 12");
  });

  it("keeps default radii possible in small thick tubes", () => {
    const section = rectTube({ width: 12, depth: 12, wall: 3.2 });
    expectSound(section);
    expect(section.shape).toMatchObject({ outerRadius: 6 });
  });

  // The bound is ours: 1 micrometre, far below the corner radii of EN 10219-2 (1.6 to 3 walls), so no real tube meets it.
  it("takes radii of 0 and from 0.001 mm up, and defaults that would be less are sharp", () => {
    for (const radius of [0, 0.001, 0.5]) {
      expectSound(rectBar({ width: 50, depth: 10, edgeRadius: radius }));
      expectSound(rectTube({ width: 40, depth: 40, wall: 2, outerRadius: 2, innerRadius: radius }));
    }
    // In doubles 0.1 + 0.2 is a little above 0.3: the difference is rounding, not a radius.
    for (const [outerRadius, wall] of [
      [0.1 + 0.2, 0.3],
      [2.0005, 2],
      [1, 3],
    ] as const) {
      const tube = rectTube({ width: 40, depth: 40, wall, outerRadius });
      expect(tube.shape).toMatchObject({ outerRadius, innerRadius: 0 });
      expectSound(tube);
    }
    expect(rectTube({ width: 40, depth: 40, wall: 3.001, outerRadius: 6 }).shape).toMatchObject({
      innerRadius: 6 - 3.001,
    });
  });

  it("is sound for every allowed size, with 4r(1 − π/4)·r less area than sharp", () => {
    const size = fc.double({ min: 5, max: 200, noNaN: true });
    const part = fc.double({ min: 0, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(size, size, part, (width, depth, share) => {
        const asked = Math.min(share * Math.min(width, depth), Math.min(width, depth) / 2);
        const radius = asked < LEAST_RADIUS_MM ? 0 : asked;
        const bar = rectBar({ width, depth, edgeRadius: radius });
        const want = width * depth - (4 - Math.PI) * radius * radius;
        expect(Math.abs(sectionProperties(bar).area - want)).toBeLessThan(1e-12 * width * depth * 10);
        const wall = 0.9 * (share + 0.01) * Math.min(width, depth);
        if (wall < Math.min(width, depth) / 2) expectSound(rectTube({ width, depth, wall }));
      }),
    );
  });
});

describe("sizes that are no section throw bad-section and name the size", () => {
  it.each([
    [() => roundTube({ od: 0, wall: 1 }), "od"],
    [() => roundTube({ od: -48.3, wall: 3 }), "od"],
    [() => roundTube({ od: Number.NaN, wall: 3 }), "od"],
    [() => roundTube({ od: Number.POSITIVE_INFINITY, wall: 3 }), "od"],
    [() => roundTube({ od: 20, wall: 0 }), "wall"],
    [() => roundTube({ od: 20, wall: 10 }), "below 10 mm"],
    [() => roundBar({ od: Number.NaN }), "od"],
    [() => rectTube({ width: 40, depth: 20, wall: 10 }), "below 10 mm"],
    [() => rectTube({ width: 40, depth: 20, wall: 2, outerRadius: 10.1 }), "outerRadius"],
    [() => rectTube({ width: 40, depth: 20, wall: 2, outerRadius: -1 }), "outerRadius"],
    [() => rectTube({ width: 40, depth: 20, wall: 2, innerRadius: 8.1 }), "innerRadius"],
    [
      () => rectTube({ width: 40, depth: 40, wall: 2, outerRadius: 15, innerRadius: 0 }),
      "wall in the corner",
    ],
    [
      () => rectTube({ width: 40, depth: 40, wall: 2, outerRadius: 0.00099 }),
      "outerRadius to be 0 or at least",
    ],
    [
      () => rectTube({ width: 40, depth: 40, wall: 2, outerRadius: 2, innerRadius: 1e-9 }),
      "a radius no tool makes",
    ],
    [() => rectBar({ width: 50, depth: 10, edgeRadius: Number.MIN_VALUE }), "edgeRadius to be 0 or at least"],
    [() => rectBar({ width: 0, depth: 10 }), "width"],
    [() => rectBar({ width: 50, depth: 10, edgeRadius: 5.5 }), "edgeRadius"],
  ])("case %#", (act, part) => {
    expect(act).toThrow(RakewrightError);
    expect(act).toThrow(/^bad-section: /);
    expect(act).toThrow(part);
  });
});
