/**
 * Round corners and into rectangles. Sources: the ladder-round-the-corner closed form (a^⅔ + b^⅔)^(3/2), a textbook problem of
 * the calculus; for thick things a rectangle that is turned step by step against the inner corner; for rectangles the sizes
 * over all of a turned one, tried at many angles.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitsThrough } from "../../src/shop/fits-through.js";
import { longestRound, longestWithin, rectangleFits } from "../../src/shop/round-corner.js";

const width = fc.double({ min: 500, max: 3000, noNaN: true });
const STEPS = 2000;

/** Does a rectangle with both ends of one side on the outer walls keep the inner corner (a, b) outside, at every turn? */
function turnsRound(length: number, thickness: number, a: number, b: number): boolean {
  for (let k = 1; k < STEPS; k++) {
    const angle = (k / STEPS) * (Math.PI / 2);
    const along = [-Math.cos(angle), Math.sin(angle)] as const;
    // From the end on the floor wall (length · cos, 0) to (0, length · sin); its thickness lies towards the inner corner.
    const at = [a - length * Math.cos(angle), b] as const;
    const s = at[0] * along[0] + at[1] * along[1];
    const t = at[0] * along[1] - at[1] * along[0];
    if (s > 0 && s < length && t < thickness) return false;
  }
  return true;
}

