/**
 * Handrails and toe boards as a person writes them in the design document.
 *
 * @packageDocumentation
 */
import type { FlangeInput, LengthInput } from "./basic-input.js";

/** How an end of a handrail is finished. */
export interface HandrailEndInput {
  /** Level, in plan: past the top nosing, after the sloped part at the foot, past the far end of a level leg (− short of it). */
  readonly extend?: LengthInput | undefined;
  /** `bottom` of a flight: on at the flight's slope, in plan. Default: one going. */
  readonly slope?: LengthInput | undefined;
  readonly return?: "wall" | "post" | "ground" | undefined;
  /** `wall`: from the handrail's centre to the wall's face. */
  readonly distance?: LengthInput | undefined;
  /** `wall`: default `outside`, past the guard's plane. */
  readonly towards?: "outside" | "inside" | undefined;
  /** Thickness of the plate at the wall or on the ground. */
  readonly endPlate?: LengthInput | undefined;
  readonly plate?: FlangeInput | undefined;
}

/** Brackets under a handrail. */
export interface BracketsInput {
  readonly from: "posts" | "wall";
  /** Name of a round bar or tube. */
  readonly section: string;
  /** Plumb from the handrail's underside to the arm's centreline. */
  readonly drop: LengthInput;
  /** `wall`: from the handrail's centre to the wall's face. */
  readonly wall?: LengthInput | undefined;
  /** `wall`: on which side of the handrail. Default `outside`, towards the guard's plane. */
  readonly side?: "outside" | "inside" | undefined;
  readonly greatest?: LengthInput | undefined;
  readonly ends?: LengthInput | undefined;
  readonly flange?: (FlangeInput & { readonly thickness: LengthInput }) | undefined;
}

/** Figures for a section that a hand can close round, and who gave them. */
export interface GraspableInput {
  readonly perimeterFrom?: LengthInput | undefined;
  readonly perimeterTo?: LengthInput | undefined;
  readonly greatest?: LengthInput | undefined;
  readonly source: string;
}

/** A handrail. */
export interface HandrailInput {
  /** Default `handrail`, later ones `handrail-2`… */
  readonly id?: string | undefined;
  readonly section: string;
  readonly height: LengthInput;
  readonly inward: LengthInput;
  /** Ids of legs that follow one another. Default: all. */
  readonly legs?: readonly string[] | undefined;
  readonly bottom?: HandrailEndInput | undefined;
  readonly top?: HandrailEndInput | undefined;
  readonly brackets?: BracketsInput | undefined;
  readonly graspable?: GraspableInput | undefined;
}

/** Toe boards. */
export interface ToeBoardInput {
  readonly section: string;
  readonly gap: LengthInput;
  readonly face?: "between" | "inside" | undefined;
  /** Ids of level legs. Default: all of them. */
  readonly legs?: readonly string[] | undefined;
}
