/**
 * Where does a raking rail meet a level one, measured from the nosing?
 *
 * Top edges: rake z = h_r + x·tan θ, level z = h_l + x·tan ε, so x = (h_l − h_r) / (tan θ − tan ε); equal heights break
 * plumb over the nosing at every pitch. Mid-depth breaks (d/2)·tan(θ/2) further uphill, the underside d·tan(θ/2)
 * (trade geometry: two lines and the bisector of their angle). x from the top nosing, + over the landing; heights plumb
 * to the top of the rail; millimetres, degrees. The same law holds at the foot with x from where the nosing line meets
 * the floor.
 *
 * @packageDocumentation
 */
import { cosDegrees, tanDegrees } from "../angles.js";

/** What decides a break. */
export interface BreakInput {
  /** Plumb from the nosing line to the top of the raking rail, mm. */
  readonly heightRake: number;
  /** Plumb from the landing to the top of the level rail, mm, at x = 0. */
  readonly heightLevel: number;
  /** Of the raking rail, degrees from level, −90 < pitch < 90. */
  readonly pitch: number;
  /** Of the other rail, degrees, + rising away from the stair. Default 0. */
  readonly levelSlope?: number;
  /** Of both rails, square to their length, mm, ≥ 0. Default 0: all three breaks coincide. */
  readonly depth?: number;
}

/** Where the edges meet. */
export type BreakPoint =
  | {
      readonly kind: "at";
      /** Of the top edges, mm: the break a hand feels. */
      readonly x: number;
      readonly midDepth: number;
      readonly underside: number;
      /** Along the rake from plumb over the nosing to the break of the top edges, signed like x. */
      readonly alongRake: number;
      /** Angle of either cut from square, degrees: half the turn. */
      readonly miter: number;
    }
  /** Parallel rails at different heights never meet. */
  | { readonly kind: "none"; readonly step: number }
  /** One straight line: a break may be put anywhere. */
  | { readonly kind: "anywhere" };

/**
 * The break between a raking and a level rail of equal depth.
 *
 * @example
 * ```ts
 * breakPoint({ heightRake: 36, heightLevel: 42, pitch: 35.537677791974 }); // { kind: "at", x: 8.4, … }
 * ```
 */
export function breakPoint(input: BreakInput): BreakPoint {
  const { heightRake, heightLevel, pitch, levelSlope = 0, depth = 0 } = input;
  const climb = tanDegrees(pitch) - tanDegrees(levelSlope);
  const rise = heightLevel - heightRake;
  if (climb === 0) return rise === 0 ? { kind: "anywhere" } : { kind: "none", step: rise };
  const x = rise === 0 ? 0 : rise / climb;
  // The joint leans by the mean of the two slopes, so each step down its length moves uphill by its sine.
  const lean = (pitch + levelSlope) / 2;
  const jointLength = depth / cosDegrees((pitch - levelSlope) / 2);
  const shift = jointLength * Math.sin((lean * Math.PI) / 180);
  return {
    kind: "at",
    x,
    midDepth: x + shift / 2,
    underside: x + shift,
    alongRake: x / cosDegrees(pitch),
    miter: (pitch - levelSlope) / 2,
  };
}

/**
 * The level rail's height that puts the break over the riser face instead of the nosing.
 *
 * The face stands back by the overhang, so the rail there is higher by overhang·tan θ.
 *
 * @param input - height of the raking rail (mm), overhang of the nosing past the riser face (mm, ≥ 0), pitch (degrees)
 * @returns height of the level rail above the landing, mm
 * @example
 * ```ts
 * heightNeededOverRiser({ heightRake: 36, overhang: 1, pitch: 35.537677791974 }); // 36.714…
 * ```
 */
export function heightNeededOverRiser(input: {
  readonly heightRake: number;
  readonly overhang: number;
  readonly pitch: number;
}): number {
  return input.heightRake + input.overhang * tanDegrees(input.pitch);
}

/**
 * Where a rail that follows the nosing line breaks to level at the foot of a stair.
 *
 * The nosing line meets the floor at firstRiser / tan θ in front of the lowest nosing; an equal-height rail breaks there.
 *
 * @param input - first riser (mm, finished floor to lowest nosing), pitch (degrees, > 0), both heights (mm, default equal)
 * @returns `x` from the lowest nosing, − away from the stair; `alongRake`: length of the sloped extension
 * @example
 * ```ts
 * footBreak({ firstRiser: 7.5, pitch: 35.537677791974 }).x; // −10.5
 * ```
 */
export function footBreak(input: {
  readonly firstRiser: number;
  readonly pitch: number;
  readonly heightRake?: number;
  readonly heightLevel?: number;
}): { readonly x: number; readonly alongRake: number } {
  const { firstRiser, pitch, heightRake = 0, heightLevel = 0 } = input;
  const x = (heightLevel - heightRake - firstRiser) / tanDegrees(pitch);
  return { x, alongRake: -x / cosDegrees(pitch) };
}
