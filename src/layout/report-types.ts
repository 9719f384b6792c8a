/**
 * What a layout says about itself: plain data for papers, all lengths in millimetres, angles in degrees.
 *
 * @packageDocumentation
 */
import type { LegDesign } from "./design.js";

/** A nosing under the top rail. */
export interface NosingReport {
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
}

/** One member of the top rail; edges between its cuts, along its length. */
export interface TopRailReport {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  readonly topEdge: number;
  readonly bottomEdge: number;
  /** Farthest point to farthest point along the rail: the shortest square-ended stock. */
  readonly blank: number;
}

/** One post. Heights are plumb; faces at the middle of the face. */
export interface PostReport {
  readonly id: string;
  readonly mark: string;
  readonly along: LegDesign["along"];
  readonly tread?: number;
  /** Of its centre, from the top nosing. */
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
}

/** Two neighbouring posts, centre to centre. */
export interface SpacingReport {
  readonly from: string;
  readonly to: string;
  readonly plan: number;
  /** Along the top edge of the rail: on the stair, along the rake. */
  readonly alongRail: number;
}

/** The whole report. */
export interface LayoutReport {
  readonly job: string;
  readonly unit: "in" | "mm";
  readonly side: "left" | "right";
  readonly pitch: number;
  readonly riser: number;
  readonly going: number;
  readonly slopePerStep: number;
  /** Those under the top rail, lowest first. */
  readonly nosings: readonly NosingReport[];
  /** Least and greatest of their rail heights. */
  readonly heights: { readonly least: NosingReport; readonly greatest: NosingReport } | null;
  readonly breaks: readonly BreakReport[];
  readonly topRails: readonly TopRailReport[];
  readonly posts: readonly PostReport[];
  readonly spacing: readonly SpacingReport[];
  /** The longest piece by blank (top rails) or axis (others): will it go up the stair? */
  readonly longest: { readonly id: string; readonly mark: string; readonly length: number } | null;
  /** What the numbers rest on. */
  readonly assumptions: readonly string[];
}
