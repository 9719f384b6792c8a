/**
 * How far may a tape be off? The largest permissible error of a material measure of length by its class.
 *
 * a + b·L, either way, L in metres rounded up to the next whole metre: directive 2014/32/EU, annex X (MI-008), chapter I,
 * class I 0.1 + 0.1 L, II 0.3 + 0.2 L, III 0.6 + 0.4 L (mm), at 20 °C and the tape's own tension. What the hand and the eye
 * add comes on top.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";

/** The class printed on the tape in an oval. */
export type TapeClass = "I" | "II" | "III";

/** The classes, best first. */
export const TAPE_CLASSES = ["I", "II", "III"] as const satisfies readonly TapeClass[];

const COEFFICIENTS: Readonly<Record<TapeClass, readonly [a: number, b: number]>> = {
  I: [0.1, 0.1],
  II: [0.3, 0.2],
  III: [0.6, 0.4],
};

/**
 * The largest permissible error of a tape at a length.
 *
 * @param length - what is measured, mm, 0 or more
 * @param tape - class of the tape
 * @returns mm, either way
 * @throws RakewrightError `bad-length` when the length is below zero or not finite
 * @example tapeError(5000, "II"); // 1.3
 */
export function tapeError(length: number, tape: TapeClass): number {
  if (!(length >= 0 && length < Number.POSITIVE_INFINITY)) {
    throw new RakewrightError({
      code: "bad-length",
      message: `Tape: expected a length of 0 mm or more, got ${length}.`,
      hint: "Give what is measured, in millimetres.",
    });
  }
  const [a, b] = COEFFICIENTS[tape];
  return a + b * Math.ceil(length / 1000);
}
