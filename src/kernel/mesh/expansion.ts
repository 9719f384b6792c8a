/**
 * Exact arithmetic on doubles: how to add and multiply without losing a bit.
 *
 * An expansion is a list of doubles, smallest first, no two of which share a bit position; its value is their exact
 * sum, and the last entry has the sign of the whole. Method: two-sum, two-product and grow-expansion after T. J. Dekker
 * (1971) and J. R. Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric Predicates" (1997).
 * Exact while nothing overflows or falls below the normal range, that is for millimetres of any building.
 *
 * @packageDocumentation
 */

/** Doubles of increasing magnitude whose exact sum is meant; empty is zero. */
export type Expansion = readonly number[];

/** 2^27 + 1 splits a 53-bit significand into two halves whose products are exact. */
const SPLITTER = 134217729;

/** e + b, exactly. */
export function grow(e: Expansion, b: number): Expansion {
  const out: number[] = [];
  let q = b;
  for (const c of e) {
    const s = q + c;
    const v = s - q;
    const error = q - (s - v) + (c - v);
    if (error !== 0) out.push(error);
    q = s;
  }
  if (q !== 0) out.push(q);
  return out;
}

/** e + f, exactly. */
export function plus(e: Expansion, f: Expansion): Expansion {
  return f.reduce(grow, e);
}

/** e − f, exactly. */
export function minus(e: Expansion, f: Expansion): Expansion {
  return f.reduce((sum, c) => grow(sum, -c), e);
}

/** a − b of two doubles, exactly. */
export function difference(a: number, b: number): Expansion {
  return grow(a === 0 ? [] : [a], -b);
}

/** e · f, exactly. */
export function times(e: Expansion, f: Expansion): Expansion {
  let sum: Expansion = [];
  for (const a of e) for (const b of f) sum = addProduct(sum, a, b);
  return sum;
}

/** −1, 0 or 1: the exact sign. */
export function signOf(e: Expansion): number {
  return Math.sign(e[e.length - 1] ?? 0);
}

function addProduct(sum: Expansion, a: number, b: number): Expansion {
  const p = a * b;
  const ca = SPLITTER * a;
  const aHigh = ca - (ca - a);
  const aLow = a - aHigh;
  const cb = SPLITTER * b;
  const bHigh = cb - (cb - b);
  const bLow = b - bHigh;
  const error = aLow * bLow - (p - aHigh * bHigh - aLow * bHigh - aHigh * bLow);
  return grow(grow(sum, error), p);
}
