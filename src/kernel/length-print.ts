/**
 * How is a length written on a paper? Millimetres in, one form of text out.
 *
 * Each length is rounded on its own, half away from zero, so running marks from one datum never add their rounding up.
 * Fractions are reduced and carried into the whole inch or foot; zero has no sign. The quotient is first taken to 14
 * significant digits, so that what is a half in decimals (0.79375 mm is half of 1/16 in) is a half in doubles too.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "./diagnostic.js";
import { MM_PER } from "./length-unit.js";

/** The fractions of an inch a tape can carry: 1/denominator. */
export type Denominator = 1 | 2 | 4 | 8 | 16 | 32 | 64 | 128;

/** How to write a length. */
export interface LengthFormat {
  /** `in-fraction` 37-1/2", `ft-in` 3' 1-1/2", `in` 37.500 in, `mm` 952.5 mm. */
  readonly unit: "in-fraction" | "ft-in" | "in" | "mm";
  /** Finest fraction of `in-fraction` and `ft-in`; default 16. */
  readonly denominator?: Denominator;
  /** Digits after the point of `in` and `mm`, 0 to 9; default 3 for inches, 1 for millimetres. */
  readonly decimals?: number;
  /** Write the unit's mark; default true. `false` is for a column whose heading says the unit; feet keep theirs. */
  readonly mark?: boolean;
}

/** The tape mark nearest to a length. */
export interface TapeMark {
  /** −1 below zero; +1 otherwise, also where the mark itself is zero. */
  readonly sign: 1 | -1;
  /** Whole inches, without sign. */
  readonly whole: number;
  /** The fraction left over, reduced; 0/1 when there is none. */
  readonly numerator: number;
  readonly denominator: number;
  /** Where the mark is, millimetres, with sign. */
  readonly mm: number;
  /** Mark minus length, millimetres; at most half the fraction either way. */
  readonly error: number;
}

const DENOMINATORS: readonly number[] = [1, 2, 4, 8, 16, 32, 64, 128];

/** The whole number nearest to `x` ≥ 0, a half going up. */
function roundHalfUp(x: number): number {
  return Math.floor(Number(x.toPrecision(14)) + 0.5);
}

/**
 * The mark of an inch tape nearest to a length, half away from zero.
 *
 * @param mm - length, millimetres, any sign, finite
 * @param denominator - finest fraction of an inch; default 16
 * @throws RakewrightError `bad-length` when `mm` is not finite or the denominator is not a tape's
 * @example
 * nearestFraction(849.3125); // { sign: 1, whole: 33, numerator: 7, denominator: 16, mm: 849.3125, error: 0 }
 */
export function nearestFraction(mm: number, denominator: Denominator = 16): TapeMark {
  requireFinite(mm);
  if (!DENOMINATORS.includes(denominator)) {
    throw new RakewrightError({
      code: "bad-length",
      message: `Fraction: expected a denominator out of ${DENOMINATORS.join(", ")}, got ${denominator}.`,
      hint: "Use 16 for a common tape, 32 or 64 for a finer one.",
    });
  }
  const parts = roundHalfUp((Math.abs(mm) / MM_PER.in) * denominator);
  const sign = mm < 0 && parts > 0 ? -1 : 1;
  let [numerator, reduced] = [parts % denominator, denominator as number];
  while (numerator % 2 === 0 && reduced > 1) [numerator, reduced] = [numerator / 2, reduced / 2];
  const mark = parts === 0 ? 0 : (sign * parts * MM_PER.in) / denominator;
  return {
    sign,
    whole: Math.floor(parts / denominator),
    numerator,
    denominator: reduced,
    mm: mark,
    error: mark - mm,
  };
}

/**
 * Writes a length. `parseLength` reads every form back within half of its last place.
 *
 * @param mm - length, millimetres, any sign, finite
 * @param format - which form; see {@link LengthFormat}
 * @returns the text, e.g. `33-7/16"`, `3' 1-1/2"`, `37.500 in`, `952.5 mm`; a minus sign in front when below zero
 * @throws RakewrightError `bad-length` when `mm` is not finite or the format is out of range
 * @example
 * formatLength(952.5, { unit: "ft-in" }); // 3' 1-1/2"
 * formatLength(952.5, { unit: "mm", decimals: 0 }); // 953 mm
 */
export function formatLength(mm: number, format: LengthFormat): string {
  const { unit, mark = true } = format;
  if (unit === "in") return decimal(mm, MM_PER.in, format.decimals ?? 3, mark ? " in" : "");
  if (unit === "mm") return decimal(mm, MM_PER.mm, format.decimals ?? 1, mark ? " mm" : "");
  const at = nearestFraction(mm, format.denominator);
  const feet = unit === "ft-in" ? Math.floor(at.whole / 12) : 0;
  const inches = at.whole - 12 * feet;
  const fraction = at.numerator === 0 ? "" : `${at.numerator}/${at.denominator}`;
  const text = fraction === "" ? `${inches}` : inches === 0 ? fraction : `${inches}-${fraction}`;
  return `${at.sign < 0 ? "-" : ""}${feet > 0 ? `${feet}' ` : ""}${text}${mark ? '"' : ""}`;
}

function decimal(mm: number, perUnit: number, decimals: number, mark: string): string {
  requireFinite(mm);
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 9) {
    throw new RakewrightError({
      code: "bad-length",
      message: `Decimals: expected a whole number from 0 to 9, got ${decimals}.`,
      hint: "Use 1 for millimetres, 3 for inches.",
    });
  }
  const power = 10 ** decimals;
  const parts = roundHalfUp((Math.abs(mm) / perUnit) * power);
  return `${mm < 0 && parts > 0 ? "-" : ""}${(parts / power).toFixed(decimals)}${mark}`;
}

function requireFinite(mm: number): void {
  if (Number.isFinite(mm)) return;
  throw new RakewrightError({
    code: "bad-length",
    message: `Length: expected a finite number of millimetres, got ${mm}.`,
    hint: "Look for a missing or impossible length before it is printed.",
  });
}
