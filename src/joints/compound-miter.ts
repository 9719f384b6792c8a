/**
 * How are two tubes cut where they turn in plan and in slope at once, and how far do their sides then twist apart?
 *
 * Directions u towards the corner and v away from it; the cut is square to n = (u + v)/|u + v|. In each tube's own axes
 * (along, left, up; sides plumb) miter = atan2(n·left, n·along), bevel = asin(n·up), clock = atan2(n·up, n·left).
 * Half of the turn comes from sums of squares, cos²(τ/2) = sin²((t₁+t₂)/2) + cos t₁ cos t₂ cos²(α/2), so that nothing
 * cancels. Vector geometry; frame of the layout (Z up). Degrees.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import { argument } from "./argument.js";
import { atan2Degrees, cosDegrees, sinDegrees } from "./degrees.js";

/** A corner between two straight tubes, walked from the first to the second. */
export interface CompoundMiterInput {
  /** Slope of the first tube from level, degrees, above −90 to below 90; + climbs towards the corner. */
  readonly slopeIn: number;
  /** Slope of the second tube; + climbs away from the corner. */
  readonly slopeOut: number;
  /** Turn in plan, degrees, −180 to 180; + to the left. */
  readonly turn: number;
}

/** Saw settings in a tube's own axes: along its direction of travel, left, up; its bottom on the table. */
export interface SawCut {
  /** Saw-table swing from square, degrees; + where the cut's normal, along travel, leans to the left. */
  readonly miter: number;
  /** Blade tilt from upright, degrees; + where that normal leans up. */
  readonly bevel: number;
  /**
   * For a saw without tilt: direction of the normal's lean round the tube, from left towards up, (−180, 180]. Put that
   * direction in the plane the saw swings in and cut at the true miter. 0 for a square cut.
   */
  readonly clock: number;
}

/** The cut at a corner of two tubes. */
export interface CompoundMiter {
  /** True angle between the two directions, degrees, 0 to below 180. */
  readonly turnAngle: number;
  /** Of each tube from square: half the turn, degrees. */
  readonly trueMiter: number;
  readonly first: SawCut;
  readonly second: SawCut;
  /**
   * Between the sides of the first tube, carried round the corner, and plumb sides on the second: right-hand rotation
   * about the second's direction, degrees, −180 to 180. Square tube meets at the corner only where it is 0; on round
   * tube it only clocks what is drilled in the two ends.
   */
  readonly twist: number;
}

/** Along-tube offsets of a cut at the four arrises, from the cut on the centreline, along travel, millimetres. */
export interface ArrisMarks {
  readonly topLeft: number;
  readonly topRight: number;
  readonly bottomLeft: number;
  readonly bottomRight: number;
}

/** The saw's settings for a cut plane whose normal has these components along, left and up; any length. */
export function sawCut(along: number, left: number, up: number): SawCut {
  return {
    miter: atan2Degrees(left, along),
    bevel: atan2Degrees(up, Math.hypot(along, left)),
    clock: left === 0 && up === 0 ? 0 : atan2Degrees(up, left),
  };
}

function checked(input: CompoundMiterInput): CompoundMiterInput {
  const code = "bad-compound-miter";
  for (const field of ["slopeIn", "slopeOut"] as const) {
    const hint = "Give the slope from level; a plumb tube has no left and no up.";
    argument(input[field], { above: -90, below: 90 }, { code, field, unit: " deg", hint });
  }
  const hint = "Give the turn in plan, left positive.";
  argument(input.turn, { least: -180, most: 180 }, { code, field: "turn", unit: " deg", hint });
  return input;
}

/**
 * The compound miter between two straight tubes with plumb sides.
 *
 * @param input - slope in, slope out, turn in plan
 * @returns true angles, each tube's saw settings and the twist between their sides
 * @throws RakewrightError `bad-compound-miter` naming the field; `no-miter` where the second tube runs straight back along
 *   the first
 * @remarks Twist: tan(tw/2) = tan(α/2) sin((t₁+t₂)/2) / cos((t₁−t₂)/2). It is 0 only where the corner does not turn in
 *   plan or one tube climbs as much as the other falls.
 * @example
 * // a rake that turns straight onto a level landing rail
 * const corner = compoundMiter({ slopeIn: 35, slopeOut: 0, turn: 90 });
 * corner.trueMiter; // 45
 * corner.twist; // 35: use a corner post, a short level piece, or round tube
 */
