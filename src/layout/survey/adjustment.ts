/**
 * What an adjusted survey says: places with their uncertainty, and how far off each reading was.
 *
 * Plain data; lengths in millimetres, angles in degrees.
 *
 * @packageDocumentation
 */
import type { Matrix } from "./factor.js";
import type { Coordinate, Reading } from "./reading.js";
import type { Suspect } from "./suspects.js";

/** One coordinate after the adjustment. */
export interface AdjustedCoordinate extends Coordinate {
  /** mm from the datum. */
  readonly value: number;
  /** Standard uncertainty, mm; 0 of the datum. */
  readonly sigma: number;
  /** True of the datum. */
  readonly fixed: boolean;
}

/** One point; coordinates that no reading speaks of are absent. */
export interface AdjustedPoint {
  readonly point: number | string;
  readonly x?: number;
  readonly y?: number;
  readonly z?: number;
}

/** One reading after the adjustment. */
export interface AdjustedReading {
  readonly id: string;
  readonly kind: Reading["kind"];
  /** As it was read, mm or degrees. */
  readonly value: number;
  /** What it was taken to be good for, mm or degrees. */
  readonly sigma: number;
  /** What it should have read. */
  readonly adjusted: number;
  /** value − adjusted: + means read too long. */
  readonly residual: number;
  /** The residual in sixteenths of an inch; null of angles. */
  readonly sixteenths: number | null;
  /** Share of an error here that shows here, 0 (nothing checks it) to 1. */
  readonly redundancy: number;
  /** Residual over its own standard uncertainty; null where nothing checks the reading. */
  readonly studentised: number | null;
}

/** A survey, adjusted. */
export interface Adjustment {
  /** Nosings by number, then corners as they were named. */
  readonly points: readonly AdjustedPoint[];
  readonly coordinates: readonly AdjustedCoordinate[];
  /** Of the coordinates that are not fixed, in their order, mm². From the readings' stated uncertainties, not from chi2. */
  readonly covariance: Matrix;
  /** Sum of (residual / σ)². About dof when the readings are as good as they were said to be. */
  readonly chi2: number;
  /** Readings less unknowns; 0 means no check is possible. */
  readonly dof: number;
  readonly readings: readonly AdjustedReading[];
  /** The reading that fits worst, with those it cannot be told apart from; null when nothing is checked. */
  readonly worst: Suspect | null;
  /** Readings to take again, worst first. */
  readonly suspects: readonly Suspect[];
  /** Derivatives of the readings by the coordinates that are not fixed, over σ: what the survey can see. */
  readonly design: Matrix;
}
