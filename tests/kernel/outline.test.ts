/**
 * Greatest and least values on an outline against closed forms: a tilted plane, a tube on a tube, a kink.
 */
import { describe, expect, it } from "vitest";
import { extremesOnOutline, greatestOnOutline } from "../../src/kernel/outline.js";
import { circleLoop } from "../../src/kernel/region.js";
import { rect } from "../support/bars.js";

const R = 24.15;
const circle = circleLoop([0, 0], R, "wall");

describe("extremesOnOutline", () => {
  it("of a tilted plane on a circle are ± slope times radius, along the slope, wherever that lies", () => {
    for (let k = 0; k < 24; k++) {
      const way = (k * Math.PI) / 12 + 0.003 * k;
      const [a, b] = [0.3 * Math.cos(way), 0.3 * Math.sin(way)];
      const { greatest, least } = extremesOnOutline(circle, (u, v) => 5 + a * u + b * v);
      expect(greatest.value).toBeCloseTo(5 + 0.3 * R, 12);
      expect(least.value).toBeCloseTo(5 - 0.3 * R, 12);
      expect(Math.hypot(greatest.at[0] - R * Math.cos(way), greatest.at[1] - R * Math.sin(way))).toBeLessThan(
        1e-6,
      );
      expect(Math.hypot(least.at[0] + R * Math.cos(way), least.at[1] + R * Math.sin(way))).toBeLessThan(1e-6);
    }
  });

  it("of a square cope on a tube of radius Q ≥ R run from −Q on the crown to −√(Q² − R²) at the ears", () => {
    for (const q of [R, 1.1 * R, 3 * R]) {
      const f = (_u: number, v: number) => -Math.sqrt(Math.max(0, (q - v) * (q + v)));
      const { greatest, least } = extremesOnOutline(circle, f);
      expect(least.value).toBeCloseTo(-q, 12);
      // Equal tubes: the ear is a kink, placed to 10⁻⁸ of the side.
      expect(greatest.value).toBeCloseTo(-Math.sqrt((q - R) * (q + R)), q === R ? 6 : 9);
      expect(Math.abs(greatest.at[1])).toBeCloseTo(R, 6);
      expect(Math.abs(least.at[1])).toBeLessThan(1e-5);
    }
  });

  it("agree with each other's sign, and pass over what is not finite", () => {
    const f = (u: number, v: number) => (u > 0 ? 3 * u - v * v : Number.POSITIVE_INFINITY);
    const g = (u: number, v: number) => -f(u, v);
    const [a, b] = [extremesOnOutline(circle, f), extremesOnOutline(circle, g)];
    expect(a.greatest.value).toBe(-b.least.value);
    expect(a.greatest.value).toBe(greatestOnOutline([circle], f).value);
    expect(a.least.value).toBe(-b.greatest.value);
  });

  it("of a plane on a rounded rectangle are at the corners' arcs: w/2 and d/2 less the radius along each axis, plus the radius along the slope", () => {
    const { outer } = rect(60, 40, 3, 6, 3);
    const [a, b] = [0.6, 0.8];
    const { greatest, least } = extremesOnOutline(outer, (u, v) => a * u + b * v);
    const reach = 0.6 * (30 - 6) + 0.8 * (20 - 6) + 6;
    expect(greatest.value).toBeCloseTo(reach, 12);
    expect(least.value).toBeCloseTo(-reach, 12);
  });
});
