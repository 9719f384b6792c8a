/**
 * The cut list as plain data: what the paper and any other reader of it print from.
 *
 * All lengths in millimetres unrounded, angles in degrees from a square cut unless a name says otherwise; ends and
 * faces in the shop's words (`words.ts`).
 *
 * @packageDocumentation
 */
import type { ArrisMark, MeasuredLength, SawSetting } from "../joints/piece.js";
import type { Denominator } from "../kernel/length.js";
import type { PieceState } from "../layout/as-set/piece-state.js";
import type { Section } from "../members/section.js";
import type { MadeAlready } from "./made-already.js";
import type { PlateRow } from "./plate-rows.js";

/** Unit of the primary figure on the paper. */
export type PaperUnit = "in" | "mm";

/** What a cut list needs to know besides the pieces. */
export interface CutListOptions {
  /** Primary unit of the paper. */
  readonly unit: PaperUnit;
  /** Fractions of an inch are printed to the nearest 1/denominator, default 32. Ignored in millimetres. */
  readonly denominator?: Denominator;
  /** Mass of each piece by id, kilograms; group totals are left out when a piece is missing here. */
  readonly masses?: ReadonlyMap<string, number>;
  /** How far each piece has got, from `buildGuard`; pieces that are missing are only designed. */
  readonly states?: readonly PieceState[];
}

/** A saddle onto one round header. */
export interface SaddleRow {
  /** Mark of the header, or the name of what is no piece. */
  readonly onto: string;
  /** Absent when the header is not among the pieces. */
  readonly header?: Section;
  /** Sizes of a round branch and its header, millimetres; absent when either is not round or not among the pieces. */
  readonly sizes?: { readonly od: number; readonly wall: number; readonly headerOd: number };
  /** Between the centrelines. */
  readonly angle: number;
  readonly offset: number;
  readonly gap: number;
  /** Face on the obtuse side (φ = 0) and on the acute side (φ = 180). */
  readonly toe: string;
  readonly heel: string;
  /** Least to greatest ordinate round a round branch, to the outer edge and as the wall lands when cut square through. */
  readonly depth?: { readonly outer: number; readonly effective: number };
}

/** How one end is cut. */
export interface CutEndRow {
  readonly end: 0 | 1;
  /** `DOWNHILL`, `UPHILL`, `FOOT`, `TOP`, `LEFT` or `RIGHT`. */
  readonly name: string;
  readonly kind: "square" | "plane" | "miter" | "cope";
  /** How a flat cut lies in the finished stair; absent where the end is shaped. */
  readonly lies?: "square" | "plumb" | "level" | "sloping";
  /** True angle of a flat cut from square. */
  readonly fromSquare?: number;
  /** Marks, or names of things that are no pieces, the end is cut to. */
  readonly onto: readonly string[];
  readonly saw?: SawSetting;
  /** Of the flat a cope's axis lands on; only the corners beside it are shaped. */
  readonly flatPart?: SawSetting;
  /** The faces that the plus signs of the saw's miter and bevel point at. */
  readonly plus: readonly [string, string];
  /** The face with the long point, and how much longer it is; absent where square or shaped. */
  readonly long?: { readonly face: string; readonly minusShort: number };
  readonly saddles: readonly SaddleRow[];
  readonly arris: readonly ArrisMark[];
  readonly dihedral?: { readonly least: number; readonly greatest: number };
  readonly step: number;
  /** Root gap already taken off at this end, millimetres. */
  readonly gap: number;
}

/** Pieces that are the same to cut. */
export interface CutRow {
  /** Marks of all of them, the first one's numbers are printed. */
  readonly marks: readonly string[];
  readonly ids: readonly string[];
  readonly quantity: number;
  readonly role: string;
  readonly blank: MeasuredLength;
  readonly longPoint: MeasuredLength;
  readonly shortPoint: MeasuredLength;
  readonly squareCut: MeasuredLength;
  /** Along the faces named (`TOP`, `UPHILL`, …) and along the axis. */
  readonly faces: readonly { readonly face: string; readonly length: MeasuredLength }[];
  readonly axis?: MeasuredLength;
  readonly ends: readonly [CutEndRow, CutEndRow];
  /** Marks of the pieces this one is the mirror image of. */
  readonly handOf: readonly string[];
  /** Number of holes. */
  readonly holes: number;
  /** The face that lies up on the bench and the end a tape hooks. */
  readonly faceUp: string;
  readonly hook: string;
  readonly blocked: boolean;
  /** What of them is made already or stands. */
  readonly made: readonly MadeAlready[];
  /** True for members steeper than 60°. */
  readonly steep: boolean;
  /** Two opposite faces for the side view: the first is drawn above. */
  readonly view: readonly [string, string];
  /** Each, kilograms. */
  readonly mass?: number;
}

/** All rows of one section and material. */
export interface CutGroup {
  readonly section: Section;
  readonly material: string;
  readonly rows: readonly CutRow[];
  readonly pieces: number;
  /** Sum of the blanks, kerf not included, millimetres. */
  readonly totalBlank: number;
  /** Longest blank, millimetres. */
  readonly longestBlank: number;
  /** Kilograms, when every piece's mass is known. */
  readonly mass?: number;
}

/** The cut list of a guard. */
export interface CutList {
  readonly unit: PaperUnit;
  readonly denominator: Denominator;
  readonly groups: readonly CutGroup[];
  /** Plates and legs of brackets; they are in no group. */
  readonly plates: readonly PlateRow[];
}
