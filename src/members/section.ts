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
  | {
      readonly kind: "angle";
      readonly width: number;
      readonly depth: number;
      readonly thickness: number;
      readonly rootRadius: number;
      readonly toeRadius: number;
    }
  | {
      readonly kind: "channel";
      readonly width: number;
      readonly depth: number;
      readonly web: number;
      readonly flange: number;
      /** Slope of the flanges' insides, degrees, and where from the toe they are `flange` thick; absent when parallel. */
      readonly taper?: number;
      readonly flangeAt?: number;
      readonly rootRadius: number;
      readonly toeRadius: number;
    }
  | { readonly kind: "custom" };

/** A section profile. The member's axis runs through the middle of its box; through the drawing's origin in a custom one. */
export interface Section {
  /** What it is called on the papers, e.g. `round 48.26 x 3.68`. */
  readonly name: string;
  readonly shape: SectionShape;
  readonly region: Region;
  /** Where the sizes come from: a standard and its table, or `as given`. */
  readonly source: string;
}
