/**
 * Random stairs and what somebody with a tape reads of them: 3 to 20 uneven steps, any mix of readings that determines every
 * nosing and at least one reading more, each with an uncertainty of its own.
 *
 * A reading is true + normal noise, rounded to the mark the tape is read to; the stated uncertainty counts both, the rounding
 * as step/√12 (JCGM 100:2008, 4.3.7). Noise is at least 0.8 of a step, so that the sum is normal to all purposes.
 */
import type { PlannedReading, Reading, StairPlace } from "../../src/layout/index.js";
import type { Random } from "../support/random.js";
import { gaussian } from "./distributions.js";

/** True places; index is the nosing's number, 0 the floor (at x 0, which no reading uses). mm. */
export interface Truth {
  readonly x: readonly number[];
  readonly z: readonly number[];
}

/** What is taped, with what it is read to, mm or degrees. */
export type Planned = PlannedReading & StairPlace & { readonly sigma: number; readonly step: number };

export interface RandomStair {
  readonly truth: Truth;
  readonly plan: readonly Planned[];
}

/** What a reading would be were nothing wrong. Written out again: the library's own is under test. */
export function trueValue({ x, z }: Truth, of: StairPlace): number {
  const from = of.from ?? (of.kind === "distance" ? 1 : 0);
  const [u, w] = [x[of.to]! - x[from]!, z[of.to]! - z[from]!];
  if (of.kind === "rise" || of.kind === "height") return w;
  if (of.kind === "run" || of.kind === "distance") return u;
  return of.kind === "slope" ? Math.hypot(u, w) : (Math.atan2(w, u) * 180) / Math.PI;
}

/** Marks a tape is read to, mm: 1/32 and 1/16 in, half and whole millimetres. A level: 0.05 and 0.1 degrees. */
const [TAPE, LEVEL] = [
  [25.4 / 32, 25.4 / 16, 0.5, 1],
  [0.05, 0.1],
] as const;

/** Step of reading and stated uncertainty; hands differ by up to four from the best. */
function care(random: Random, kind: StairPlace["kind"]): { step: number; sigma: number } {
  const step = random.pick<number>(kind === "level" ? LEVEL : TAPE);
  const hand = step * 0.8 * 4 ** random.between(0, 1);
  return { step, sigma: Math.hypot(hand, step / Math.sqrt(12)) };
}

function randomTruth(random: Random, risers: number): Truth {
  const [riser, going, uneven] = [random.between(150, 200), random.between(220, 320), random.between(1, 15)];
  const [x, z] = [
    [0, 0],
    [0, riser + random.between(-uneven, uneven)],
  ];
  for (let k = 2; k <= risers; k++) {
    x.push(x[k - 1]! + going + random.between(-uneven, uneven));
    z.push(z[k - 1]! + riser + random.between(-uneven, uneven));
  }
  return { x, z };
}

/** Two nosings, the lower first. */
function pair(random: Random, risers: number): { from: number; to: number } {
  const from = 1 + Math.floor(random.between(0, risers - 1));
  return { from, to: from + 1 + Math.floor(random.between(0, risers - from)) };
}

function randomPlaces(random: Random, risers: number): StairPlace[] {
  const places: StairPlace[] = [];
  const habit = { rise: random.pick([0.3, 0.7, 1]), height: random.pick([0, 0.3, 0.6, 1]) };
  const way = { run: random.pick([0.3, 0.7, 1]), distance: random.pick([0, 0.3, 0.6, 1]) };
  for (let k = 1; k <= risers; k++) {
    const [rise, height] = [random.chance(habit.rise), random.chance(habit.height)];
    if (rise || !height) places.push({ kind: "rise", from: k - 1, to: k });
    if (height) places.push({ kind: "height", to: k });
    if (k === 1) continue;
    const [run, distance] = [random.chance(way.run), random.chance(way.distance)];
    // Now and then a slope from nosing to nosing is all there is of a going: the riser gives the rest.
    const bySlope = !distance && random.chance(0.05);
    if (bySlope) places.push({ kind: "slope", from: k - 1, to: k });
    else if (run || !distance) places.push({ kind: "run", from: k - 1, to: k });
    if (distance) places.push({ kind: "distance", to: k });
  }
  if (random.chance(0.7)) places.push({ kind: "height", to: risers });
  if (random.chance(0.7)) places.push({ kind: "slope", from: 1, to: risers });
  for (let more = random.pick([0, 1, 2, 4]); more > 0; more--) {
    places.push({ kind: "slope", ...pair(random, risers) });
  }
  for (let more = random.pick([0, 1, 2]); more > 0; more--) {
    places.push({ kind: "level", ...pair(random, risers) });
  }
  const again = random.pick([0, 0, 0.2, 0.6]);
  places.push(...places.filter(() => random.chance(again)));
  // One more than is needed, always.
  places.push({ kind: random.pick(["slope", "run"] as const), ...pair(random, risers) });
  return places;
}

/** A stair and what is going to be taped on it. */
export function randomStair(random: Random): RandomStair {
  const risers = 3 + Math.floor(random.between(0, 18));
  const plan = randomPlaces(random, risers).map(
    (own, i): Planned => ({ id: `${own.kind}-${i}`, ...own, ...care(random, own.kind) }),
  );
  return { truth: randomTruth(random, risers), plan };
}

/**
 * The readings somebody comes home with.
 *
 * @param by - what is read wrong besides, in standard uncertainties, by index of the plan
 * @param worse - how many times worse than stated the noise is; 1 in an honest survey
 */
export function readStair(
  { truth, plan }: RandomStair,
  random: Random,
  by: Readonly<Record<number, number>> = {},
  worse = 1,
): Reading[] {
  return plan.map(({ step, ...own }, i) => {
    const hand = worse * Math.sqrt(own.sigma ** 2 - step ** 2 / 12) * gaussian(random);
    const value = trueValue(truth, own) + hand + (by[i] ?? 0) * own.sigma;
    return { ...own, value: step * Math.round(value / step) };
  });
}

/** The readings without any noise: what is known of a survey before it is taken. */
export const readTrue = ({ truth, plan }: RandomStair): Reading[] =>
  plan.map(({ step, ...own }) => ({ ...own, value: trueValue(truth, own) }));
