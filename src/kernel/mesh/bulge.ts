/**
 * How far does a piece of an edge stand off the straight line between its ends, at the most? An upper bound, in closed form.
 *
 * Conics. Let h be half the piece's parameter, m the half-diameter to its middle and n the one along the chord. The point at τ
 * from the middle is cos τ·m + sin τ·n, so its distance from the chord's line is 2ab·sin h·(1 − cos h)/L at most, a and b the
 * half-axes, L = 2·sin h·|n| the chord's length. Along the chord it is µ·cos τ + ν·sin τ from the centre, µ the part of m along
 * it and ν = |n|: past the end, where τ = h, by √(µ² + ν²)·(1 − cos(h − β)) at most with tan β = ν/µ, if β < h, and by nothing else.
 *
 * Saddles. A curve X(t) leaves the linear interpolation of its ends by ∆t²/8·sup|X″| at most. On a cylinder of radius r the
 * parts round the axis and along it are bounded apart, e = r∆²/8 and f = ∆²/8·sup|s″| or less
 * (`saddle-bend.ts`); of the second only what is square to the chord counts where the foot is on the chord (where
 * L ≥ 4(e + f)). Branch and header give a bound each, and the lesser counts: one is smooth where the other is not.
 *
 * @packageDocumentation
 */
import type { ConicCurve } from "../curve/conic.js";
import type { Curve } from "../curve/curve.js";
import type { SaddleCurve } from "../curve/saddle.js";
import { ROUNDING_SHARE } from "../tolerance.js";
import { length, type Vec3 } from "../vec.js";
import { departure, type Stretch } from "./saddle-bend.js";

/** Bounds the distance of a curve from its chord, and says where a piece is best cut. */
export interface Bulge {
  /** Bound on the second derivative of the whole curve, millimetres: a step ∆t bulges by ∆t²/8 times this at most. */
  readonly most: number;
  /**
   * Bound between the parameters `t` and `u`, where the curve is at `p` and `q`, millimetres; the first that is found not to
   * exceed `enough`, else the least.
   */
  readonly of: (t: number, u: number, p: Vec3, q: Vec3, enough: number) => number;
  /** A parameter strictly between two others at which the curve may bend sharply; null when there is none. */
  readonly bendIn: (t: number, u: number) => number | null;
}

/** Pieces longer than this, in radians, are not bounded: the formulas hold for less than half a turn. */
const LONGEST = 2;

/** The bound of one curve; null for lines, which are their own chords. */
export function bulgeOf(curve: Curve): Bulge | null {
  switch (curve.kind) {
    case "line":
      return null;
    case "conic":
      return conicBulge(curve);
    case "saddle":
      return saddleBulge(curve);
  }
}

function conicBulge({ centre, major, minor }: ConicCurve): Bulge {
  const a = length(major);
  const area2 = 2 * a * length(minor);
  const of = (t: number, u: number, p: Vec3, q: Vec3): number => {
    const h = Math.abs(u - t) / 2;
    if (h > LONGEST / 2) return Number.POSITIVE_INFINITY;
    const sin = Math.sin(h);
    const cos = Math.cos(h);
    // 1 − cos h without loss.
    const rise = (sin * sin) / (1 + cos);
    const x = q[0] - p[0];
    const y = q[1] - p[1];
    const z = q[2] - p[2];
    const long = Math.sqrt(x * x + y * y + z * z);
    const across = (area2 * sin * rise) / long;
    // Only where the chord is short for the diameter to its middle can a foot be past its end.
    if (long * cos >= 2 * sin * sin * a) return across;
    const mx = (p[0] + q[0]) / 2 - centre[0];
    const my = (p[1] + q[1]) / 2 - centre[1];
    const mz = (p[2] + q[2]) / 2 - centre[2];
    // (mx, my, mz) is cos h·m.
    const mu = Math.abs(mx * x + my * y + mz * z) / (long * cos);
    const nu = long / (2 * sin);
    if (mu * sin <= nu * cos) return across;
    const past = Math.sin((h - Math.atan2(nu, mu)) / 2);
    return Math.hypot(across, 2 * Math.hypot(mu, nu) * past * past);
  };
  return { most: a, of, bendIn: () => null };
}

