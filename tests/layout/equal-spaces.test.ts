/**
 * Equal spaces: shop arithmetic by hand, the handbook's pattern numbers (cases d11 and d12: computed independently), and the
 * definition itself: one bar fewer would leave a space that is too great.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestBars, spaceBetween } from "../../src/layout/site/equal-spaces.js";

describe("equal spaces", () => {
  it("divide 60 in between faces by 1/2 in bars with no space above 3 7/8: 13 bars, by hand", () => {
    const divided = { length: 60, width: 0.5 };
    expect(fewestBars(divided, 3.875)).toBe(13);
    // 13: (60 − 6.5)/14 = 3.821; 12 would leave (60 − 6)/13 = 4.154.
    expect(spaceBetween(divided, 13)).toBeCloseTo(53.5 / 14, 12);
  });

  it("are the handbook's patterns d11 (31 in plumb at 35.54 degrees) and d12 (36.5 in level), 3/16 in, at most 3.25", () => {
    const cos = Math.cos(Math.atan2(7.5, 10.5));
    const rake = { length: 31 * cos, width: 3 / 16 };
    expect(fewestBars(rake, 3.25)).toBe(7);
    const gap = spaceBetween(rake, 7);
    expect(gap).toBeCloseTo(2.989, 3);
    expect((gap + 3 / 16) / cos).toBeCloseTo(3.904, 3);
    const level = { length: 36.5, width: 3 / 16 };
    expect(fewestBars(level, 3.25)).toBe(10);
    expect(spaceBetween(level, 10)).toBeCloseTo(3.148, 3);
  });

  it("need no bar where the length itself is clear, and one where it is a little more", () => {
    expect(fewestBars({ length: 100, width: 10 }, 100)).toBe(0);
    expect(fewestBars({ length: 100.01, width: 10 }, 100)).toBe(1);
    expect(spaceBetween({ length: 100, width: 10 }, 0)).toBe(100);
  });

  it("keep half a space before a corner: 500 mm, 10 mm bars, at most 100: 4 with 460/4.5 too wide, so 5 with 450/5.5", () => {
    const divided = { length: 500, width: 10, ends: 1.5 };
    expect(fewestBars(divided, 100)).toBe(5);
    expect(spaceBetween(divided, 5)).toBeCloseTo(450 / 5.5, 12);
  });

  it("are never too great, and one bar fewer always is", () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        ...([size(10, 4000), size(3, 60), size(20, 200), fc.constantFrom(1, 1.5, 2)] as const),
        (length, width, greatest, ends) => {
          const divided = { length, width, ends };
          const count = fewestBars(divided, greatest);
          if (ends > 1 || count > 0)
            expect(spaceBetween(divided, count)).toBeLessThanOrEqual(greatest + 1e-5);
          if (count > 0 && count - 2 + ends > 0) {
            expect(spaceBetween(divided, count - 1)).toBeGreaterThan(greatest);
          }
        },
      ),
    );
  });
});
