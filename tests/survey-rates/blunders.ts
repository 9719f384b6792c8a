/**
 * One reading in each survey is six of its standard uncertainties wrong: is it named?
 *
 * Several errors a stair, one after the other, each with noise of its own: in any reading, and in one of each class of
 * readings that can be seen. The classes are told before any noise is drawn (`geometry.ts`), and rates are counted by them.
 */
import { type Adjustment, adjustReadings } from "../../src/layout/index.js";
import { randomFrom } from "../support/random.js";
import { LIMIT, type Prospect, prospectOf, type Separability, spaceOf } from "./geometry.js";
import { type RandomStair, randomStair, readStair, readTrue } from "./random-stair.js";

/** How wrong, in standard uncertainties. */
export const BY = 6;

/** Classes of readings whose error is above the limit more than 95 times in a hundred. */
const SEEN = ["separable", "tied", "alone but alike", "tied and alike", "weak"] as const;
const CLASSES: readonly Separability[] = [...SEEN, "faint", "unchecked"];

/** What became of one wrong reading. */
export interface Planted {
  readonly prospect: Prospect;
  /** Whether it was drawn from all readings alike. */
  readonly fair: boolean;
  /** Some reading is above the limit. */
  readonly suspected: boolean;
  /** The first suspect is it, and nothing else is said to be likely. */
  readonly alone: boolean;
  /** It is among the readings that cannot be told apart from the worst. */
  readonly inTie: boolean;
  /** The tie is just its own. */
  readonly itsTie: boolean;
  /** It is there or among those that are also likely. */
  readonly inGroup: boolean;
  /** Readings in tie and group. */
  readonly group: number;
  /** It is said that nothing checks it. */
  readonly said: boolean;
}

function plant(stair: RandomStair, seed: number, j: number, prospect: Prospect, fair: boolean): Planted {
  const random = randomFrom(seed);
  const by = random.chance(0.5) ? BY : -BY;
  const found = adjustReadings(readStair(stair, random, { [j]: by }));
  if (!found.ok) throw new Error(found.diagnostics[0]?.message);
  const { worst } = found.value;
  const id = stair.plan[j]!.id;
  const tie = worst?.ids ?? [];
  const others = worst?.alsoLikely ?? [];
  const suspected = Math.abs(worst?.studentised ?? 0) > LIMIT;
  const itsTie = prospect.tie.map((i) => stair.plan[i]!.id).join() === tie.join();
  return {
    ...{ prospect, fair, suspected, itsTie, inTie: tie.includes(id) },
    alone: suspected && tie.length === 1 && tie[0] === id && others.length === 0,
    inGroup: tie.includes(id) || others.includes(id),
    group: tie.length + others.length,
    said: found.diagnostics.some((own) => own.code === "survey-unchecked" && own.members.includes(id)),
  };
}

/** The survey as it is planned, adjusted without noise. */
function planned(stair: RandomStair): Adjustment | undefined {
  const found = adjustReadings(readTrue(stair));
  return found.ok ? found.value : undefined;
}

/** Wrong readings in so many stairs, and what became of them. */
export function plantBlunders({ count, seed }: { count: number; seed: number }): Planted[] {
  const out: Planted[] = [];
  for (let i = 0; i < count; i++) {
    const random = randomFrom(seed * 1_000_003 + i);
    const stair = randomStair(random);
    const plan = planned(stair);
    if (plan === undefined) continue;
    const space = spaceOf(plan);
    const prospects = stair.plan.map((_, j) => prospectOf(space, j, BY));
    const any = random.pick(stair.plan.map((_, j) => j));
    out.push(plant(stair, seed * 2_000_003 + i, any, prospects[any]!, true));
    SEEN.forEach((separability, k) => {
      const of = stair.plan.flatMap((_, j) => (prospects[j]!.separability === separability ? [j] : []));
      if (of.length === 0) return;
      const one = random.pick(of);
      out.push(plant(stair, (seed + k) * 3_000_017 + i, one, prospects[one]!, false));
    });
  }
  return out;
}

/** Counts of one class. */
export interface ClassRates {
  readonly separability: Separability;
  readonly n: number;
  /** Of those drawn from all readings alike, the share that is in this class. */
  readonly share: number;
  readonly suspected: number;
  readonly alone: number;
  readonly inTie: number;
  readonly itsTie: number;
  readonly inGroup: number;
  /** Others are suspected, and it is not in the group. */
  readonly wrong: number;
  readonly meanGroup: number;
  readonly said: number;
  /** What the geometry lets expect at most: the mean chance of not being named as promised. */
  readonly foretold: number;
}

/** Rates by class, as shares of one. */
export function ratesOf(planted: readonly Planted[]): ClassRates[] {
  const fair = planted.filter((own) => own.fair).length;
  return CLASSES.flatMap((separability): ClassRates[] => {
    const of = planted.filter((own) => own.prospect.separability === separability);
    if (of.length === 0) return [];
    const mean = (what: (own: Planted) => number) => of.reduce((sum, own) => sum + what(own), 0) / of.length;
    const share = (what: (own: Planted) => boolean) => mean((own) => (what(own) ? 1 : 0));
    return [
      {
        ...{ separability, n: of.length, share: of.filter((own) => own.fair).length / fair },
        suspected: share((own) => own.suspected),
        alone: share((own) => own.alone),
        inTie: share((own) => own.inTie),
        itsTie: share((own) => own.suspected && own.itsTie),
        inGroup: share((own) => own.inGroup),
        wrong: share((own) => own.suspected && !own.inGroup),
        meanGroup: mean((own) => own.group),
        said: share((own) => own.said),
        foretold: mean((own) => Math.min(1, own.prospect.weak + own.prospect.confused)),
      },
    ];
  });
}
