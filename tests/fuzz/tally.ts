/**
 * What a run of random ends was about: cases solved and refused by kind of end, and shares of the things that go wrong.
 */
import { END_KINDS, type FuzzCase } from "./domain.js";

/** Least shares of all cases. */
export const QUOTAS: Readonly<Record<string, number>> = {
  "equal diameters": 0.2,
  "skew axes": 0.2,
  "both ends coped": 0.3,
  "rect header": 0.25,
  "rect branch": 0.2,
  gap: 0.15,
  "three contacts": 0.05,
  "flat side ends at the bore": 0.02,
  "plan corner": 0.03,
  "section not convex": 0.03,
  bore: 0.04,
};

/** Least number of cases with R − r = 10⁻ᵏ, for each k from 1 to 12, as a share. */
const NEARLY_EQUAL = 0.005;

export interface Tally {
  readonly cases: number;
  readonly bad: number;
  readonly kinds: Readonly<Record<string, { readonly cases: number; readonly bad: number }>>;
  readonly tags: Readonly<Record<string, number>>;
  /** Volumes compared with the quadrature, and those it was too dear for. */
  readonly quadratures: { readonly done: number; readonly capped: number };
}

/** A tally that is still counted. */
export interface Counting {
  readonly add: (c: FuzzCase, bad: boolean) => void;
  readonly addQuadrature: (done: boolean) => void;
  readonly get: () => Tally;
}

export function newTally(): Counting {
  const quadratures = { done: 0, capped: 0 };
  let [cases, bad] = [0, 0];
  const kinds: Record<string, { cases: number; bad: number }> = {};
  for (const kind of END_KINDS) kinds[kind] = { cases: 0, bad: 0 };
  const tags: Record<string, number> = {};
  return {
    add: (c, isBad) => {
      cases++;
      if (isBad) bad++;
      for (const kind of new Set(c.kinds)) {
        kinds[kind]!.cases++;
        if (isBad) kinds[kind]!.bad++;
      }
      for (const tag of c.tags) tags[tag] = (tags[tag] ?? 0) + 1;
    },
    addQuadrature: (done) => {
      quadratures[done ? "done" : "capped"]++;
    },
    get: () => ({ cases, bad, kinds, tags, quadratures: { ...quadratures } }),
  };
}

/** Quotas a run has not met: then its verdict says less than it should. */
export function missedQuotas({ cases, tags }: Tally): string[] {
  const nearly = Array.from({ length: 12 }, (_, k) => [`R - r = 1e-${k + 1}`, NEARLY_EQUAL] as const);
  return [...Object.entries(QUOTAS), ...nearly]
    .filter(([tag, share]) => (tags[tag] ?? 0) < Math.floor(share * cases))
    .map(([tag, share]) => `${tag}: ${tags[tag] ?? 0} of ${cases}, wanted ${share}`);
}

/** The tally as a table. */
export function tallyText(tally: Tally): string {
  const share = (n: number): string => `${((100 * n) / tally.cases).toFixed(1)} %`;
  return [
    `${tally.cases - tally.bad} of ${tally.cases} solved, ${tally.bad} not`,
    `${tally.quadratures.done} volumes compared with the quadrature, ${tally.quadratures.capped} not: too many rays`,
    "",
    ...Object.entries(tally.kinds).map(
      ([kind, n]) => `${kind.padEnd(30)} ${n.cases - n.bad} solved, ${n.bad} not`,
    ),
    "",
    ...Object.entries(tally.tags)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([tag, n]) => `${tag.padEnd(30)} ${share(n)}`),
  ].join("\n");
}
