/**
 * Readings that could be the wrong one as well: the normal tail against published values (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, table 26.1 and 26.2, from memory), the group on small surveys; its rate in tests/survey-rates.
 */
import { describe, expect, it } from "vitest";
import type { Reading } from "../../../src/layout/index.js";
import { adjustReadings } from "../../../src/layout/index.js";
import { upperTail } from "../../../src/layout/survey/normal.js";
import { adjusted } from "./survey-cases.js";

describe("upperTail", () => {
  it.each([
    [0, 0.5],
    [1, 0.158655253931457],
    [1.959963984540054, 0.025],
    [2, 0.022750131948179],
    [3, 1.349898031630095e-3],
    [5, 2.866515718791939e-7],
    [6, 9.86587645037698e-10],
  ])("of %f is %f", (x, share) => {
    expect(Math.abs(upperTail(x) / share - 1)).toBeLessThan(1e-12);
    expect(upperTail(-x) + upperTail(x)).toBeCloseTo(1, 14);
  });

  it("joins its two formulas without a step and ends at 0 and 1", () => {
    expect(Math.abs(upperTail(2 - 1e-12) / upperTail(2) - 1)).toBeLessThan(1e-11);
    expect([upperTail(50), upperTail(Number.POSITIVE_INFINITY), upperTail(Number.NEGATIVE_INFINITY)]).toEqual(
      [0, 0, 1],
    );
  });
});

/** A riser taped twice, σ 1 mm, and told once more by two rougher readings, σ 2 mm. The first reads `by` too long. */
const twice = (by: number): Reading[] => [
  { id: "R1", kind: "rise", from: 0, to: 1, value: 190 + by, sigma: 1 },
  { id: "R1 again", kind: "height", to: 1, value: 190, sigma: 1 },
  { id: "R2", kind: "rise", from: 1, to: 2, value: 190, sigma: 2 },
  { id: "H2", kind: "height", to: 2, value: 380, sigma: 2 },
];

describe("suspects", () => {
  it("hold others that fit better, for as long as noise can have put them there", () => {
    // Weights 1, 1 and 1/8 of one riser: R1 has the redundancy 9/17 and is alike to its repetition by 8/9, so that they stand
    // √(1 − 64/81) · √(9/17) · by apart: 1.3 at 4, less than 1.645, and 2.7 at 8.
    const [near, far] = [adjusted(twice(4)).suspects, adjusted(twice(8)).suspects];
    expect(near[0]).toMatchObject({ ids: ["R1"], alsoLikely: ["R1 again"] });
    expect(far[0]).toMatchObject({ ids: ["R1"], alsoLikely: [] });
  });

  it("never hold a reading twice, and none that nothing checks", () => {
    const unchecked: Reading = { id: "R3", kind: "rise", from: 2, to: 3, value: 190, sigma: 1 };
    for (const by of [0, 1, 3, 5]) {
      const { worst } = adjusted([...twice(by), unchecked]);
      const all = [...worst!.ids, ...worst!.alsoLikely];
      expect(new Set(all).size).toBe(all.length);
      expect(all).not.toContain("R3");
    }
  });

  it("hold everything that is checked where nothing stands out", () => {
    const { worst } = adjusted(twice(0.5));
    expect([...worst!.ids, ...worst!.alsoLikely]).toHaveLength(4);
  });

  it("say so in the finding", () => {
    const [finding] = adjustReadings(twice(4)).diagnostics;
    expect(finding).toMatchObject({
      code: "survey-suspect",
      members: ["R1", "R1 again"],
      values: { others: 1 },
    });
    expect(finding?.message).toMatch(/It could also be R1 again: noise of this size can hide which\.$/);
    expect(finding?.hint).toBe("Tape it again, then the others.");
    expect(adjustReadings(twice(8)).diagnostics[0]?.hint).toBe("Tape it again.");
  });

  it("say how many where there are too many to name", () => {
    // Ten risers, each taped twice: ten pairs that are tied, one of which is 4.5 apart, 3.2 uncertainties.
    const pairs = Array.from({ length: 10 }, (_, k): Reading[] => [
      { id: `R${k + 1}`, kind: "rise", from: k, to: k + 1, value: k === 3 ? 193.8 : 190, sigma: 1 },
      { id: `Q${k + 1}`, kind: "rise", from: k, to: k + 1, value: 190, sigma: 1 },
    ]).flat();
    const [finding] = adjustReadings(pairs).diagnostics;
    expect(finding?.members).toEqual(["R4", "Q4"]);
    expect(finding?.message).toMatch(/It could also be any of 18 others: this is not far above the noise\.$/);
  });
});
