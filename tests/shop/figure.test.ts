/**
 * Figures on paper: rounding said, never silent, blanks never short; lines that fit the paper.
 *
 * Sources: arithmetic of inch fractions by hand; the blank 157.85095517135613 in of shared/demo-data.json.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseLength } from "../../src/kernel/length.js";
import { degrees, figure, figureUp, massText } from "../../src/shop/figure.js";
import { wrap } from "../../src/shop/wrap.js";

const THIRTY_SECONDS = { unit: "in", denominator: 32 } as const;

describe("figures", () => {
  it("are the nearest mark with the decimal beside it", () => {
    // 0.85095517 · 32 = 27.23: nearest 27/32, next up 28/32 = 7/8.
    const blank = 157.85095517135613 * 25.4;
    expect(figure(blank, THIRTY_SECONDS)).toBe("157-27/32 (157.851)");
    expect(figureUp(blank, THIRTY_SECONDS)).toBe("157-7/8 (157.851)");
    expect(figure(1234.56, { unit: "mm", denominator: 32 })).toBe("1234.6");
    expect(figureUp(1234.51, { unit: "mm", denominator: 32 })).toBe("1234.6");
  });

  it("leave a blank that is on a mark alone", () => {
    expect(figureUp(157.875 * 25.4, THIRTY_SECONDS)).toBe("157-7/8 (157.875)");
    expect(figureUp(1234.5, { unit: "mm", denominator: 32 })).toBe("1234.5");
  });

  it("rounded up are never short and less than a mark long", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 20000, noNaN: true }),
        fc.constantFrom<"in" | "mm">("in", "mm"),
        (mm, unit) => {
          const [mark = ""] = figureUp(mm, { unit, denominator: 32 }).split(" (");
          const read = parseLength(mark, unit);
          const excess = (read.ok ? read.value : Number.NaN) - mm;
          expect(excess).toBeGreaterThan(-2e-6);
          expect(excess).toBeLessThan((unit === "in" ? 25.4 / 32 : 0.1) + 1e-6);
        },
      ),
    );
  });

  it("print angles to a tenth without a negative zero, masses in both units", () => {
    expect([degrees(35.44191891816008), degrees(-0.01), degrees(90)]).toEqual(["35.4°", "0.0°", "90.0°"]);
    // 1 lb is 0.45359237 kg exactly.
    expect(massText(45.359237)).toBe("45.4 kg (100.0 lb)");
  });
});

describe("wrap", () => {
  it("keeps every word and the width", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ minLength: 1, maxLength: 20, unit: fc.constantFrom("a", "b", "-") })),
        (words) => {
          const lines = wrap("  head: ", words.join(" "), 4, 40);
          expect(
            lines
              .join(" ")
              .split(/\s+/)
              .filter((w) => w !== ""),
          ).toEqual(["head:", ...words]);
          expect(lines.every((line) => line.length <= 40)).toBe(true);
          expect(lines.slice(1).every((line) => line.startsWith("    "))).toBe(true);
        },
      ),
    );
  });
});
