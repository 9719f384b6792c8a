/**
 * A design that has been read: lengths in millimetres, sections resolved, defaults filled in, order and names checked.
 *
 * Plain data. The legs and posts keep the document's order, so a path into the document finds them here.
 *
 * @packageDocumentation
 */
import type { Section } from "../../members/section.js";
import type { StairSteps } from "../site/nosing-line.js";
import type { Adjustment } from "../survey/adjustment.js";
import type { HeightBand } from "../survey/rail-band.js";
import type { SurveyTerms } from "../survey/survey-terms.js";
import type { FlangeDesign, FootDesign } from "./foot-design.js";
import type { HandrailDesign, ToeBoardDesign } from "./handrail-design.js";
import type { InfillDesign } from "./infill-design.js";

export type { FlangeDesign } from "./foot-design.js";

/** A rail. A `cap` lies on the top rail all along it; `top` heights are then to the top of the cap. */
export interface RailDesign {
  readonly id: string;
  readonly role: "top" | "cap" | "lower";
  readonly section: Section;
}

/** What a post has of its own wherever it stands. */
interface OwnPost {
  readonly id?: string;
  readonly section?: Section;
  readonly foot?: FootDesign;
}

/** A post, where the document puts it. */
export type PostDesign = OwnPost &
  (
    | { readonly on: "tread"; readonly tread: number; readonly behindNosing: number }
    | { readonly on: "station"; readonly at: number }
  );

/** Posts in equal spaces over a leg, from its first to its last station. */
export interface SpacedPosts {
  readonly from: number;
  readonly to: number;
  /** Either the number of spaces, or the greatest space allowed, mm, in plan or along the rail. */
  readonly by:
    | { readonly type: "count"; readonly spaces: number }
    | { readonly type: "greatest"; readonly space: number; readonly along: "plan" | "rake" };
}

/** How one end of the guard's top rail is finished, mm. */
export type EndDesign =
  /** Against a wall, an end plate between. */
  | { readonly type: "wall"; readonly endPlate: number; readonly plate: FlangeDesign }
  /** Past the outer face of the last post; `cap` closes the tube, which is then cut square. */
  | { readonly type: "free"; readonly overhang: number; readonly cap: number }
  /** Past the last post's face to a plumb piece, down, and level back to the post or on to a flange on the ground. */
  | {
      readonly type: "return";
      readonly to: "post" | "ground";
      /** To the plumb piece's centreline. */
      readonly overhang: number;
      /** Between centrelines; `post` only. */
      readonly down: number;
      /** Thickness of the flange; `ground` only. */
      readonly endPlate: number;
      readonly plate: FlangeDesign;
    };

/** How the top rail gets from one slope to the next. */
export interface BreakDesign {
  readonly type: "meet" | "drop" | "compromise" | "riser";
  /** `drop`: where the plumb leg stands, from where equal heights would break, + uphill, mm. */
  readonly at: number;
}

/** A plan turn before a leg. */
export interface TurnDesign {
  /** Degrees, + to the left as one walks up. */
  readonly angle: number;
  readonly corner: "post" | "level" | "round" | "twist";
  /** From the top nosing below to the corner, along the guard, mm. */
  readonly past: number;
  /** From the corner to the lowest nosing of the flight above, mm. */
  readonly before: number;
  /** `post` corners. */
  readonly post?: OwnPost & { readonly above: number; readonly cap: number };
}

/** One leg. */
export interface LegDesign {
  /** `stair`, `landing`, `floor`; later ones of a kind `stair-2`…; or its own. */
  readonly id: string;
  readonly along: "floor" | "stair" | "landing";
  /** Plumb to the top of the top rail, mm. */
  readonly top: number;
  /** Plumb to the underside of a lower rail, mm, by rail id. */
  readonly undersides: Readonly<Record<string, number>>;
  /** In the document's order. */
  readonly posts: readonly PostDesign[];
  readonly spaced?: SpacedPosts;
  /** Stair legs only. */
  readonly stair?: StairDesign;
  /** Stair legs only: limits of the top rail's height over every nosing, plumb, mm. */
  readonly heights?: HeightBand;
  /** Level legs only: from where the leg starts to its far end, mm. */
  readonly length?: number;
  /** Level legs only: degrees, + rising as one walks up the guard. */
  readonly slope: number;
  readonly break: BreakDesign;
  readonly turn?: TurnDesign;
  /** Of the guard's first leg at its lower end, of the last at its upper end. */
  readonly start?: EndDesign;
  readonly end?: EndDesign;
  readonly foot?: FootDesign;
  /** Instead of the design's. */
  readonly infill?: InfillDesign | "none";
}

/** The steps of one flight. */
export type StairDesign = StairSteps & { readonly overhang: number };

/** A length (mm) or a turn (degrees) of a leg that a survey in plan says, with its standard uncertainty. */
export interface PlanTaken {
  /** Leg id. */
  readonly leg: string;
  readonly what: "length" | "turn";
  readonly corners: readonly string[];
  readonly value: number;
  readonly sigma: number;
}

/** What was taped of floors and landings in plan, and what of it the guard is built to. */
export interface PlanDesign {
  readonly survey: Adjustment;
  readonly terms: SurveyTerms;
  readonly taken: readonly PlanTaken[];
}

/** A splice of a top rail: square cuts, a sleeve inside. */
export interface SpliceDesign {
  /** Leg id. */
  readonly leg: string;
  /** From the leg's start (a stair: its lowest nosing; a floor: the nosing), in plan, mm. */
  readonly at: number;
  readonly sleeve: Section;
  /** Each side of the joint, mm. */
  readonly reach: number;
}

/** A stair and its guard, ready to lay out. */
export interface Design {
  readonly version: 1;
  readonly job: string;
  /** The unit its papers are printed in. */
  readonly unit: "in" | "mm";
  /** The open side, looking up the stair; `both`: this guard on the left and its mirror image on the right. */
  readonly side: "left" | "right" | "both";
  readonly material: string;
  /** Root gap of every cope, mm. */
  readonly gap: number;
  /** The first flight. */
  readonly stair: StairDesign;
  /** Where a survey in plan could be adjusted. */
  readonly plan?: PlanDesign;
  /** Stair's edge to the guard's plumb plane, mm; absent when not told. */
  readonly inset?: number;
  /** Edge to edge of the stair, mm; needed for `both`. */
  readonly width?: number;
  /** The top rail first, then the lower ones in the document's order. */
  readonly rails: readonly RailDesign[];
  readonly posts: { readonly section: Section };
  readonly endPosts?: { readonly section: Section; readonly marks: readonly string[] };
  readonly foot: FootDesign;
  readonly infill?: InfillDesign;
  readonly splices: readonly SpliceDesign[];
  /** Where the guard comes apart for carrying, besides its splices. */
  readonly fieldJoints: readonly ("corners" | "breaks")[];
  readonly handrails: readonly HandrailDesign[];
  readonly toeBoard?: ToeBoardDesign;
  readonly legs: readonly LegDesign[];
}
