/**
 * Where two contacts of an end are equally far along one side of the section, and where a function changes sign at all.
 *
 * A difference of heights is looked at in steps from end to end. The ends themselves are exact, so that a take-over is found
 * however near it is to a corner or to a silhouette, where a height runs upright. Between two looks a difference may dip
 * through zero and come back; a dip that could reach zero is followed to its bottom.
 *
 * @packageDocumentation
 */
import { closeIn } from "./outline.js";
import { ROUNDING_MM } from "./tolerance.js";

/** A place with what a function is there. */
export interface Look {
  readonly t: number;
  readonly value: number;
}

/** Looks at a function in equal steps; `first` and `last` may be given where the function itself says nothing at an end. */
export function looksAt(
  f: (t: number) => number,
  from: number,
  to: number,
  steps: number,
  first: Look = { t: from, value: f(from) },
  last: Look = { t: to, value: f(to) },
): Look[] {
  const out = [first];
  for (let k = 1; k < steps; k++) {
    const t = from + ((to - from) * k) / steps;
    if (t > first.t && t < last.t) out.push({ t, value: f(t) });
  }
  out.push(last);
  return out;
}

/** Every place between looks where f changes sign; what is no more than rounding on both sides has no sign. */
export function signChanges(f: (t: number) => number, looks: readonly Look[]): number[] {
  const out: number[] = [];
  for (let k = 1; k < looks.length; k++) {
    const [a, b] = [looks[k - 1] as Look, looks[k] as Look];
    if (a.value < 0 !== b.value < 0) {
      if (Math.max(Math.abs(a.value), Math.abs(b.value)) > ROUNDING_MM) out.push(bisect(f, a, b.t));
      continue;
    }
    const c = looks[k + 1];
    if (!c || b.value < 0 !== c.value < 0 || !mayReachZero(a, b, c)) continue;
    const sign = b.value < 0 ? -1 : 1;
    const wide = c.t - a.t;
    const [x, value] = closeIn((d) => -sign * f(a.t + d), 0, wide, b.t - a.t, -sign * b.value, wide);
    if (value > ROUNDING_MM) {
      const bottom = { t: a.t + x, value: -sign * value };
      out.push(bisect(f, bottom, a.t), bisect(f, bottom, c.t));
    }
  }
  return out;
}

/** True when the middle one of three looks of one sign is nearest to zero and a parabola through them comes halfway to it. */
function mayReachZero(a: Look, b: Look, c: Look): boolean {
  const [ya, yb, yc] = [Math.abs(a.value), Math.abs(b.value), Math.abs(c.value)];
  if (yb > ya || yb > yc) return false;
  const [p, q] = [a.t - b.t, c.t - b.t];
  const bend = ((ya - yb) / p - (yc - yb) / q) / (p - q);
  const slope = (ya - yb) / p - bend * p;
  return !(yb - (slope * slope) / (4 * bend) > yb / 2);
}

/** Where f changes sign between a look and another place, to the last bit. */
export function bisect(f: (t: number) => number, from: Look, to: number): number {
  let [lo, hi] = [from.t, to];
  for (;;) {
    const mid = (lo + hi) / 2;
    if (mid === lo || mid === hi) return mid;
    const value = f(mid);
    if (value === 0) return mid;
    if (value < 0 === from.value < 0) lo = mid;
    else hi = mid;
  }
}
