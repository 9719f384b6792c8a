/**
 * A run of random ends: looks at each, keeps the bad ones, says what the run was about. Started by scripts/fuzz.mjs.
 */
import type { EndCase, JointCase } from "../support/joint-case.js";
import { loadOcct } from "../support/occt.js";
import { keepCase } from "./corpus.js";
import { fuzzCase } from "./domain.js";
import { inspect } from "./inspect.js";
import { missedQuotas, newTally, tallyText } from "./tally.js";

export interface RunOptions {
  readonly seed: number;
  readonly from: number;
  readonly count: number;
  /** Folder for bad cases. */
  readonly folder: string;
  readonly say: (line: string) => void;
}

/** One case in so many is looked at more closely. */
const SHARES = { full: 8, volume: 10, occt: 100 } as const;
const PROGRESS_EVERY = 500;

/** The B-rep route counts one `max` of two, at the high end and on top; it cannot cut one. */
function canCount([low, high]: JointCase["ends"]): boolean {
  const hasMax = (e: EndCase): boolean => e.kind === "max" || (e.kind === "min" && e.of.some(hasMax));
  if (hasMax(low)) return false;
  return high.kind === "max" ? !high.of.some(hasMax) : !hasMax(high);
}

/** Runs; true when every case was good and the run saw enough of everything. */
export async function run({ seed, from, count, folder, say }: RunOptions): Promise<boolean> {
  const occt = await loadOcct();
  const tally = newTally();
  for (let number = from; number < from + count; number++) {
    const c = fuzzCase(seed, number);
    const on = (share: number): boolean => number % share === 0;
    const found = inspect(c, {
      full: on(SHARES.full),
      volume: on(SHARES.volume),
      occt: on(SHARES.occt) && canCount(c.joint.ends) ? occt.volume : null,
      onQuadrature: tally.addQuadrature,
    });
    tally.add(c, found.length > 0);
    if (found[0] !== undefined) say(`${c.joint.name}: ${found[0]} -> ${keepCase(folder, c, found[0])}`);
    const done = number + 1 - from;
    if (done % PROGRESS_EVERY === 0) say(`${done} of ${count}, ${tally.get().bad} bad`);
  }
  const missed = count >= 1000 ? missedQuotas(tally.get()) : [];
  say(`\n${tallyText(tally.get())}`);
  for (const line of missed) say(`quota missed: ${line}`);
  return tally.get().bad === 0 && missed.length === 0;
}

/** Keeps cases by their numbers, with what is wrong with them if anything is. */
export function keep(numbers: readonly number[], { seed, folder, say }: RunOptions): boolean {
  for (const number of numbers) {
    const c = fuzzCase(seed, number);
    const [found] = inspect(c, { full: true, volume: false, occt: null });
    say(`${c.joint.name} -> ${keepCase(folder, c, found ?? "good now; was once refused or wrong")}`);
  }
  return true;
}
