/**
 * A length as a person writes it.
 *
 * @packageDocumentation
 */

/** A number in the document's unit, or tape language. */
export type LengthInput = number | string;