describe("the longest rod round a corner", () => {
  it("is (a^⅔ + b^⅔)^(3/2): 13√13 for corridors of 8 and 27", () => {
    expect(longestRound({ from: 8, to: 27 })).toBeCloseTo(13 * Math.sqrt(13), 10);
    expect(longestRound({ from: 1000, to: 1000 })).toBeCloseTo(1000 * Math.sqrt(8), 8);
    fc.assert(
      fc.property(width, width, (a, b) => {
        const closed = (Math.cbrt(a) ** 2 + Math.cbrt(b) ** 2) ** 1.5;
        expect(longestRound({ from: a, to: b }) / closed).toBeCloseTo(1, 11);
        expect(longestRound({ from: b, to: a }) / closed).toBeCloseTo(1, 11);
      }),
    );
  });

  it("loses twice its thickness where the corridors are alike (at 45° the corner is the middle)", () => {
    for (const t of [0, 60, 300])
      expect(longestRound({ from: 1000, to: 1000, thickness: t })).toBeCloseTo(
        1000 * Math.sqrt(8) - 2 * t,
        8,
      );
  });

  it("just gets round, and a little longer does not", () => {
    fc.assert(
      fc.property(width, width, fc.double({ min: 0, max: 0.6, noNaN: true }), (a, b, share) => {
        const thickness = share * Math.min(a, b);
        const limit = longestRound({ from: a, to: b, thickness });
        expect(turnsRound(limit * (1 - 1e-9), thickness, a, b)).toBe(true);
        expect(turnsRound(limit * 1.001, thickness, a, b)).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  it("is pushed in sideways where it is thick, and is nothing where it is thicker than a corridor", () => {
    // Nearly as thick as the corridors are wide: 2√2 − 2 · 0.99 = 0.848, but 1 long needs no turn.
    expect(longestRound({ from: 1, to: 1, thickness: 0.99 })).toBe(1);
    expect(longestRound({ from: 1, to: 3, thickness: 1 })).toBe(3);
    expect(longestRound({ from: 1000, to: 2000, thickness: 1001 })).toBe(0);
  });
});

describe("a rectangle in a rectangle", () => {
  /** Greatest play, over all turns, on the tighter of the two sides; below zero it does not go in. */
  function play(p: number, q: number, a: number, b: number): number {
    let best = Number.NEGATIVE_INFINITY;
    for (let k = 0; k <= STEPS; k++) {
      const [c, s] = [Math.cos((k / STEPS) * (Math.PI / 2)), Math.sin((k / STEPS) * (Math.PI / 2))];
      best = Math.max(best, Math.min(a - (p * c + q * s), b - (p * s + q * c)));
    }
    return best;
  }

  it("goes in as trying every turn says", () => {
    const side = fc.double({ min: 1, max: 100, noNaN: true });
    const seen = { yes: 0, no: 0 };
    fc.assert(
      fc.property(side, side, side, side, (p, q, a, b) => {
        const room = play(p, q, a, b);
        fc.pre(Math.abs(room) > 0.1);
        expect(rectangleFits([p, q], [a, b])).toBe(room > 0);
        seen[room > 0 ? "yes" : "no"] += 1;
      }),
      { numRuns: 300 },
    );
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(20);
  });

  it("of no width is a rod: the diagonal of 300 and 400 is 500", () => {
    expect(longestWithin(0, [300, 400])).toBeCloseTo(500, 9);
    expect(rectangleFits([500, 0], [300, 400])).toBe(true);
    expect(rectangleFits([1100, 10], [1000, 500])).toBe(true);
    expect(rectangleFits([1120, 10], [1000, 500])).toBe(false);
  });

  it("is longest where its play is none", () => {
    const share = fc.double({ min: 0.02, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(width, width, share, (a, b, part) => {
        const q = part * Math.min(a, b);
        const limit = longestWithin(q, [a, b]);
        expect(limit).toBeGreaterThanOrEqual(Math.max(a, b) * (1 - 1e-12));
        expect(play(limit, q, a, b)).toBeLessThanOrEqual(1e-6);
        // At the limit it touches all four sides; the nearest of the angles tried is a little off.
        expect(play(limit, q, a, b)).toBeGreaterThan(-3);
      }),
      { numRuns: 60 },
    );
    expect(longestWithin(641, [500, 400])).toBe(0);
  });
});

describe("the way in", () => {
  const box = { length: 3000, depth: 1100, thickness: 60 };
  const only = (access: Parameters<typeof fitsThrough>[1]) => {
    const [passage, ...more] = fitsThrough(box, access);
    if (!passage || more.length > 0) throw new Error("not one passage");
    return passage;
  };

  it("asks nothing that is not known", () => {
    expect(fitsThrough(box, {})).toEqual([]);
  });

  it("through a door: the depth against what stands in it, tilted too", () => {
    const passage = only({ door: { width: 800, height: 2000 } });
    expect(passage).toMatchObject({ through: "door", what: "depth", value: 1100, fits: true });
    expect(passage.limit).toBeGreaterThan(2000);
    expect(passage.limit).toBeLessThan(Math.hypot(800, 2000));
    expect(passage.assumption).toMatch(/end on, with room for its length on both sides/);
    expect(only({ door: { width: 700, height: 700 } }).fits).toBe(false);
  });

  it("round a corridor's corner: 1000 √8 − 2 · 60, and what height adds", () => {
    const level = only({ corridor: { from: 1000, to: 1000 } });
    expect(level.limit).toBeCloseTo(1000 * Math.sqrt(8) - 120, 8);
    expect(level).toMatchObject({ what: "length", value: 3000, fits: false });
    expect(level.assumption).toMatch(/on edge, level; the height there is not known/);
    const high = only({ corridor: { from: 1000, to: 1000, height: 2600 } });
    expect(high.limit).toBeGreaterThanOrEqual(level.limit);
    expect(high.limit).toBeCloseTo(longestWithin(1100, [1000 * Math.sqrt(8) - 120, 2600]), 6);
    // A ceiling lower than it is deep: it stands on end, no longer than the ceiling is high, or is laid flat.
    expect(only({ corridor: { from: 1000, to: 1000, height: 1000 } }).limit).toBeCloseTo(1000, 6);
    expect(only({ corridor: { from: 2000, to: 2000, height: 1000 } }).assumption).toMatch(/lying flat/);
  });

  it("round a stair's landing by the same rule, saying what is left out", () => {
    const stair = only({ stair: { from: 1000, to: 1000 } });
    expect(stair.limit).toBe(only({ corridor: { from: 1000, to: 1000 } }).limit);
    expect(stair.assumption).toMatch(/the flights' slope left out/);
  });

  it("against the longest piece that got up; equal is within", () => {
    expect(only({ longest: 3000 })).toMatchObject({ through: "longest", limit: 3000, fits: true });
    expect(only({ longest: 2999 }).fits).toBe(false);
  });

  it("takes the sides in any order", () => {
    const access = { door: { width: 800, height: 2000 }, corridor: { from: 1000, to: 900, height: 2400 } };
    const turned = { length: 60, depth: 3000, thickness: 1100 };
    expect(fitsThrough(turned, access)).toEqual(fitsThrough(box, access));
  });
});
