/**
 * Is there one straight rail that keeps a height between two limits over every nosing? If not, which step is in the way?
 *
 * A line z = z₀ + b x does when zᵢ + least ≤ z₀ + b xᵢ ≤ zᵢ + most for all i. For a given b there is a z₀ exactly when no
 * lower limit is above an upper one, so every pair of nosings bounds b from one side, and there is a rail exactly when the
 * bounds leave something (elimination of z₀: Fourier and Motzkin). Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import { measuredLine } from "../site/measured-line.js";
import { checkAlong, type PlumbPoint } from "./fit-nosings.js";

/** Limits of the height of a rail, plumb above a nosing, mm. */
export interface HeightBand {
  readonly least: number;
  /** ≥ least. */
  readonly most: number;
}

/** What straight rails can do. */
export type RailBand =
  | {
      readonly possible: true;
      /** Flattest and steepest rail that keeps the band, degrees. */
      readonly pitches: readonly [flattest: number, steepest: number];
      /** The rail whose worst height is nearest the middle of the band. */
      readonly rail: {
        readonly pitch: number;
        readonly slope: number;
        /** Height of the rail at x = 0 of the nosings, mm. */
        readonly z0: number;
        /** Above each nosing, mm. */
        readonly heights: readonly number[];
      };
    }
  | {
      readonly possible: false;
      /** The band any straight rail needs at least, mm: twice the least greatest miss. */
      readonly needs: number;
      /** Nosings (1 the lowest) any one of which, were it true, would let a straight rail pass; empty when more than one is in the way. */
      readonly steps: readonly number[];
    };

/** Slopes that every pair of nosings allows; flattest above steepest when there is none. */
function slopes(points: readonly PlumbPoint[], band: HeightBand): { flattest: number; steepest: number } {
  let [flattest, steepest] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  points.forEach((b, j) => {
    for (const a of points.slice(0, j)) {
      const run = b.x - a.x;
      // From the top limit at a down to the lower one at b, and the other way round.
      flattest = Math.max(flattest, (b.z + band.least - a.z - band.most) / run);
      steepest = Math.min(steepest, (b.z + band.most - a.z - band.least) / run);
    }
  });
  return { flattest, steepest };
}

const degrees = (slope: number) => (Math.atan(slope) * 180) / Math.PI;

/**
 * Whether a straight rail keeps a height over every nosing.
 *
 * @param nosings - from the lowest up, each farther along and higher
 * @param band - limits of the height; most ≥ least, finite
 * @returns the pitches that do and the rail in the middle; or the band it would take and the step in the way
 * @throws RakewrightError `survey-bad-band` for limits that are none, `survey-bad-nosings` or `bad-stair` for nosings that
 *   make no stair
 * @example
 * ```ts
 * const nosings = [{ x: 0, z: 0 }, { x: 280, z: 210 }, { x: 560, z: 380 }];
 * railBand(nosings, { least: 900, most: 915 }); // { possible: false, needs: 20, steps: [1, 2, 3] }
 * ```
 */
export function railBand(nosings: readonly PlumbPoint[], band: HeightBand): RailBand {
  if (!(Number.isFinite(band.least) && Number.isFinite(band.most) && band.least <= band.most)) {
    throw new RakewrightError({
      code: "survey-bad-band",
      message: `Rail height: expected least ≤ most in millimetres, got ${band.least} to ${band.most}.`,
      hint: "Give the lowest and the highest a rail may be, plumb above a nosing.",
    });
  }
  checkAlong(nosings);
  const [low, top] = [nosings[0] as PlumbPoint, nosings.at(-1) as PlumbPoint];
  // Heights above a floor one millimetre under the lowest nosing: where the floor is does not matter here.
  const line = measuredLine(nosings.map((own) => ({ run: own.x - low.x, height: own.z - low.z + 1 })));
  const found = slopes(nosings, band);
  if (found.flattest <= found.steepest) {
    const z0 = line.z0 + top.z - line.slope * top.x + (band.least + band.most) / 2;
    return {
      possible: true,
      pitches: [degrees(found.flattest), degrees(found.steepest)],
      rail: {
        pitch: line.pitch,
        slope: line.slope,
        z0,
        heights: nosings.map((own) => z0 + line.slope * own.x - own.z),
      },
    };
  }
  const steps = nosings.flatMap((_, i) => {
    const rest = slopes(
      nosings.filter((_own, k) => k !== i),
      band,
    );
    return rest.flattest <= rest.steepest ? [i + 1] : [];
  });
  return { possible: false, needs: 2 * line.worstMiss, steps };
}
