/**
 * Where something that is made already no longer fits what it meets: plain data for papers and files.
 *
 * @packageDocumentation
 */
import type { Feature } from "./as-set.js";

/** One made feature against one thing it meets. Millimetres. */
export interface MadeMisfit {
  /** Id of the piece that is made. */
  readonly piece: string;
  readonly feature: Feature;
  /** Id of the piece it meets. */
  readonly onto: string;
  /** Id of the hole, where it is one. */
  readonly hole?: string;
  /**
   * `stands-off`: open by `by` at the worst; `overlaps`: `by` of it lies inside its mate; `off-line`: the hole's axis is `by`
   * off the line it is wanted on; `no-mate`: the layout puts the end to `onto`, which it was not cut for (`by` is 0).
   */
  readonly kind: "stands-off" | "overlaps" | "off-line" | "no-mate";
  readonly by: number;
  /** What may be left: the fit gap, or the room in the hole. */
  readonly allowed: number;
}
