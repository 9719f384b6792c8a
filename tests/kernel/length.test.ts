/**
 * Tape language. Sources: the inch of 25.4 mm (1959 agreement); shared/tape-cases.json (worked set-out cases); what a
 * text means is arithmetic written out beside it. Round trips are properties over random lengths.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import cases from "../../shared/tape-cases.json" with { type: "json" };
import { RakewrightError } from "../../src/kernel/diagnostic.js";
import {
  type Denominator,
  formatLength,
  type LengthUnit,
  nearestFraction,
  parseLength,
} from "../../src/kernel/length.js";

const mm = (input: number | string, unit: LengthUnit): number => {
  const result = parseLength(input, unit);
  if (!result.ok) throw new Error(result.diagnostics[0]?.message);
  return result.value;
};

const denominators = fc.constantFrom<Denominator>(1, 2, 4, 8, 16, 32, 64, 128);

describe("parseLength", () => {
  it.each([
    ["37 1/2", "in", 37.5 * 25.4],
    ["37-1/2", "in", 37.5 * 25.4],
    ["37½", "in", 37.5 * 25.4],
    ["37 ½", "in", 37.5 * 25.4],
    ['37-½"', "mm", 37.5 * 25.4],
    ["37 1⁄2 in", "mm", 37.5 * 25.4],
    ["37\u00a01 / 2 inches", "mm", 37.5 * 25.4],
    ["3' 1-1/2\"", "mm", 37.5 * 25.4],
    ["3′ 1½″", "mm", 37.5 * 25.4],
    ["3'-1 1/2''", "in", 37.5 * 25.4],
    ["3' - 1-1/2\"", "in", 37.5 * 25.4],
    ["3 ft 1.5 in", "mm", 37.5 * 25.4],
    ["3ft1.5", "mm", 37.5 * 25.4],
    ["1' 1/2\"", "in", 12.5 * 25.4],
    ["3 1/2 ft", "in", 42 * 25.4],
    ["3.5'", "mm", 42 * 25.4],
    ["2 1/4", "ft", 27 * 25.4],
    ["952 mm", "in", 952],
    ["952mm", "in", 952],
    ["1.5 in", "mm", 38.1],
    ["1.5 IN.", "mm", 38.1],
    ["1/16", "in", 25.4 / 16],
    ["-8 7/16", "in", -8.4375 * 25.4],
    ['−8-7/16"', "mm", -8.4375 * 25.4],
    ["+ 3", "mm", 3],
    ["98 5/16", "in", 98.3125 * 25.4],
    ["60.3", "mm", 60.3],
    [".5", "in", 12.7],
    ["2.4 m", "mm", 2400],
    ["12cm", "in", 120],
    ["  12 \t centimetres ", "in", 120],
    ["-0", "mm", 0],
    [60.3, "mm", 60.3],
    [1.9, "in", 48.26],
    [-0, "in", 0],
  ] as const)("reads %j in a document in %s", (input, unit, expected) => {
    expect(mm(input, unit)).toBeCloseTo(expected, 9);
    expect(Object.is(mm(input, unit), -0)).toBe(false);
  });

  it.each([
    ["", "in", "empty"],
    ["   ", "in", "empty"],
    ["about 3", "in", "not a length"],
    ["1,5", "mm", "comma"],
    ["1,250.5 mm", "mm", "comma"],
    ["371/2", "in", "not below one"],
    ["37 5/4", "in", "not below one"],
    ["37 - 1/2", "in", "subtraction"],
    ["37 1/0", "in", "zero"],
    ["37 1/2", "mm", "without a unit"],
    ["3 6", "in", "no unit between"],
    ["3.5' 6\"", "in", "part of a foot"],
    ["3' 14\"", "in", "twelve"],
    ["3' 6'", "in", "after the feet"],
    ["2 m 50 cm", "mm", "after its unit"],
    ["5 furlongs", "mm", "unit furlongs"],
    ["1e3", "mm", "unit e"],
    ["--5", "mm", "not a length"],
    ["'", "in", "not a length"],
    ["9".repeat(81), "mm", "81 characters"],
    [Number.NaN, "mm", "finite"],
    [Number.POSITIVE_INFINITY, "in", "finite"],
    [1e308, "ft", "finite"],
  ] as const)("refuses %j in a document in %s", (input, unit, why) => {
    const result = parseLength(input, unit, "legs[0].height");
    expect(result.ok).toBe(false);
    const [found] = result.diagnostics;
    expect(found).toMatchObject({ code: "bad-length", severity: "error", path: "legs[0].height" });
    expect(found?.message).toContain(why);
    expect(found?.message).toContain("legs[0].height");
    expect(found?.hint).not.toBe("");
  });

  it("never throws and never gives a number that is not finite, whatever the text", () => {
    const pieces = fc.constantFrom(
      "1",
      "37",
      " ",
      "-",
      "/",
      "'",
      '"',
      ".",
      "½",
      "mm",
      "in",
      "ft",
      "x",
      "−",
      "16",
      "0",
    );
    const text = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.array(pieces, { maxLength: 12 }).map((a) => a.join("")),
    );
    fc.assert(
      fc.property(text, fc.constantFrom<LengthUnit>("mm", "cm", "m", "in", "ft"), (input, unit) => {
        const result = parseLength(input, unit);
        expect(result.ok ? Number.isFinite(result.value) : result.diagnostics[0]?.code === "bad-length").toBe(
          true,
        );
      }),
      { numRuns: 2000 },
    );
  });

  it("changes sign with the sign, for every way to write a magnitude", () => {
    fc.assert(
      fc.property(fc.nat(500), fc.integer({ min: 1, max: 63 }), (whole, n) => {
        const text = `${whole} ${n}/64 in`;
        expect(mm(`-${text}`, "mm")).toBe(-mm(text, "mm"));
        expect(mm(text, "mm")).toBeCloseTo((whole + n / 64) * 25.4, 9);
      }),
    );
  });
});

describe("formatLength and nearestFraction", () => {
  const caseOf = (id: string) => cases.cases.find((c) => c.id === id);

  it("marks running dimensions from one datum (shared/tape-cases.json i12)", () => {
    const { inputs, expected, tolerance } = caseOf("i12-running-dims") as {
      inputs: { pitch: number; count: number };
      expected: { running: number[]; max_error_running: number };
      tolerance: number;
    };
    const marks = Array.from({ length: inputs.count }, (_, i) =>
      nearestFraction((i + 1) * inputs.pitch * 25.4, 16),
    );
    marks.forEach((mark, i) => {
      expect(Math.abs(mark.mm / 25.4 - expected.running[i]!)).toBeLessThanOrEqual(
        tolerance * expected.running[i]!,
      );
    });
    const worst = Math.max(...marks.map((mark) => Math.abs(mark.error))) / 25.4;
    expect(Math.abs(worst - expected.max_error_running)).toBeLessThanOrEqual(tolerance);
  });

  it("prints a fraction (shared/tape-cases.json i13)", () => {
    const { inputs, expected } = caseOf("i13-fraction") as {
      inputs: { value: number };
      expected: { text: string };
    };
    expect(formatLength(inputs.value * 25.4, { unit: "in-fraction", denominator: 16 })).toBe(expected.text);
  });

  it.each([
    [35.9999, 16, '36"'],
    [-35.9999, 16, '-36"'],
    [-0.0001, 16, '0"'],
    [0, 16, '0"'],
    [0.4375, 16, '7/16"'],
    [-8.4375, 16, '-8-7/16"'],
    [0.5, 64, '1/2"'],
    [1 / 32, 16, '1/16"'],
    [-1 / 32, 16, '-1/16"'],
    [98.3125, 32, '98-5/16"'],
    [37.5, 1, '38"'],
  ] as const)(
    "reduces, carries and rounds a half away from zero: %f at 1/%i",
    (inches, denominator, text) => {
      expect(formatLength(inches * 25.4, { unit: "in-fraction", denominator })).toBe(text);
    },
  );

  it.each([
    [952.5, "ft-in", {}, "3' 1-1/2\""],
    [35.9999 * 25.4, "ft-in", {}, "3' 0\""],
    [-952.5, "ft-in", {}, "-3' 1-1/2\""],
    [152.4, "ft-in", {}, '6"'],
    [952.5, "in-fraction", { mark: false }, "37-1/2"],
    [952.5, "in", {}, "37.500 in"],
    [952.45, "mm", {}, "952.5 mm"],
    [-952.45, "mm", {}, "-952.5 mm"],
    [1.005, "mm", { decimals: 2 }, "1.01 mm"],
    [-0.04, "mm", {}, "0.0 mm"],
    [952.5, "mm", { decimals: 0, mark: false }, "953"],
  ] as const)("writes %f mm as %s %j", (value, unit, options, text) => {
    expect(formatLength(value, { unit, ...options })).toBe(text);
  });

  it("half of any tape mark goes away from zero, though millimetres are not exact in doubles", () => {
    fc.assert(
      fc.property(fc.nat(50_000), denominators, (n, denominator) => {
        expect(nearestFraction(((n + 0.5) * 25.4) / denominator, denominator).mm).toBeCloseTo(
          ((n + 1) * 25.4) / denominator,
          7,
        );
      }),
    );
  });

  it("every printed fraction parses back within half the fraction, and prints the same again", () => {
    const lengths = fc.double({ min: -2e4, max: 2e4, noNaN: true });
    fc.assert(
      fc.property(
        lengths,
        denominators,
        fc.constantFrom("in-fraction" as const, "ft-in" as const),
        (value, denominator, unit) => {
          const text = formatLength(value, { unit, denominator });
          expect(text).not.toMatch(/^-0"/);
          const back = mm(text, "mm");
          expect(Math.abs(back - value)).toBeLessThanOrEqual((0.5 * 25.4) / denominator + 1e-9);
          expect(formatLength(back, { unit, denominator })).toBe(text);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("every printed decimal parses back within half its last place", () => {
    const lengths = fc.double({ min: -2e4, max: 2e4, noNaN: true });
    fc.assert(
      fc.property(
        lengths,
        fc.integer({ min: 0, max: 6 }),
        fc.constantFrom("in" as const, "mm" as const),
        (value, decimals, unit) => {
          const back = mm(formatLength(value, { unit, decimals }), "m");
          expect(Math.abs(back - value)).toBeLessThanOrEqual(
            (unit === "in" ? 25.4 : 1) * 0.5 * 10 ** -decimals + 1e-9,
          );
        },
      ),
    );
  });

  it.each([
    () => formatLength(Number.NaN, { unit: "mm" }),
    () => formatLength(Number.POSITIVE_INFINITY, { unit: "in-fraction" }),
    () => formatLength(1, { unit: "mm", decimals: 1.5 }),
    () => formatLength(1, { unit: "in-fraction", denominator: 10 as Denominator }),
  ])("throws bad-length for misuse", (act) => {
    expect(act).toThrow(RakewrightError);
    expect(act).toThrow(/bad-length/);
  });
});
