/**
 * Sine and cosine of angles in degrees, exact at every quarter turn.
 *
 * π/180 is not a double, so `Math.cos(90·π/180)` is 6·10⁻¹⁷ and the ears of equal tubes would not quite close. Users
 * think in degrees and their 90 means 90. No frame; degrees in, dimensionless out.
 *
 * @packageDocumentation
 */

const RADIANS_PER_DEGREE = Math.PI / 180;

/**
 * Sine of an angle in degrees, exactly 0, 1 or −1 at quarter turns.
 *
 * @param angle - degrees, any finite number
 * @example sinDegrees(180); // 0
 */
export function sinDegrees(angle: number): number {
  const turn = angle % 360;
  if (turn % 180 === 0) return 0;
  if (turn % 90 === 0) return turn === 90 || turn === -270 ? 1 : -1;
  return Math.sin(turn * RADIANS_PER_DEGREE);
}

/**
 * Cosine of an angle in degrees, exactly 0, 1 or −1 at quarter turns.
 *
 * @param angle - degrees, any finite number
 * @example cosDegrees(90); // 0
 */
export function cosDegrees(angle: number): number {
  const turn = angle % 360;
  if (turn === 0) return 1;
  if (turn % 180 === 0) return -1;
  if (turn % 90 === 0) return 0;
  return Math.cos(turn * RADIANS_PER_DEGREE);
}

/**
 * The angle in degrees, (−180, 180], whose sine and cosine stand as `y` to `x`; never −0.
 *
 * @example atan2Degrees(1, 1); // 45
 */
export function atan2Degrees(y: number, x: number): number {
  const angle = Math.atan2(y, x) / RADIANS_PER_DEGREE + 0;
  return angle === -180 ? 180 : angle;
}
