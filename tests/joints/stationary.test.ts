/**
 * Nearest points of planes and cylinders to a line: no point of a dense sample beside them is nearer to the line.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestToLine } from "../../src/joints/stationary.js";
import type { Surface, Vec3 } from "../../src/kernel/index.js";
import { frameFromAxis } from "../../src/kernel/index.js";
import { anySquareTo } from "../../src/kernel/vec.js";
import { cross3, unit3 } from "../support/joint-case.js";

const fromLine = (p: Vec3, at: Vec3, d: Vec3): number => {
  const w: Vec3 = [p[0] - at[0], p[1] - at[1], p[2] - at[2]];
  return Math.hypot(...cross3(w, unit3(d)));
};
const size = fc.double({ min: -40, max: 40, noNaN: true });
const unit = fc
  .tuple(size, size, size)
  .filter((d) => Math.hypot(...d) > 1)
  .map((d) => unit3(d));

describe("places of a surface nearest to a line", () => {
  it("are where it goes through a plane, and none where it runs along it", () => {
    const plane: Surface = { kind: "plane", frame: frameFromAxis([0, 0, 5], [0, 0, 1], [1, 0, 0]) };
    expect(nearestToLine(plane, [1, 2, 0], [0, 0.6, 0.8])).toEqual([[1, 5.75, 5]]);
    expect(nearestToLine(plane, [1, 2, 0], [1, 0, 0])).toEqual([]);
  });

  it("on a cylinder: the two feet of the common perpendicular (closed form: 30 mm apart, radius 10)", () => {
    const round: Surface = {
      kind: "cylinder",
      radius: 10,
      frame: frameFromAxis([0, 0, 0], [0, 0, 1], [1, 0, 0]),
    };
    const found = nearestToLine(round, [30, 7, 4], [0, 0.6, 0.8]);
    const from = found.map((p) => fromLine(p, [30, 7, 4], [0, 0.6, 0.8])).sort((a, b) => a - b);
    expect(from[0]).toBeCloseTo(20, 12);
    expect(from[1]).toBeCloseTo(40, 12);
    expect(nearestToLine(round, [30, 7, 4], [0, 0, 1])).toEqual([]);
  });

  it("hold the least distance of the whole cylinder (dense sample, random lines)", () => {
    fc.assert(
      fc.property(unit, unit, fc.tuple(size, size, size), (z, d, at) => {
        fc.pre(Math.hypot(...cross3(z, d)) > 0.2);
        const frame = frameFromAxis([1, 2, 3], z, anySquareTo(z));
        const round: Surface = { kind: "cylinder", radius: 12, frame };
        const found = nearestToLine(round, at, d).map((p) => fromLine(p, at, d));
        const best = Math.min(...found);
        for (let a = 0; a < 72; a++) {
          const [c, s] = [Math.cos((a * Math.PI) / 36), Math.sin((a * Math.PI) / 36)];
          for (let h = -60; h <= 60; h++) {
            const p = [0, 1, 2].map(
              (i) => frame.origin[i]! + 12 * (c * frame.x[i]! + s * frame.y[i]!) + 5 * h * frame.z[i]!,
            ) as unknown as Vec3;
            if (fromLine(p, at, d) < best - 1e-9) throw new Error(`${p} is nearer than ${best}`);
          }
        }
        expect(Number.isFinite(best)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
