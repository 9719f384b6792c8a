/**
 * A root between two places where a function has opposite signs: false position with the Illinois rule.
 *
 * When one end stands still twice running its value is halved, which keeps the bracket and makes the search converge
 * faster than a line (M. Dowell, P. Jarratt, BIT 11, 1971).
 *
 * @packageDocumentation
 */

const STEPS = 60;

/**
 * @param f - continuous between `from` and `to`
 * @param atFrom - f(from), known already; `atTo` likewise, of the other sign
 * @param small - |f| at or below this is zero
 */
export function falsePosition(
  f: (t: number) => number,
  from: number,
  to: number,
  atFrom: number,
  atTo: number,
  small: number,
): number {
  let [lo, hi, flo, fhi] = [from, to, atFrom, atTo];
  if (Math.abs(flo) <= small) return lo;
  if (Math.abs(fhi) <= small) return hi;
  let side = 0;
  for (let k = 0; k < STEPS; k++) {
    const mid = (lo * fhi - hi * flo) / (fhi - flo);
    const value = f(mid);
    if (Math.abs(value) <= small || mid === lo || mid === hi) return mid;
    if (value * fhi > 0) {
      [hi, fhi] = [mid, value];
      if (side === -1) flo /= 2;
      side = -1;
    } else {
      [lo, flo] = [mid, value];
      if (side === 1) fhi /= 2;
      side = 1;
    }
  }
  return (lo + hi) / 2;
}
