/**
 * Which readings could be the wrong one as well, although another fits worse?
 *
 * Were reading j the wrong one, whatever its error, every other studentised residual would be ρᵢⱼ wⱼ and noise of variance
 * 1 − ρᵢⱼ² (the conditional normal distribution; ρ the likeness). So the chance that another reading then exceeds the
 * greatest one found, m, is at most the sum over i of Q((m − ρᵢⱼ wⱼ)/√(1 − ρᵢⱼ²)) and Q((m + ρᵢⱼ wⱼ)/√(1 − ρᵢⱼ²)). Where
 * that is 1 in 20 or more, noise can well have hidden j behind the other one. The readings for which it is are a confidence
 * set: with one wrong reading and normal noise they miss that one at most 1 time in 20, at any geometry and any size of the
 * error. It is the bound on naming the wrong reading (type III error) of Förstner, Reliability and discernability of extended
 * Gauss-Markov models, 1983, turned into a test.
 *
 * @packageDocumentation
 */
import { TELLS_NOTHING } from "../../kernel/tolerance.js";
import type { Matrix } from "./factor.js";
import { upperTail } from "./normal.js";

/** How often the wrong reading may be left out. */
const MISSED_SHARE = 0.05;

/**
 * Readings that noise can have kept from being the worst one.
 *
 * @param space - `residualSpace`
 * @param studentised - `studentise`; null where nothing checks the reading
 * @param tied - the worst reading and those that cannot be told apart from it
 * @returns others, in order
 */
export function alsoLikely(
  space: Matrix,
  studentised: readonly (number | null)[],
  tied: readonly number[],
): number[] {
  const worst = tied[0] as number;
  const most = Math.abs(studentised[worst] as number);
  const root = space.map((row, i) => Math.sqrt(row[i] as number));
  const likeness = (i: number, j: number) =>
    ((space[i] as readonly number[])[j] as number) / ((root[i] as number) * (root[j] as number));
  const alike = (i: number, j: number) => 1 - Math.abs(likeness(i, j)) < TELLS_NOTHING;
  const others = studentised.flatMap((own, i) => (own === null || tied.includes(i) ? [] : [i]));
  // Readings tied with one another are one rival. The worst comes first: mostly it alone decides.
  const rivals = [worst];
  for (const i of others) if (!rivals.some((own) => alike(own, i))) rivals.push(i);
  return others.filter((j) => {
    const own = studentised[j] as number;
    let chance = 0;
    for (const i of rivals) {
      if (alike(i, j)) continue;
      const like = likeness(i, j);
      const spread = Math.sqrt(1 - like * like);
      chance += upperTail((most - like * own) / spread) + upperTail((most + like * own) / spread);
      if (chance >= MISSED_SHARE) return true;
    }
    return false;
  });
}
