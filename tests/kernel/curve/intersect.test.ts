/** Curves in which planes and cylinders meet: their points lie on both, their sizes are the closed forms. */
import { describe, expect, it } from "vitest";
import { type Curve, evaluate } from "../../../src/kernel/curve/curve.js";
import {
  equalCylindersMeet,
  lineThrough,
  planeAcrossCylinder,
  planeAlongCylinder,
  planesMeet,
} from "../../../src/kernel/curve/intersect.js";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import { distanceTo, type PlaneSurface, type Surface } from "../../../src/kernel/surface.js";
import { anySquareTo, length, normalize, type Vec3 } from "../../../src/kernel/vec.js";
import { cylinderAbout } from "../../support/cylinder.js";

const planeAt = (point: Vec3, n: Vec3): PlaneSurface => ({
  kind: "plane",
  frame: frameFromAxis(point, n, anySquareTo(normalize(n))),
});
const worst = (curve: Curve, ...on: Surface[]): number =>
  Math.max(
    ...on.flatMap((s) =>
      [-3, -1.7, -0.4, 0, 0.9, 2.2].map((t) => Math.abs(distanceTo(s, evaluate(curve, t)))),
    ),
  );
const pipe = cylinderAbout([3, -2, 10], [1, 2, 2], 24, [1, 0, 0]);

describe("lineThrough", () => {
  it("runs from one point to the other in their distance", () => {
    const line = lineThrough([1, 1, 1], [4, 5, 1]);
    expect(evaluate(line, 0)).toEqual([1, 1, 1]);
    expect(evaluate(line, 5)).toEqual([4, 5, 1]);
  });
});

describe("planeAcrossCylinder", () => {
  it("cuts a circle square, and an ellipse of R and R/cos otherwise", () => {
    const square = planeAcrossCylinder(planeAt([0, 0, 0], [1, 2, 2]), pipe);
    expect([length(square!.major), length(square!.minor)]).toEqual([
      expect.closeTo(24, 12),
      expect.closeTo(24, 12),
    ]);
    const plane = planeAt([0, 5, 0], [1, 0, 0]);
    const tilted = planeAcrossCylinder(plane, pipe);
    // The axis (1, 2, 2)/3 makes cos = 1/3 with the normal.
    expect(length(tilted!.major)).toBeCloseTo(72, 10);
    expect(length(tilted!.minor)).toBeCloseTo(24, 10);
    expect(worst(tilted!, plane, pipe)).toBeLessThan(1e-10);
  });

  it("is nothing along the axis", () => {
    expect(planeAcrossCylinder(planeAt([0, 0, 0], [2, -1, 0]), pipe)).toBeNull();
  });
});

describe("planeAlongCylinder", () => {
  it("gives two rulings inside, none outside", () => {
    const plane = planeAt([3, -2, 10], [2, -1, 0]);
    const rulings = planeAlongCylinder(plane, pipe);
    expect(rulings).toHaveLength(2);
    for (const r of rulings) expect(worst(r, plane, pipe)).toBeLessThan(1e-10);
    expect(planeAlongCylinder(planeAt([3 + 2 * 30, -2, 10], [2, -1, 0]), pipe)).toEqual([]);
  });
});

describe("planesMeet", () => {
  it("gives the common line, none for parallel planes", () => {
    const [a, b] = [planeAt([1, 2, 3], [1, 1, 0]), planeAt([-4, 0, 2], [0, 1, 3])];
    expect(worst(planesMeet(a, b)!, a, b)).toBeLessThan(1e-12);
    expect(planesMeet(a, planeAt([0, 0, 9], [-2, -2, 0]))).toBeNull();
  });
});

describe("equalCylindersMeet", () => {
  const other = cylinderAbout([3, -2, 10], [0, 1, -1], 24, [1, 0, 0]);

  it("gives two ellipses on both cylinders", () => {
    const ellipses = equalCylindersMeet(pipe, other, 1e-6);
    expect(ellipses).toHaveLength(2);
    for (const e of ellipses) expect(worst(e, pipe, other)).toBeLessThan(1e-10);
  });

  it.each([
    ["radii differ", cylinderAbout([3, -2, 10], [0, 1, -1], 24.001, [1, 0, 0])],
    ["axes miss", cylinderAbout([3.1, -2, 10], [0, 1, -1], 24, [1, 0, 0])],
    ["axes are parallel", cylinderAbout([3, -2, 10], [1, 2, 2], 24, [1, 0, 0])],
  ])("gives none where %s", (_, third) => {
    expect(equalCylindersMeet(pipe, third, 1e-6)).toEqual([]);
  });
});
