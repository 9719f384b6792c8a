/**
 * A run of random stairs: are the survey's uncertainties kept, is a wrong reading named? Started by scripts/survey-rates.mjs.
 */
import { type ClassRates, plantBlunders, ratesOf } from "./blunders.js";
import { DEMO_RATES, type NamedRate, namedRate } from "./demo-rates.js";
import { binomialBound } from "./distributions.js";
import { type Check, checkIntervals, holds } from "./intervals.js";

export interface RunOptions {
  readonly count: number;
  readonly seed: number;
  readonly say: (line: string) => void;
}

/** What is promised: a wrong reading is named, or in the group that is, so often. */
export const PROMISED = 0.95;

/** Whether a count may be of something that happens at least as often as promised. */
export const atLeastPromised = (share: number, n: number): boolean =>
  share >= PROMISED - binomialBound(PROMISED, n);

/** What a class is held to: readings told apart are named as such, all others are in the group. */
export function promisesKept(own: ClassRates): boolean {
  if (own.separability === "unchecked") return own.said === 1;
  if (own.separability === "separable") return atLeastPromised(own.alone, own.n);
  const tied = own.separability !== "tied" || atLeastPromised(own.itsTie, own.n);
  return tied && atLeastPromised(own.inGroup, own.n);
}

/** Whether rates are those that were counted elsewhere. */
export const isAsCountedElsewhere = ({ alone, withinTie }: NamedRate): boolean =>
  [alone, withinTie].every(({ got, wanted, bound }) => Math.abs(got - wanted) <= bound);

const percent = (share: number): string => `${(100 * share).toFixed(2)} %`.padStart(9);
const mark = (good: boolean): string => (good ? "  " : "X ");

function checkText(own: Check): string {
  const figures = [own.got, own.wanted, own.bound].map((v) => v.toFixed(4));
  return `${mark(holds(own))}${own.what.padEnd(40)} ${figures[0]}, expected ${figures[1]} ± ${figures[2]} (n ${own.n})`;
}

function classText(own: ClassRates): string {
  const rates = [
    own.share,
    own.suspected,
    own.alone,
    own.inTie,
    own.itsTie,
    own.inGroup,
    own.wrong,
    own.foretold,
  ];
  return `${mark(promisesKept(own))}${own.separability.padEnd(16)}${`${own.n}`.padStart(6)}${rates.map(percent).join("")}${own.meanGroup.toFixed(1).padStart(7)}`;
}

function demoText(own: NamedRate): string {
  const both = [own.alone, own.withinTie].flatMap(({ got, wanted }) => [percent(got), percent(wanted)]);
  return `${mark(isAsCountedElsewhere(own))}${own.what.padEnd(40)}${both.join("")}${percent(own.inGroup)}`;
}

/** Runs; true when every promise was kept. */
export function run({ count, seed, say }: RunOptions): boolean {
  const { checks, refused } = checkIntervals({ count, seed });
  say(`${count} random stairs, seed ${seed}: stated uncertainties`);
  for (const own of checks) say(checkText(own));
  for (const line of refused) say(`X refused: ${line}`);
  const rates = ratesOf(plantBlunders({ count, seed: seed + 1 }));
  say("\nOne reading six standard uncertainties wrong, by what the geometry lets expect");
  say(
    `  ${"class".padEnd(16)}${"n".padStart(6)}${["of all", "suspect", "alone", "in tie", "its tie", "in group", "innocent", "foretold"].map((own) => own.padStart(9)).join("")}${"size".padStart(7)}`,
  );
  for (const own of rates) say(classText(own));
  say(
    "  of all: share of all readings; suspect: the worst is above the limit; alone: named, and no other is likely; in tie: tied with" +
      "\n  the worst; its tie: named with just those it is tied with; in group: there or also likely; innocent: suspected without it;" +
      "\n  foretold: bound on not being told apart, before any noise; size: of the group. A separable one is held to 'alone', others to" +
      "\n  'in group', tied ones to 'its tie' as well, unchecked ones to being said to be unchecked.",
  );
  const demo = DEMO_RATES.map((what, i) => namedRate(what, seed + i));
  say(
    "\nThe demo stair, 400 surveys a line: alone here and elsewhere, in a tie here and elsewhere, in the group",
  );
  for (const own of demo) say(demoText(own));
  const good =
    refused.length === 0 &&
    checks.every(holds) &&
    rates.every(promisesKept) &&
    demo.every(isAsCountedElsewhere);
  say(good ? "\nAll promises kept." : "\nNot kept: the lines marked X.");
  return good;
}
