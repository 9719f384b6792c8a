/**
 * What every part of a design document is written with: lengths, holes, the size of a plate.
 *
 * @packageDocumentation
 */

/** A number in the document's unit, or tape language. */
export type LengthInput = number | string;

/** Four round holes at the corners of a rectangle about the plate's centre. */
export interface HolesInput {
  readonly diameter: LengthInput;
  /** Centre to centre. */
  readonly along: LengthInput;
  readonly across: LengthInput;
}

/** Size of a plate that ends a rail. */
export interface FlangeInput {
  readonly width?: LengthInput | undefined;
  readonly height?: LengthInput | undefined;
  readonly cornerRadius?: LengthInput | undefined;
  readonly holes?: HolesInput | undefined;
}
