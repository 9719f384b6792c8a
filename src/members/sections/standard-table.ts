/**
 * What the tables of standard sections share: finding a row by a name that holds sizes, and writing sizes into a name.
 *
 * Names are a designation and sizes, `EN 10219 60 x 40 x 3`, `HSS 1-1/2 x 1-1/2 x 1/8`. Sizes are plain numbers or fractions of
 * the table's own unit; that unit may be named behind them, another may not. Where two sizes tell width and depth, the first
 * stands across the member whichever is longer, as everywhere here.
 *
 * @packageDocumentation
 */
import { NAME_SIZE } from "../../kernel/tolerance.js";
import type { Section } from "../section.js";

/** A table of sections. */
export interface StandardTable {
  /** The section of a name, as `plainName` writes it; nothing when the name is not of this table or the table has no such row. */
  readonly find: (name: string) => Section | undefined;
  /** Every section, as the standard lists them. */
  readonly all: () => readonly Section[];
}

/** A name in lower case, single spaces, and with plain crosses. */
export function plainName(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ").replace(/[×*]/g, "x");
}

const UNIT = { mm: / ?mm$/, in: / ?(?:in\.?|inch|")$/ } as const;

/**
 * The sizes of a plain name behind its designation.
 *
 * @param designation - matches the start of the name
 * @returns nothing when the name starts otherwise, or what follows are no sizes in this unit
 * @example
 * sizesIn("hss 1-1/2 x 1 x .125", /^hss ?/, "in"); // [1.5, 1, 0.125]
 */
export function sizesIn(
  name: string,
  designation: RegExp,
  unit: "mm" | "in",
): readonly [number, ...number[]] | undefined {
  const head = designation.exec(name)?.[0];
  if (head === undefined) return undefined;
  const [first = Number.NaN, ...rest] = name
    .slice(head.length)
    .replace(UNIT[unit], "")
    .split(/ ?x ?/)
    .map(size);
  return [first, ...rest].every(Number.isFinite) ? [first, ...rest] : undefined;
}

function size(text: string): number {
  const found = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (found !== null) return Number(found[1] ?? 0) + Number(found[2]) / Number(found[3]);
  return /^(?:\d+\.?\d*|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
}

/** True when the sizes are those of a row; 0.188 is three sixteenths. */
export function sameSizes(asked: readonly number[], row: readonly number[]): boolean {
  return (
    asked.length === row.length && row.every((x, i) => Math.abs(x - (asked[i] ?? Number.NaN)) <= NAME_SIZE)
  );
}

/** Sizes joined for a name, inches as whole sixteenths where they are: `1-1/2 x 1/8`, `1.9 x 0.145`. */
export function namedSizes(sizes: readonly number[], unit: "mm" | "in"): string {
  return sizes.map((x) => (unit === "in" ? inches(x) : String(x))).join(" x ");
}

function inches(x: number): string {
  const whole = Math.floor(x);
  let [above, below] = [(x - whole) * 16, 16];
  if (!Number.isInteger(above)) return String(x);
  if (above === 0) return String(whole);
  while (above % 2 === 0) [above, below] = [above / 2, below / 2];
  return `${whole === 0 ? "" : `${whole}-`}${above}/${below}`;
}
