/** Gauss-Legendre rules against the printed table and the degree they promise. */
import { describe, expect, it } from "vitest";
import { gaussRule } from "../../src/kernel/gauss.js";

/** Source: Abramowitz & Stegun, table 25.4, 15 decimals (from memory): positive nodes and their weights. */
const TABLE: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  2: [[0.577350269189626, 1]],
  3: [
    [0, 0.888888888888889],
    [0.774596669241483, 0.555555555555556],
  ],
  5: [
    [0, 0.568888888888889],
    [0.538469310105683, 0.478628670499366],
    [0.906179845938664, 0.236926885056189],
  ],
  12: [
    [0.125233408511469, 0.249147045813403],
    [0.36783149899818, 0.233492536538355],
    [0.587317954286617, 0.203167426723066],
    [0.769902674194305, 0.160078328543346],
    [0.904117256370475, 0.106939325995318],
    [0.981560634246719, 0.047175336386512],
  ],
};

describe("gaussRule", () => {
  it.each(Object.keys(TABLE).map(Number))("has the printed nodes and weights for n = %s", (n) => {
    const { nodes, weights } = gaussRule(n);
    const half = nodes.map((x, i) => [x, weights[i]!] as const).filter(([x]) => x > -1e-12);
    expect(half.sort((a, b) => a[0] - b[0])).toEqual(
      TABLE[n]!.map(([x, w]) => [expect.closeTo(x, 13), expect.closeTo(w, 13)]),
    );
  });

  it.each([1, 3, 7, 12, 14])("is exact up to degree 2n - 1 and not beyond, n = %s", (n) => {
    const { nodes, weights } = gaussRule(n);
    const integral = (k: number): number => nodes.reduce((sum, x, i) => sum + weights[i]! * x ** k, 0);
    for (let k = 0; k < 2 * n; k++) expect(integral(k)).toBeCloseTo(k % 2 === 0 ? 2 / (k + 1) : 0, 13);
    // The error of x^(2n) is ∫ of the monic Legendre polynomial squared: 2^(2n+1)(n!)⁴/((2n+1)((2n)!)²).
    let square = 2 / (2 * n + 1);
    for (let k = 1; k <= n; k++) square *= (k / (n + k)) ** 2 * 4;
    expect(2 / (2 * n + 1) - integral(2 * n)).toBeGreaterThan(0);
    expect((2 / (2 * n + 1) - integral(2 * n)) / square).toBeCloseTo(1, 4);
  });
});
