/**
 * What a layout says about itself: plain data for papers, all lengths in millimetres, angles in degrees.
 *
 * @packageDocumentation
 */

import type { PostStage } from "./as-set/as-set.js";
import type { BreakDesign, LegDesign, PlanTaken, TurnDesign } from "./document/design.js";
import type { HoleRoom } from "./posts/foot-holes.js";
import type { LaidRailReport } from "./stops.js";

/** One flight. */
export interface FlightReport {
  /** Id of its leg. */
  readonly leg: string;
  readonly pitch: number;
  readonly riser: number;
  readonly going: number;
  readonly slopePerStep: number;
  /** True where the nosings were taped one by one, or surveyed; `worstMiss` is then how far the worst one is from the line. */
  readonly measured: boolean;
  readonly worstMiss: number;
  /** Plumb from the line up to each nosing, lowest first, + proud of it; all 0 where the steps were counted. */
  readonly misses: readonly number[];
  /** Where a survey says where the nosings are. */
  readonly survey?: FlightSurveyReport;
}

/** What a survey that figures rest on says of itself. */
export interface SurveyFacts {
  readonly date?: string;
  /** Readings that count. */
  readonly readings: number;
  /** Ids of those that do not. */
  readonly leftOut: readonly string[];
  /** Sum of (residual / σ)², and readings less unknowns. */
  readonly chi2: number;
  readonly dof: number;
  /** The reading that fits worst, with those it cannot be told apart from; null when nothing is checked. */
  readonly worst: { readonly ids: readonly string[]; readonly studentised: number } | null;
  /** Studentised residual from which on a reading is suspect. */
  readonly limit: number;
  /** How many are, with those that cannot be told apart counted once. */
  readonly suspects: number;
}

/** The survey of a flight. */
export interface FlightSurveyReport extends SurveyFacts {
  /** The line over the nosings. */
  readonly fit: "least-miss" | "least-squares";
  /** From the lowest to the top nosing along the slope, with its standard uncertainty. */
  readonly slope: { readonly value: number; readonly sigma: number };
}

/** The survey in plan, and what the guard takes from it. */
export interface PlanSurveyReport extends SurveyFacts {
  readonly taken: readonly PlanTaken[];
}

/** A nosing under the top rail. */
export interface NosingReport {
  readonly leg: string;
  readonly number: number;
  readonly x: number;
  readonly z: number;
  /** Plumb from the nosing to the top of the rail. */
  readonly railTop: number;
}

/** A break of the top rail. */
export interface BreakReport {
  /** Ids of the two members, lower first. */
  readonly between: readonly [string, string];
  /** x in the layout frame of the break of each line; the hand feels the top edge. */
  readonly topEdge: number;
  readonly midDepth: number;
  readonly underside: number;
  /** Top-edge break from where equal heights would put it (top nosing, or foot of the nosing line), + uphill. */
  readonly fromNosing: number;
  readonly heightRake: number;
  readonly heightLevel: number;
  /** Of either cut, from square. */
  readonly miter: number;
  /** Plumb leg between centrelines that would hold the break at that place: level less rake height. */
  readonly legToHold: number;
  readonly type: BreakDesign["type"];
  /** Where a plumb leg holds the break: its length between centrelines (− down), and its shortest edge. */
  readonly leg?: {
    readonly length: number;
    readonly shortEdge: number;
    readonly miters: readonly [number, number];
  };
}

/** A plan corner. Heights are plumb above the ground at the corner, to the top edge. */
export interface CornerReport {
  readonly kind: TurnDesign["corner"];
  /** Along the guard. */
  readonly x: number;
  /** Degrees, + to the left. */
  readonly turn: number;
  readonly heightBefore: number;
  readonly heightAfter: number;
  /** Of plumb-sided tube that turns there directly, degrees. */
  readonly twist: number;
  /** Of the level piece beside the corner, where there is one. */
  readonly shortestEdge?: number;
}

/** One member of the top rail; edges between its cuts, along its length. */
export interface TopRailReport {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  /** Along the middle of the rail's top and bottom. */
  readonly topEdge: number;
  readonly bottomEdge: number;
  /** Farthest point to farthest point along the rail: the shortest square-ended stock. */
  readonly blank: number;
}

/** How a post stands that was measured, and where it was designed. */
export interface AsSetReport {
  readonly stage: PostStage;
  /** Degrees from plumb, + uphill; across, + to the left. */
  readonly lean: number;
  readonly leanAcross: number;
  /** Of its centre from the guard's middle plane at its foot, + to the left. */
  readonly across: number;
  readonly designed: { readonly x: number; readonly offset: number; readonly baseZ: number };
}

