/** Numbers and texts of a Part 21 file. Escapes by ISO 10303-21:2002, clause 6.4.3 and its examples (from memory). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integers, real, reals, refs, text } from "../../../src/export/step/part21.js";
import { RakewrightError } from "../../../src/kernel/index.js";

describe("real", () => {
  it.each([
    [0, "0."],
    [-0, "0."],
    [1, "1."],
    [-25, "-25."],
    [0.5, "0.5"],
    [1e21, "1.E21"],
    [-1.5e300, "-1.5E300"],
    [1e-7, "1.E-7"],
    [2.5e-7, "2.5E-7"],
  ])("%d is %s", (x, spelt) => expect(real(x)).toBe(spelt));

  it("has a point, a capital E if any, and reads back as the same double", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (x) => {
        const spelt = real(x);
        expect(spelt).toMatch(/^-?\d+\.\d*(E-?\d+)?$/);
        expect(Number(spelt)).toBe(x + 0);
      }),
      { numRuns: 2000 },
    );
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("refuses %d", (x) => {
    expect(() => real(x)).toThrow(RakewrightError);
    expect(() => real(x)).toThrow(/not-finite/);
  });
});

describe("lists", () => {
  it("spells them in brackets", () => {
    expect(reals([1, 0.25, -3])).toBe("(1.,0.25,-3.)");
    expect(integers([6, 1, 6])).toBe("(6,1,6)");
    expect(refs([12, 7])).toBe("(#12,#7)");
    expect([reals([]), integers([]), refs([])]).toEqual(["()", "()", "()"]);
  });
});

/** Reads a text back, letter by letter as the standard says. */
function read(spelt: string): string {
  const inner = spelt.slice(1, -1);
  let out = "";
  for (let i = 0; i < inner.length; ) {
    const rest = inner.slice(i);
    const run = /^\\X([24])\\((?:[0-9A-F]{4})*)\\X0\\/.exec(rest);
    if (run) {
      const digits = run[1] === "2" ? 4 : 8;
      const hex = run[2] as string;
      expect(hex.length % digits).toBe(0);
      for (let k = 0; k < hex.length; k += digits)
        out += String.fromCodePoint(Number.parseInt(hex.slice(k, k + digits), 16));
      i += run[0].length;
    } else if (rest.startsWith("''") || rest.startsWith("\\\\")) {
      out += rest[0];
      i += 2;
    } else {
      expect(rest[0]).toMatch(/[\x20-\x26\x28-\x5b\x5d-\x7e]/);
      out += rest[0];
      i += 1;
    }
  }
  return out;
}

describe("text", () => {
  it.each([
    ["P1", "'P1'"],
    ["", "''"],
    ["don't", "'don''t'"],
    ["a\\b", "'a\\\\b'"],
    ["αβγ", "'\\X2\\03B103B203B3\\X0\\'"],
    ["Säule", "'S\\X2\\00E4\\X0\\ule'"],
    ["é🔩é", "'\\X2\\00E9\\X0\\\\X4\\0001F529\\X0\\\\X2\\00E9\\X0\\'"],
    ["line\nbreak", "'line\\X2\\000A\\X0\\break'"],
  ])("%j is %s", (value, spelt) => expect(text(value)).toBe(spelt));

  it("is plain ASCII and reads back, whatever it holds", () => {
    const hard = fc.string({ unit: fc.constantFrom("\\", "'", "X", "0", "2", "4", "é", "🔩", "A", " ") });
    fc.assert(
      fc.property(fc.oneof(hard, fc.string({ unit: "binary" })), (value) => {
        const spelt = text(value);
        expect(spelt).toMatch(/^'[\x20-\x7e]*'$/);
        expect(read(spelt)).toBe(value);
      }),
      { numRuns: 2000 },
    );
  });
});
