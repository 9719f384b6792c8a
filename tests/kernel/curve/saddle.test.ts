/** Saddle curves: on both cylinders, against published ordinates, and their derivatives against finite differences. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { conicAt, conicParameter } from "../../../src/kernel/curve/conic.js";
import { evaluate } from "../../../src/kernel/curve/curve.js";
import {
  saddleAt,
  saddleBetween,
  saddleDerivatives,
  saddleHeight,
  saddleParameter,
} from "../../../src/kernel/curve/saddle.js";
import { type CylinderSurface, distanceTo } from "../../../src/kernel/surface.js";
import { distance, length, type Vec3 } from "../../../src/kernel/vec.js";
import { list, num, referenceCase, referenceIds } from "../../joints/reference.js";
import { cylinderAbout } from "../../support/cylinder.js";
import { differencesOf } from "../../support/differences.js";

const RAD = Math.PI / 180;

/** Branch along z, header at `angle` to it in the y-z plane, moved along x by `offset`. */
function pairOf(r: number, R: number, angle: number, offset: number): [CylinderSurface, CylinderSurface] {
  const axis: Vec3 = [0, Math.sin(angle * RAD), Math.cos(angle * RAD)];
  return [
    cylinderAbout([0, 0, -300], [0, 0, 1], r, [1, 0, 0]),
    cylinderAbout([offset, 0, 0], axis, R, [1, 0, 0]),
  ];
}

