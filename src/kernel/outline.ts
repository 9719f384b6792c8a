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
      const found = onSegment(segment, f);
      if (found.value > best.value + ROUNDING_MM) best = found;
    }
  }
  return best;
}

function onSegment(segment: Segment, f: OnOutline): OutlineMaximum {
  const value = (t: number): number => {
    const [u, v] = pointOn(segment, t);
    const x = f(u, v, segment, t);
    return Number.isFinite(x) ? x : Number.NEGATIVE_INFINITY;
  };
  const samples: number[] = [];
  let top = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= SAMPLES; k++) {
    const x = value(k / SAMPLES);
    samples.push(x);
    if (x > top) top = x;
  }
  let [bestT, best] = [0, samples[0] as number];
  for (let k = 0; k <= SAMPLES; k++) {
    const here = samples[k] as number;
    const before = samples[k - 1] ?? Number.NEGATIVE_INFINITY;
    const after = samples[k + 1] ?? Number.NEGATIVE_INFINITY;
    if (here < before || here < after) continue;
    // A level stretch has nothing to close in on.
    const level = Math.max(here - before, here - after) < ROUNDING_MM;
    const [t, x] = level
      ? [k / SAMPLES, here]
      : closeIn(value, (k - 1) / SAMPLES, (k + 1) / SAMPLES, k / SAMPLES, here);
    if (x > best + ROUNDING_MM) [bestT, best] = [t, x];
    else best = Math.max(best, x);
  }
  return { value: best, at: pointOn(segment, bestT) };
}

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
