/**
 * Where are the nosings and corners, by all readings together, and which reading does not agree with the others?
 *
 * Weighted least squares, re-linearised until it stops moving (`least-squares.ts`); residuals, redundancies and suspects
 * after Baarda (`suspects.ts`). Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Result } from "../../kernel/diagnostic.js";
import { MM_PER } from "../../kernel/length-unit.js";
import { TELLS_NOTHING } from "../../kernel/tolerance.js";
import type { TapeClass } from "../tape.js";
import type { AdjustedCoordinate, AdjustedPoint, AdjustedReading, Adjustment } from "./adjustment.js";
import { checkReadings } from "./check-readings.js";
import {
  checkFixed,
  coordinatesIn,
  type FixedCoordinate,
  sayCoordinate,
  usualDatum,
  withoutDatum,
} from "./datum.js";
import { inverseNormal, nullSpace } from "./factor.js";
import { type LeastSquares, leastSquares, type ResidualRow } from "./least-squares.js";
import { type Coordinate, coordinatesOf, isAngle, linearise, nameOf, type Reading } from "./reading.js";
import { readingSigma } from "./reading-sigma.js";
import { startOf } from "./start.js";
import { adjustmentFindings } from "./survey-findings.js";
import { SUSPECT_LIMIT } from "./survey-terms.js";
import { findSuspects, redundancies, residualSpace, studentise } from "./suspects.js";

/** What is known beforehand, and how to judge. */
export interface SurveyUnknowns {
  /** Coordinates that are known; all others that a reading speaks of are unknown. Default: `usualDatum`. */
  readonly fixed?: readonly FixedCoordinate[];
  /** Class of the tape for readings without an uncertainty; default II. */
  readonly tape?: TapeClass;
  /** Studentised residual above which a reading is to be taken again; default 2.5 (common practice, no source). */
  readonly limit?: number;
}

/** Which coordinates may move without any reading changing. */
function undetermined(found: LeastSquares, unknown: readonly Coordinate[]): Coordinate[] {
  const moving = nullSpace(found.factor);
  return unknown.filter((_, j) =>
    moving.some((own) => {
      const most = Math.max(...own.map(Math.abs));
      return Math.abs(own[j] as number) > most * TELLS_NOTHING;
    }),
  );
}

function refusal(
  code: string,
  of: readonly Coordinate[],
  why: string,
  hint: string,
  values = {},
): Diagnostic {
  const names = of.map(sayCoordinate).join(", ");
  return diagnostic({ code, message: `Survey: ${why}: ${names}.`, hint, values });
}

function pointsOf(all: readonly AdjustedCoordinate[]): AdjustedPoint[] {
  const points = new Map<number | string, AdjustedPoint>();
  for (const own of all) {
    points.set(own.point, {
      point: own.point,
      ...points.get(own.point),
      [own.axis]: own.value,
    });
  }
  return [...points.values()];
}

/**
 * Adjusts a survey.
 *
 * @param readings - in any mix and order: `rise`, `run`, `height`, `distance`, `slope`, `level` on a stair, `side`,
 *   `diagonal`, `corner`, `offset` in plan; mm and degrees, each with its standard uncertainty or by default that of the tape
 * @param unknowns - datum, tape, limit of suspicion
 * @returns places, uncertainties, residuals, suspects; or why the readings cannot be adjusted: `survey-empty`,
 *   `survey-same-id`, `survey-bad-place`, `survey-bad-value`, `survey-bad-sigma`, `survey-bad-datum`, `survey-two-datums`,
 *   `survey-no-datum`, `survey-undetermined`, `survey-not-settled`
 * @example
 * ```ts
 * const found = adjustReadings([
 *   { id: "H1", kind: "rise", from: 0, to: 1, value: 190, sigma: 1 },
 *   { id: "H2", kind: "rise", from: 1, to: 2, value: 190, sigma: 1 },
 *   { id: "H3", kind: "height", to: 2, value: 383, sigma: 1 },
 * ]);
 * found.ok && found.value.points[2]?.z; // 382
 * ```
 */
