/**
 * How many bars make no space greater than allowed, and how wide are the spaces then?
 *
 * n bars of width w in a length L leave n + 1 equal spaces of (L − n·w)/(n + 1) (trade arithmetic); the fewest is the least n
 * for which that is no more than the greatest allowed. An end that is a plan corner has half a space before it: the other half is
 * on the other side of the corner. Millimetres.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../../kernel/tolerance.js";

/** A length to be divided; `ends` is 1 for each end at a face, 1/2 for each at a corner. */
export interface Divided {
  readonly length: number;
  readonly width: number;
  /** Default 2: a face at either end. */
  readonly ends?: number;
}

/**
 * The fewest bars with no space above `greatest`; one that fits to within what two stations may differ by is not split.
 *
 * @example
 * ```ts
 * fewestBars({ length: 1000, width: 10 }, 100); // 9: spaces of 91
 * ```
 */
export function fewestBars({ length, width, ends = 2 }: Divided, greatest: number): number {
  return Math.max(0, Math.ceil((length - greatest * (ends - 1) - STATION_MM) / (width + greatest)));
}

/**
 * The space that a number of bars leaves; below 0 where they have no room.
 *
 * @example
 * ```ts
 * spaceBetween({ length: 1000, width: 10 }, 9); // 91
 * ```
 */
export function spaceBetween({ length, width, ends = 2 }: Divided, count: number): number {
  const spaces = count - 1 + ends;
  return spaces > 0 ? (length - count * width) / spaces : length;
}