export function compoundMiter(input: CompoundMiterInput): CompoundMiter {
  const { slopeIn: t1, slopeOut: t2, turn } = checked(input);
  const [sinHalf, cosHalf] = [sinDegrees(turn / 2), cosDegrees(turn / 2)];
  const [sum, difference] = [(t1 + t2) / 2, (t1 - t2) / 2];
  const level = Math.sqrt(cosDegrees(t1) * cosDegrees(t2));
  const cosTrue = Math.hypot(sinDegrees(sum), level * cosHalf);
  const sinTrue = Math.hypot(sinDegrees(difference), level * sinHalf);
  if (cosTrue <= PARALLEL_SINE) {
    throw new RakewrightError({
      code: "no-miter",
      path: "turn",
      message: `A tube at ${t1} deg cannot be mitred to one that runs straight back at ${t2} deg (turn ${turn} deg).`,
      hint: "Join them with a short piece between, or a bend.",
      values: { slopeIn: t1, slopeOut: t2, turn },
    });
  }
  // Twice cos(τ/2) times the components of n: along 2 cos²(τ/2); left and up those of the other direction.
  const along = 2 * cosTrue * cosTrue;
  const sine = sinDegrees(turn);
  const rise = sinDegrees(t2 - t1);
  const swing = 2 * sinHalf * sinHalf;
  const up1 = rise + swing * sinDegrees(t1) * cosDegrees(t2);
  const up2 = -rise + swing * cosDegrees(t1) * sinDegrees(t2);
  const trueMiter = atan2Degrees(sinTrue, cosTrue);
  return {
    turnAngle: 2 * trueMiter,
    trueMiter,
    first: sawCut(along, cosDegrees(t2) * sine, up1),
    second: sawCut(along, -cosDegrees(t1) * sine, up2),
    twist: 2 * atan2Degrees(sinHalf * sinDegrees(sum), cosHalf * cosDegrees(difference)) + 0,
  };
}

/**
 * Where a flat cut crosses the four corners of a rectangular tube: marks that need no saw scale.
 *
 * @param cut - a saw setting, of `compoundMiter` or `plumbCut`
 * @param width - across the tube, left to right, millimetres, above 0
 * @param depth - of the tube, bottom to top, millimetres, above 0
 * @returns offsets along the tube's direction of travel from where the cut crosses the centreline. On a tube that ends at
 *   the cut + is longer; on a tube that starts there (the second of a corner) + is shorter.
 * @throws RakewrightError `bad-compound-miter` naming the field
 * @example
 * const { first } = compoundMiter({ slopeIn: 0, slopeOut: 0, turn: 90 });
 * arrisMarks(first, 40, 40).topRight; // 20: a left turn is long on the right
 */
export function arrisMarks(cut: SawCut, width: number, depth: number): ArrisMarks {
  const code = "bad-compound-miter";
  for (const [field, value] of Object.entries({ width, depth })) {
    argument(value, { above: 0 }, { code, field, unit: " mm", hint: "Give the tube's outside size." });
  }
  for (const field of ["miter", "bevel"] as const) {
    const name = { code, field: `cut.${field}`, unit: " deg", hint: "Give angles from square." };
    argument(cut[field], { above: -90, below: 90 }, name);
  }
  const cosine = cosDegrees(cut.miter);
  const left = ((width / 2) * sinDegrees(cut.miter)) / cosine;
  const up = ((depth / 2) * sinDegrees(cut.bevel)) / (cosDegrees(cut.bevel) * cosine);
  return {
    topLeft: -left - up + 0,
    topRight: left - up + 0,
    bottomLeft: up - left + 0,
    bottomRight: left + up + 0,
  };
}
