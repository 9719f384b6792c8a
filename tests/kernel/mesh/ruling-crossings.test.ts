/** Crossings of rulings in closed form, against the curve's own points and against a search that knows no formula. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ConicCurve } from "../../../src/kernel/curve/conic.js";
import { type Curve, evaluate } from "../../../src/kernel/curve/curve.js";
import { planeAcrossCylinder } from "../../../src/kernel/curve/intersect.js";
import { type SaddleCurve, saddleBetween } from "../../../src/kernel/curve/saddle.js";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import { angleOn, crossRulings, trackOn } from "../../../src/kernel/mesh/ruling-crossings.js";
import { type CylinderSurface, parametersOf } from "../../../src/kernel/surface.js";
import type { Vec3 } from "../../../src/kernel/vec.js";

const round = (radius: number, origin: Vec3, axis: Vec3, x: Vec3): CylinderSurface => ({
  kind: "cylinder",
  frame: frameFromAxis(origin, axis, x),
  radius,
});

const TURN = 2 * Math.PI;
const apart = (a: number, b: number): number => Math.abs(a - b - TURN * Math.round((a - b) / TURN));

/** How often the angle passes a ruling, by walking in steps too small to jump over one and back. */
function countedBySearch(
  curve: Curve,
  cylinder: CylinderSurface,
  step: number,
  lo: number,
  hi: number,
): number {
  const cells = 20_000;
  const at = (k: number): number =>
    parametersOf(cylinder, evaluate(curve, lo + ((hi - lo) * k) / cells))[0] / step;
  let count = 0;
  let before = at(0);
  for (let k = 1; k <= cells; k++) {
    let here = at(k);
    here += (TURN / step) * Math.round((before - here) / (TURN / step));
    count += Math.abs(Math.floor(here) - Math.floor(before));
    before = here;
  }
  return count;
}

function check(
  curve: ConicCurve | SaddleCurve,
  cylinder: CylinderSurface,
  steps: number,
  lo: number,
  hi: number,
): number {
  const step = TURN / steps;
  const track = trackOn(curve, cylinder);
  const found = { count: 0, t: [], ruling: [] } as { count: number; t: number[]; ruling: number[] };
  crossRulings(track, step, lo, hi, found);
  for (let i = 0; i < found.count; i++) {
    const [t, g] = [found.t[i]!, found.ruling[i]!];
    expect(t).toBeGreaterThan(lo);
    expect(t).toBeLessThan(hi);
    if (i > 0) expect(t).toBeGreaterThanOrEqual(found.t[i - 1]!);
    // The point itself lies on the ruling.
    const [angle] = parametersOf(cylinder, evaluate(curve, t));
    expect(apart(angle, g * step) * cylinder.radius).toBeLessThan(1e-6);
  }
  for (const f of [0.1, 0.37, 0.5, 0.93]) {
    const t = lo + f * (hi - lo);
    const [angle] = parametersOf(cylinder, evaluate(curve, t));
    expect(apart(angle, angleOn(track, t)) * cylinder.radius).toBeLessThan(1e-9);
  }
  return found.count;
}

describe("crossRulings", () => {
  const grid = (min: number, max: number): fc.Arbitrary<number> =>
    fc.integer({ min: 0, max: 1000 }).map((k) => min + ((max - min) * k) / 1000);
  const stretch = fc.record({
    from: grid(-7, 7),
    long: grid(0.05, TURN),
    steps: fc.integer({ min: 2, max: 30 }),
  });

  it("finds every crossing of a saddle, on its branch and on its header, near side and far (property)", () => {
    const pose = fc.record({
      radius: grid(3, 20),
      over: grid(0.5, 15),
      angle: grid(0.3, 1.57),
      roll: grid(-3, 3),
      side: fc.constantFrom(-1 as const, 1 as const),
    });
    fc.assert(
      fc.property(pose, stretch, (p, { from, long, steps }) => {
        const branch = round(p.radius, [1, 2, 3], [0, 0, 1], [Math.cos(p.roll), Math.sin(p.roll), 0]);
        const axis: Vec3 = [0.2, Math.sin(p.angle), Math.cos(p.angle)];
        const header = round(p.radius + p.over, [1 + 0.4 * p.over, 2, 40], axis, [1, p.roll, 0.3]);
        const curve = saddleBetween(branch, header, p.side, 0);
        if (curve.kind !== "saddle") throw new Error("unequal tubes meet in a saddle");
        for (const cylinder of [branch, header]) {
          const found = check(curve, cylinder, 4 * steps, from, from + long);
          const counted = countedBySearch(curve, cylinder, TURN / (4 * steps), from, from + long);
          expect(found).toBe(counted);
        }
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  it("finds those of a plane cut, whichever way the conic turns (property)", () => {
    fc.assert(
      fc.property(grid(-1.2, 1.2), grid(-3, 3), stretch, (tilt, roll, { from, long, steps }) => {
        const cylinder = round(21.2, [5, -1, 7], [0.1, 0.3, 1], [1, roll, 0]);
        const plane = {
          kind: "plane",
          frame: frameFromAxis([0, 0, 30], [Math.sin(tilt), 0.2, Math.cos(tilt)], [0, 1, 0]),
        } as const;
        const conic = planeAcrossCylinder(plane, cylinder)!;
        for (const curve of [conic, { ...conic, minor: conic.minor.map((c) => -c) as unknown as Vec3 }]) {
          const found = check(curve, cylinder, 4 * steps, from, from + long);
          expect(Math.abs(found - (4 * steps * long) / TURN)).toBeLessThan(1 + 1e-9);
        }
      }),
      { numRuns: 60, seed: 4 },
    );
  });

  // Equal tubes a little off each other's axis: R − h vanishes at the crown, where the header's silhouette is.
  it("is as good beside a silhouette", () => {
    for (const gap of [0, 1e-9, 1e-6, 1e-3]) {
      const branch = round(20, [0, 0, 0], [0, 0, 1], [1, 0, 0]);
      const header = round(24 + gap, [-4, 0, 50], [0, 0.8, 0.6], [1, 0, 0]);
      const curve = saddleBetween(branch, header, -1, 1);
      if (curve.kind !== "saddle") throw new Error("unequal tubes meet in a saddle");
      expect(check(curve, header, 400, 1e-3, Math.PI - 1e-3)).toBeGreaterThan(100);
    }
  });
});
