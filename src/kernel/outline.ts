/**
 * Greatest values of a function along the outline of a section: what the lengths of a piece are read from.
 *
 * Each side is sampled, and every local maximum between samples is closed in on by golden section. The value of a smooth
 * maximum is found to rounding although its place is only found to its root.
 *
 * @packageDocumentation
 */
import { type Loop, pointOn, type Segment } from "./region.js";
import type { Vec2 } from "./vec.js";

/** A greatest value and where it is taken. */
export interface OutlineMaximum {
  readonly value: number;
  readonly at: Vec2;
}

/** A function of a place on the outline, and of where that is: fraction `t` of a segment. */
export type OnOutline = (u: number, v: number, segment: Segment, t: number) => number;

const SAMPLES = 24;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** The greatest value of `f` along loops; values that are not finite are passed over. */
export function greatestOnOutline(loops: readonly Loop[], f: OnOutline): OutlineMaximum {
  let best: OutlineMaximum = { value: Number.NEGATIVE_INFINITY, at: [0, 0] };
  for (const loop of loops) {
    for (const segment of loop) {
      const found = onSegment(segment, f);
      // A tie of a rounding keeps the first place, so that equal crowns name the same one every time.
      if (found.value > best.value + 1e-9) best = found;
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
  const samples = Array.from({ length: SAMPLES + 1 }, (_, k) => value(k / SAMPLES));
  let [bestT, best] = [0, samples[0] as number];
  for (let k = 0; k <= SAMPLES; k++) {
    const here = samples[k] as number;
    if (
      here < (samples[k - 1] ?? Number.NEGATIVE_INFINITY) ||
      here < (samples[k + 1] ?? Number.NEGATIVE_INFINITY)
    ) {
      continue;
    }
    const [t, x] = golden(
      value,
      Math.max(0, (k - 1) / SAMPLES),
      Math.min(1, (k + 1) / SAMPLES),
      k / SAMPLES,
      here,
    );
    if (x > best + 1e-9) [bestT, best] = [t, x];
    else best = Math.max(best, x);
  }
  return { value: best, at: pointOn(segment, bestT) };
}

/** Closes in on a maximum between a and b, known to be f0 at t0 so far. */
export function golden(
  f: (t: number) => number,
  a: number,
  b: number,
  t0: number,
  f0: number,
): readonly [number, number] {
  let [lo, hi] = [a, b];
  let [x1, x2] = [hi - GOLDEN * (hi - lo), lo + GOLDEN * (hi - lo)];
  let [f1, f2] = [f(x1), f(x2)];
  let [bestT, best] = [t0, f0];
  for (let k = 0; k < 48; k++) {
    if (f1 > best) [bestT, best] = [x1, f1];
    if (f2 > best) [bestT, best] = [x2, f2];
    if (f1 >= f2) {
      hi = x2;
      [x2, f2] = [x1, f1];
      x1 = hi - GOLDEN * (hi - lo);
      f1 = f(x1);
    } else {
      lo = x1;
      [x1, f1] = [x2, f2];
      x2 = lo + GOLDEN * (hi - lo);
      f2 = f(x2);
    }
  }
  // A gain of a rounding is no other place.
  return best - f0 > 1e-9 ? [bestT, best] : [t0, Math.max(best, f0)];
}
