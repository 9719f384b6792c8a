/**
 * Greatest values of a function along the outline of a section: what the lengths of a piece are read from.
 *
 * Each side is sampled, and every local maximum between samples is closed in on by Brent's parabolic search (R. P. Brent,
 * Algorithms for Minimization without Derivatives, 1973, ch. 5). The value of a smooth maximum is found to rounding
 * although its place is only found to its root.
 *
 * @packageDocumentation
 */

import { type Loop, pointOn, type Segment } from "./region.js";
import { MAXIMUM_SHARE, ROUNDING_MM } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** A greatest value and where it is taken. */
export interface OutlineMaximum {
  readonly value: number;
  readonly at: Vec2;
}

/** A function of a place on the outline, and of where that is: fraction `t` of a segment. */
export type OnOutline = (u: number, v: number, segment: Segment, t: number) => number;

const SAMPLES = 16;

const NONE: OutlineMaximum = { value: Number.NEGATIVE_INFINITY, at: [0, 0] };

/**
 * The greatest value of `f` along loops; values that are not finite are passed over.
 *
 * @param known - a maximum found elsewhere, returned unless it is beaten
 */
export function greatestOnOutline(loops: readonly Loop[], f: OnOutline, known = NONE): OutlineMaximum {
  let best = known;
  for (const loop of loops) {
    for (const segment of loop) {
      const found = onSegment(segment, f, 1, sampled(segment, f));
      if (found.value > best.value + ROUNDING_MM) best = found;
    }
  }
  return best;
}

/** The greatest and the least value of `f` along a loop, both from one set of samples. */
export function extremesOnOutline(
  loop: Loop,
  f: OnOutline,
): { readonly greatest: OutlineMaximum; readonly least: OutlineMaximum } {
  let greatest = NONE;
  let deepest = NONE;
  for (const segment of loop) {
    const samples = sampled(segment, f);
    const high = onSegment(segment, f, 1, samples);
    const low = onSegment(segment, f, -1, samples);
    if (high.value > greatest.value + ROUNDING_MM) greatest = high;
    if (low.value > deepest.value + ROUNDING_MM) deepest = low;
  }
  return { greatest, least: { value: -deepest.value, at: deepest.at } };
}

function sampled(segment: Segment, f: OnOutline): number[] {
  const samples: number[] = [];
  for (let k = 0; k <= SAMPLES; k++) {
    const [u, v] = pointOn(segment, k / SAMPLES);
    samples.push(f(u, v, segment, k / SAMPLES));
  }
  return samples;
}

const orNone = (x: number): number => (Number.isFinite(x) ? x : Number.NEGATIVE_INFINITY);

/** The greatest value of sign·f on a segment. */
function onSegment(segment: Segment, f: OnOutline, sign: 1 | -1, samples: readonly number[]): OutlineMaximum {
  const value = (t: number): number => {
    const [u, v] = pointOn(segment, t);
    return orNone(sign * f(u, v, segment, t));
  };
  let bestT = 0;
  let before = Number.NEGATIVE_INFINITY;
  let here = orNone(sign * (samples[0] as number));
  let best = here;
  for (let k = 0; k <= SAMPLES; k++) {
    const after = k < SAMPLES ? orNone(sign * (samples[k + 1] as number)) : Number.NEGATIVE_INFINITY;
    if (here >= before && here >= after) {
      const t0 = k / SAMPLES;
      // A level stretch has nothing to close in on.
      const level = Math.max(here - before, here - after) < ROUNDING_MM;
      const [t, x] =
        level || isTopAtEnd(value, t0, here)
          ? ([t0, here] as const)
          : closeIn(value, (k - 1) / SAMPLES, (k + 1) / SAMPLES, t0, here);
      if (x > best + ROUNDING_MM) [bestT, best] = [t, x];
      else best = Math.max(best, x);
    }
    before = here;
    here = after;
  }
  return { value: best, at: pointOn(segment, bestT) };
}

/** True when a side is level at its end and falls from there: what a maximum still nearer adds is less than a rounding. */
function isTopAtEnd(value: (t: number) => number, t: number, here: number): boolean {
  if (t > 0 && t < 1) return false;
  const drop = here - value(Math.abs(t - BESIDE));
  return drop >= 0 && drop < ROUNDING_MM;
}

/** Ten times the share to which a maximum is placed: far enough for a slope to show, as it does at a kink. */
const BESIDE = 10 * MAXIMUM_SHARE;

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * Closes in on a maximum of f between a and b (cut to [0, top]), known to be f0 at t0 so far.
 *
 * @returns the place and the greatest value met
 */
export function closeIn(
  f: (t: number) => number,
  from: number,
  to: number,
  t0: number,
  f0: number,
  top = 1,
): readonly [number, number] {
  let [a, b] = [Math.max(0, from), Math.min(top, to)];
  let [x, w, v] = [t0, t0, t0];
  let [fx, fw, fv] = [f0, f0, f0];
  let [step, last] = [0, 0];
  const tolerance = MAXIMUM_SHARE * Math.max(top, ROUNDING_MM);
  for (let k = 0; k < 40; k++) {
    const mid = (a + b) / 2;
    if (Math.abs(x - mid) <= 2 * tolerance - (b - a) / 2) break;
    let parabola = false;
    if (Math.abs(last) > tolerance) {
      const r = (x - w) * (fv - fx);
      let q = (x - v) * (fw - fx);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      q = Math.abs(q);
      if (Math.abs(p) < Math.abs((q * last) / 2) && p > q * (a - x) && p < q * (b - x)) {
        [last, step] = [step, p / q];
        parabola = true;
      }
    }
    if (!parabola) {
      last = x < mid ? b - x : a - x;
      step = GOLDEN * last;
    }
    const t = Math.abs(step) >= tolerance ? x + step : x + (step > 0 ? tolerance : -tolerance);
    const y = f(t);
    if (y >= fx) {
      if (t < x) b = x;
      else a = x;
      [v, w, x] = [w, x, t];
      [fv, fw, fx] = [fw, fx, y];
    } else {
      if (t < x) a = t;
      else b = t;
      if (y >= fw || w === x) {
        [v, w] = [w, t];
        [fv, fw] = [fw, y];
      } else if (y >= fv || v === x || v === w) {
        [v, fv] = [t, y];
      }
    }
  }
  return fx - f0 > ROUNDING_MM ? [x, fx] : [t0, Math.max(fx, f0)];
}
