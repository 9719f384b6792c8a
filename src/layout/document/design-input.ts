/**
 * The design document as a person writes it, in the document's own unit.
 *
 * Lengths are numbers in `unit` or tape strings (`"37 1/2"`, `"952 mm"`). `parseDesign` turns it into a `Design`.
 *
 * @packageDocumentation
 */

import type { FlangeInput, HolesInput, LengthInput } from "./basic-input.js";
import type { HandrailInput, ToeBoardInput } from "./handrail-input.js";
import type { InfillInput } from "./infill-input.js";
import type { PlanSurveyInput, StairSurveyInput, SurveyedLength, SurveyedTurn } from "./survey-input.js";

export type { FlangeInput, HolesInput, LengthInput } from "./basic-input.js";

/** What any post may have of its own. */
interface OwnPostInput {
  /** Pins the mark. */
  readonly id?: string | undefined;
  /** Name of a section; the rule for posts when absent. */
  readonly section?: string | undefined;
  /** Instead of the leg's or the design's. */
  readonly foot?: FootInput | undefined;
}

/** A post on a tread: the tread's number (1 is the lowest), or more. */
export type TreadPostInput =
  | number
  | (OwnPostInput & {
      readonly tread: number;
      /** Post centre past this tread's nosing; the leg's `behindNosing` when absent. */
      readonly behindNosing?: LengthInput | undefined;
    });

/** A post at a station: the station, or more. */
export type StationPostInput = LengthInput | (OwnPostInput & { readonly at: LengthInput });

/** Posts in equal spaces, both ends included. */
export interface SpacingInput {
  /** Stations of the first and the last post. */
  readonly from: LengthInput;
  readonly to: LengthInput;
  /** The greatest space allowed; or `spaces`. */
  readonly greatest?: LengthInput | undefined;
  /** How `greatest` is measured. Default `plan`. */
  readonly along?: "plan" | "rake" | undefined;
  readonly spaces?: number | undefined;
}

/** The posts of a level leg, from where it starts. */
export interface LevelPostsInput {
  readonly at?: readonly StationPostInput[] | undefined;
  readonly spacing?: SpacingInput | undefined;
}

/** The posts of a stair leg: on treads, or at stations in plan from its lowest nosing. */
export interface StairPostsInput extends LevelPostsInput {
  readonly onTreads?: readonly TreadPostInput[] | undefined;
  /** Post centre past the nosing of its tread; needed with `onTreads`. */
  readonly behindNosing?: LengthInput | undefined;
}

/** What a post is fixed to, in the words of whoever looked. */
export interface SubstrateInput {
  readonly name: string;
  readonly thickness: LengthInput;
  /** What the fastener asks for, from its own data. */
  readonly leastThickness?: LengthInput | undefined;
  readonly leastEdge?: LengthInput | undefined;
}

/** What a post stands on. */
export type FootInput =
  | {
      readonly type?: "plate" | undefined;
      readonly thickness?: LengthInput | undefined;
      /** Size along and across the guard; the post's own when absent. */
      readonly along?: LengthInput | undefined;
      readonly across?: LengthInput | undefined;
      readonly cornerRadius?: LengthInput | undefined;
      readonly holes?: HolesInput | undefined;
      readonly substrate?: SubstrateInput | undefined;
    }
  | { readonly type: "bare"; readonly substrate?: SubstrateInput | undefined }
  | {
      readonly type: "side";
      readonly below: LengthInput;
      readonly plate: {
        readonly thickness: LengthInput;
        readonly along: LengthInput;
        readonly height: LengthInput;
        readonly centre: LengthInput;
        readonly holes?: HolesInput | undefined;
      };
      readonly packer?: LengthInput | undefined;
      readonly substrate?: SubstrateInput | undefined;
    };

/** How an end of the guard is finished. */
export type EndInput =
  | {
      readonly type: "wall";
      readonly endPlate?: LengthInput | undefined;
      readonly plate?: FlangeInput | undefined;
    }
  | {
      readonly type: "free";
      readonly overhang?: LengthInput | undefined;
      /** Thickness of a plate that closes the tube. */
      readonly cap?: LengthInput | undefined;
    }
  | {
      readonly type: "return";
      readonly to: "post" | "ground";
      readonly overhang: LengthInput;
      readonly down?: LengthInput | undefined;
      readonly endPlate?: LengthInput | undefined;
      readonly plate?: FlangeInput | undefined;
    };

/** How the rail gets from the leg before to this one: a word, or more. */
export type BreakInputWord = "meet" | "drop" | "compromise" | "riser";
export type LegBreakInput =
  | BreakInputWord
  | { readonly type: BreakInputWord; readonly at?: LengthInput | undefined };

/** A plan turn before a leg. */
export interface TurnInput {
  /** Degrees, + to the left as one walks up; or from the survey in plan. */
  readonly angle: number | SurveyedTurn;
  readonly corner?: "post" | "level" | "round" | "twist" | undefined;
  readonly past?: LengthInput | undefined;
  readonly before?: LengthInput | undefined;
  /** Corner posts: above the higher rail, a plate that closes the top, and what any post may have. */
  readonly above?: LengthInput | undefined;
  readonly cap?: LengthInput | undefined;
  readonly id?: string | undefined;
  readonly section?: string | undefined;
  readonly foot?: FootInput | undefined;
}

