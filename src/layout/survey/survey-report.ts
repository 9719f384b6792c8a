/**
 * Everything an adjusted survey of a flight has to say, as plain data: readings, suspects, the next reading, lines, nosings.
 *
 * Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { measuredLine } from "../site/measured-line.js";
import type { Adjustment } from "./adjustment.js";
import { type Candidate, candidatesOn } from "./candidates.js";
import { fitNosings } from "./fit-nosings.js";
import { nextReading, splitTie } from "./next-reading.js";
import { quantityOf } from "./quantity.js";
import { coordinatesOf, fromOf, nameOf, type PlannedReading, type Reading } from "./reading.js";
import type {
  LeftOutRow,
  ReadingRow,
  SurveyedNosing,
  SurveyReport,
  SuspectRow,
} from "./survey-report-types.js";
import type { SurveyTerms } from "./survey-terms.js";
import type { Suspect } from "./suspects.js";

/** Where a reading runs, beside its figures. */
export function readingRows(adjustment: Adjustment, readings: readonly Reading[]): ReadingRow[] {
  return adjustment.readings.flatMap((own): ReadingRow[] => {
    const reading = readings.find((other) => other.id === own.id);
    if (reading === undefined) return [];
    return [{ ...own, from: fromOf(reading), to: reading.to, ...("at" in reading && { at: reading.at }) }];
  });
}

/** What readings that do not count should have been. */
export function leftOutRows(adjustment: Adjustment, leftOut: readonly Reading[]): LeftOutRow[] {
  const known = new Set(adjustment.coordinates.map(nameOf));
  return leftOut.map((own): LeftOutRow => {
    const told = coordinatesOf(own).every((coordinate) => known.has(nameOf(coordinate)));
    return {
      id: own.id,
      kind: own.kind,
      value: own.value,
      should: told ? quantityOf(adjustment, own).value : null,
    };
  });
}

/** The reading that parts a tied group best; null for a single reading or where none does. */
export function splitOf(
  adjustment: Adjustment,
  { ids }: Suspect,
  candidates: readonly PlannedReading[],
): SuspectRow["split"] {
  if (ids.length < 2) return null;
  const [best] = splitTie(adjustment, ids, candidates);
  const candidate = candidates.find((own) => own.id === best?.id);
  return best === undefined || candidate === undefined || best.groups.length < 2
    ? null
    : { ...best, candidate };
}

const UP: readonly string[] = ["rise", "height"];
const ALONG: readonly string[] = ["run", "distance"];

/** Candidates at the nosings that tied readings run between, in their direction: others cannot part them better, and each takes time. */
function near(
  { ids }: Suspect,
  rows: readonly ReadingRow[],
  candidates: readonly Candidate[],
): readonly Candidate[] {
  const tied = rows.filter((own) => ids.includes(own.id));
  const ends = tied.flatMap((own) => [Number(own.from), Number(own.to)]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const all = (kinds: readonly string[]) => tied.every((own) => kinds.includes(own.kind));
  const other = all(UP) ? [...ALONG, "slope"] : all(ALONG) ? UP : [];
  return candidates.filter(
    (own) =>
      !other.includes(own.kind) &&
      ((own.to >= low && own.to <= high) || (own.from >= Math.max(low, 1) && own.from <= high)),
  );
}

function nosingRows(adjustment: Adjustment, count: number): Omit<SurveyedNosing, `miss${string}`>[] {
  const at = (axis: "x" | "z", point: number) =>
    adjustment.coordinates.find((own) => own.axis === axis && own.point === point);
  return Array.from({ length: count }, (_, i) => {
    const [x, z] = [at("x", i + 1), at("z", i + 1)];
    return {
      number: i + 1,
      run: x?.value ?? 0,
      runSigma: x?.sigma ?? 0,
      height: z?.value ?? 0,
      heightSigma: z?.sigma ?? 0,
    };
  });
}

/** Both lines and the misses from them; nothing where a step goes back. */
function linesOver(rows: readonly { readonly run: number; readonly height: number }[]) {
  const sound = rows.every((own, i) => {
    const before = rows[i - 1];
    return own.height > 0 && (before === undefined || (own.run > before.run && own.height > before.height));
  });
  if (!sound) return undefined;
  const line = measuredLine(rows);
  const fit = fitNosings(rows.map((own) => ({ x: own.run, z: own.height })));
  return {
    leastMiss: { pitch: line.pitch, worstMiss: line.worstMiss },
    leastSquares: { pitch: fit.pitch, worstMiss: Math.max(...fit.misses.map(Math.abs)) },
    misses: line.nosings.map((own, i) => ({
      missLeastMiss: own.z - line.z0 - line.slope * own.x,
      missLeastSquares: fit.misses[i] as number,
    })),
  };
}

/**
 * The report of an adjusted flight.
 *
 * @param name - of the flight
 * @param adjustment - from `surveyStair`: every nosing has a height and a place along
 * @param readings - those that were adjusted and those left out
 * @param terms - what the survey was taken with
 * @returns plain data
 * @example
 * ```ts
 * surveyReport("stair", adjustment, readings, terms).suspects; // [{ ids: ["R8"], studentised: 8.69…, split: null }]
 * ```
 */
export function surveyReport(
  name: string,
  adjustment: Adjustment,
  readings: readonly Reading[],
  terms: SurveyTerms,
): SurveyReport {
  const count = Math.max(...adjustment.points.map((own) => Number(own.point)));
  const rows = readingRows(adjustment, readings);
  const candidates = candidatesOn(adjustment, count, terms.tape);
  const top = { kind: "slope", from: 1, to: count } as const;
  const [gain] = nextReading(adjustment, top, candidates);
  const next = candidates.find((own) => own.id === gain?.id);
  const nosings = nosingRows(adjustment, count);
  const lines = linesOver(nosings);
  const [slope, pitch] = [quantityOf(adjustment, top), quantityOf(adjustment, { ...top, kind: "level" })];
  const taken = (own: Candidate) =>
    rows.some((row) => row.kind === own.kind && row.from === own.from && row.to === own.to);
  return {
    name,
    ...terms,
    chi2: adjustment.chi2,
    dof: adjustment.dof,
    readings: rows,
    notCounted: leftOutRows(adjustment, terms.leftOut),
    worst: adjustment.worst,
    suspects: adjustment.suspects.map((own) => ({
      ...own,
      split: splitOf(adjustment, own, near(own, rows, candidates)),
    })),
    next:
      gain === undefined || next === undefined
        ? null
        : {
            candidate: next,
            again: taken(next),
            sigmaNow: gain.sigmaNow,
            sigmaAfter: gain.sigmaAfter,
          },
    lines: lines === undefined ? null : { leastMiss: lines.leastMiss, leastSquares: lines.leastSquares },
    nosings: nosings.map((own, i) => ({
      ...own,
      missLeastMiss: lines?.misses[i]?.missLeastMiss ?? null,
      missLeastSquares: lines?.misses[i]?.missLeastSquares ?? null,
    })),
    slope: { value: slope.value, sigma: slope.sigma },
    pitch: { value: pitch.value, sigma: pitch.sigma },
  };
}
