/**
 * The outer skin of a straight member, as another member meets it.
 *
 * A skin is the outer loop of a section swept along the frame's z axis. It is untrimmed: a header's own cuts never
 * change what its branches are cut to, so joints have no order of evaluation.
 *
 * @packageDocumentation
 */
import type { Frame } from "./frame.js";
import type { Loop } from "./region.js";

/** The swept outer loop of a header. */
export interface Skin {
  /** Header frame: origin on its axis, z along it. */
  readonly frame: Frame;
  /** Outer loop of its section, counter-clockwise, millimetres. */
  readonly loop: Loop;
  /** Root gap left between the cut and the skin, millimetres, ≥ 0. The skin is offset outwards by it. Default 0. */
  readonly gap?: number;
  /**
   * What closes the branch where it is wider than the header. `refuse` (default): a diagnostic. `midline`: the plane
   * through the header's widest line and the line across it, which the skin meets without a jump.
   */
  readonly shoulder?: "refuse" | "midline";
}