/** What every leg may have. */
interface AnyLegInput {
  /** Default: `stair`, `landing`, `floor`; later ones of a kind `stair-2`… */
  readonly id?: string | undefined;
  /** Plumb to the top of the top rail: above the nosing line, the landing or the floor; needed where there is one. */
  readonly top?: LengthInput | undefined;
  /** Plumb to the underside of each lower rail, by rail id; a rail that is not named is not on this leg. */
  readonly undersides?: Readonly<Record<string, LengthInput>> | undefined;
  readonly break?: LegBreakInput | undefined;
  readonly turn?: TurnInput | undefined;
  readonly foot?: FootInput | undefined;
  /** Instead of the design's; `none` leaves the leg's bays open. */
  readonly infill?: InfillInput | "none" | undefined;
  /** Of the guard's first leg at its lower end, of its last at its upper end. */
  readonly start?: EndInput | undefined;
  readonly end?: EndInput | undefined;
}

/** A leg along a flight. */
export interface StairLegInput extends AnyLegInput {
  readonly along: "stair";
  /** Steps of its own; the design's when absent. */
  readonly stair?: StepsInput | undefined;
  /** Limits of the top rail's height over every nosing, plumb to its top; nothing is held against any when absent. */
  readonly heights?: { readonly least: LengthInput; readonly most: LengthInput } | undefined;
  readonly posts?: StairPostsInput | undefined;
}

/** A level leg: on the floor before the stair, or on a landing. */
export interface LevelLegInput extends AnyLegInput {
  readonly along: "floor" | "landing";
  /** From the start of the leg to its far end; needed where another leg follows, at a wall, or where it has no post; or from the survey in plan. */
  readonly length?: LengthInput | SurveyedLength | undefined;
  /** Degrees, + rising as one walks up the guard. */
  readonly slope?: number | undefined;
  readonly posts?: LevelPostsInput | undefined;
}

/** Steps: counted, taped one by one, or surveyed. */
export type StepsInput =
  | {
      readonly risers: number;
      readonly floorToFloor: LengthInput;
      readonly going: LengthInput;
      readonly overhang?: LengthInput | undefined;
    }
  | {
      readonly nosings: readonly { readonly run: LengthInput; readonly height: LengthInput }[];
      readonly overhang?: LengthInput | undefined;
    }
  | { readonly survey: StairSurveyInput; readonly overhang?: LengthInput | undefined };

/** One leg of the guard. */
export type LegInput = StairLegInput | LevelLegInput;

/** One rail of the guard. */
export interface RailInput {
  /** Default: `top`, `cap`, or `lower-1`, `lower-2`… in order. */
  readonly id?: string | undefined;
  readonly role: "top" | "cap" | "lower";
  /** Name of a section. */
  readonly section: string;
}

/** A splice of the top rail. */
export interface SpliceInput {
  /** Id of the leg. */
  readonly leg: string;
  /** From where the leg starts, in plan. */
  readonly at: LengthInput;
  /** Name of the sleeve's section. */
  readonly sleeve: string;
  /** Of the sleeve into each piece. */
  readonly reach: LengthInput;
}

/** The whole document. */
export interface DesignInput {
  readonly $schema?: string | undefined;
  readonly version: 1;
  readonly job: string;
  readonly unit: "in" | "mm";
  /** The open side, looking up the stair; `both`: this guard on the left and its mirror image on the right. */
  readonly side: "left" | "right" | "both";
  readonly material?: string | undefined;
  /** Root gap of every cope. */
  readonly gap?: LengthInput | undefined;
  readonly stair: StepsInput & {
    /** Edge to edge; needed for `both`. */
    readonly width?: LengthInput | undefined;
    /** The stair's edge to the guard's middle plane. */
    readonly inset?: LengthInput | undefined;
  };
  /** What was taped of floors and landings in plan. */
  readonly plan?: PlanSurveyInput | undefined;
  /** Name → size in the trade's words, e.g. `round 1.900 x 0.145`. */
  readonly sections: Readonly<Record<string, string>>;
  /** Exactly one has the role `top`; none at all where handrails stand alone. */
  readonly rails: readonly RailInput[];
  /** Needed where there is a top rail. */
  readonly posts?: { readonly section: string } | undefined;
  /** Heavier posts, by mark. */
  readonly endPosts?: { readonly section: string; readonly marks: readonly string[] } | undefined;
  /** What every post stands on that says nothing else. */
  readonly foot?: FootInput | undefined;
  /** Where the top rail is cut in two and joined over an inner sleeve. */
  readonly splices?: readonly SpliceInput[] | undefined;
  /** Where the guard comes apart for carrying, besides its splices. */
  readonly fieldJoints?: readonly ("corners" | "breaks")[] | undefined;
  readonly handrails?: readonly HandrailInput[] | undefined;
  readonly toeBoard?: ToeBoardInput | undefined;
  /** What fills the bays between their rails. */
  readonly infill?: InfillInput | undefined;
  /** In walking order upward: a floor (if any), then flights and landings. */
  readonly legs: readonly LegInput[];
}
