import { describe, expect, it } from "vitest";
import { outlinePlace, wallOf } from "../../src/joints/wall.js";
import { pointOn } from "../../src/kernel/region.js";
import { regionContains } from "../../src/kernel/region-contains.js";
import {
  angleBar,
  channelBar,
  customSection,
  polygonLoop,
  rectBar,
  rectTube,
  roundBar,
  roundTube,
} from "../../src/members/index.js";

describe("wallOf", () => {
  it("is the wall of a tube, and goes to the middle of a bar (definition)", () => {
    expect(wallOf(roundTube({ od: 42.4, wall: 3.2 }))).toBe(3.2);
    expect(wallOf(rectTube({ width: 60, depth: 40, wall: 2.5 }))).toBe(2.5);
    expect(wallOf(roundBar({ od: 20 }))).toBe(10);
    expect(wallOf(rectBar({ width: 50, depth: 10 }))).toBe(5);
    expect(wallOf(angleBar({ width: 50, depth: 40, thickness: 5 }))).toBe(5);
    expect(wallOf(channelBar({ width: 50, depth: 100, web: 5, flange: 8 }))).toBe(5);
    const plate = customSection({
      name: "plate",
      outer: polygonLoop([
        [-5, -5],
        [5, -5],
        [5, 5],
        [-5, 5],
      ]),
    });
    expect(wallOf(plate)).toBe(0);
  });
});

describe("outlinePlace", () => {
  it("steps from the outline into the material and no deeper than the wall (second route: inside tests)", () => {
    for (const section of [
      roundTube({ od: 42.4, wall: 3.2 }),
      rectTube({ width: 60, depth: 40, wall: 2.5 }),
      rectBar({ width: 50, depth: 10, edgeRadius: 2 }),
      rectTube({ width: 40, depth: 40, wall: 3, outerRadius: 0, innerRadius: 0 }),
      angleBar({ width: 50, depth: 40, thickness: 5 }),
      channelBar({ width: 50, depth: 100, web: 5, flange: 8 }),
    ]) {
      const wall = wallOf(section);
      for (const segment of section.region.outer) {
        for (const t of [0.2, 0.5, 0.8]) {
          const { u, v, iu: a, iv: b } = outlinePlace(segment, t);
          const [pu, pv] = pointOn(segment, t);
          expect(Math.hypot(u - pu, v - pv)).toBeLessThan(1e-12);
          const inside = (d: number): boolean => regionContains(section.region, [u + d * a, v + d * b]);
          expect(Math.hypot(a, b)).toBeCloseTo(1, 12);
          expect([inside(-1e-6), inside(1e-6), inside(wall - 1e-6)]).toEqual([false, true, true]);
          if (section.region.holes.length > 0) expect(inside(wall + 1e-6)).toBe(false);
        }
      }
    }
  });
});
