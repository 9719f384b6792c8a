/**
 * What fills the space between the rails, read: lengths in millimetres, sections resolved.
 *
 * @packageDocumentation
 */
import type { Section } from "../../members/section.js";

/** Plumb bars in equal spaces, none of them clear by more than `clear`. */
export interface BarsDesign {
  readonly type: "bars";
  readonly section: Section;
  readonly clear: number;
}

/** Bars that run with the rails. */
export interface LinesDesign {
  readonly type: "rails";
  readonly section: Section;
  /** Their number, or the greatest clear space square to them, mm. */
  readonly by:
    | { readonly type: "count"; readonly count: number }
    | { readonly type: "clear"; readonly clear: number };
  /** Round bars through drilled posts: clearance of the holes all round, and how far past the guard's end posts, mm. */
  readonly through?: { readonly clearance: number; readonly past: number };
}

/** A sheet a bay, free all round by `clear`; a hole in each corner, `edge` from both its edges, mm. */
export interface PanelDesign {
  readonly type: "panel";
  readonly thickness: number;
  readonly clear: number;
  readonly holes?: { readonly diameter: number; readonly edge: number };
}

/** Infill between the lowest two rails of a bay, or between all of them. */
export type InfillDesign = { readonly rows: "lowest" | "all" } & (BarsDesign | LinesDesign | PanelDesign);
