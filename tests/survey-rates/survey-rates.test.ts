/**
 * The short version of `npm run survey:rates`: 150 random stairs, always the same ones. Bounds are one in a thousand, so that
 * what they refuse is wrong; `distributions.ts` is held against published quantiles first.
 */
import { describe, expect, it } from "vitest";
import { adjustReadings } from "../../src/layout/index.js";
import { randomFrom } from "../support/random.js";
import { plantBlunders, ratesOf } from "./blunders.js";
import { namedRate } from "./demo-rates.js";
import { chiSquareBelow, normalBelow, uniformDistance } from "./distributions.js";
import { prospectOf, spaceOf } from "./geometry.js";
import { checkIntervals, holds } from "./intervals.js";
import { randomStair, readTrue } from "./random-stair.js";
import { isAsCountedElsewhere, promisesKept } from "./run.js";

const SEED = 1;
const COUNT = 150;
/** Of these each has several readings wrong, one after the other. */
const WRONG_IN = 50;
const failing = (options: Parameters<typeof checkIntervals>[0]) => {
  const { checks, refused } = checkIntervals(options);
  expect(refused).toEqual([]);
  return checks.filter((own) => !holds(own)).map((own) => own.what);
};

describe("the distributions rates are held against", () => {
  it.each([
    [3.841, 1, 0.95],
    [18.307, 10, 0.95],
    [124.342, 100, 0.95],
    [0.103, 2, 0.05],
    [63.691, 40, 0.99],
    // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4, printed to three decimals.
  ])("have the published chi-square quantile %f of %i dof", (x, dof, share) => {
    expect(Math.abs(chiSquareBelow(x, dof) - share)).toBeLessThan(5e-4);
  });

  it("have the shares within one, two and three standard deviations (JCGM 100:2008, G.1: 68.27, 95.45, 99.73 %)", () => {
    const within = [1, 2, 3].map((k) => 100 * (normalBelow(k) - normalBelow(-k)));
    expect(within.map((own) => own.toFixed(2))).toEqual(["68.27", "95.45", "99.73"]);
  });

  it("know a uniform sample from one that is not", () => {
    const even = Array.from({ length: 200 }, (_, i) => (i + 0.5) / 200);
    const near = uniformDistance(even);
    const far = uniformDistance(even.map((own) => own ** 2));
    expect(near.distance).toBeLessThan(near.bound);
    expect(far.distance).toBeGreaterThan(far.bound);
  });
});

describe("stated uncertainties of random stairs", () => {
  it("hold at their rates", () => {
    expect(failing({ count: COUNT, seed: SEED })).toEqual([]);
  });

  it("are refused when the tape is a quarter worse than stated, or a quarter better", () => {
    const gross = ["sum of chi2 over sum of dof", "chi2 against its distribution"];
    expect(failing({ count: 40, seed: SEED, worse: 1.25 })).toEqual(expect.arrayContaining(gross));
    expect(failing({ count: 40, seed: SEED, worse: 0.75 })).toEqual(expect.arrayContaining(gross));
  });
});

describe("a reading six standard uncertainties wrong", () => {
  const rates = ratesOf(plantBlunders({ count: WRONG_IN, seed: SEED + 1 }));

  it("is named alone, or in the group that has it, as the geometry promises", () => {
    expect(rates.map((own) => own.separability)).toContain("separable");
    for (const own of rates) expect(promisesKept(own), JSON.stringify(own)).toBe(true);
  });

  it("would often be missed were only the worst reading named", () => {
    // What the also likely ones are for: the bound would refuse a survey without them.
    const faint = rates.find((own) => own.separability === "faint")!;
    expect(promisesKept({ ...faint, inGroup: faint.inTie })).toBe(false);
  });

  it("is judged by a geometry whose redundancies add up to the dof", () => {
    const found = adjustReadings(readTrue(randomStair(randomFrom(SEED))));
    if (!found.ok) throw new Error(found.diagnostics[0]?.message);
    const space = spaceOf(found.value);
    const sum = space.reduce((all, _, j) => all + prospectOf(space, j, 6).redundancy, 0);
    expect(sum).toBeCloseTo(found.value.dof, 6);
  });

  it("of the demo stair is named as often as an independent script counted, and its group has it", () => {
    // All twelve lines are in the long run; this one has the fewest readings.
    const found = namedRate("floor-to-floor only | R8 | 0.75 in", SEED);
    expect(isAsCountedElsewhere(found), JSON.stringify(found)).toBe(true);
    expect(found.inGroup).toBeGreaterThanOrEqual(0.95);
  });
});
