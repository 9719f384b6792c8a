/**
 * Degrees in and out: the layout room's public numbers are degrees, the formulas want tangents.
 *
 * @packageDocumentation
 */

/** Tangent of an angle in degrees. */
export function tanDegrees(angle: number): number {
  return Math.tan((angle * Math.PI) / 180);
}

/** Cosine of an angle in degrees. */
export function cosDegrees(angle: number): number {
  return Math.cos((angle * Math.PI) / 180);
}

/** tan(θ/2) from the slope tan θ, without loss at small slopes: slope / (1 + √(1 + slope²)). */
export function tanHalf(slope: number): number {
  return slope / (1 + Math.hypot(1, slope));
}

/**
 * How far uphill the meeting point of two lines moves when both are offset square to themselves by one unit, downward.
 *
 * sin((θ + ε)/2) / cos((θ − ε)/2), from the slopes tan θ and tan ε, written with half tangents.
 */
export function bisectorShift(first: number, second: number): number {
  const [p, q] = [tanHalf(first), tanHalf(second)];
  return q === 0 ? p : (p + q) / (1 + p * q);
}
