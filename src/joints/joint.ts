/**
 * Joints as they are asked for: which end is cut, to what.
 *
 * Joints not asked for follow from the roles of the members that meet (see `solve`): a post that ends on a rail is coped
 * or cut to it, a rail that ends on a post that goes on is cut to the post, two rails that end together are mitred.
 *
 * @packageDocumentation
 */
import type { Vec3 } from "../kernel/vec.js";

/** One end of a member: 0 at `from`, 1 at `to`. */
export interface MemberEnd {
  readonly member: string;
  readonly end: 0 | 1;
}

/** Two ends cut to one common plane, so that their outsides meet. */
export interface MiterJoint {
  readonly kind: "miter";
  readonly id: string;
  readonly ends: readonly [MemberEnd, MemberEnd];
}

/** An end cut to the outer skin of one member, or of two members that are mitred there. */
export interface CopeJoint {
  readonly kind: "cope";
  readonly id: string;
  readonly end: MemberEnd;
  /** The header or headers. */
  readonly onto: readonly string[];
  /** Root gap, millimetres, ≥ 0. Default: the rules' gap. */
  readonly gap?: number;
  /** What closes a branch wider than its header. Default `refuse`: a diagnostic. */
  readonly shoulder?: "refuse" | "midline";
}

/** The direction of a flat cut. */
export type CutDirection =
  /** Square to the member. */
  | { readonly type: "square" }
  /** Plumb, square to the member in plan. */
  | { readonly type: "plumb" }
  /** Level. */
  | { readonly type: "level" }
  /** Along a plane with this normal. */
  | { readonly type: "plane"; readonly normal: Vec3 }
  /** Along the flat face of the plate that `onto` names, the one on the member's side of it. */
  | { readonly type: "face" };

/** An end cut flat, through the member's end point or a stated one. */
export interface CutJoint {
  readonly kind: "cut";
  readonly id: string;
  readonly end: MemberEnd;
  readonly cut: CutDirection;
  /** A point of the cut, layout millimetres. Default: the member's own end. */
  readonly at?: Vec3;
  /** What it is cut to: the id of a plate, or words such as `end plate`. */
  readonly onto?: string;
}

/** A round hole drilled straight through a member. */
export interface BoreJoint {
  readonly kind: "bore";
  readonly id: string;
  readonly member: string;
  /** A point on the hole's axis and its direction, in the layout. */
  readonly at: Vec3;
  readonly direction: Vec3;
  /** Diameter, millimetres. */
  readonly diameter: number;
  readonly through: "first" | "both";
}

/**
 * A round bar that runs right through a member: the member is drilled along the bar's axis, the bar is not cut there.
 */
export interface ThroughJoint {
  readonly kind: "through";
  readonly id: string;
  readonly bar: string;
  readonly member: string;
  /** All round, millimetres, ≥ 0: the hole is wider than the bar by twice this. */
  readonly clearance: number;
}

/** Any joint that can be asked for. */
export type Joint = MiterJoint | CopeJoint | CutJoint | BoreJoint | ThroughJoint;

/** What the solver may assume where nothing is asked for. */
export interface JointRules {
  /** Ends nearer than this share a node; an end nearer than this to a centreline stands on it. Millimetres, default 0.1. */
  readonly nodeTolerance?: number;
  /** Root gap of every cope and cut to a skin, millimetres, default 0. */
  readonly gap?: number;
  /**
   * How far a guard's last rail goes on past the far face of its last post, square to the post, millimetres, ≥ 0,
   * default 0 (flush). For a rail that ends where a post's top ends; a rail drawn longer ends where it is drawn.
   */
  readonly overhang?: number;
}
