/**
 * Pieces: what the shop makes. One per member; small plain data, no mesh and no solid in it.
 *
 * `solidOf(piece)` makes the exact solid in the piece's own frame, `massOf(piece)` its mass properties.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import type { EndExpression } from "../kernel/end.js";
import type { Frame } from "../kernel/frame.js";
import type { Vec3 } from "../kernel/vec.js";
import type { Role } from "../members/member.js";
import type { Section } from "../members/section.js";

/** A point a tape can be held to, by name and in the piece's own frame. */
export interface NamedPoint {
  /** In words, e.g. `long point, top, at the uphill end`. */
  readonly name: string;
  readonly point: Vec3;
}

/** A length and the two points it runs between. Never one without the other. */
export interface MeasuredLength {
  /** Millimetres along the piece's axis. */
  readonly value: number;
  readonly from: NamedPoint;
  readonly to: NamedPoint;
}

/** The lengths of a piece, all along its axis. */
export interface PieceLengths {
  /** The shortest square-ended stock the piece can be cut from: farthest point to farthest point. */
  readonly blank: MeasuredLength;
  /** The longest line along one fibre of the surface. */
  readonly longPoint: MeasuredLength;
  /** The shortest line along one fibre of the surface. */
  readonly shortPoint: MeasuredLength;
  /** Farthest point to farthest point when the wall is cut square through (grinder, saw): the inside edge lands first. */
  readonly squareCut: MeasuredLength;
  /** Along the top and the bottom of the section (the outermost fibres in ±v), where the piece has them. */
  readonly top?: MeasuredLength;
  readonly bottom?: MeasuredLength;
  /** Along the axis itself. */
  readonly axis?: MeasuredLength;
}

/** Saw settings of a flat cut, degrees. */
export interface SawSetting {
  /** From a square cut, turning about the section's up; + when the long point is on the left. */
  readonly miter: number;
  /** Blade tilt from upright; + when the long point is on top. */
  readonly bevel: number;
  /** True angle from square. */
  readonly fromSquare: number;
  /** The same cut measured from the tube's length: 90 − fromSquare. */
  readonly fromLength: number;
  /** Roll of the tube at which a plain saw makes the cut at `fromSquare`: direction of the long point round the section, from left towards up. */
  readonly clock: number;
}

/** How far a named corner or crown of the section is past the axis point, outwards, millimetres. */
export interface ArrisMark {
  readonly name: string;
  readonly offset: number;
}

/** The numbers of a cope on a round header; angles round the tube as the joints room fixes them. */
export interface CopeNumbers {
  /** Id of the header. */
  readonly onto: string;
  /** Between the centrelines, 0 to 90. */
  readonly angle: number;
  /** Of the branch's axis from the header's axis, millimetres, signed. */
  readonly offset: number;
  readonly gap: number;
  /** Direction of the toe (φ = 0) in the piece's frame, unit. */
  readonly toe: Vec3;
}

/** One end as it is cut. */
export interface EndCut {
  readonly end: 0 | 1;
  /** `square`: at right angles; `plane`: one flat cut; `miter`: one flat cut shared with a mate; `cope`: shaped to a skin. */
  readonly kind: "square" | "plane" | "miter" | "cope";
  /** Id of the joint, or `rule:` and the name of the rule that decided. */
  readonly joint: string;
  /** What it is cut to: member ids or a name. */
  readonly onto: readonly string[];
  /** For flat cuts. */
  readonly saw?: SawSetting;
  /** For a cope whose axis lands on a flat of the header: the saw setting of that flat; only the corners are shaped. */
  readonly flatPart?: SawSetting;
  /** Corners or crowns of the section, outwards from the axis point of the cut. */
  readonly arris: readonly ArrisMark[];
  /** For each round header of a cope. */
  readonly cope: readonly CopeNumbers[];
  /** Range of the angle between the piece's surface and the mate's along the joint, degrees; absent for a free end. */
  readonly dihedral?: { readonly least: number; readonly greatest: number };
  /** How far the sections miss each other at a mitre (step), or the branch misses its header; zero is a full fit. Millimetres. */
  readonly fit: { readonly step: number; readonly gap: number };
}

/** Where a bore opens on the outside of a piece: the place its axis is marked at, and how it is drilled from there. */
export interface BoreMark {
  /** Side of the section by its own name, e.g. `+u`, `corner`, `wall`. */
  readonly side: string;
  /** The same in the layout's words, e.g. `UPHILL`. */
  readonly face: string;
  /** Along the piece, from the farthest point of the end the tape hooks; + away from it. */
  readonly distance: MeasuredLength;
  /** From the middle of a flat face or corner, along the outline; `towards` a face, empty in the middle. Not on round sections. */
  readonly offset?: { readonly value: number; readonly towards: string };
  /** Round sections: direction round the tube, from the section's left (u) towards up (v), 0 to below 360. */
  readonly angle?: number;
  /** Between the drill and the square to the face, degrees; 0 is drilled square. */
  readonly fromSquare: number;
  /** The part of it along the piece: + when the drill, going in, leans away from the hooked end. */
  readonly along: number;
  /** The part of it across the piece, ≥ 0; `towards` the face it leans to going in, empty when it does not. */
  readonly across: { readonly value: number; readonly towards: string };
}

/** A bore of a piece with its marks: one for each face it opens on, in the order the bore goes through them. */
export interface PieceBore extends Bore {
  readonly marks: readonly BoreMark[];
}

/** Where a piece lies on the bench. */
export interface ShopPose {
  /** The side that faces up when the marks are made, by the section's own name. */
  readonly faceUp: string;
  /** Layout direction of that side. */
  readonly towards: Vec3;
}

/** A piece of the guard. */
export interface Piece {
  /** Stable: the member's id. */
  readonly id: string;
  readonly mark: string;
  readonly kind: "member" | "plate" | "bracket";
  readonly role: Role;
  readonly section: Section;
  readonly material: string;
  /** Piece → layout: origin at the member's `from`, z along it; of a piece with something made, where that is (see `held`). */
  readonly frame: Frame;
  /** Degrees from the layout's X, + to the left: the way its words call uphill. Absent: 0. */
  readonly heading?: number;
  /** In the piece's frame. */
  readonly ends: readonly [EndExpression, EndExpression];
  readonly bores: readonly PieceBore[];
  readonly cuts: readonly [EndCut, EndCut];
  readonly lengths: PieceLengths;
  readonly shopPose: ShopPose;
  /** The physical end a tape hooks. */
  readonly hook: { readonly end: 0 | 1; readonly name: string };
  /** Ids of the members whose place or section this piece's cuts follow. */
  readonly dependsOn: readonly string[];
  /** `blocked`: an error keeps it from being cut; its diagnostics say why. */
  readonly status: "ok" | "blocked";
  /** Pieces that are the same to cut share it (within a tolerance, modulo reversal and the section's symmetry). */
  readonly identity: string;
  /** Identity of the piece this one is the mirror image of, when the model has it. */
  readonly handOf?: string;
}

/** Two neighbours at a joint. */
export interface Contact {
  /** The piece that yields, and the end of it. */
  readonly piece: string;
  readonly end: 0 | 1;
  /** The piece it is cut to. */
  readonly onto: string;
  readonly joint: string;
  /**
   * What of the mate the cut meets. `cope`: its skin; `miter`: the plane both are cut to; `seat`: a flat of it, side or end;
   * `flush`: nothing, the cut is flush with the mate's far side.
   */
  readonly kind: "cope" | "miter" | "seat" | "flush";
  /** Root gap asked for, millimetres; how it fits in fact is `fitOf`'s to say. */
  readonly gap: number;
}
