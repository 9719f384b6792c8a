/**
 * A named section: the region that is swept, and what the shop calls it.
 *
 * Section coordinates: u to the left and v up, seen with the member running away from the eye's back towards the eye
 * (u × v points along the member from `from` to `to`). Rectangles: `width` along u, `depth` along v.
 *
 * @packageDocumentation
 */
import type { Region } from "../kernel/region.js";

/** The sizes a section was made from, millimetres. */
export type SectionShape =
  | { readonly kind: "round-tube"; readonly od: number; readonly wall: number }
  | { readonly kind: "round-bar"; readonly od: number }
  | {
      readonly kind: "rect-tube";
      readonly width: number;
      readonly depth: number;
      readonly wall: number;
      readonly outerRadius: number;
      readonly innerRadius: number;
    }
  | { readonly kind: "rect-bar"; readonly width: number; readonly depth: number; readonly edgeRadius: number }
  | { readonly kind: "custom" };

/** A section profile, centred on the member's axis. */
export interface Section {
  /** What it is called on the papers, e.g. `round 48.26 x 3.68`. */
  readonly name: string;
  readonly shape: SectionShape;
  readonly region: Region;
  /** Where the sizes come from: a standard and its table, or `as given`. */
  readonly source: string;
}
