/**
 * What length does a line of tape language mean? Text or a number in, millimetres out.
 *
 * Written the way a shop writes: `37 1/2`, `37-1/2`, `3' 1-1/2"`, `952 mm`, `-8 7/16`, `2.4 m`, with typographic
 * fractions, primes, dashes and spaces taken for what they look like. What can be read in two ways is refused with
 * both readings named: a decimal comma, `371/2`, `37 - 1/2`, a bare fraction in a metric document.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Result } from "./diagnostic.js";
import { type LengthUnit, MM_PER } from "./length-unit.js";

const VULGAR: Readonly<Record<string, string>> = {
  "½": "1/2",
  "⅓": "1/3",
  "⅔": "2/3",
  "¼": "1/4",
  "¾": "3/4",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** Longest text that is read at all, characters: the longest sensible one is below 40. */
const LONGEST = 80;

const UNIT_WORDS: readonly (readonly [RegExp, LengthUnit])[] = [
  [/^(?:mm|millimet(?:re|er)s?)$/, "mm"],
  [/^(?:cm|centimet(?:re|er)s?)$/, "cm"],
  [/^(?:m|met(?:re|er)s?)$/, "m"],
  [/^(?:in\.?|inch(?:es)?|")$/, "in"],
  [/^(?:ft\.?|foot|feet|')$/, "ft"],
];

const QUANTITY = String.raw`(?:(\d+)(?: |-)(\d+)/(\d+)|(\d+)/(\d+)|(\d+\.?\d*|\.\d+))`;
const UNIT = String.raw`([a-z]+\.?|"|')`;
const LENGTH = new RegExp(`^([+-]?) ?${QUANTITY}(?: ?${UNIT})?(?:( ?- ?| ?)${QUANTITY}(?: ?${UNIT})?)?$`);

/** The text with every typographic variant replaced by its plain form. */
function plain(text: string): string {
  return text
    .replace(/[‐‑‒–—−]/g, "-")
    .replace(/(\d) ?-?(?=[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/g, "$1 ")
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => VULGAR[sign] ?? sign)
    .replace(/[′’‘´`ʹ]/g, "'")
    .replace(/[″“”„ʺ]/g, '"')
    .replace(/''/g, '"')
    .replace(/[⁄∕]/g, "/")
    .replace(/\s+/g, " ")
    .replace(/ ?\/ ?/g, "/")
    .trim()
    .toLowerCase();
}

/** A number as written, or what is wrong with it. `fraction` tells that it was written with a fraction bar. */
type Quantity =
  | { readonly value: number; readonly fraction: boolean }
  | { readonly wrong: string; readonly hint: string };

function quantityOf(groups: readonly (string | undefined)[]): Quantity {
  const [whole, top, bottom, onlyTop, onlyBottom, decimal] = groups;
  if (decimal !== undefined) return { value: Number(decimal), fraction: false };
  const numerator = Number(top ?? onlyTop);
  const denominator = Number(bottom ?? onlyBottom);
  if (denominator === 0) return { wrong: "divides by zero", hint: "Write a fraction such as 1/16." };
  if (numerator >= denominator) {
    return {
      wrong: `has the fraction ${numerator}/${denominator}, which is not below one`,
      hint: "Put the whole inches before the fraction, with a space or a hyphen: 37 1/2.",
    };
  }
  return { value: Number(whole ?? 0) + numerator / denominator, fraction: true };
}

function unitOf(word: string | undefined, fallback: LengthUnit): LengthUnit | undefined {
  return word === undefined ? fallback : UNIT_WORDS.find(([pattern]) => pattern.test(word))?.[1];
}

/** Millimetres, or what is wrong. */
type Reading = { readonly mm: number } | { readonly wrong: string; readonly hint: string };

const EXAMPLES = "Write a length such as 37 1/2, 3' 1-1/2\" or 952 mm.";

function read(text: string, unit: LengthUnit): Reading {
  if (text.length > LONGEST) return { wrong: `is ${text.length} characters long`, hint: EXAMPLES };
  const clean = plain(text);
  if (clean === "") return { wrong: "is empty", hint: EXAMPLES };
  if (clean.includes(",")) {
    return {
      wrong: "has a comma, which may part decimals or thousands",
      hint: "Use a point for decimals and nothing for thousands.",
    };
  }
  const found = LENGTH.exec(clean);
  if (found === null) return { wrong: "is not a length", hint: EXAMPLES };
  const first = quantityOf(found.slice(2, 8));
  if ("wrong" in first) return first;
  const firstUnit = unitOf(found[8], unit);
  if (firstUnit === undefined) return { wrong: `has the unit ${found[8]}`, hint: "Use mm, cm, m, in or ft." };
  const joint = found[9];
  const mm =
    joint === undefined
      ? simple(first, firstUnit, found[8] !== undefined)
      : compound(first, firstUnit, found);
  if ("wrong" in mm) return mm;
  if (!Number.isFinite(mm.mm)) return { wrong: "is larger than a number can hold", hint: EXAMPLES };
  return { mm: found[1] === "-" && mm.mm !== 0 ? -mm.mm : mm.mm };
}

function simple(
  quantity: { value: number; fraction: boolean },
  unit: LengthUnit,
  unitWritten: boolean,
): Reading {
  if (quantity.fraction && !unitWritten && unit !== "in" && unit !== "ft") {
    return {
      wrong: `is a fraction without a unit, and the document is in ${unit}`,
      hint: "Add the unit: 37 1/2 in, or 37.5 mm.",
    };
  }
  return { mm: quantity.value * MM_PER[unit] };
}

/** Feet and inches. */
function compound(
  feet: { value: number; fraction: boolean },
  unit: LengthUnit,
  found: RegExpExecArray,
): Reading {
  if (found[8] === undefined) {
    return found[9]?.includes("-")
      ? {
          wrong: "may be a subtraction or a fraction",
          hint: "Write 37-1/2 or 37 1/2 for thirty-seven and a half.",
        }
      : { wrong: "has two numbers and no unit between them", hint: EXAMPLES };
  }
  if (unit !== "ft")
    return {
      wrong: `goes on after its unit ${found[8]}`,
      hint: "Only feet take a second number: 3' 1-1/2\".",
    };
  if (!Number.isInteger(feet.value) || feet.fraction) {
    return {
      wrong: "has a part of a foot and inches as well",
      hint: "Write whole feet before the inches: 3' 6\".",
    };
  }
  const inches = quantityOf(found.slice(10, 16));
  if ("wrong" in inches) return inches;
  if (unitOf(found[16], "in") !== "in")
    return { wrong: `has ${found[16]} after the feet`, hint: "Feet are followed by inches: 3' 1-1/2\"." };
  if (inches.value >= 12)
    return {
      wrong: "has twelve or more inches after the feet",
      hint: "Carry them into the feet, or write inches alone.",
    };
  return { mm: (feet.value * 12 + inches.value) * MM_PER.in };
}

/**
 * Reads a length.
 *
 * @param input - a number in `unit`, or text in tape language; text may carry its own unit and a sign
 * @param unit - the document's unit, which a bare number is in
 * @param path - where in the input the length stands, for the diagnostic; default empty
 * @returns millimetres (any sign, finite, never −0); otherwise one `bad-length` diagnostic. Never throws.
 * @example
 * parseLength("3' 1-1/2\"", "in"); // { ok: true, value: 952.5, diagnostics: [] }
 * parseLength("60.3", "mm"); // { ok: true, value: 60.3, diagnostics: [] }
 */
export function parseLength(input: number | string, unit: LengthUnit, path = ""): Result<number> {
  if (typeof input === "number") {
    const value = input * MM_PER[unit];
    if (Number.isFinite(value)) return { ok: true, value: value === 0 ? 0 : value, diagnostics: [] };
    return {
      ok: false,
      diagnostics: [refusal(String(input), unit, path, "is not a finite number", EXAMPLES)],
    };
  }
  const reading =
    typeof input === "string" ? read(input, unit) : { wrong: "is neither a number nor text", hint: EXAMPLES };
  if ("mm" in reading) return { ok: true, value: reading.mm, diagnostics: [] };
  return { ok: false, diagnostics: [refusal(String(input), unit, path, reading.wrong, reading.hint)] };
}

function refusal(input: string, unit: LengthUnit, path: string, wrong: string, hint: string): Diagnostic {
  const shown = input.length > LONGEST ? `${input.slice(0, LONGEST)}…` : input;
  const message = `${path === "" ? "Length" : path}: expected a length, got "${shown}", which ${wrong}.`;
  return diagnostic({ code: "bad-length", path, message, hint, values: { input: shown, unit } });
}
