/**
 * What a post stands on: a base plate, nothing (to be welded), or a plate on the side face of a stringer or beam.
 *
 * @packageDocumentation
 */

/** Round holes at the corners of a rectangle about the plate's centre, mm. */
export interface HoleRectangle {
  readonly diameter: number;
  /** Centre to centre. */
  readonly along: number;
  readonly across: number;
}

/** Size of a plate that ends a rail; what is absent is no larger than the rail. */
export interface FlangeDesign {
  /** Across the guard. */
  readonly width?: number;
  /** Plumb; along the guard where it lies flat. */
  readonly height?: number;
  readonly cornerRadius: number;
  /** `across` goes with the width, `along` with the height. */
  readonly holes?: HoleRectangle;
}

/** What is under the foot, as the person on site says it; nothing here says whether an anchor holds. */
export interface Substrate {
  readonly name: string;
  /** Of solid material under or behind the plate, mm. */
  readonly thickness: number;
  /** What the chosen fastener asks for, from its own data, mm. */
  readonly leastThickness?: number;
  readonly leastEdge?: number;
}

/** A foot. */
export type FootDesign =
  | {
      readonly type: "plate";
      readonly thickness: number;
      /** Absent where the plate is no larger than the post. */
      readonly along?: number;
      readonly across?: number;
      readonly cornerRadius: number;
      readonly holes?: HoleRectangle;
      readonly substrate?: Substrate;
    }
  | { readonly type: "bare"; readonly substrate?: Substrate }
  | {
      readonly type: "side";
      /** The post goes this far below the line the heights are measured from, mm. */
      readonly below: number;
      readonly plate: {
        readonly thickness: number;
        readonly along: number;
        readonly height: number;
        /** Its centre, below the same line, mm. */
        readonly centre: number;
        /** `across` is plumb here. */
        readonly holes?: HoleRectangle;
      };
      /** Between plate and face, mm; 0: none. */
      readonly packer: number;
      readonly substrate?: Substrate;
    };
