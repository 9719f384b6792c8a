/**
 * Holes, sleeves and tapes of a shop. A finish takes or adds its thickness at both ends of a diameter (arithmetic); tapes by
 * the published errors of directive 2014/32/EU, annex X (MI-008).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PAPER_SIZES, PAPERS } from "../../src/layout/document/paper.js";
import { holeFor, sleeveFor } from "../../src/layout/hole-for.js";
import { tapeError } from "../../src/layout/tape.js";

const paint = { finish: { kind: "paint", thickness: 0.1 }, drillStep: 0.5, slipFit: 0.5 } as const;
const bare = { finish: { kind: "bare", thickness: 0 }, drillStep: 25.4 / 64, slipFit: 0.5 } as const;

describe("a drilled hole", () => {
  it("is larger by two coats, or by four where what passes is coated too", () => {
    expect(holeFor(13, paint).exact).toBeCloseTo(13.2, 12);
    expect(holeFor(13, paint).drill).toBe(13.5);
    expect(holeFor(13, paint, "both").exact).toBeCloseTo(13.4, 12);
  });

  it("is drilled as it is where a drill has just that size: 7/16 in by 1/64", () => {
    const { exact, drill } = holeFor((7 / 16) * 25.4, bare);
    expect(exact).toBe((7 / 16) * 25.4);
    expect(drill).toBeCloseTo((7 / 16) * 25.4, 12);
  });

  it("is never smaller than asked, nor a step larger", () => {
    const sizes = fc.double({ min: 1, max: 60, noNaN: true });
    const steps = fc.constantFrom(0.1, 0.5, 25.4 / 64, 25.4 / 32, 1);
    fc.assert(
      fc.property(
        sizes,
        steps,
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        (nominal, drillStep, thickness) => {
          const { exact, drill } = holeFor(nominal, { finish: { kind: "zinc", thickness }, drillStep });
          expect(exact).toBe(nominal + 2 * thickness);
          expect(drill).toBeGreaterThanOrEqual(exact * (1 - 2e-12));
          expect(drill).toBeLessThan(exact + drillStep);
        },
      ),
    );
  });

  it("needs a size", () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(() => holeFor(bad, paint)).toThrow(/bad-length: Hole: expected a diameter above 0 mm/);
  });
});

describe("an inner sleeve", () => {
  it("leaves the slip fit after the coats: 60 − 0.5, less 2 or 4 of 0.085", () => {
    const zinc = { finish: { kind: "zinc", thickness: 0.085 }, slipFit: 0.5 } as const;
    expect(sleeveFor(60, bare)).toBe(59.5);
    expect(sleeveFor(60, zinc)).toBeCloseTo(59.16, 12);
    expect(sleeveFor(60, zinc, "outer")).toBeCloseTo(59.33, 12);
  });

  it("is nothing where nothing is left, and needs a bore", () => {
    expect(sleeveFor(0.4, bare)).toBe(0);
    expect(() => sleeveFor(0, bare)).toThrow(/Sleeve/);
  });
});

describe("a tape", () => {
  it.each([
    // Published tables for tapes of the three classes, ± mm at 3, 5, 8 and 10 m.
    [3000, 0.4, 0.9, 1.8],
    [5000, 0.6, 1.3, 2.6],
    [8000, 0.9, 1.9, 3.8],
    [10000, 1.1, 2.3, 4.6],
  ])("may be off at %i mm by ± %f, %f, %f mm", (length, first, second, third) => {
    expect(tapeError(length, "I")).toBeCloseTo(first, 12);
    expect(tapeError(length, "II")).toBeCloseTo(second, 12);
    expect(tapeError(length, "III")).toBeCloseTo(third, 12);
  });

  it("counts a begun metre as a whole one", () => {
    expect(tapeError(2001, "II")).toBe(tapeError(3000, "II"));
    expect(tapeError(0, "II")).toBe(0.3);
    expect(() => tapeError(-1, "II")).toThrow(/bad-length/);
  });
});

describe("sheets", () => {
  it("of the A sizes halve: ISO 216, sides as 1 to √2 to the nearest millimetre", () => {
    const [[w4, h4], [w3, h3]] = [PAPERS.a4, PAPERS.a3];
    expect([w3, h3 / 2]).toEqual([h4, w4]);
    expect(Math.abs(h4 / w4 - Math.SQRT2)).toBeLessThan(1 / w4);
    expect(PAPERS.letter[0] / 25.4).toBeCloseTo(8.5, 12);
    expect(PAPERS.letter[1] / 25.4).toBeCloseTo(11, 12);
    expect(Object.keys(PAPERS)).toEqual([...PAPER_SIZES]);
  });
});
