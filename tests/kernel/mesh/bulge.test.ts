/** Bounds on how far a piece of an edge stands off its chord: never too small, against dense points; and close. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toTriangle } from "../../../bench/deviation.mjs";
import { conicFromConjugates } from "../../../src/kernel/curve/conic.js";
import { type Curve, evaluate } from "../../../src/kernel/curve/curve.js";
import { saddleBetween } from "../../../src/kernel/curve/saddle.js";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import { bulgeOf } from "../../../src/kernel/mesh/bulge.js";
import type { CylinderSurface } from "../../../src/kernel/surface.js";
import type { Vec3 } from "../../../src/kernel/vec.js";

/** Farthest of 200 points of the piece from the chord between its ends; no formula of the bound is used. */
function measured(curve: Curve, t: number, u: number): number {
  const [p, q] = [evaluate(curve, t), evaluate(curve, u)];
  let worst = 0;
  for (let k = 1; k < 200; k++)
    worst = Math.max(worst, toTriangle(evaluate(curve, t + ((u - t) * k) / 200), p, q, q));
  return worst;
}

function bounded(curve: Curve, t: number, u: number): { bound: number; step: number; real: number } {
  const bulge = bulgeOf(curve)!;
  const bound = bulge.of(t, u, evaluate(curve, t), evaluate(curve, u), 0);
  return { bound, step: ((u - t) ** 2 * bulge.most) / 8, real: measured(curve, t, u) };
}

const round = (radius: number, origin: Vec3, axis: Vec3): CylinderSurface => ({
  kind: "cylinder",
  frame: frameFromAxis(origin, axis, [1, 0.2, 0.1]),
  radius,
});
const grid = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1000 }).map((k) => min + ((max - min) * k) / 1000);
/** Pieces of a tenth of a turn down to 10⁻⁴ of one. */
const piece = fc.record({ from: grid(-4, 4), long: grid(-4, -0.2).map((e) => 10 ** e), back: fc.boolean() });
/** Rounding of a point at 100 mm, and of the square root of it beside a silhouette. */
const ROUNDING = 1e-11;

/** A saddle whose header is wider than the branch by `over`, or narrower, and beside its axis by `aside` of that. */
function saddle(radius: number, over: number, aside: number, angle: number, side: 1 | -1): Curve {
  const header = round(radius + over, [0, aside * over, 30], [Math.sin(angle), 0, Math.cos(angle)]);
  return saddleBetween(round(radius, [0, 0, 0], [0, 0, 1]), header, side, 0.3);
}

const saddles = fc.record({
  radius: grid(3, 40),
  over: fc.oneof(
    grid(0.5, 30),
    grid(-9, 0).map((e) => 10 ** e),
    grid(-9, -1).map((e) => -(10 ** e)),
  ),
  aside: grid(-1, 1),
  angle: grid(0.26, Math.PI / 2),
  side: fc.constantFrom(-1 as const, 1 as const),
});

describe("bulgeOf", () => {
  it("is the height of an arc over its chord on a circle (closed form)", () => {
    const circle = conicFromConjugates([1, 2, 3], [5, 0, 0], [0, 5, 0]);
    for (const turn of [1e-3, 0.1, 0.5, 1.5])
      expect(bounded(circle, 0.4, 0.4 + turn).bound / (5 * (1 - Math.cos(turn / 2)))).toBeCloseTo(1, 9);
  });

  it("holds on ellipses however slender, and is met (property)", () => {
    fc.assert(
      fc.property(piece, grid(0, 3), ({ from, long, back }, e) => {
        const curve = conicFromConjugates([0, 0, 0], [10, 1, 0], [0, 0, 10 * 10 ** e]);
        const [t, u] = back ? [from + long, from] : [from, from + long];
        const { bound, step, real } = bounded(curve, t, u);
        expect(bound).toBeGreaterThanOrEqual(real - ROUNDING * 10 ** e);
        expect(step).toBeGreaterThanOrEqual(real - ROUNDING * 10 ** e);
        if (real > 1e-6 * 10 ** e) expect(bound).toBeLessThan(1.1 * real);
      }),
      { numRuns: 400, seed: 5 },
    );
  });

  it("holds on saddles, of headers wider, equal and narrower (property)", () => {
    fc.assert(
      fc.property(saddles, piece, (s, { from, long, back }) => {
        const curve = saddle(s.radius, s.over, s.aside, s.angle, s.side);
        if (curve.kind !== "saddle") return;
        const [t, u] = back ? [from + long, from] : [from, from + long];
        // Only where every fibre of the piece meets the header, and off kinks: there edges end. The brackets are least at
        // the piece's ends, or where the branch is widest across the header.
        const bracket = (base: number, at: number): number => {
          const [low, high] = [Math.min(t, u) - at, Math.max(t, u) - at];
          const inside = Math.ceil(low / (2 * Math.PI)) * 2 * Math.PI <= high;
          const ends = Math.min(Math.sin(low / 2) ** 2, Math.sin(high / 2) ** 2);
          return base + 2 * s.radius * (inside ? 0 : ends);
        };
        if (bracket(curve.a0, curve.phiN) <= 0 || bracket(curve.b0, curve.phiN + Math.PI) <= 0) return;
        const { bound, step, real } = bounded(curve, t, u);
        expect(bound).toBeGreaterThanOrEqual(real * (1 - 1e-9) - 1e-9);
        expect(step).toBeGreaterThanOrEqual(real * (1 - 1e-9) - 1e-9);
      }),
      { numRuns: 2000, seed: 6 },
    );
  });

  it("is close where the header is wider: no piece is cut for a fifth of nothing", () => {
    let [sum, count] = [0, 0];
    for (const over of [3, 8, 20]) {
      for (const angle of [0.4, 0.65, 1, Math.PI / 2]) {
        const curve = saddle(20, over, 0.5, angle, -1);
        for (let k = 0; k < 60; k++) {
          const { bound, real } = bounded(curve, 0.1 * k, 0.1 * k + 0.08);
          sum += bound / real;
          count++;
        }
      }
    }
    expect(sum / count).toBeLessThan(1.2);
  });

  it("says where a saddle may bend sharply: where its branch is widest across the header", () => {
    const curve = saddle(20, 1e-6, 0, 1, -1);
    const { bendIn } = bulgeOf(curve)!;
    if (curve.kind !== "saddle") throw new Error("unequal tubes meet in a saddle");
    expect(bendIn(curve.phiN - 0.1, curve.phiN + 0.2)).toBeCloseTo(curve.phiN, 12);
    expect(bendIn(curve.phiN + 3.2, curve.phiN + 3.1)).toBeCloseTo(curve.phiN + Math.PI, 12);
    expect(bendIn(curve.phiN, curve.phiN + 0.2)).toBeNull();
  });

  it("has nothing to say of lines", () => {
    expect(bulgeOf({ kind: "line", origin: [0, 0, 0], direction: [0, 0, 1] })).toBeNull();
  });
});
