/**
 * How well can a reading be trusted when nobody says?
 *
 * A tape of its class is off by at most `tapeError`; with nothing else known that counts as a standard uncertainty of the
 * limit over √3 (JCGM 100:2008, 4.3.7). Hook, eye and mark add HAND_MM, a digital level is taken at LEVEL_DEG, a corner's
 * square at CORNER_DEG (common practice, no source).
 *
 * @packageDocumentation
 */
import { type TapeClass, tapeError } from "../tape.js";
import { isAngle, type Place } from "./reading.js";

/** mm. One standard uncertainty of hook, eye and mark together (common practice, no source). */
const HAND_MM = 1;
/** Degrees. A digital level on a straightedge over two nosings (common practice, no source). */
const LEVEL_DEG = 0.1;
/** Degrees. An angle finder in a corner (common practice, no source). */
const CORNER_DEG = 0.25;

/**
 * The standard uncertainty of a reading by default.
 *
 * @param of - what is read
 * @param value - what it read, mm ≥ 0; no matter for angles
 * @param tape - class of the tape, default II
 * @returns mm, or degrees for `level` and `corner`
 * @throws RakewrightError `bad-length` when a length is below zero or not finite
 * @example readingSigma({ kind: "rise", from: 0, to: 1 }, 190); // 1.0408…, √(1² + 0.5²/3)
 */
export function readingSigma(of: Place, value: number, tape: TapeClass = "II"): number {
  if (isAngle(of)) return of.kind === "level" ? LEVEL_DEG : CORNER_DEG;
  return Math.hypot(HAND_MM, tapeError(value, tape) / Math.sqrt(3));
}
