/**
 * How are numbers and texts spelt in an ISO 10303-21 file?
 *
 * Reals carry a decimal point and a capital `E`; the shortest decimals that read back as the same double are written, so
 * nothing is lost. A text is in apostrophes, an apostrophe is doubled, and what is not printable ASCII becomes `\X2\`
 * and four hexadecimal digits for each UTF-16 unit (clause 6.4.3 of the 2002 edition; beyond the basic plane `\X4\`).
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";

/**
 * A real; −0 is written as 0, so that equal numbers have equal bytes.
 *
 * @throws RakewrightError `not-finite`: the format has no word for it
 */
export function real(x: number): string {
  if (!Number.isFinite(x)) throw new RakewrightError(NOT_FINITE);
  const text = `${x + 0}`;
  const e = text.indexOf("e");
  if (e < 0) return text.includes(".") ? text : `${text}.`;
  const mantissa = text.slice(0, e);
  return `${mantissa}${mantissa.includes(".") ? "" : "."}E${text.slice(text[e + 1] === "+" ? e + 2 : e + 1)}`;
}

const NOT_FINITE = {
  code: "not-finite",
  message: "A number of the solid is not finite; expected finite numbers only.",
  hint: "Report the design: it is a fault of the kernel.",
};

/** Several reals in brackets. */
export function reals(values: ArrayLike<number>): string {
  let out = "(";
  for (let i = 0; i < values.length; i++)
    out += i === 0 ? real(values[i] as number) : `,${real(values[i] as number)}`;
  return `${out})`;
}

/** Whole numbers in brackets. */
export function integers(values: ArrayLike<number>): string {
  return `(${Array.from(values).join(",")})`;
}

/** References to instances in brackets. */
export function refs(ids: readonly number[]): string {
  let out = "(";
  for (let i = 0; i < ids.length; i++) out += i === 0 ? `#${ids[i]}` : `,#${ids[i]}`;
  return `${out})`;
}

const PLAIN = /^[\x20-\x7e]*$/;

/** A text in apostrophes. */
export function text(value: string): string {
  if (PLAIN.test(value)) return `'${value.replaceAll("\\", "\\\\").replaceAll("'", "''")}'`;
  let out = "'";
  let run = "";
  for (const letter of value) {
    const code = letter.codePointAt(0) as number;
    const wanted = code >= 0x20 && code <= 0x7e ? "" : code > 0xffff ? "\\X4\\" : "\\X2\\";
    if (wanted !== run) out += run === "" ? wanted : `\\X0\\${wanted}`;
    run = wanted;
    if (run !== "")
      out += code
        .toString(16)
        .toUpperCase()
        .padStart(code > 0xffff ? 8 : 4, "0");
    else out += letter === "'" ? "''" : letter === "\\" ? "\\\\" : letter;
  }
  return run === "" ? `${out}'` : `${out}\\X0\\'`;
}
