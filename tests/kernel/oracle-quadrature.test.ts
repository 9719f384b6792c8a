/**
 * Exact volumes against an independent quadrature of ray casts (tests/support/quadrature.ts): 1e-12 relative.
 *
 * The quadrature itself is checked first: its rule on polynomials, its result on published and closed-form volumes.
 */
import { describe, expect, it } from "vitest";
import published from "../../shared/published-joints.json" with { type: "json" };
import { STATION_MM } from "../../src/kernel/tolerance.js";
import { GAUSS, integrate, KRONROD, NODES } from "../support/gauss-kronrod.js";
import type { JointCase } from "../support/joint-case.js";
import { bar, header, NAMED, nearTangent, TANGENT } from "../support/named-cases.js";
import { volumeByRays } from "../support/quadrature.js";
import { randomCase } from "../support/random-cases.js";
import { exactVolume, relative } from "../support/solve-case.js";

const START = 4711;
const WITHIN = 1e-12;

const coped = (r: number, R: number, angle: number, length: number): JointCase => ({
  ...NAMED[0]!,
  name: `bar ${r} on ${R} at ${angle}`,
  section: bar(2 * r),
  ends: [
    NAMED[0]!.ends[0],
    { kind: "hit", header: header({ kind: "round", radius: R }, angle, { at: length }) },
  ],
});

describe("the quadrature", () => {
  const rule = (weights: readonly number[], power: number): number =>
    NODES.reduce((sum, x, i) => sum + (i === 7 ? 1 : 2) * weights[i]! * x ** power, 0);

  it("has rules that are exact as far as theory says: degree 13 of Gauss, 22 of Kronrod", () => {
    for (let power = 0; power <= 22; power += 2) {
      if (power <= 12) expect(rule(GAUSS, power)).toBeCloseTo(2 / (power + 1), 14);
      expect(rule(KRONROD, power)).toBeCloseTo(2 / (power + 1), 14);
    }
    expect(Math.abs(rule(GAUSS, 14) - 2 / 15)).toBeGreaterThan(1e-6);
  });

  it("integrates square roots at an end and beside it: half a circle, closed form", () => {
    expect(
      relative(
        integrate((x) => Math.sqrt(1 - x * x), -1, 1, 1e-15),
        Math.PI / 2,
      ),
    ).toBeLessThan(1e-14);
    // ∫ √(x + ε) from 0 to 1 = ⅔((1 + ε)^1.5 − ε^1.5).
    const near = integrate((x) => Math.sqrt(x + 1e-6), 0, 1, 1e-15);
    expect(relative(near, (2 / 3) * (1.000001 ** 1.5 - 1e-9))).toBeLessThan(1e-13);
  });

  // Two equal cylinders share 16 R³/(3 sin θ) (Steinmetz, Archimedes): half of it is missing from a branch.
  it.each([90, 60, 45, 30])("gives Steinmetz's solid at %d°", (angle) => {
    const c = coped(21.2, 21.2, angle, 150);
    const closed = Math.PI * 21.2 ** 2 * 150 - (8 * 21.2 ** 3) / (3 * Math.sin((angle * Math.PI) / 180));
    expect(relative(volumeByRays(c), closed)).toBeLessThan(WITHIN);
    expect(relative(exactVolume(c), closed)).toBeLessThan(WITHIN);
  });
});

describe("published cope volumes (elliptic integrals; shared/published-joints.json)", () => {
  const entries = published.entries.filter((e) => e.id.startsWith("cope-volume"));

  it("are four", () => {
    expect(entries).toHaveLength(4);
  });

  it.each(entries.map((e) => [e.id, e] as const))("%s", (_, e) => {
    const {
      r_mm: r,
      R_mm: R,
      axis_angle_deg: angle,
    } = e.inputs as {
      readonly r_mm: number;
      readonly R_mm: number;
      readonly axis_angle_deg: number;
    };
    const c = coped(r, R, angle, 150);
    const missing = Math.PI * r ** 2 * 150 - exactVolume(c);
    const wanted = e.expected as unknown as number;
    expect(relative(missing, wanted)).toBeLessThan(1e-10);
    expect(relative(Math.PI * r ** 2 * 150 - volumeByRays(c), wanted)).toBeLessThan(1e-10);
  });
});

describe("volumes agree with the quadrature within 1e-12 relative", () => {
  it.each([...NAMED, ...TANGENT])("$name", (c) => {
    expect(relative(exactVolume(c), volumeByRays(c))).toBeLessThan(WITHIN);
  });

  it.each([1e-1, 1e-2, 1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10, 1e-11, 1e-12])(
    "R - r = %d",
    (more) => {
      const [r, sine] = [21.2, Math.sin(Math.PI / 3)];
      const apart = r + more - r;
      const v = exactVolume(nearTangent(more));
      // Nearer than a station the two are equal by decision: exact for equal tubes, and beside the truth by no more than
      // the shift of the header's radius times ∬ R/√(R² − h²) dA ≤ 4 R r, over the sine.
      const snapped = apart < STATION_MM;
      expect(relative(v, volumeByRays(nearTangent(snapped ? 0 : more)))).toBeLessThan(WITHIN);
      const shift = (4 * r * (r + more) * (snapped ? apart : 0)) / sine;
      expect(Math.abs(v - volumeByRays(nearTangent(more)))).toBeLessThan(shift + WITHIN * v);
    },
  );

  const random = Array.from({ length: 60 }, (_, i) => randomCase(i, START));
  it.each(random)(`random joint $name (numbers from ${START})`, (c) => {
    expect(relative(exactVolume(c), volumeByRays(c))).toBeLessThan(WITHIN);
  });

  it("sees a header moved by a millionth of a millimetre", () => {
    const [c, moved] = [coped(20, 30, 60, 150), coped(20, 30, 60, 150.000001)];
    expect(relative(exactVolume(c), volumeByRays(moved))).toBeGreaterThan(1000 * WITHIN);
  });
});