export function adjustReadings(
  readings: readonly Reading[],
  unknowns: SurveyUnknowns = {},
): Result<Adjustment> {
  const wrong = checkReadings(readings);
  if (wrong.length > 0) return { ok: false, diagnostics: wrong };
  const fixed = unknowns.fixed ?? usualDatum(readings);
  const wrongDatum = checkFixed(fixed);
  if (wrongDatum.length > 0) return { ok: false, diagnostics: wrongDatum };
  const adrift = withoutDatum(readings, fixed);
  if (adrift.length > 0) {
    const hint = adrift.every((own) => own.axis === "z")
      ? "Read one of these heights from the lower finished floor, or from a nosing that is read from it."
      : "Read one of them from the datum, or from a place that is read from it.";
    const why = "no chain of readings ties these to the datum";
    return { ok: false, diagnostics: [refusal("survey-no-datum", adrift, why, hint)] };
  }

  const known = new Map(fixed.map((own) => [nameOf(own), own.value]));
  const all = coordinatesIn(readings);
  const unknown = all.filter((own) => !known.has(nameOf(own)));
  const index = new Map(unknown.map((own, i) => [nameOf(own), i]));
  const sigmas = readings.map((own) => own.sigma ?? readingSigma(own, own.value, unknowns.tape));
  const places = readings.map((own) => coordinatesOf(own).map(nameOf));
  const read = (i: number, parameters: readonly number[]) => {
    const at = (places[i] as string[]).map((name) => {
      const j = index.get(name);
      return j === undefined ? (known.get(name) as number) : (parameters[j] as number);
    });
    return linearise(readings[i] as Reading, at);
  };
  const model = (parameters: readonly number[]) =>
    readings.map((own, i): ResidualRow => {
      const { value, derivatives } = read(i, parameters);
      const sigma = sigmas[i] as number;
      const gradient = new Array<number>(unknown.length).fill(0);
      (places[i] as string[]).forEach((name, k) => {
        const j = index.get(name);
        if (j !== undefined) gradient[j] = (gradient[j] as number) + (derivatives[k] as number) / sigma;
      });
      return { residual: (own.value - value) / sigma, gradient };
    });
  const start = startOf(readings, fixed);
  const found = leastSquares(
    model,
    unknown.map((own) => start.get(nameOf(own)) as number),
  );
  if (!found.settled) {
    const message = `Survey: the places did not settle in ${found.rounds} rounds.`;
    const hint =
      "Readings contradict each other grossly, or put two places into one: compare angles and slopes with rises and runs.";
    return { ok: false, diagnostics: [diagnostic({ code: "survey-not-settled", message, hint })] };
  }
  if (found.factor.rank < unknown.length) {
    const counts = { rank: found.factor.rank, unknowns: unknown.length, readings: readings.length };
    const why = `the readings determine ${counts.rank} of ${counts.unknowns} coordinates; these can still move`;
    const hint = "Read one more length or angle that runs to one of them, on a landing a diagonal.";
    const open = undetermined(found, unknown);
    return { ok: false, diagnostics: [refusal("survey-undetermined", open, why, hint, counts)] };
  }

  const covariance = inverseNormal(found.factor);
  const coordinates = all.map((own): AdjustedCoordinate => {
    const j = index.get(nameOf(own));
    if (j === undefined) return { ...own, value: known.get(nameOf(own)) as number, sigma: 0, fixed: true };
    const sigma = Math.sqrt((covariance[j] as number[])[j] as number);
    return { ...own, value: found.parameters[j] as number, sigma, fixed: false };
  });
  const space = residualSpace(found.factor.q, readings.length);
  const shares = redundancies(space);
  const studentised = studentise(space, found.residuals);
  const ids = readings.map((own) => own.id);
  const adjusted = readings.map((own, i): AdjustedReading => {
    const should = read(i, found.parameters).value;
    const residual = own.value - should;
    return {
      id: own.id,
      kind: own.kind,
      value: own.value,
      sigma: sigmas[i] as number,
      adjusted: should,
      residual,
      sixteenths: isAngle(own) ? null : (residual * 16) / MM_PER.in,
      redundancy: shares[i] as number,
      studentised: studentised[i] as number | null,
    };
  });
  const value: Adjustment = {
    points: pointsOf(coordinates),
    coordinates,
    covariance,
    chi2: found.chi2,
    dof: found.dof,
    readings: adjusted,
    ...findSuspects(ids, space, found.residuals, unknowns.limit ?? SUSPECT_LIMIT),
    design: found.design,
  };
  return { ok: true, value, diagnostics: adjustmentFindings(value) };
}