/** One post. Heights are plumb; faces at the middle of the face. */
export interface PostReport {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  readonly leg: string;
  readonly tread?: number;
  /** Which corner it stands at, 1 the first; heights are then of the rail before it. */
  readonly corner?: number;
  /** Of its centre along the guard, from the top nosing of the last flight. */
  readonly x: number;
  /** From the start of a level leg, or behind the nosing of its tread. */
  readonly offset: number;
  /** Of the tread, landing or floor. */
  readonly baseZ: number;
  readonly railTopAboveBase: number;
  readonly railUndersideAboveBase: number;
  /** From the top of the plate to the rail's underside at the post's axis and at the middle of its two faces. */
  readonly atAxis: number;
  readonly uphillFace: number;
  readonly downhillFace: number;
  /** Of the base plate's holes, where it has them. */
  readonly holes?: HoleRoom;
  /** Where it was measured: `x`, `offset` and `baseZ` are then as set. */
  readonly asSet?: AsSetReport;
}

/** Past the last nosing of a handrail's leg, in plan; 0 on a level leg. */
export interface ExtensionReport {
  /** Where the handrail ends, along the guard. */
  readonly x: number;
  readonly sloped: number;
  readonly level: number;
  /** The sloped part, along the rake. */
  readonly alongRake: number;
}

/** A bracket of a handrail. */
export interface BracketReport {
  readonly mark: string;
  /** Along the guard. */
  readonly x: number;
  /** Mark of the post it stands from; absent at a wall. */
  readonly post?: string;
  /** Plumb from the top of the arm to the handrail's underside. */
  readonly clear: number;
}

/** A handrail. */
export interface HandrailReport {
  readonly id: string;
  readonly section: string;
  /** Plumb to its top, and its centre from the guard's middle plane. */
  readonly height: number;
  readonly inward: number;
  readonly legs: readonly string[];
  /** Those under it; `railTop` is plumb to its top. */
  readonly nosings: readonly NosingReport[];
  readonly heights: { readonly least: NosingReport; readonly greatest: NosingReport } | null;
  readonly bottom: ExtensionReport;
  readonly top: ExtensionReport;
  /** From the foot: between their points, and their shortest edges. */
  readonly pieces: readonly {
    readonly id: string;
    readonly mark: string;
    readonly length: number;
    readonly shortestEdge: number;
  }[];
  readonly brackets: readonly BracketReport[];
  /** Of the section's outline, and its greatest size. */
  readonly perimeter: number;
  readonly greatest: number;
}

/** Two neighbouring posts, centre to centre. */
export interface SpacingReport {
  readonly from: string;
  readonly to: string;
  readonly plan: number;
  /** Along the top edge of the rail: on the stair, along the rake. */
  readonly alongRail: number;
}

/** What fills one bay, or one row of it. */
export interface InfillReport {
  readonly type: "bars" | "rails" | "panel";
  /** Marks of its posts. */
  readonly from: string;
  readonly to: string;
  /** 1 is between the lowest two rails. */
  readonly row: number;
  /** Of bars, or of sheets. */
  readonly count: number;
  /** The greatest clear space the design asks for; absent where it gives a number of bars. */
  readonly asked?: number;
  /** The greatest clear space in fact: plumb bars level, from face to face; bars along the rails square to them; panels all round. */
  readonly clear: number;
  /** Centre to centre: plumb bars level, bars along the rails plumb (the greatest, where they break). */
  readonly pitch?: number;
}

/** The whole report. */
export interface LayoutReport {
  readonly job: string;
  readonly unit: "in" | "mm";
  readonly side: "left" | "right" | "both";
  /** Of the last flight, like the next three. */
  readonly pitch: number;
  readonly riser: number;
  readonly going: number;
  readonly slopePerStep: number;
  readonly flights: readonly FlightReport[];
  /** Where floors and landings were surveyed in plan. */
  readonly plan?: PlanSurveyReport;
  /** Those under the top rail, lowest first. */
  readonly nosings: readonly NosingReport[];
  /** Least and greatest of their rail heights. */
  readonly heights: { readonly least: NosingReport; readonly greatest: NosingReport } | null;
  readonly breaks: readonly BreakReport[];
  readonly corners: readonly CornerReport[];
  readonly topRails: readonly TopRailReport[];
  readonly posts: readonly PostReport[];
  readonly spacing: readonly SpacingReport[];
  /** Top rails on the stops they are laid on. */
  readonly laid: readonly LaidRailReport[];
  readonly handrails: readonly HandrailReport[];
  readonly infill: readonly InfillReport[];
  /** The longest piece by blank (top rails) or axis (others): will it go up the stair? */
  readonly longest: { readonly id: string; readonly mark: string; readonly length: number } | null;
  /** What the numbers rest on. */
  readonly assumptions: readonly string[];
}
