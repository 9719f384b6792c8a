/**
 * Which reading is wrong? The one that leaves least misfit when it is taken away, and every reading that would do as well.
 *
 * Of weighted residuals v = M e with M = I − Q Qᵀ, the studentised one is vᵢ / √Mᵢᵢ (Baarda, A testing procedure for use in
 * geodetic networks, 1968). Readings whose columns of M are parallel cannot be told apart: whatever one's error does to the
 * residuals, another error of the other does too. Taking a reading away is a projection, M − Mᵢ Mᵢᵀ / Mᵢᵢ, so that a
 * second wrong reading is looked for without the first.
 *
 * @packageDocumentation
 */
import { TELLS_NOTHING } from "../../kernel/tolerance.js";
import { alsoLikely } from "./also-likely.js";
import { dot, type Matrix } from "./factor.js";

/** Readings of which one is wrong; a single one where it can be told apart from all others. */
export interface Suspect {
  /** Those that no reading can ever tell apart, in the order the readings were given. */
  readonly ids: readonly string[];
  /** Others, in that order, that fit better but could have been put there by noise: with `ids` they hold the wrong one 19 times in 20. */
  readonly alsoLikely: readonly string[];
  /** Misfit of each of them over its own standard uncertainty; signed as the one with the first id reads, + too long. */
  readonly studentised: number;
}

/** What errors of the readings do to the residuals: I − Q Qᵀ, one row and column per reading. */
export function residualSpace(q: Matrix, readings: number): number[][] {
  const rows = Array.from({ length: readings }, (_, i) => q.map((own) => own[i] as number));
  return rows.map((a, i) => rows.map((b, j) => (i === j ? 1 : 0) - dot(a, b)));
}

/** Share of an error of each reading that its own residual shows, 0 to 1. */
export function redundancies(space: Matrix): number[] {
  return space.map((row, i) => {
    const own = row[i] as number;
    return own < TELLS_NOTHING ? 0 : Math.min(own, 1);
  });
}

/** Residuals over their own standard uncertainty; null where nothing checks the reading. */
export function studentise(space: Matrix, residuals: readonly number[]): (number | null)[] {
  return redundancies(space).map((own, i) => (own === 0 ? null : (residuals[i] as number) / Math.sqrt(own)));
}

/** How alike errors of two readings look, −1 to 1; ±1 cannot be told apart. 0 where nothing checks one of them. */
export function likeness(space: Matrix, i: number, j: number): number {
  const own = redundancies(space);
  const [a, b] = [own[i] as number, own[j] as number];
  return a === 0 || b === 0 ? 0 : ((space[i] as readonly number[])[j] as number) / Math.sqrt(a * b);
}

/** Readings that cannot be told apart from reading i, with itself, in order. */
export function tiedWith(space: Matrix, i: number): number[] {
  return space.flatMap((_, j) => (j === i || 1 - Math.abs(likeness(space, i, j)) < TELLS_NOTHING ? [j] : []));
}

/** The reading with the greatest studentised residual and those tied with it; nothing when nothing is checked. */
function worst(
  space: Matrix,
  residuals: readonly number[],
): { tied: number[]; others: number[]; studentised: number } | undefined {
  const all = studentise(space, residuals);
  let at = -1;
  all.forEach((own, i) => {
    // Ties are equal but for rounding: the first of them is taken.
    if (own !== null && (at < 0 || Math.abs(own) > Math.abs(all[at] as number) * (1 + TELLS_NOTHING))) at = i;
  });
  if (at < 0) return undefined;
  const tied = tiedWith(space, at);
  return { tied, others: alsoLikely(space, all, tied), studentised: all[at] as number };
}

/** The space and the residuals without reading i. */
function without(space: Matrix, residuals: readonly number[], i: number) {
  const column = space.map((row) => row[i] as number);
  const own = column[i] as number;
  const share = (residuals[i] as number) / own;
  return {
    space: space.map((row, a) =>
      row.map((m, b) => m - ((column[a] as number) * (column[b] as number)) / own),
    ),
    residuals: residuals.map((v, a) => v - (column[a] as number) * share),
  };
}

/**
 * The worst reading, and all that are too far off to be chance.
 *
 * @param ids - of the readings
 * @param space - `residualSpace`
 * @param residuals - weighted
 * @param limit - studentised residual above which a reading is suspect
 * @returns `worst` always where anything is checked; `suspects` worst first, each judged without those before it
 */
export function findSuspects(
  ids: readonly string[],
  space: Matrix,
  residuals: readonly number[],
  limit: number,
): { worst: Suspect | null; suspects: readonly Suspect[] } {
  const suspects: Suspect[] = [];
  let first: Suspect | null = null;
  let left = { space, residuals };
  for (;;) {
    const found = worst(left.space, left.residuals);
    if (found === undefined) break;
    const named = (which: readonly number[]) => which.map((i) => ids[i] as string);
    const { tied, others, studentised } = found;
    const suspect = { ids: named(tied), alsoLikely: named(others), studentised };
    first ??= suspect;
    if (Math.abs(found.studentised) <= limit) break;
    suspects.push(suspect);
    left = without(left.space, left.residuals, found.tied[0] as number);
  }
  return { worst: first, suspects };
}
