/**
 * Do the stated uncertainties hold? One and two standard uncertainties about each quantity must hold the true value in 68.27
 * and 95.45 of a hundred stairs, chi-square must have its distribution and residuals over their own uncertainty the normal one.
 *
 * Quantities of one stair hang together, so each row counts one quantity a stair; 'all coordinates' takes the share within
 * a stair as one number and its spread from stair to stair.
 */
import { type Adjustment, adjustReadings, quantityOf, type StairPlace } from "../../src/layout/index.js";
import { type Random, randomFrom } from "../support/random.js";
import {
  binomialBound,
  chiSquareBelow,
  normalBelow,
  ONE_IN_A_THOUSAND,
  uniformDistance,
} from "./distributions.js";
import { randomStair, readStair, type Truth, trueValue } from "./random-stair.js";

/** A figure that has to be within a bound of what it should be. */
export interface Check {
  readonly what: string;
  readonly n: number;
  readonly got: number;
  readonly wanted: number;
  readonly bound: number;
}

export const holds = (own: Check): boolean => Math.abs(own.got - own.wanted) <= own.bound;

/** Shares of a normal distribution within one and two standard uncertainties. */
const WITHIN = [1, 2].map((k) => 2 * normalBelow(k) - 1);

/** Error over stated uncertainty, one a stair. */
type Errors = Record<string, number[]>;

function draw(random: Random, found: Adjustment, truth: Truth): Record<string, number> {
  const top = truth.z.length - 1;
  const off = (of: StairPlace) => {
    const { value, sigma } = quantityOf(found, of);
    return (value - trueValue(truth, of)) / sigma;
  };
  const low = 1 + Math.floor(random.between(0, top - 1));
  const above = low + 1 + Math.floor(random.between(0, top - low));
  const free = found.coordinates.filter((own) => !own.fixed);
  const one = random.pick(free);
  const placed = one.axis === "x" ? truth.x : truth.z;
  return {
    "slope, lowest to top nosing": off({ kind: "slope", from: 1, to: top }),
    "slope between two nosings": off({ kind: "slope", from: low, to: above }),
    "height of the top nosing": off({ kind: "height", to: top }),
    "height of a nosing": off({ kind: "height", to: above }),
    "place along of a nosing": off({ kind: "distance", to: above }),
    "a riser": off({ kind: "rise", from: low, to: low + 1 }),
    "pitch, lowest to top nosing": off({ kind: "level", from: 1, to: top }),
    "one coordinate, any": (one.value - placed[one.point as number]!) / one.sigma,
  };
}

/** Shares within a stair of coordinates that are right to k uncertainties. */
function sharesOf(found: Adjustment, truth: Truth, k: number): number {
  const free = found.coordinates.filter((own) => !own.fixed);
  const right = free.filter((own) => {
    const placed = own.axis === "x" ? truth.x : truth.z;
    return Math.abs(own.value - placed[own.point as number]!) <= k * own.sigma;
  });
  return right.length / free.length;
}

function clustered(what: string, shares: readonly number[], wanted: number): Check {
  const n = shares.length;
  const got = shares.reduce((sum, own) => sum + own, 0) / n;
  const variance = shares.reduce((sum, own) => sum + (own - got) ** 2, 0) / (n - 1);
  return { what, n, got, wanted, bound: ONE_IN_A_THOUSAND * Math.sqrt(variance / n) };
}

function distributed(what: string, shares: readonly number[]): Check {
  const { distance, bound } = uniformDistance(shares);
  return { what, n: shares.length, got: distance, wanted: 0, bound };
}

/** What came of a run: figures to check, and stairs that were refused. */
export interface IntervalRun {
  readonly checks: readonly Check[];
  readonly refused: readonly string[];
}

/**
 * Draws stairs, adjusts their readings, counts.
 *
 * @param worse - how many times worse than stated the noise is; 1 in an honest run
 */
export function checkIntervals(options: { count: number; seed: number; worse?: number }): IntervalRun {
  const errors: Errors = {};
  const [chi, residuals, refused]: [number[], number[], string[]] = [[], [], []];
  const shares: Record<1 | 2, number[]> = { 1: [], 2: [] };
  let [chiSum, dofSum] = [0, 0];
  for (let i = 0; i < options.count; i++) {
    const random = randomFrom(options.seed * 1_000_003 + i);
    const stair = randomStair(random);
    const found = adjustReadings(readStair(stair, random, {}, options.worse));
    if (!found.ok) {
      refused.push(`stair ${i}: ${found.diagnostics[0]?.message}`);
      continue;
    }
    for (const [what, off] of Object.entries(draw(random, found.value, stair.truth))) {
      errors[what] = [...(errors[what] ?? []), off];
    }
    for (const k of [1, 2] as const) shares[k].push(sharesOf(found.value, stair.truth, k));
    chi.push(chiSquareBelow(found.value.chi2, found.value.dof));
    chiSum += found.value.chi2;
    dofSum += found.value.dof;
    const checked = found.value.readings.flatMap((own) => own.studentised ?? []);
    if (checked.length > 0) residuals.push(normalBelow(random.pick(checked)));
  }
  const within = Object.entries(errors).flatMap(([what, offs]) =>
    WITHIN.map((wanted, k): Check => {
      const got = offs.filter((own) => Math.abs(own) <= k + 1).length / offs.length;
      const bound = binomialBound(wanted, offs.length);
      return { what: `${what}, ${k + 1} sigma`, n: offs.length, got, wanted, bound };
    }),
  );
  const checks = [
    ...within,
    clustered("all coordinates, 1 sigma", shares[1], WITHIN[0]!),
    clustered("all coordinates, 2 sigma", shares[2], WITHIN[1]!),
    {
      ...{ what: "sum of chi2 over sum of dof", n: dofSum, got: chiSum / dofSum, wanted: 1 },
      bound: ONE_IN_A_THOUSAND * Math.sqrt(2 / dofSum),
    },
    distributed("chi2 against its distribution", chi),
    distributed("a studentised residual against normal", residuals),
  ];
  return { checks, refused };
}