function saddleBulge(c: SaddleCurve): Bulge {
  const { phiN, radius, a0, b0, k, sa, sb } = c;
  const header = (a0 + b0) / 2 + radius;
  // s = const + swing·sin δ + k·√(A·B). Along the header's axis it is |k|·(±√(A′·B′) + cosine·√(A·B)), of brackets −a₀, −b₀.
  const swing = sb * Math.cos(phiN) - sa * Math.sin(phiN);
  const own = Math.abs(swing / radius);
  const unlike = swing < 0 !== k < 0;
  const on: Stretch = { turn: 0, lowS: 0, highS: 0, lowC: 0, highC: 0, pastS: 0, pastC: 0 };
  // √(A·B)″ = r·h·cos δ/g − (r·R·sin δ)²/g³ with g = √(R² − h²), which is least where h is greatest.
  const left = Math.min(a0, b0);
  const g2 = left > 0 ? left * (2 * header - left) : 0;
  const bend = (radius * (header - left) + (radius * header) ** 2 / g2) / Math.sqrt(g2);
  const most = g2 > 0 ? Math.hypot(radius, Math.abs(swing) + Math.abs(k) * bend) : Number.POSITIVE_INFINITY;
  // Sine and cosine of half the angle at the end of the piece before, where most pieces begin.
  let known = Number.NaN;
  let sinKnown = 0;
  let cosKnown = 0;
  const of = (t: number, u: number, p: Vec3, q: Vec3, enough: number): number => {
    const turn = Math.abs(u - t);
    if (turn > LONGEST) return Number.POSITIVE_INFINITY;
    const sin0 = t === known ? sinKnown : Math.sin((t - phiN) / 2);
    const cos0 = t === known ? cosKnown : Math.cos((t - phiN) / 2);
    const sin1 = Math.sin((u - phiN) / 2);
    const cos1 = Math.cos((u - phiN) / 2);
    known = u;
    sinKnown = sin1;
    cosKnown = cos1;
    const s0 = sin0 * sin0;
    const c0 = cos0 * cos0;
    const s1 = sin1 * sin1;
    const c1 = cos1 * cos1;
    const crown = sin0 * sin1 < 0;
    const foot = cos0 * cos1 < 0;
    on.turn = turn;
    on.pastS = crown ? 2 * Math.asin(Math.min(Math.abs(sin0), Math.abs(sin1))) : 0;
    on.pastC = foot ? 2 * Math.asin(Math.min(Math.abs(cos0), Math.abs(cos1))) : 0;
    on.lowS = crown ? 0 : Math.min(s0, s1);
    on.highS = foot ? 1 : Math.max(s0, s1);
    on.lowC = foot ? 0 : Math.min(c0, c1);
    on.highC = crown ? 1 : Math.max(c0, c1);
    const x = q[0] - p[0];
    const y = q[1] - p[1];
    const z = q[2] - p[2];
    const long = Math.sqrt(x * x + y * y + z * z);
    const w0 = 2 * sin0 * cos0;
    const w1 = 2 * sin1 * cos1;
    const side = (c0 - s0) * (c1 - s1) < 0;
    const atMost = -swing * (side && w0 + w1 > 0 ? 1 : Math.max(w0, w1));
    const atLeast = -swing * (side && w0 + w1 < 0 ? -1 : Math.min(w0, w1));
    const [low, high] = swing > 0 ? [atMost, atLeast] : [atLeast, atMost];
    const round = (radius * turn * turn) / 8;
    const room = Math.sqrt(Math.max(0, enough * enough - round * round)) * (1 - ROUNDING_SHARE);
    const onBranch = offChord(radius, turn, departure(on, radius, a0, b0, k, low, high, room), long);
    if (onBranch <= enough || crown || foot) return onBranch;
    const a = Math.sqrt(Math.max(0, a0 + 2 * radius * s0));
    const b = Math.sqrt(Math.max(0, b0 + 2 * radius * c0));
    const aa = Math.sqrt(Math.max(0, a0 + 2 * radius * s1));
    const bb = Math.sqrt(Math.max(0, b0 + 2 * radius * c1));
    const half = Math.abs(aa * b - a * bb) / (2 * header);
    if (!(half < 0.5)) return onBranch;
    on.turn = 2 * Math.asin(half);
    on.lowS = Math.min(a * a, aa * aa) / (2 * header);
    on.highS = Math.max(a * a, aa * aa) / (2 * header);
    on.lowC = Math.min(b * b, bb * bb) / (2 * header);
    on.highC = Math.max(b * b, bb * bb) / (2 * header);
    const middle = (b * b - a * a) * (bb * bb - aa * aa) < 0;
    const g = own * Math.min(a * b, aa * bb);
    const gg = own * (middle ? header : Math.max(a * b, aa * bb));
    const same = unlike === w0 + w1 < 0;
    const along = departure(on, header, -a0, -b0, Math.abs(k), same ? -gg : g, same ? -g : gg, 0);
    return Math.min(onBranch, offChord(header, on.turn, along, long));
  };
  // Beside a silhouette of the header the curve turns where the branch does: at its widest, every half turn from φn.
  const bendIn = (t: number, u: number): number | null => {
    const [low, high] = t < u ? [t, u] : [u, t];
    const at = phiN + Math.PI * Math.ceil((low - phiN) / Math.PI);
    return at > low && at < high ? at : null;
  };
  return { most, of, bendIn };
}

/**
 * The bound on a cylinder.
 *
 * @param turn - about its axis from one end of the piece to the other, radians
 * @param along - how far at most the height along its axis departs from a straight line
 * @param long - length of the chord
 */
function offChord(radius: number, turn: number, along: number, long: number): number {
  const round = (radius * turn * turn) / 8;
  const level = long < 4 * (round + along) ? 1 : Math.min(1, (2 * radius * Math.sin(turn / 2)) / long);
  return Math.sqrt(round * round + level * level * along * along);
}
