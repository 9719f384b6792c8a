/**
 * Where are the nosings of a counted stair, and how steep is the line through them?
 *
 * Equal risers and goings: riser = floor to floor / risers, pitch θ = atan2(riser, going), slope per step =
 * hypot(riser, going) (trade geometry; Pythagoras). Frame: X uphill, Z up, origin at the top nosing, so nosing n stands
 * at ((n − risers)·going, (n − risers)·riser) and the last nosing is the edge of the landing. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { Adjustment } from "../survey/adjustment.js";
import type { SurveyTerms } from "../survey/survey-terms.js";

/** A stair as it is counted. */
export interface CountedStair {
  /** Number of risers, a whole number ≥ 1; the last one ends at the landing. */
  readonly risers: number;
  /** Plumb from the lower finished floor to the landing, mm, > 0. */
  readonly floorToFloor: number;
  /** Level from nosing to nosing, mm, > 0. */
  readonly going: number;
}

/** A nosing as it was taped: from the lowest nosing along the stair, and from the lower floor up, mm. */
export interface TapedNosing {
  readonly run: number;
  readonly height: number;
}

/** Steps that are counted, or measured one by one. */
export type StairSteps =
  | (CountedStair & { readonly nosings?: undefined })
  | {
      readonly nosings: readonly TapedNosing[];
      /** Where the nosings come from a survey: how well each is known, and what the readings say of each other. */
      readonly survey?: Adjustment;
      /** What that survey was taken with, which line is laid over its nosings, what was left out. */
      readonly terms?: SurveyTerms;
    };

/** One nosing. */
export interface Nosing {
  /** 1 is the lowest; the highest is the edge of the landing. */
  readonly number: number;
  readonly x: number;
  readonly z: number;
}

/** The nosings and the line through them. */
export interface NosingLine {
  /** Degrees from level. */
  readonly pitch: number;
  /** Rise per millimetre of run: tan(pitch). */
  readonly slope: number;
  /** mm. */
  readonly riser: number;
  readonly going: number;
  /** From nosing to nosing along the pitch, mm. */
  readonly slopePerStep: number;
  /** From the lowest to the landing edge. */
  readonly nosings: readonly Nosing[];
  /** Height of the line at x = 0, over the top nosing: 0 on counted steps. */
  readonly z0: number;
  /** Greatest plumb distance of a nosing from the line: 0 on counted steps. */
  readonly worstMiss: number;
  /** Height of the lower floor, mm, negative. */
  readonly floorZ: number;
  /** Where the nosing line meets the lower floor: one going in front of the lowest nosing. */
  readonly footX: number;
}

const DEGREES = 180 / Math.PI;

/**
 * The nosing line of a counted stair.
 *
 * @param stair - risers, floor to floor and going
 * @returns pitch, slope per step and every nosing in the layout frame
 * @throws RakewrightError `bad-stair` when a size is not a positive number or the risers are not whole
 * @example
 * ```ts
 * nosingLine({ risers: 13, floorToFloor: 2497.1375, going: 269.875 }).pitch; // 35.4419…
 * ```
 */
export function nosingLine(stair: CountedStair): NosingLine {
  const { risers, floorToFloor, going } = stair;
  const sound = Number.isInteger(risers) && risers >= 1 && floorToFloor > 0 && going > 0;
  if (!sound || !Number.isFinite(floorToFloor) || !Number.isFinite(going)) {
    throw new RakewrightError({
      code: "bad-stair",
      message: `Stair: expected whole risers ≥ 1, floorToFloor > 0 and going > 0, got ${risers}, ${floorToFloor} and ${going}.`,
      hint: "Give the counted risers and the two sizes in millimetres.",
    });
  }
  const riser = floorToFloor / risers;
  const nosings = Array.from({ length: risers }, (_, i): Nosing => {
    const below = risers - 1 - i;
    return { number: i + 1, x: below === 0 ? 0 : -below * going, z: below === 0 ? 0 : -below * riser };
  });
  return {
    pitch: Math.atan2(riser, going) * DEGREES,
    slope: riser / going,
    riser,
    going,
    slopePerStep: Math.hypot(riser, going),
    nosings,
    z0: 0,
    worstMiss: 0,
    floorZ: -floorToFloor,
    footX: -risers * going,
  };
}
