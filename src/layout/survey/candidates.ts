/**
 * Which readings could be taken on a stair next? What a hook finds an edge for.
 *
 * The floor, nosing edges, and the tape between them: heights hung to the floor, risers, goings, and slopes from the lowest
 * nosing, to the top one, or between near ones. Named as on the survey sheet.
 *
 * @packageDocumentation
 */
import type { TapeClass } from "../tape.js";
import type { Adjustment } from "./adjustment.js";
import { quantityOf } from "./quantity.js";
import type { PlannedReading, StairPlace } from "./reading.js";
import { readingSigma } from "./reading-sigma.js";

/** A reading that could be taken, with how well it would be read. */
export type Candidate = StairPlace & PlannedReading & { readonly from: number; readonly sigma: number };

/** Slopes between nosings that are neither the lowest nor the top one reach over at most so many steps. */
const NEAR = 3;

/**
 * What a reading between two places of a stair is called on the sheet.
 *
 * @example sheetId({ kind: "slope", from: 1, to: 13 }); // "S1-13"
 */
export function sheetId({ kind, from, to }: { kind: StairPlace["kind"]; from: number; to: number }): string {
  if (kind === "slope") return `S${from}-${to}`;
  if (kind === "level") return `L${from}-${to}`;
  if (kind === "height") return `H${to}`;
  if (kind === "distance") return `D${to}`;
  if (kind === "run") return to === from + 1 ? `G${from}` : `G${from}-${to}`;
  return to === from + 1 ? `R${to}` : `R${from}-${to}`;
}

/** How well readings of a kind were taken here: as its worst one, else as its tape and the hand allow. */
function sigmaOf(adjustment: Adjustment, place: StairPlace, tape: TapeClass): number {
  const alike = adjustment.readings.filter((own) => own.kind === place.kind).map((own) => own.sigma);
  if (alike.length > 0) return Math.max(...alike);
  return readingSigma(place, Math.abs(quantityOf(adjustment, place).value), tape);
}

/**
 * Readings that could be taken on an adjusted stair, from its foot up.
 *
 * @param adjustment - of a stair whose nosings all have a height and a place along, with the floor
 * @param nosings - how many
 * @param tape - class of the tape, for kinds that were not read yet
 * @returns heights, risers, goings, slopes; also those that were taken before
 * @example candidatesOn(adjustment, 13, "II").find((own) => own.id === "H8");
 */
export function candidatesOn(adjustment: Adjustment, nosings: number, tape: TapeClass): Candidate[] {
  const places: (StairPlace & { readonly from: number })[] = [];
  for (let to = 1; to <= nosings; to++) {
    places.push({ kind: "height", from: 0, to }, { kind: "rise", from: to - 1, to });
    if (to > 1) places.push({ kind: "run", from: to - 1, to });
    for (let from = 1; from < to; from++) {
      if (from === 1 || to === nosings || to - from <= NEAR) places.push({ kind: "slope", from, to });
    }
  }
  // Hung from the lowest nosing to the floor, a height is its riser: one of them is enough.
  return places
    .filter((own) => !(own.kind === "rise" && own.to === 1))
    .map((own) => ({ ...own, id: sheetId(own), sigma: sigmaOf(adjustment, own, tape) }));
}
