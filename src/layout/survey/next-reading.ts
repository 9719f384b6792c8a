/**
 * Which one extra reading would help most: to know a length better, or to tell tied readings apart?
 *
 * A reading with derivatives a and uncertainty s lowers the variance of a quantity with derivatives g by
 * (g · C · a)² / (s² + a · C · a) (Kalman's gain for one scalar reading; C the covariance of the coordinates).
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { Adjustment } from "./adjustment.js";
import { dot, factor, times } from "./factor.js";
import { quantityOf } from "./quantity.js";
import type { Place, PlannedReading } from "./reading.js";
import { readingSigma } from "./reading-sigma.js";
import { likeness, residualSpace, tiedWith } from "./suspects.js";

/** What one more reading would do for a quantity. */
export interface ReadingGain {
  readonly id: string;
  /** Uncertainty of the quantity now and with the reading, mm or degrees. */
  readonly sigmaNow: number;
  readonly sigmaAfter: number;
}

/** What one more reading would do for readings that cannot be told apart. */
export interface TieSplit {
  readonly id: string;
  /** The tied readings in groups that still cannot be told apart with the reading. */
  readonly groups: readonly (readonly string[])[];
  /** Greatest likeness left between two of different groups, 0 to 1: the lower, the plainer it shows which is wrong. 1 when not split. */
  readonly likeness: number;
}

/** Derivatives and uncertainty of a candidate. */
function rowOf(adjustment: Adjustment, own: PlannedReading) {
  const { value, gradient } = quantityOf(adjustment, own);
  return { gradient, sigma: own.sigma ?? readingSigma(own, Math.abs(value)) };
}

/**
 * Readings by how much better a quantity would be known.
 *
 * @param adjustment - an adjusted survey; it may be without redundancy
 * @param target - the length or angle that counts
 * @param candidates - readings that could be taken, between places of the survey; also ones taken before
 * @returns best first; equal ones in the order given
 * @throws RakewrightError `survey-unknown-place` for a place that the survey does not have
 * @example
 * ```ts
 * nextReading(adjustment, { kind: "slope", from: 1, to: 13 }, [
 *   { id: "slope tape", kind: "slope", from: 1, to: 13 },
 *   { id: "run again", kind: "run", from: 1, to: 13 },
 * ])[0]?.id; // "slope tape"
 * ```
 */
export function nextReading(
  adjustment: Adjustment,
  target: Place,
  candidates: readonly PlannedReading[],
): ReadingGain[] {
  const goal = quantityOf(adjustment, target);
  const gains = candidates.map((own): ReadingGain => {
    const { gradient, sigma } = rowOf(adjustment, own);
    const spread = times(adjustment.covariance, gradient);
    const drop = dot(goal.gradient, spread) ** 2 / (sigma ** 2 + dot(gradient, spread));
    return {
      id: own.id,
      sigmaNow: goal.sigma,
      sigmaAfter: Math.sqrt(Math.max(goal.sigma ** 2 - drop, 0)),
    };
  });
  return gains.sort((a, b) => a.sigmaAfter - b.sigmaAfter);
}

/**
 * Readings by how well they would tell tied readings apart.
 *
 * @param adjustment - an adjusted survey
 * @param ids - readings that cannot be told apart, as in a `Suspect`
 * @param candidates - readings that could be taken, between places of the survey
 * @returns best first: smallest group left, then least likeness; equal ones in the order given
 * @throws RakewrightError `survey-unknown-place` for a place or `survey-unknown-reading` for an id that the survey does not have
 * @example splitTie(adjustment, ["R8", "R9"], [{ id: "H8", kind: "height", to: 8 }])[0]?.groups; // [["R8"], ["R9"]]
 */
export function splitTie(
  adjustment: Adjustment,
  ids: readonly string[],
  candidates: readonly PlannedReading[],
): TieSplit[] {
  const tied = ids.map((id) => {
    const i = adjustment.readings.findIndex((own) => own.id === id);
    if (i >= 0) return i;
    throw new RakewrightError({
      code: "survey-unknown-reading",
      message: `Survey: expected the id of a reading of the adjustment, got ${id}.`,
      hint: "Give ids as they stand in a suspect.",
    });
  });
  const splits = candidates.map((own): TieSplit => {
    const { gradient, sigma } = rowOf(adjustment, own);
    const design = [...adjustment.design, gradient.map((v) => v / sigma)];
    const space = residualSpace(factor(design, gradient.length).q, design.length);
    const groups: number[][] = [];
    for (const i of tied) {
      if (!groups.some((group) => group.includes(i))) {
        const along = tiedWith(space, i);
        groups.push(tied.filter((j) => along.includes(j)));
      }
    }
    const between = groups.flatMap((one, k) =>
      groups.slice(k + 1).map((other) => Math.abs(likeness(space, one[0] as number, other[0] as number))),
    );
    return {
      id: own.id,
      groups: groups.map((group) => group.map((i) => (adjustment.readings[i] as { id: string }).id)),
      likeness: between.length === 0 ? 1 : Math.max(...between),
    };
  });
  const largest = (of: TieSplit) => Math.max(...of.groups.map((group) => group.length));
  return splits.sort((a, b) => largest(a) - largest(b) || a.likeness - b.likeness);
}
