/**
 * The design document as a person writes it, in the document's own unit.
 *
 * Lengths are numbers in `unit` or tape strings (`"37 1/2"`, `"952 mm"`). `parseDesign` turns it into a `Design`.
 *
 * @packageDocumentation
 */

/** A number in the document's unit, or tape language. */
export type LengthInput = number | string;

/** A post on a tread: the tread's number (1 is the lowest), or more. */
export type TreadPostInput =
  | number
  | {
      readonly tread: number;
      /** Post centre past this tread's nosing; the leg's `behindNosing` when absent. */
      readonly behindNosing?: LengthInput | undefined;
      /** Pins the mark. */
      readonly id?: string | undefined;
      /** Name of a section; the rule for posts when absent. */
      readonly section?: string | undefined;
    };

/** A post at a station: the station, or more. */
export type StationPostInput =
  | LengthInput
  | {
      readonly at: LengthInput;
      readonly id?: string | undefined;
      readonly section?: string | undefined;
    };

/** The posts of the stair leg. */
export interface StairPostsInput {
  readonly onTreads: readonly TreadPostInput[];
  /** Post centre past the nosing of its tread. */
  readonly behindNosing: LengthInput;
}

/** The posts of a level leg, from the start of the leg at the stair. */
export interface LevelPostsInput {
  readonly at: readonly StationPostInput[];
}

/** How the far end of a level leg is finished. */
export type EndInput =
  | { readonly type: "wall"; readonly endPlate?: LengthInput | undefined }
  | { readonly type: "free"; readonly overhang?: LengthInput | undefined };

/** Heights common to every leg. */
interface LegHeightsInput {
  /** Plumb to the top of the top rail: above the nosing line, the landing or the floor. */
  readonly top: LengthInput;
  /** Plumb to the underside of each lower rail, by rail id; a rail that is not named is not on this leg. */
  readonly undersides?: Readonly<Record<string, LengthInput>> | undefined;
}

/** The leg along the stair. */
export interface StairLegInput extends LegHeightsInput {
  readonly along: "stair";
  readonly posts?: StairPostsInput | undefined;
}

/** A level leg: on the floor before the stair, or on the landing after it. */
export interface LevelLegInput extends LegHeightsInput {
  readonly along: "floor" | "landing";
  /** From the start of the leg (lowest or top nosing) to its far end; needed where it ends at a wall or has no post. */
  readonly length?: LengthInput | undefined;
  readonly posts?: LevelPostsInput | undefined;
  /** Default: free, flush with the last post. */
  readonly end?: EndInput | undefined;
}

/** One leg of the guard. */
export type LegInput = StairLegInput | LevelLegInput;

/** One rail of the guard. */
export interface RailInput {
  /** Default: `top`, or `lower-1`, `lower-2`… in order. */
  readonly id?: string | undefined;
  readonly role: "top" | "lower";
  /** Name of a section. */
  readonly section: string;
}

/** The whole document. */
export interface DesignInput {
  readonly $schema?: string | undefined;
  readonly version: 1;
  readonly job: string;
  readonly unit: "in" | "mm";
  /** The open side, looking up the stair. */
  readonly side: "left" | "right";
  readonly material?: string | undefined;
  /** Root gap of every cope. */
  readonly gap?: LengthInput | undefined;
  readonly stair: {
    readonly risers: number;
    readonly floorToFloor: LengthInput;
    readonly going: LengthInput;
    readonly overhang?: LengthInput | undefined;
  };
  /** Name → size in the trade's words, e.g. `round 1.900 x 0.145`. */
  readonly sections: Readonly<Record<string, string>>;
  /** Exactly one has the role `top`. */
  readonly rails: readonly RailInput[];
  readonly posts: { readonly section: string };
  /** Heavier posts, by mark. */
  readonly endPosts?: { readonly section: string; readonly marks: readonly string[] } | undefined;
  /** Base plate under every post. */
  readonly foot?:
    | {
        readonly thickness?: LengthInput | undefined;
        /** Size along and across the guard; the post's own when absent. */
        readonly along?: LengthInput | undefined;
        readonly across?: LengthInput | undefined;
      }
    | undefined;
  /** In walking order upward: floor (if any), stair, landing (if any). */
  readonly legs: readonly LegInput[];
}
