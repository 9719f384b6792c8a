/**
 * The one sentence of caution that every paper and every exported file carries.
 *
 * A model gives numbers under assumptions; it does not know the building, the law or the weld.
 *
 * @packageDocumentation
 */

/** Plain ASCII, so that it fits any file format's comment. */
export const CAUTION =
  "Numbers from a computer model. Measure before you cut. Local codes and a licensed practitioner decide.";
