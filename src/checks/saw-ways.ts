/**
 * In how many ways can a saw make a flat cut, and which of them are within its limits?
 *
 * The cut goes outwards at gu = tan(miter) towards the section's left and gv = tan(bevel)·√(1 + gu²) towards its up. Turning
 * the tube about its axis turns (gu, gv): a quarter turn changes their places, the clock angle brings all of it into the
 * swing, where the saw stands at the true angle τ from square. Where τ is too far, the same plane is 90° − τ from the tube's
 * length: with the tube across the fence, against a block that is square to it, the saw swings by that. Degrees.
 *
 * @packageDocumentation
 */
import { atan2Degrees } from "../joints/degrees.js";
import type { SawSetting } from "../joints/piece.js";
import { SAW_SETTING_DEG } from "../kernel/tolerance.js";
import type { Shop } from "../layout/document/shop.js";
import type { Section } from "../members/section.js";

/** One way to set the saw; miter and bevel from square, without sign. */
export interface SawWay {
  /** `upright`: as the papers print it; `on-side`: turned a quarter; `rolled`: by the clock angle; `across`: rolled, and square to the fence. */
  readonly lie: "upright" | "on-side" | "rolled" | "across";
  readonly miter: number;
  readonly bevel: number;
}

/**
 * The ways a saw makes a flat cut within its limits, the plainest first.
 *
 * @param saw - the cut, from `Piece.cuts`
 * @param shape - of the section: round ones roll freely, rectangular ones also lie on their side; others stay upright
 * @param limits - of the saw, degrees either way
 * @returns the ways that are within both limits; empty when there is none
 * @example
 * // A plumb cut on a rake of 35.4°, on a saw that does not tilt: lay the tube on its side.
 * sawWays(
 *   { miter: 0, bevel: -35.4, fromSquare: 35.4, fromLength: 54.6, clock: -90 },
 *   "rect-tube",
 *   { miter: 45, bevel: 0 },
 * )[0]; // { lie: "on-side", miter: 35.4, bevel: 0 }
 */
export function sawWays(
  saw: SawSetting,
  shape: Section["shape"]["kind"],
  limits: Shop["saw"],
): readonly SawWay[] {
  const upright: SawWay = { lie: "upright", miter: Math.abs(saw.miter), bevel: Math.abs(saw.bevel) };
  const side = onSide(upright);
  // Where the quarter turn is the clock angle itself, the one says what the other does.
  const plain = within(side.bevel, 0) ? rolled(saw).slice(1) : rolled(saw);
  const ways = rolls(shape) ? [upright, side, ...plain] : [upright];
  return ways.filter((way) => within(way.miter, limits.miter) && within(way.bevel, limits.bevel));
}

/** An angle at the limit is within it. */
function within(angle: number, limit: number): boolean {
  return angle <= limit + SAW_SETTING_DEG;
}

/** True for sections that a vice or V-blocks hold at any roll; an open section twists in it. */
export function rolls(shape: Section["shape"]["kind"]): boolean {
  return shape === "round-tube" || shape === "round-bar" || shape === "rect-tube" || shape === "rect-bar";
}

function onSide({ miter, bevel }: SawWay): SawWay {
  const gu = tan(miter);
  const gv = tan(bevel) * Math.hypot(1, gu);
  return { lie: "on-side", miter: atan2Degrees(gv, 1), bevel: atan2Degrees(gu, Math.hypot(1, gv)) };
}

function rolled({ fromSquare, fromLength }: SawSetting): readonly SawWay[] {
  return [
    { lie: "rolled", miter: fromSquare, bevel: 0 },
    { lie: "across", miter: fromLength, bevel: 0 },
  ];
}

const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
