/** First-hit profiles against brute ray casting on dense polygons. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstHitProfile, type Profile, pieceHeight, projectLoop } from "../../src/kernel/profile.js";
import type { Loop } from "../../src/kernel/region.js";
import { circleLoop } from "../../src/kernel/region.js";
import { polygonLoop } from "../../src/members/sections/custom.js";
import { turnLoop } from "../support/bar-moves.js";
import { box } from "../support/bars.js";
import { densePolygon, lowestCrossing } from "../support/dense.js";

function profileOf(loop: Loop): Profile {
  return firstHitProfile(loop);
}

function heightAt({ breaks, pieces }: Profile, h: number): number {
  const i = pieces.findIndex((_, k) => h <= breaks[k + 1]!);
  return pieceHeight(pieces[i]!, h);
}

const turn = fc.integer({ min: 0, max: 3600 }).map((k) => (k * Math.PI) / 1800);
const loops: fc.Arbitrary<Loop> = fc.oneof(
  fc.integer({ min: 5, max: 40 }).map((r) => circleLoop([3, -2], r, "wall")),
  fc
    .tuple(
      fc.integer({ min: 20, max: 60 }),
      fc.integer({ min: 20, max: 60 }),
      fc.integer({ min: 0, max: 10 }),
    )
    .map(([w, d, r]) => box(w, d, r).outer),
  // Convex polygons: corners on a circle in rising angle.
  fc
    .uniqueArray(fc.integer({ min: 0, max: 71 }), { minLength: 4, maxLength: 9 })
    .filter((a) => Math.max(...gaps(a)) < 34)
    .map((angles) =>
      polygonLoop(
        [...angles]
          .sort((a, b) => a - b)
          .map(
            (k) => [30 * Math.cos(k * 5 * (Math.PI / 180)), 30 * Math.sin(k * 5 * (Math.PI / 180))] as const,
          ),
      ),
    ),
);

function gaps(steps: readonly number[]): number[] {
  const sorted = [...steps].sort((a, b) => a - b);
  return sorted.map((a, i) => (sorted[(i + 1) % sorted.length]! - a + 72) % 72 || 72);
}

describe("firstHitProfile", () => {
  it("is the lowest crossing of every fibre on random convex outlines", () => {
    fc.assert(
      fc.property(loops, turn, (loop, angle) => {
        const turned = turnLoop(loop, angle);
        const profile = profileOf(turned);
        const polygon = densePolygon(turned, 1500);
        const [lo, hi] = [profile.breaks[0]!, profile.breaks.at(-1)!];
        expect(lo).toBeCloseTo(Math.min(...polygon.map((p) => p[0])), 3);
        expect(hi).toBeCloseTo(Math.max(...polygon.map((p) => p[0])), 3);
        expect(profile.pieces).toHaveLength(profile.breaks.length - 1);
        for (let k = 1; k < 40; k++) {
          const h = lo + ((hi - lo) * k) / 40;
          expect(Math.abs(heightAt(profile, h) - lowestCrossing(polygon, h))).toBeLessThan(2e-3);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("is the same for a loop turned over by its projection", () => {
    const loop = turnLoop(box(40, 25, 5).outer, 0.3);
    const seen = projectLoop(loop, [-1, 0], [0, 1]);
    const polygon = densePolygon(loop, 1500).map(([u, v]) => [-u, v] as const);
    const profile = profileOf(seen);
    for (const h of [-18, -7.3, 0.2, 11, 19]) {
      expect(Math.abs(heightAt(profile, h) - lowestCrossing(polygon, h))).toBeLessThan(1e-4);
    }
  });

  it("is one piece on a round outline, and three on a rounded side", () => {
    expect(profileOf(circleLoop([0, 0], 24, "wall")).pieces).toHaveLength(1);
    expect(profileOf(box(40, 25, 5).outer).breaks).toEqual(
      [-20, -15, 15, 20].map((x) => expect.closeTo(x, 12)),
    );
  });

  it("says where a channel's open side or an angle's leg jumps, and by how much", () => {
    const channel = polygonLoop([
      [-20, -20],
      [-15, -20],
      [-15, 15],
      [15, 15],
      [15, -20],
      [20, -20],
      [20, 20],
      [-20, 20],
    ]);
    expect(profileOf(channel).jumps).toEqual([
      { h: -15, step: 35 },
      { h: 15, step: 35 },
    ]);
    // Its back has no jump.
    expect(profileOf(turnLoop(channel, Math.PI))).toMatchObject({ pieces: [expect.anything()], jumps: [] });
    const angle = polygonLoop([
      [0, 0],
      [40, 0],
      [40, 5],
      [5, 5],
      [5, 40],
      [0, 40],
    ]);
    expect(profileOf(angle).pieces).toHaveLength(1);
    const [inside] = profileOf(turnLoop(angle, Math.PI)).jumps;
    expect(inside?.step).toBeCloseTo(35, 9);
  });
});