describe("saddle", () => {
  it("lies on both cylinders to 1e-9, however nearly equal they are", () => {
    const wide = fc.record({
      r: fc.integer({ min: 50, max: 400 }).map((k) => k / 10),
      spare: fc.oneof(
        fc.constant(0),
        fc.integer({ min: 1, max: 12 }).map((k) => 10 ** -k),
        fc.integer({ min: 1, max: 300 }).map((k) => k / 10),
      ),
      angle: fc.integer({ min: 150, max: 900 }).map((k) => k / 10),
      share: fc.integer({ min: -10, max: 10 }).map((k) => k / 10),
      root: fc.constantFrom(1 as const, -1 as const),
    });
    fc.assert(
      fc.property(wide, ({ r, spare, angle, share, root }) => {
        const [branch, header] = pairOf(r, r + spare, angle, share * spare);
        for (const mid of [0.8, 2.3, 3.9, 5.5]) {
          const curve = saddleBetween(branch, header, root, mid);
          for (let k = -7; k <= 7; k++) {
            const p = evaluate(curve, mid + k / 10);
            expect(Math.abs(distanceTo(branch, p))).toBeLessThan(1e-9);
            expect(Math.abs(distanceTo(header, p))).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  // Source: shared/published-joints.json, two right cylinders at 30 digits; φ there runs the other way round.
  it.each(referenceIds("cope-").filter((id) => !id.startsWith("cope-volume")))("meets published %s", (id) => {
    const c = referenceCase(id);
    const [angle, r] = [num(c.inputs, "axis_angle_deg") * RAD, num(c.inputs, "branch_radius")];
    const u: Vec3 = [Math.cos(angle), 0, Math.sin(angle)];
    const v: Vec3 = [-Math.sin(angle), 0, Math.cos(angle)];
    const at: Vec3 = [0, num(c.inputs, "offset"), 0];
    const branch: CylinderSurface = {
      kind: "cylinder",
      radius: r,
      frame: { origin: at, x: v, y: [0, -1, 0], z: u },
    };
    const header = cylinderAbout([0, 0, 0], [1, 0, 0], num(c.inputs, "header_radius"), [0, 0, 1]);
    for (const [i, expected] of list(c.expected, "s").entries()) {
      const phi = -(list(c.inputs, "phi_deg")[i] ?? Number.NaN) * RAD;
      const curve = saddleBetween(branch, header, 1, phi);
      if (curve.kind === "saddle") {
        expect(Math.abs(saddleHeight(curve, phi) - (expected ?? Number.NaN))).toBeLessThan(1e-7);
        continue;
      }
      const [x, y, s] = [r * Math.cos(phi), r * Math.sin(phi), expected ?? Number.NaN];
      const p: Vec3 = [at[0] + x * v[0] + s * u[0], at[1] - y, at[2] + x * v[2] + s * u[2]];
      expect(distance(conicAt(curve, conicParameter(curve, p)), p)).toBeLessThan(2e-7);
    }
  });

  // Source: shared/published-joints.json, arc length at 30 digits. The trapezium rule is exact here to rounding.
  it("has the published length", () => {
    const c = referenceCase("saddle-length-21p2-24p15-90");
    const [branch, header] = pairOf(21.2, 24.15, 90, 0);
    const curve = saddleBetween(branch, header, -1, 0);
    if (curve.kind !== "saddle") throw new Error("expected a saddle");
    const n = 400;
    const steps = Array.from({ length: n }, (_, k) =>
      length(saddleDerivatives(curve, (2 * Math.PI * k) / n).d1),
    );
    const total = steps.reduce((a, b) => a + b) * ((2 * Math.PI) / n);
    expect(Math.abs(total / (c.expected as number) - 1)).toBeLessThan(1e-8);
  });

  // Source: plane geometry; the planes that halve the angle cut an equal cylinder in semi-axes R and R/sin(θ/2).
  it.each([90, 60, 37])("is an exact ellipse where equal tubes meet at %s degrees", (angle) => {
    const [branch, header] = pairOf(24.15, 24.15, angle, 0);
    const majors = [1, 4].map((mid) => {
      const curve = saddleBetween(branch, header, -1, mid);
      if (curve.kind !== "conic") throw new Error("expected an ellipse");
      expect(length(curve.minor)).toBeCloseTo(24.15, 10);
      return length(curve.major);
    });
    const closed = [24.15 / Math.sin((angle / 2) * RAD), 24.15 / Math.cos((angle / 2) * RAD)];
    expect([...majors].sort((a, b) => a - b)).toEqual(
      closed.sort((a, b) => a - b).map((x) => expect.closeTo(x, 9)),
    );
  });

  it.each([
    ["narrower branch", 21.2, 24.15, 60, 0],
    ["offset branch", 16.85, 24.15, 60, 5],
    ["walls in line, away from the kink", 16.85, 24.15, 60, 7.3],
    ["walls in line on the other side", 16.85, 24.15, 75, -7.3],
  ])("has the derivatives finite differences find: %s", (_, r, R, angle, offset) => {
    const [branch, header] = pairOf(r, R, angle, offset);
    for (const root of [1, -1] as const) {
      for (let phi = -3; phi < 3; phi += 0.37) {
        const curve = saddleBetween(branch, header, root, phi);
        if (curve.kind !== "saddle") throw new Error("expected a saddle");
        const kink = Math.min(
          Math.abs(Math.sin((phi - curve.phiN) / 2)),
          Math.abs(Math.cos((phi - curve.phiN) / 2)),
        );
        if (kink < 0.05) continue;
        const got = saddleDerivatives(curve, phi);
        const found = differencesOf((t) => saddleAt(curve, t), phi);
        expect(distance(got.p, saddleAt(curve, phi))).toBe(0);
        expect(distance(got.d1, found.d1)).toBeLessThan(1e-6);
        expect(distance(got.d2, found.d2)).toBeLessThan(1e-3);
      }
    }
  });

  it("finds the parameter of its points", () => {
    const [branch, header] = pairOf(21.2, 24.15, 60, 2);
    const curve = saddleBetween(branch, header, -1, 0);
    if (curve.kind !== "saddle") throw new Error("expected a saddle");
    for (const phi of [-3, -1, 0, 2, 3.1])
      expect(saddleParameter(curve, saddleAt(curve, phi))).toBeCloseTo(phi, 12);
  });
});
