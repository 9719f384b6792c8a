/**
 * How far can the height of a saddle depart from a straight line between two angles? An upper bound by intervals.
 *
 * With S = sin²(δ/2), C = cos²(δ/2), A = a₀ + 2rS, B = b₀ + 2rC and the quotients p = √(S/A), q = √(C/B), twice
 * differentiated by δ
 *
 *   √(A·B)″ = ½·r·a₀·cos δ·√B/√A³ − ½·r·b₀·cos δ·√A/√B³ − r²·(√S·p³·√B + 2·p·q·√(S·C) + √C·q³·√A)
 *
 * Each factor is monotone in S, so its values at the ends of a stretch bound it, and what has the second derivative f leaves
 * the line by ∆²/8·sup|f| at most. That is far too much for the first two terms beside a silhouette, where they turn a
 * nearly sharp corner. There Green's function of the stretch, which is nowhere more than the distance from the corner,
 * gives ∫δ·f dδ ≤ κ·a₀·√B·(1/√A₀ − 1/√A₁), κ = δ/sin δ at the far end; a corner that is x inside the stretch adds x times
 * what the slope changes in all, √B·(√(2r) + ∆·√(r/8)) at most.
 *
 * @packageDocumentation
 */

/** A stretch of angles: how long it is in radians, and the ranges of S and C over it. */
export interface Stretch {
  turn: number;
  lowS: number;
  highS: number;
  lowC: number;
  highC: number;
  /** How far inside the places are where S = 0 and where C = 0; 0 where they are not. */
  pastS: number;
  pastC: number;
}

/**
 * Bound on the distance of k·√(A·B) + X from its linear interpolation over a stretch, millimetres, where low ≤ X″ ≤ high;
 * Infinity where the curve ends at a silhouette.
 *
 * @param r - radius of the cylinder that the angle goes round, millimetres
 * @param enough - a bound that does not exceed it need not be improved, millimetres
 */
export function departure(
  on: Stretch,
  r: number,
  a0: number,
  b0: number,
  k: number,
  low: number,
  high: number,
  enough: number,
): number {
  const { turn, lowS, highS, lowC, highC } = on;
  const a = Math.sqrt(Math.max(0, a0 + 2 * r * lowS));
  const aa = Math.sqrt(Math.max(0, a0 + 2 * r * highS));
  const b = Math.sqrt(Math.max(0, b0 + 2 * r * lowC));
  const bb = Math.sqrt(Math.max(0, b0 + 2 * r * highC));
  if ((a === 0 && a0 !== 0) || (b === 0 && b0 !== 0)) return Number.POSITIVE_INFINITY;
  const s = Math.sqrt(lowS);
  const ss = Math.sqrt(highS);
  const c = Math.sqrt(lowC);
  const cc = Math.sqrt(highC);
  const even = 1 / Math.sqrt(2 * r);
  const p = a0 === 0 ? even : a0 > 0 ? s / a : ss / aa;
  const pp = a0 === 0 ? even : a0 > 0 ? ss / aa : s / a;
  const q = b0 === 0 ? even : b0 > 0 ? c / b : cc / bb;
  const qq = b0 === 0 ? even : b0 > 0 ? cc / bb : c / b;
  const least = -r * r * (ss * pp * pp * pp * bb + 2 * pp * qq * ss * cc + cc * qq * qq * qq * aa);
  const most = -r * r * (s * p * p * p * b + 2 * p * q * s * c + c * q * q * q * a);
  const share = (turn * turn) / 8;
  if (a0 === 0 && b0 === 0) return share * farthest(k, least, most, low, high);
  // The two bends: least and greatest values of the factors beside cos δ.
  const cos = lowC - highS;
  const cosMost = highC - lowS;
  const f = a0 === 0 ? 0 : (r * a0 * b) / (2 * aa * aa * aa);
  const ff = a0 === 0 ? 0 : (r * a0 * bb) / (2 * a * a * a);
  const g = b0 === 0 ? 0 : (-r * b0 * a) / (2 * bb * bb * bb);
  const gg = b0 === 0 ? 0 : (-r * b0 * aa) / (2 * b * b * b);
  const whole =
    share *
    farthest(
      k,
      least +
        Math.min(f * cos, ff * cos, f * cosMost, ff * cosMost) +
        Math.min(g * cos, gg * cos, g * cosMost, gg * cosMost),
      most +
        Math.max(f * cos, ff * cos, f * cosMost, ff * cosMost) +
        Math.max(g * cos, gg * cos, g * cosMost, gg * cosMost),
      low,
      high,
    );
  if (whole <= enough) return whole;
  const slopes = Math.sqrt(2 * r) + turn * Math.sqrt(r / 8);
  const atA = Math.min(share * Math.abs(ff), bb * (corner(a0, a, aa, ss) + on.pastS * slopes));
  const atB = Math.min(share * Math.abs(gg), aa * (corner(b0, b, bb, cc) + on.pastC * slopes));
  return Math.min(whole, share * farthest(k, least, most, low, high) + Math.abs(k) * (atA + atB));
}

/** κ·a₀·(1/√A₀ − 1/√A₁), the sine of half the angle at the far end given. */
function corner(a0: number, root: number, far: number, sine: number): number {
  if (a0 === 0 || sine >= 1) return a0 === 0 ? 0 : Number.POSITIVE_INFINITY;
  const kappa = Math.asin(sine) / (sine * Math.sqrt(1 - sine * sine));
  return Math.abs(kappa * a0 * (1 / root - 1 / far));
}

/** The greatest |k·f + x| for f and x between their bounds. */
function farthest(k: number, least: number, most: number, low: number, high: number): number {
  return k < 0
    ? Math.max(Math.abs(k * most + low), Math.abs(k * least + high))
    : Math.max(Math.abs(k * least + low), Math.abs(k * most + high));
}
