/**
 * How long a thing gets round a corner, and which rectangle goes into which?
 *
 * A straight thing of thickness t that turns in a square corner between corridors a and b touches both outer walls with its
 * ends and the inner corner with its side: at θ to one wall its length is (a sin θ + b cos θ − t) / (sin θ cos θ), and the
 * least of that over θ gets round. For a rod, t = 0, that is the classical (a^⅔ + b^⅔)^(3/2). A rectangle p × q goes
 * into a × b (p ≥ q, a ≥ b) when p ≤ a and q ≤ b, or, turned, when q ≤ b and
 * ((a + b)/(p + q))² + ((a − b)/(p − q))² ≥ 2 (W. B. Carver, Amer. Math. Monthly 64 (1957) 114; J. E. Wetzel,
 * Mathematics Magazine 73 (2000) 204). Plane geometry; any one length unit, millimetres elsewhere.
 *
 * @packageDocumentation
 */
import { falsePosition } from "../kernel/false-position.js";
import { ROUNDING_SHARE } from "../kernel/tolerance.js";

/** Halvings of an interval until two neighbouring doubles are left. */
const HALVINGS = 64;

/** A square corner and what is carried round it, mm. */
export interface CornerInput {
  /** Clear widths before and after the corner, above 0. */
  readonly from: number;
  readonly to: number;
  /** Of the thing as seen from above, 0 or more; default 0, a rod. */
  readonly thickness?: number;
}

/**
 * The longest straight thing that is carried level round a square corner.
 *
 * @param input - the two widths and the thing's thickness
 * @returns mm; 0 where it is thicker than either corridor is wide
 * @example longestRound({ from: 1000, to: 1000 }); // 2828.43: √8 m
 */
export function longestRound({ from: a, to: b, thickness: t = 0 }: CornerInput): number {
  if (t > Math.min(a, b)) return 0;
  // What is no longer than a corridor is wide needs no turning: it is pushed in sideways.
  const unturned = Math.max(a, b);
  if (t === Math.min(a, b)) return unturned;
  // The slope of the length over θ, times sin² θ cos² θ; it has one root, at the least length.
  const slope = (angle: number): number => {
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    return a * s ** 3 - b * c ** 3 + t * (c * c - s * s);
  };
  const least = falsePosition(slope, 0, Math.PI / 2, t - b, a - t, ROUNDING_SHARE * Math.min(a, b));
  const [s, c] = [Math.sin(least), Math.cos(least)];
  return Math.max(unturned, (a * s + b * c - t) / (s * c));
}

/**
 * True when a rectangle goes into another one, turned if need be.
 *
 * @param one - its sides, in any order
 * @param other - sides of the one it is to go into
 * @example rectangleFits([1100, 10], [1000, 500]); // true: turned, the diagonal is 1118
 */
export function rectangleFits(one: readonly [number, number], other: readonly [number, number]): boolean {
  const [p, q] = [Math.max(...one), Math.min(...one)];
  const [a, b] = [Math.max(...other), Math.min(...other)];
  if (q > b) return false;
  if (p <= a) return true;
  return ((a + b) / (p + q)) ** 2 + ((a - b) / (p - q)) ** 2 >= 2 - ROUNDING_SHARE;
}

/**
 * The longest rectangle of a given width that goes into another one, turned if need be.
 *
 * @param width - of the rectangle, mm, 0 or more
 * @param other - sides of the one it is to go into, mm
 * @returns its other side, mm, less than `width` where it only goes in crosswise; 0 where none of that width goes in
 * @example longestWithin(0, [300, 400]); // 500, the diagonal
 */
export function longestWithin(width: number, other: readonly [number, number]): number {
  let [fits, not] = [0, Math.hypot(...other)];
  if (rectangleFits([not, width], other)) return not;
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (fits + not) / 2;
    if (rectangleFits([middle, width], other)) fits = middle;
    else not = middle;
  }
  return fits;
}
