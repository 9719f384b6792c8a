/**
 * Where something that is made already no longer fits what it meets: plain data for papers and files.
 *
 * @packageDocumentation
 */
import type { Feature } from "./as-set.js";

/** How a made feature fails to fit. */
export const MISFIT_KINDS = [
  "stands-off",
  "overlaps",
  "no-mate",
  "off-line",
  "no-hole",
  "spare-hole",
] as const;

/** One made feature against one thing it meets. Millimetres. */
export interface MadeMisfit {
  /** Id of the piece that is made. */
  readonly piece: string;
  readonly feature: Feature;
  /** Id of the piece it meets; empty where there is none. */
  readonly onto: string;
  /** Id of the hole, where it is one. */
  readonly hole?: string;
  /**
   * `stands-off`: open by `by` at the worst; `overlaps`: `by` of it lies inside its mate; `no-mate`: the layout puts the end
   * to `onto`, which it was not cut for; `off-line`: the hole's axis is `by` off the line it is wanted on; `no-hole`: one is
   * wanted that is not there; `spare-hole`: one is there that is not wanted. `by` is 0 where nothing is measured.
   */
  readonly kind: (typeof MISFIT_KINDS)[number];
  readonly by: number;
  /** What may be left: the fit gap, or the room in the hole. */
  readonly allowed: number;
}
