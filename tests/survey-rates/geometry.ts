/**
 * What can be told of a wrong reading before it is taken? From the geometry of the survey alone, no noise drawn yet.
 *
 * With M = I − A C Aᵀ (A the derivatives over σ, C the covariance): a reading read k standard uncertainties wrong raises its
 * own studentised residual by δ = k √r, r = Mⱼⱼ its redundancy (Baarda, A testing procedure for use in geodetic networks,
 * 1968: an error of δ₀ σ/√r is found). It stays unseen with the chance Φ(limit − δ). Another reading whose residual is alike
 * by ρ, |Mᵢⱼ|/√(Mᵢᵢ Mⱼⱼ), rises by ρ δ; what parts the two is a = δ √(1 − ρ²) (Förstner, Reliability and discernability of
 * extended Gauss-Markov models, 1983: errors must be 1/√(1 − ρ²) times as great to be told apart as to be seen). The other one
 * stays in the group of suspects when noise uses up a but for Q⁻¹(0.025) = 1.96: with the chance Q(a − 1.96). And with k
 * rivals one of them rises to q = Q⁻¹(0.025/2k) by noise alone once in forty surveys: below that nothing is named alone. The
 * sum of these chances bounds that of not being named alone (Yang, Wang, Knight and Shen, Outlier separability analysis with
 * a multiple alternative hypotheses test, Journal of Geodesy 87, 2013, bound the type III error by such a sum).
 */
import type { Adjustment } from "../../src/layout/index.js";
import { normalBelow } from "./distributions.js";

/** Chance at which a thing counts as sure enough: the survey is to be right 95 times in a hundred. */
const SURE = 0.05;
/** Q⁻¹(0.025) of the standard normal distribution. */
const ONE_IN_FORTY = 1.959963984540054;
/** The limit of suspicion that surveys have by default. */
export const LIMIT = 2.5;
/** One less a likeness below this is a tie: rounding leaves up to 10⁻¹¹; slope tapes all but parallel come down to 10⁻⁷. */
const TIE = 1e-8;

/** What the geometry promises. */
export type Separability =
  /** Seen, and told apart from all others. */
  | "separable"
  /** Seen; tied for good with some others, told apart from the rest. */
  | "tied"
  /** Seen, but so alike to others that noise can confuse them; alone in its tie, or not. */
  | "alone but alike"
  | "tied and alike"
  /** Seen, but by no more than noise does to one of so many readings. */
  | "weak"
  /** Checked, but so little that the error may well stay under the limit. */
  | "faint"
  /** Nothing checks it. */
  | "unchecked";

/** What is to be expected of one reading that is wrong by so much. */
export interface Prospect {
  readonly separability: Separability;
  readonly redundancy: number;
  /** By how much its own studentised residual rises. */
  readonly rise: number;
  /** The greatest likeness to one it is not tied with. */
  readonly likeness: number;
  /** Indices of readings that no noise-free survey would tell apart from it, itself among them. */
  readonly tie: readonly number[];
  /** Chances that it stays under the limit, that it stands out no more than noise does, and a bound on that of being confused. */
  readonly unseen: number;
  readonly weak: number;
  readonly confused: number;
}

/** I − A C Aᵀ of an adjusted survey. */
export function spaceOf({ design, covariance }: Adjustment): number[][] {
  const spread = design.map((row) =>
    covariance.map((own) => own.reduce((sum, c, k) => sum + c * row[k]!, 0)),
  );
  return design.map((row, i) =>
    spread.map((own, j) => (i === j ? 1 : 0) - row.reduce((sum, a, k) => sum + a * own[k]!, 0)),
  );
}

/**
 * What to expect when reading j is wrong.
 *
 * @param space - `spaceOf` of the survey as it is planned
 * @param by - how wrong, in standard uncertainties
 */
export function prospectOf(space: readonly (readonly number[])[], j: number, by: number): Prospect {
  const own = space[j]!;
  const redundancy = own[j]!;
  if (redundancy < TIE) {
    const none = { redundancy: 0, rise: 0, likeness: 0, tie: [j], weak: 1, confused: 0 };
    return { separability: "unchecked", ...none, unseen: 1 };
  }
  const rise = by * Math.sqrt(redundancy);
  const tie: number[] = [];
  const rivals: { i: number; likeness: number }[] = [];
  space.forEach((row, i) => {
    const likeness = row[i]! < TIE ? 0 : Math.abs(own[i]!) / Math.sqrt(row[i]! * redundancy);
    if (i === j || 1 - likeness < TIE) tie.push(i);
    // Readings tied with one another are one rival.
    else if (
      row[i]! >= TIE &&
      !rivals.some((o) => 1 - Math.abs(space[o.i]![i]!) / Math.sqrt(space[o.i]![o.i]! * row[i]!) < TIE)
    )
      rivals.push({ i, likeness });
  });
  const likeness = Math.max(0, ...rivals.map((one) => one.likeness));
  const confused = rivals.reduce((sum, one) => {
    const apart = rise * Math.sqrt(1 - one.likeness ** 2);
    return sum + normalBelow(ONE_IN_FORTY - apart);
  }, 0);
  const unseen = normalBelow(LIMIT - rise);
  const weak = normalBelow(Math.max(LIMIT, exceededBy(SURE / 4 / Math.max(rivals.length, 1))) - rise);
  const separability = classOf({ unseen, weak, confused }, tie.length === 1);
  return { separability, redundancy, rise, likeness, tie, unseen, weak, confused };
}

function classOf(chance: { unseen: number; weak: number; confused: number }, alone: boolean): Separability {
  if (chance.unseen > SURE) return "faint";
  if (chance.confused > SURE) return alone ? "alone but alike" : "tied and alike";
  if (chance.weak + chance.confused > SURE) return "weak";
  return alone ? "separable" : "tied";
}

/** What a standard normal number exceeds with this chance, by halving. */
function exceededBy(chance: number): number {
  let [low, high] = [0, 10];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normalBelow(-middle) > chance) low = middle;
    else high = middle;
  }
  return low;
}
