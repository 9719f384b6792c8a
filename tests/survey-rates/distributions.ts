/**
 * Distributions and bounds that simulated rates are held against; shares no code with the library.
 *
 * P(a, x), the regularised lower incomplete gamma function, by its series below a + 1 and the continued fraction of the upper
 * one above (DLMF 8.11.4 and 8.9.2): the chi-square distribution is P(dof/2, x/2), the normal one follows from P(1/2, x²/2).
 */
import type { Random } from "../support/random.js";

/** One of a thousand sound runs is beyond this many standard errors, either way. */
export const ONE_IN_A_THOUSAND = 3.2905;
/** The same of Kolmogorov's distance times the root of the number: 2 exp(−2 K²) = 0.001. */
const KOLMOGOROV = 1.9495;

/** A standard normal number (Box and Muller, 1958). */
export function gaussian(random: Random): number {
  const radius = Math.sqrt(-2 * Math.log(1 - random.between(0, 1)));
  return radius * Math.cos(random.between(0, 2 * Math.PI));
}

/** ln Γ of a multiple of ½, by Γ(a + 1) = a Γ(a) from Γ(½) = √π and Γ(1) = 1. */
function lnGamma(a: number): number {
  let [sum, at] = a % 1 === 0 ? [0, 1] : [Math.log(Math.PI) / 2, 0.5];
  for (; at < a; at++) sum += Math.log(at);
  return sum;
}

/** P(a, x), a a multiple of ½ above 0. */
function gammaShare(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    let [term, sum] = [1 / a, 1 / a];
    for (let n = 1; term > sum * 1e-16; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return front * sum;
  }
  let fraction = 0;
  for (let n = 200; n > 0; n--) fraction = (n * (n - a)) / (x + 2 * n + 1 - a - fraction);
  return 1 - front / (x + 1 - a - fraction);
}

/** Share of chi-square of so many degrees of freedom below x. */
export const chiSquareBelow = (x: number, dof: number): number => gammaShare(dof / 2, x / 2);

/** Share of the standard normal distribution below x. */
export const normalBelow = (x: number): number =>
  x < 0 ? 0.5 - gammaShare(0.5, (x * x) / 2) / 2 : 0.5 + gammaShare(0.5, (x * x) / 2) / 2;

/** How far a share counted in n independent tries may be from the true one. */
export const binomialBound = (share: number, n: number): number =>
  ONE_IN_A_THOUSAND * Math.sqrt((share * (1 - share)) / n);

/** The greatest distance of shares from a uniform distribution (Kolmogorov and Smirnov), and how great it may be. */
export function uniformDistance(shares: readonly number[]): { distance: number; bound: number } {
  const n = shares.length;
  const distance = [...shares]
    .sort((a, b) => a - b)
    .reduce((most, own, i) => Math.max(most, (i + 1) / n - own, own - i / n), 0);
  return { distance, bound: KOLMOGOROV / Math.sqrt(n) };
}
