/**
 * Repeatable random numbers for tests: the same start gives the same cases on every machine.
 *
 * A 32-bit generator of the multiply-xorshift family; good enough to spread cases, nothing more.
 */
export interface Random {
  /** Uniform in [lo, hi). */
  readonly between: (lo: number, hi: number) => number;
  /** One of the given things. */
  readonly pick: <T>(from: readonly T[]) => T;
  /** True with the given probability. */
  readonly chance: (p: number) => boolean;
}

export function randomFrom(start: number): Random {
  let state = start >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    between: (lo, hi) => lo + (hi - lo) * next(),
    pick: (from) => from[Math.floor(next() * from.length)]!,
    chance: (p) => next() < p,
  };
}
