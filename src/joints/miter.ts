/**
 * How are two rails of equal or different depth cut where they turn up or down and their tops stay flush?
 *
 * In elevation the joint runs from the common top corner to where the two undersides meet. With θ the turn and d₁, d₂
 * the depths its lean from square to the second rail is tan φ = (d₁/d₂ − cos θ) / sin θ, written here as
 * (d₁ − d₂)/(d₂ sin θ) + tan(θ/2), which stays exact as θ → 0. The second is cut φ, the first θ − φ.
 * Plane geometry; any one length unit, millimetres elsewhere. Degrees from a square cut.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { PARALLEL_SINE, STATION_MM } from "../kernel/tolerance.js";
import { argument } from "./argument.js";
import { atan2Degrees, cosDegrees, sinDegrees } from "./degrees.js";

/** A turn in elevation between two rails whose tops are flush. */
export interface MiterInput {
  /**
   * The turn, degrees, above −180 to below 180: + where the tops make a crest (a rake that runs out level at the head), −
   * where they make a valley (at the foot).
   */
  readonly angle: number;
  /** Depth of each rail square to its own length, millimetres; first the raking one, second the level (or plumb) one. */
  readonly depths: readonly [first: number, second: number];
}

/** One rail's end. */
export interface MiterCut {
  /** From a square cut, degrees; + with the long point on top, − with it at the bottom. */
  readonly miter: number;
  /** Top edge less bottom edge at this end, millimetres; the sign follows `miter`. */
  readonly longMinusShort: number;
}

/** The two cuts of a miter in elevation. */
export interface Miter {
  /** Of the joint from square to the second rail (from plumb where that is level), degrees. */
  readonly lean: number;
  readonly first: MiterCut;
  readonly second: MiterCut;
  /** Of the joint from its top corner to its bottom corner, millimetres. */
  readonly jointLength: number;
}

/**
 * The miter between two rails with flush tops.
 *
 * @param input - the turn and the two depths
 * @returns both cuts, the lean and the length of the joint; a turn of 0 with equal depths is a square splice
 * @throws RakewrightError `bad-miter` naming the field; `no-miter` where rails of different depth run on straight: their
 *   undersides never meet
 * @remarks Cuts past about 60 degrees are beyond most saws; the saw's limit is an input of the shop, not of this function.
 * @example
 * miter({ angle: 30, depths: [40, 40] }).first.miter; // 15
 * miter({ angle: 60, depths: [40, 20] }).second.miter; // 60: the first is cut square
 */
export function miter(input: MiterInput): Miter {
  const { angle, depths } = input;
  const [first, second] = depths;
  argument(
    angle,
    { above: -180, below: 180 },
    { code: "bad-miter", field: "angle", unit: " deg", hint: "Give the turn between the two directions." },
  );
  depths.forEach((depth, i) => {
    const name = {
      code: "bad-miter",
      field: `depths[${i}]`,
      unit: " mm",
      hint: "Give the depth square to the rail.",
    };
    argument(depth, { above: 0 }, name);
  });
  const step = Math.abs(first - second) <= STATION_MM ? 0 : first - second;
  const sine = sinDegrees(angle);
  if (step !== 0 && Math.abs(sine) <= PARALLEL_SINE) {
    throw new RakewrightError({
      code: "no-miter",
      path: "angle",
      message: `Rails ${first} mm and ${second} mm deep that turn ${angle} deg cannot be mitred with flush tops.`,
      hint: "Close the deeper one with a cap and butt the other to it, or use one depth.",
      values: { angle, first, second },
    });
  }
  const half = sinDegrees(angle / 2) / cosDegrees(angle / 2);
  const slope = half + (step === 0 ? 0 : step / (second * sine));
  const lean = step === 0 ? angle / 2 : atan2Degrees(slope, 1);
  const cut = (turn: number, depth: number): MiterCut => ({
    miter: turn + 0,
    longMinusShort: (depth * sinDegrees(turn)) / cosDegrees(turn) + 0,
  });
  return {
    lean: lean + 0,
    first: cut(angle - lean, first),
    second: cut(lean, second),
    jointLength: second * Math.hypot(1, slope),
  };
}
