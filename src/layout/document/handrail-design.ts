/**
 * Handrails and toe boards as they have been read: lengths in millimetres, sections resolved, legs by index.
 *
 * @packageDocumentation
 */
import type { Section } from "../../members/section.js";
import type { FlangeDesign } from "./foot-design.js";

/** A plate at a wall or on the ground: how thick, how large. */
export interface HandrailFlange {
  readonly thickness: number;
  readonly plate: FlangeDesign;
}

/** How a handrail is turned away at its end. */
export type HandrailReturn =
  | {
      readonly to: "wall";
      /** From the handrail's centre to the wall's face. */
      readonly distance: number;
      /** `outside`: past the guard's plane; `inside`: away from it. */
      readonly towards: "outside" | "inside";
      readonly flange?: HandrailFlange;
    }
  | { readonly to: "post" }
  | { readonly to: "ground"; readonly flange?: HandrailFlange };

/** One end of a handrail. */
export interface HandrailEnd {
  /** Level part, in plan; of a level leg, past its far end (− short of it). */
  readonly extend: number;
  /** At the foot of a flight: how far it goes on at the flight's slope, in plan; absent: one going. */
  readonly slope?: number;
  readonly back?: HandrailReturn;
}

/** Brackets under a handrail: a level arm and a plumb stem of one round section. */
export type BracketDesign = {
  readonly section: Section;
  /** Plumb from the handrail's underside to the arm's centreline. */
  readonly drop: number;
} & (
  | { readonly from: "posts" }
  | {
      readonly from: "wall";
      /** From the handrail's centre to the wall's face, and on which side of the handrail. */
      readonly wall: number;
      readonly side: "outside" | "inside";
      /** Greatest space between two, in plan. */
      readonly greatest: number;
      /** From an end of the handrail, or a plan corner, to the first bracket, in plan. */
      readonly ends: number;
      readonly flange?: HandrailFlange;
    }
);

/** Figures someone gave for a section that a hand can close round. */
export interface GraspDesign {
  readonly perimeterFrom?: number;
  readonly perimeterTo?: number;
  /** Of the section, corner to corner. */
  readonly greatest?: number;
  readonly source: string;
}

/** A handrail. */
export interface HandrailDesign {
  readonly id: string;
  readonly section: Section;
  /** Plumb from the nosing line, landing or floor to its top. */
  readonly height: number;
  /** From the guard's middle plane to its centre, towards the walking side. */
  readonly inward: number;
  /** First and last leg, as indices. */
  readonly legs: readonly [number, number];
  /** Absent on a flight: cut plumb over its last nosing. */
  readonly bottom?: HandrailEnd;
  readonly top?: HandrailEnd;
  readonly brackets?: BracketDesign;
  readonly graspable?: GraspDesign;
}

/** A flat along the floor between the posts, or in front of them. */
export interface ToeBoardDesign {
  readonly section: Section;
  /** From the floor to its underside, plumb. */
  readonly gap: number;
  readonly face: "between" | "inside";
  /** Indices of level legs. */
  readonly legs: readonly number[];
}
