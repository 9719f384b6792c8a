/** Rulings: closed form of the sagitta r(1 − cos(π/n)). */
import { describe, expect, it } from "vitest";
import { WORLD } from "../../../src/kernel/frame.js";
import { gridOf, nearRuling, stepsPerTurn } from "../../../src/kernel/mesh/grid.js";
import { RULING_MM } from "../../../src/kernel/tolerance.js";

describe("stepsPerTurn", () => {
  it.each([
    [24.15, 0.5],
    [24.15, 0.05],
    [24.15, 0.001],
    [5, 0.02],
    [500, 0.05],
  ])("keeps within the chord and is not wasteful, r %s chord %s", (r, chord) => {
    const n = stepsPerTurn(r, chord);
    expect(n % 4).toBe(0);
    expect(r * (1 - Math.cos(Math.PI / n))).toBeLessThanOrEqual(chord);
    if (n > 8) expect(r * (1 - Math.cos(Math.PI / (n - 4)))).toBeGreaterThan(chord);
  });

  it("never falls below eight, however coarse the chord", () => {
    expect(stepsPerTurn(3, 10)).toBe(8);
  });

  it("takes points for one only well within the chord", () => {
    expect(nearRuling(0.05)).toBe(RULING_MM);
    expect(nearRuling(1e-4)).toBeLessThan(1e-5);
  });

  it("planes have no rulings", () => {
    expect(gridOf({ kind: "plane", frame: WORLD }, 0.05)).toBe(0);
    expect(gridOf({ kind: "cylinder", frame: WORLD, radius: 24.15 }, 0.05)).toBe(stepsPerTurn(24.15, 0.05));
  });
});
