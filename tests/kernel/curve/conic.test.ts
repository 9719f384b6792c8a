/** Circles and ellipses against the defining properties of an ellipse, and finite differences. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  conicAt,
  conicDerivatives,
  conicFromConjugates,
  conicParameter,
  isCircle,
} from "../../../src/kernel/curve/conic.js";
import { add, cross, distance, dot, length, normalize, scale, type Vec3 } from "../../../src/kernel/vec.js";
import { differencesOf } from "../../support/differences.js";

const size = fc.integer({ min: -500, max: 500 }).map((k) => k / 10);
const vector = fc.tuple(size, size, size);
const pair = fc
  .tuple(vector, vector)
  .filter(([p, q]) => length(p) > 1 && length(q) > 1 && Math.abs(dot(p, q)) < 0.95 * length(p) * length(q));

describe("conic", () => {
  it("by two conjugate semi-diameters: same points, square axes, Apollonius' sums", () => {
    fc.assert(
      fc.property(vector, pair, (centre, [p, q]) => {
        const c = conicFromConjugates(centre, p, q);
        expect(Math.abs(dot(c.major, c.minor))).toBeLessThan(1e-10);
        expect(length(c.major)).toBeGreaterThanOrEqual(length(c.minor));
        // Apollonius: conjugate semi-diameters keep the sum of squares and the area of their parallelogram.
        expect(dot(c.major, c.major) + dot(c.minor, c.minor)).toBeCloseTo(dot(p, p) + dot(q, q), 8);
        const area2 = dot(p, p) * dot(q, q) - dot(p, q) ** 2;
        expect((length(c.major) * length(c.minor)) ** 2 / area2).toBeCloseTo(1, 9);
        for (const u of [0, 1, 2.5, 4]) {
          const point: Vec3 = add(add(centre, scale(p, Math.cos(u))), scale(q, Math.sin(u)));
          expect(distance(conicAt(c, conicParameter(c, point)), point)).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it("keeps to its plane, and to the sum of distances from its foci", () => {
    const c = conicFromConjugates([1, 2, 3], [30, 0, 10], [0, 20, 0]);
    const n = normalize(cross(c.major, c.minor));
    const [a, b] = [length(c.major), length(c.minor)];
    const focus = scale(c.major, Math.sqrt(a * a - b * b) / a);
    const foci = [add(c.centre, focus), add(c.centre, scale(focus, -1))] as const;
    for (let t = 0; t < 7; t += 0.37) {
      const p = conicAt(c, t);
      expect(dot(n, p)).toBeCloseTo(dot(n, c.centre), 10);
      expect(distance(p, foci[0]) + distance(p, foci[1])).toBeCloseTo(2 * a, 10);
    }
  });

  it("has the derivatives finite differences find", () => {
    const c = conicFromConjugates([1, 2, 3], [30, 0, 10], [5, 20, 0]);
    for (let t = -3; t < 3; t += 0.41) {
      const got = conicDerivatives(c, t);
      const found = differencesOf((x) => conicAt(c, x), t);
      expect(distance(got.d1, found.d1)).toBeLessThan(1e-7);
      expect(distance(got.d2, found.d2)).toBeLessThan(1e-4);
    }
  });

  it("knows a circle", () => {
    expect(isCircle(conicFromConjugates([0, 0, 0], [3, 0, 0], [0, 0, 3]))).toBe(true);
    expect(isCircle(conicFromConjugates([0, 0, 0], [3, 0, 0], [0, 0, 3.000001]))).toBe(false);
  });
});
