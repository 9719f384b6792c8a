/**
 * The demo stair taped 400 times with one reading wrong, beside rates that an independent script counted on the same stair
 * (`namedRate` of shared/demo-survey.json): the worst reading is the wrong one alone, or is in a tie with it.
 */
import demo from "../../shared/demo-survey.json" with { type: "json" };
import { adjustReadings, type Reading, type StairPlace } from "../../src/layout/index.js";
import { DEMO, mm } from "../layout/survey/survey-cases.js";
import { type Random, randomFrom } from "../support/random.js";
import { gaussian, ONE_IN_A_THOUSAND } from "./distributions.js";
import { type Truth, trueValue } from "./random-stair.js";

/** How often the independent script read each stair. */
const RUNS = demo.namedRate.runs;

function demoTruth(): Truth {
  const [x, z] = [[0, 0], [0]];
  for (const riser of demo.trueRisers) z.push(z.at(-1)! + mm(riser));
  for (const going of demo.trueGoings) x.push(x.at(-1)! + mm(going));
  return { x, z };
}

const HEIGHTS: Readonly<Record<string, readonly number[] | undefined>> = {
  "heights at 4,7,10,13": [4, 7, 10, 13],
  "floor-to-floor only": [13],
};

type StairReading = Reading & StairPlace;

/** The demo's readings with noise, one of them wrong. */
function read(
  plan: readonly StairReading[],
  truth: Truth,
  random: Random,
  id: string,
  by: number,
): Reading[] {
  return plan.map((own) => {
    const value = trueValue(truth, own) + own.sigma! * gaussian(random) + (own.id === id ? by : 0);
    return { ...own, value };
  });
}

/** One row: what was counted here and there, and how far two such counts may differ. */
export interface NamedRate {
  readonly what: string;
  readonly alone: { readonly got: number; readonly wanted: number; readonly bound: number };
  readonly withinTie: { readonly got: number; readonly wanted: number; readonly bound: number };
  /** The wrong reading is there or among those also likely. */
  readonly inGroup: number;
}

/** Two counts of so many runs each: their common share is between theirs. At 0 and 1 a count of three is not unusual. */
function compared(got: number, wanted: number) {
  const both = Math.min(Math.max((got + wanted) / 2, 3 / RUNS), 1 - 3 / RUNS);
  return { got, wanted, bound: ONE_IN_A_THOUSAND * Math.sqrt((2 * both * (1 - both)) / RUNS) };
}

/** The rates of one line of the table, e.g. `full | R8 | 0.375 in`. */
export function namedRate(what: string, seed: number): NamedRate {
  const wanted = demo.namedRate.rates[what as keyof typeof demo.namedRate.rates];
  const [set, id, by] = what.split(" | ") as [string, string, string];
  const kept = HEIGHTS[set];
  const plan = (DEMO as readonly StairReading[]).filter(
    (own) => own.kind !== "height" || (kept?.includes(own.to as number) ?? true),
  );
  const truth = demoTruth();
  const random = randomFrom(seed);
  let [alone, withinTie, inGroup] = [0, 0, 0];
  for (let run = 0; run < RUNS; run++) {
    const found = adjustReadings(read(plan, truth, random, id, mm(by)));
    if (!found.ok) throw new Error(found.diagnostics[0]?.message);
    const { worst } = found.value;
    if (worst === null) continue;
    if (worst.ids.includes(id) || worst.alsoLikely.includes(id)) inGroup++;
    if (!worst.ids.includes(id)) continue;
    if (worst.ids.length === 1) alone++;
    else withinTie++;
  }
  return {
    what,
    alone: compared(alone / RUNS, wanted.namedAlone),
    withinTie: compared(withinTie / RUNS, wanted.namedWithinTie),
    inGroup: inGroup / RUNS,
  };
}

/** All lines of the table. */
export const DEMO_RATES = Object.keys(demo.namedRate.rates);
