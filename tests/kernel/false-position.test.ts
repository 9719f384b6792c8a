/** Roots with known values: √2, π, and a cube root that straight false position creeps towards. */
import { describe, expect, it } from "vitest";
import { falsePosition } from "../../src/kernel/false-position.js";

describe("falsePosition", () => {
  it.each<[string, (t: number) => number, number, number, number]>([
    ["√2", (t) => t * t - 2, 0, 2, Math.SQRT2],
    ["π", Math.sin, 2, 4, Math.PI],
    ["a flat cube", (t) => t ** 3 - 1e-3, -0.05, 1, 0.1],
    ["backwards", (t) => t * t - 2, 2, 0, Math.SQRT2],
  ])("finds %s", (_, f, from, to, root) => {
    expect(falsePosition(f, from, to, f(from), f(to), 1e-15)).toBeCloseTo(root, 12);
  });

  it("takes an end that is the root already", () => {
    expect(falsePosition((t) => t, 0, 1, 0, 1, 0)).toBe(0);
    expect(falsePosition((t) => t - 1, 0, 1, -1, 0, 0)).toBe(1);
  });
});
