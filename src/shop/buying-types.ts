/**
 * What is bought for a guard, as plain data: millimetres, kilograms, unrounded.
 *
 * @packageDocumentation
 */
import type { Section } from "../members/section.js";

/** A section as it is ordered: its name, sizes and where these come from, without the outline. */
export type OrderedSection = Pick<Section, "name" | "shape" | "source">;

/** The fewest lengths of one stock length that can do. Lower bounds: no way to cut needs fewer, a real one may need more. */
export interface StockBound {
  /** mm. */
  readonly stock: number;
  /** Sum of the blanks over the stock length, rounded up. */
  readonly atLeast: number;
  /** The same with one kerf between neighbours on a length: (sum + n·kerf) / (stock + kerf), rounded up. */
  readonly withKerf: number;
  /** True where the longest blank is no longer than the stock. */
  readonly takesLongest: boolean;
}

/** All pieces of one section and material. */
export interface BoughtSection {
  readonly section: OrderedSection;
  readonly material: string;
  readonly pieces: number;
  /** Sum of the blanks, mm; no kerf and no drop in it. */
  readonly total: number;
  readonly longest: { readonly mark: string; readonly length: number };
  /** kg/m of this section in its material. */
  readonly massPerMetre: number;
  /** Kilograms of the blanks, before the ends are shaped. */
  readonly blankMass: number;
  /** Kilograms of the finished pieces; absent when a piece's mass is not known. */
  readonly mass?: number;
  /** One for each stock length of the shop; empty without a shop. */
  readonly stock: readonly StockBound[];
  /** Lengths on hand of this section, mm, longest first; not taken off anything. */
  readonly remnants: readonly number[];
}

/** Plates of one size, whatever holes they get. */
export interface BoughtPlate {
  /** Over all, the longer side first, mm. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  readonly material: string;
  readonly quantity: number;
  /** Marks of them. */
  readonly marks: readonly string[];
  /** Kilograms of all, finished; absent when one is not known. */
  readonly mass?: number;
}

/** Fasteners through holes of one diameter. */
export interface BoughtFastener {
  /** Of the hole, mm; the fastener is thinner. */
  readonly hole: number;
  readonly count: number;
}

/** The buying list. */
export interface BuyingList {
  readonly sections: readonly BoughtSection[];
  readonly plates: readonly BoughtPlate[];
  readonly fasteners: readonly BoughtFastener[];
  /** Holes in plates that are not round: none of them is counted. */
  readonly otherHoles: number;
  /** What one cut takes away, mm; in no sum. Absent without a shop. */
  readonly kerf?: number;
  /** Kilograms of all finished pieces and plates; absent when one is not known. */
  readonly mass?: number;
  /** Marks of blocked pieces: nothing is bought for them. */
  readonly blocked: readonly string[];
}

/** What a buying list may know besides the pieces. */
export interface BuyingOptions {
  /** Stock lengths, kerf and remnants; without it nothing is said of stock. */
  readonly shop?: {
    readonly kerf: number;
    readonly stockLengths: readonly number[];
    readonly remnants: readonly { readonly section: Section; readonly length: number }[];
  };
  /** Ids of plates whose holes take no fastener of their own: the mate's hole counts it already. Default none. */
  readonly sharedHoles?: readonly string[];
}
