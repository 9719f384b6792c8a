/**
 * The shop file: what one shop saws, drills, measures and carries with. Written once, used from job to job.
 *
 * `ShopInput` is the document as a person writes it, lengths in its own unit or in tape language; `Shop` is what
 * `parseShop` makes of it: millimetres and degrees, every field filled in. Nothing of it is ever added to a length
 * silently: papers state it beside the length.
 *
 * @packageDocumentation
 */
import type { Section } from "../../members/section.js";
import type { TapeClass } from "../tape.js";
import type { LengthInput } from "./design-input.js";
import type { PaperSize } from "./paper.js";

/** What the finished steel is covered with. */
export type FinishKind = "bare" | "paint" | "zinc" | "powder";

/** Where the weld seam of a rail's tube is turned; `any`: nobody minds. */
export type RailSeam = "top" | "bottom" | "left" | "right" | "any";

/** The same of a post's tube; left and right are seen looking uphill. */
export type PostSeam = "uphill" | "downhill" | "left" | "right" | "any";

/** A piece of stock left over from a job. */
export interface Remnant {
  readonly section: Section;
  /** mm. */
  readonly length: number;
}

/** A square corner that pieces are carried round, mm: the clear widths before and after it, and the clear height. */
export interface PassageTurn {
  readonly from: number;
  readonly to: number;
  /** Absent: unknown, everything is carried level. */
  readonly height?: number;
}

/** The way into the building, mm; what is absent is not asked about. */
export interface Access {
  readonly door?: { readonly width: number; readonly height: number };
  /** A corner between two corridors. */
  readonly corridor?: PassageTurn;
  /** The landing where the way up turns. */
  readonly stair?: PassageTurn;
  /** The longest piece that somebody has found to get up. */
  readonly longest?: number;
}

/** A shop, ready to use: millimetres and degrees. */
export interface Shop {
  readonly version: 1;
  /** Printed on the papers; empty when the shop has no name. */
  readonly name: string;
  /** Of the bare numbers in its document. */
  readonly unit: "in" | "mm";
  /** What one cut takes away, mm. */
  readonly kerf: number;
  /** Root gap of a design that says none, mm. */
  readonly fitGap: number;
  /** How far the saw swings (`miter`) and tilts (`bevel`) either way from a square cut, degrees. */
  readonly saw: { readonly miter: number; readonly bevel: number };
  /** Drills come in multiples of this, mm. */
  readonly drillStep: number;
  /** Lengths that stock is bought in, mm, shortest first. */
  readonly stockLengths: readonly number[];
  readonly remnants: readonly Remnant[];
  readonly tape: TapeClass;
  readonly paper: PaperSize;
  /** Thickness on each surface, mm. */
  readonly finish: { readonly kind: FinishKind; readonly thickness: number };
  /** Diametral clearance of an inner sleeve after finishing, mm. */
  readonly slipFit: number;
  readonly seam: { readonly rails: RailSeam; readonly posts: PostSeam };
  readonly access: Access;
  /** Blocks clamped to the posts that the rail is laid on: width along the guard, mm, default the post's own. */
  readonly stop: { readonly width?: number };
  /** A rail that sags more than this as it lies is to be propped before anything is scribed to it, mm. */
  readonly mostSag: number;
  /** The chuck that has to stand beside a riser or a wall, and the room it wants there, mm. */
  readonly drillChuck: { readonly diameter: number; readonly clearance: number };
}

/** A corner of the way in, in the document. */
export interface PassageTurnInput {
  readonly from: LengthInput;
  readonly to: LengthInput;
  readonly height?: LengthInput | undefined;
}

/** The shop file as a person writes it; every field has a default. */
export interface ShopInput {
  readonly $schema?: string | undefined;
  readonly version?: 1 | undefined;
  readonly name?: string | undefined;
  readonly unit?: "in" | "mm" | undefined;
  readonly kerf?: LengthInput | undefined;
  readonly fitGap?: LengthInput | undefined;
  readonly saw?: { readonly miter?: number | undefined; readonly bevel?: number | undefined } | undefined;
  readonly drillStep?: LengthInput | undefined;
  readonly stockLengths?: readonly LengthInput[] | undefined;
  readonly remnants?: readonly { readonly section: string; readonly length: LengthInput }[] | undefined;
  readonly tape?: TapeClass | undefined;
  readonly paper?: PaperSize | undefined;
  readonly finish?: { readonly kind: FinishKind; readonly thickness?: LengthInput | undefined } | undefined;
  readonly slipFit?: LengthInput | undefined;
  readonly seam?:
    | { readonly rails?: RailSeam | undefined; readonly posts?: PostSeam | undefined }
    | undefined;
  readonly access?:
    | {
        readonly door?: { readonly width: LengthInput; readonly height: LengthInput } | undefined;
        readonly corridor?: PassageTurnInput | undefined;
        readonly stair?: PassageTurnInput | undefined;
        readonly longest?: LengthInput | undefined;
      }
    | undefined;
  readonly stop?: { readonly width?: LengthInput | undefined } | undefined;
  readonly mostSag?: LengthInput | undefined;
  readonly drillChuck?:
    | { readonly diameter?: LengthInput | undefined; readonly clearance?: LengthInput | undefined }
    | undefined;
}

/**
 * Thickness of each finish where the shop file says none, mm on each surface. Zinc: EN ISO 1461, table 3, asks for a mean
 * of at least 0.085 on steel over 6 mm (0.070 from 3, 0.055 from 1.5); paint and powder: common practice, no source.
 */
export const FINISH_MM: Readonly<Record<FinishKind, number>> = {
  bare: 0,
  paint: 0.1,
  zinc: 0.085,
  powder: 0.1,
};

/**
 * The shop of somebody who has written no shop file. All of it is common practice, no source; papers that use it say so.
 *
 * @example DEFAULT_SHOP.kerf; // 3
 */
export const DEFAULT_SHOP: Shop = {
  version: 1,
  name: "",
  unit: "mm",
  kerf: 3,
  fitGap: 0,
  saw: { miter: 45, bevel: 45 },
  drillStep: 0.5,
  stockLengths: [6000],
  remnants: [],
  tape: "II",
  paper: "a4",
  finish: { kind: "bare", thickness: FINISH_MM.bare },
  slipFit: 0.5,
  seam: { rails: "any", posts: "any" },
  access: {},
  stop: {},
  mostSag: 1.5,
  drillChuck: { diameter: 45, clearance: 6 },
};
