/**
 * Any length or angle between adjusted places, with its standard uncertainty.
 *
 * First order: variance g · C · g of a quantity with derivatives g, C the covariance of the coordinates (JCGM 100:2008, 5.2).
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { Adjustment } from "./adjustment.js";
import { dot, times } from "./factor.js";
import { type CoordinateName, coordinatesOf, linearise, nameOf, type Place } from "./reading.js";

/** A quantity and how well it is known. */
export interface Quantity {
  /** mm or degrees. */
  readonly value: number;
  /** Standard uncertainty, mm or degrees. */
  readonly sigma: number;
  /** Derivatives by the coordinates that are not fixed, in the order of the covariance. */
  readonly gradient: readonly number[];
}

/** A quantity at a place that the survey does not have is misuse. */
function placedAt(adjustment: Adjustment, name: CoordinateName): number {
  const found = adjustment.coordinates.find((own) => nameOf(own) === name);
  if (found !== undefined) return found.value;
  throw new RakewrightError({
    code: "survey-unknown-place",
    message: `Survey: expected a coordinate of the adjustment, got ${name}.`,
    hint: `It has ${adjustment.coordinates.map(nameOf).join(", ")}.`,
  });
}

/** Derivatives by name put in the order of the covariance; those of fixed coordinates do not count. */
function ordered(adjustment: Adjustment, gradient: Readonly<Record<CoordinateName, number>>): number[] {
  for (const name of Object.keys(gradient)) placedAt(adjustment, name);
  return adjustment.coordinates.filter((own) => !own.fixed).map((own) => gradient[nameOf(own)] ?? 0);
}

/**
 * How far two functions of the coordinates vary together.
 *
 * @param adjustment - an adjusted survey
 * @param one - derivatives by coordinate name (`x3`, `z3`, `xA`), those left out are 0
 * @param other - of the second function; default the first, for its variance
 * @returns g₁ · C · g₂, in the units of both functions
 * @throws RakewrightError `survey-unknown-place` for a coordinate that the survey does not have
 * @example Math.sqrt(covarianceOf(adjustment, { z13: 1, z1: -1 })); // uncertainty of the rise from nosing 1 to 13, mm
 */
export function covarianceOf(
  adjustment: Adjustment,
  one: Readonly<Record<CoordinateName, number>>,
  other: Readonly<Record<CoordinateName, number>> = one,
): number {
  return dot(ordered(adjustment, one), times(adjustment.covariance, ordered(adjustment, other)));
}

/**
 * What a reading would be by the adjusted places.
 *
 * @param adjustment - an adjusted survey
 * @param of - a length or an angle between places of the survey, read or not
 * @returns value, uncertainty, derivatives
 * @throws RakewrightError `survey-unknown-place` for a place that the survey does not have
 * @example quantityOf(adjustment, { kind: "slope", from: 1, to: 13 }).sigma; // how well the rail's length is known, mm
 */
export function quantityOf(adjustment: Adjustment, of: Place): Quantity {
  const names = coordinatesOf(of).map(nameOf);
  const { value, derivatives } = linearise(
    of,
    names.map((name) => placedAt(adjustment, name)),
  );
  const byName: Record<CoordinateName, number> = {};
  names.forEach((name, i) => {
    byName[name] = (byName[name] ?? 0) + (derivatives[i] as number);
  });
  return {
    value,
    sigma: Math.sqrt(Math.max(covarianceOf(adjustment, byName), 0)),
    gradient: ordered(adjustment, byName),
  };
}
