/**
 * Gauss-Legendre rules on [−1, 1], nodes and weights to full double precision.
 *
 * Nodes are the roots of the Legendre polynomial, by Newton from Chebyshev's estimate (Abramowitz & Stegun 25.4.29; the
 * recurrence 22.7.10). Computed once per process at load: no allocation after that.
 *
 * @packageDocumentation
 */

/** Nodes and weights of a rule. */
export interface GaussRule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
}

/** The n-point Gauss-Legendre rule, exact for polynomials of degree 2n − 1. */
export function gaussRule(n: number): GaussRule {
  const nodes: number[] = [];
  const weights: number[] = [];
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 0;
    for (let k = 0; k < 8; k++) {
      let [p0, p1] = [1, x];
      for (let j = 2; j <= n; j++) [p0, p1] = [p1, ((2 * j - 1) * x * p1 - (j - 1) * p0) / j];
      slope = (n * (x * p1 - p0)) / (x * x - 1);
      x -= p1 / slope;
    }
    nodes.push(x);
    weights.push(2 / ((1 - x * x) * slope * slope));
  }
  return { nodes, weights };
}

/** The rules in use: sharp enough for a panel of an edge, and exact up to fifth powers. */
export const GAUSS_12: GaussRule = /* @__PURE__ */ gaussRule(12);
export const GAUSS_3: GaussRule = /* @__PURE__ */ gaussRule(3);
