/**
 * Is a number handed to a plain function one it can work with?
 *
 * A wrong argument is a programming error: it throws, naming the field, the range and what came instead. Units are the
 * caller's, stated in the message.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";

/** The range of an argument; `above` and `below` are open ends, `least` and `most` closed ones. */
export interface ArgumentRange {
  readonly above?: number;
  readonly least?: number;
  readonly below?: number;
  readonly most?: number;
  /** True when only whole numbers make sense. */
  readonly whole?: boolean;
}

/** Which argument, and how to speak of it. */
export interface ArgumentName {
  /** Code of the error, e.g. `bad-saddle`. */
  readonly code: string;
  /** The field as the caller writes it, e.g. `branch.wall`. */
  readonly field: string;
  /** Unit with its leading space, e.g. ` mm`; empty for a count. */
  readonly unit: string;
  /** What to do about it. */
  readonly hint: string;
}

function describe(range: ArgumentRange, unit: string): string {
  const parts: string[] = [];
  if (range.above !== undefined) parts.push(`above ${range.above}${unit}`);
  if (range.least !== undefined) parts.push(`at least ${range.least}${unit}`);
  if (range.below !== undefined) parts.push(`below ${range.below}${unit}`);
  if (range.most !== undefined) parts.push(`at most ${range.most}${unit}`);
  const kind = range.whole ? "a whole number" : "a finite number";
  return [kind, parts.join(" and ")].filter((part) => part !== "").join(" ");
}

/**
 * The value itself when it is a finite number in its range.
 *
 * @param value - what the caller gave
 * @throws RakewrightError with the code of `name` when the value is no finite number or out of range
 * @example argument(45, { above: 0, most: 90 }, { code: "bad-saddle", field: "angle", unit: " deg", hint: "" }); // 45
 */
export function argument(value: number, range: ArgumentRange, name: ArgumentName): number {
  const { above = -Infinity, least = -Infinity, below = Infinity, most = Infinity, whole = false } = range;
  const fits = value > above && value >= least && value < below && value <= most;
  if (Number.isFinite(value) && fits && (!whole || Number.isInteger(value))) return value;
  throw new RakewrightError({
    code: name.code,
    path: name.field,
    message: `\`${name.field}\` must be ${describe(range, name.unit)}, got ${String(value)}.`,
    hint: name.hint,
    values: { [name.field]: value },
  });
}
