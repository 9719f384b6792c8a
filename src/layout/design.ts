/**
 * A design that has been read: lengths in millimetres, sections resolved, defaults filled in, order and names checked.
 *
 * Plain data. The legs and posts keep the document's order, so a path into the document finds them here.
 *
 * @packageDocumentation
 */
import type { Section } from "../members/section.js";
import type { CountedStair } from "./nosing-line.js";

/** A rail. */
export interface RailDesign {
  readonly id: string;
  readonly role: "top" | "lower";
  readonly section: Section;
}

/** A post, where the document puts it. */
export type PostDesign =
  | {
      readonly on: "tread";
      readonly tread: number;
      readonly behindNosing: number;
      readonly id?: string;
      readonly section?: Section;
    }
  | { readonly on: "station"; readonly at: number; readonly id?: string; readonly section?: Section };

/** How the far end of a level leg is finished, mm. */
export type EndDesign =
  | { readonly type: "wall"; readonly endPlate: number }
  | { readonly type: "free"; readonly overhang: number };

/** One leg. */
export interface LegDesign {
  readonly along: "floor" | "stair" | "landing";
  /** Plumb to the top of the top rail, mm. */
  readonly top: number;
  /** Plumb to the underside of a lower rail, mm, by rail id. */
  readonly undersides: Readonly<Record<string, number>>;
  /** In the document's order. */
  readonly posts: readonly PostDesign[];
  /** Level legs only: from the nosing where the leg starts to its far end, mm. */
  readonly length?: number;
  /** Level legs only. */
  readonly end?: EndDesign;
}

/** A stair and its guard, ready to lay out. */
export interface Design {
  readonly version: 1;
  readonly job: string;
  /** The unit its papers are printed in. */
  readonly unit: "in" | "mm";
  /** The open side, looking up the stair. */
  readonly side: "left" | "right";
  readonly material: string;
  /** Root gap of every cope, mm. */
  readonly gap: number;
  readonly stair: CountedStair & { readonly overhang: number };
  /** The top rail first, then the lower ones in the document's order. */
  readonly rails: readonly RailDesign[];
  readonly posts: { readonly section: Section };
  readonly endPosts?: { readonly section: Section; readonly marks: readonly string[] };
  /** Base plate, mm; `along` and `across` are absent where it is no larger than the post. */
  readonly foot: { readonly thickness: number; readonly along?: number; readonly across?: number };
  readonly legs: readonly LegDesign[];
}
