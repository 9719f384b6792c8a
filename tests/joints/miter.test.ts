import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { miter } from "../../src/joints/miter.js";
import { misses, num, referenceCase, referenceIds } from "./reference.js";

const RAD = Math.PI / 180;
/** The rake of a stair of 7.5 rise on 10.5 run. */
const RAKE = Math.atan2(7.5, 10.5) / RAD;

describe("miter", () => {
  // Source: shared/shop-cases.json, independent script from the cited formulas.
  it.each(referenceIds("b01-", "b02-"))("meets the worked case %s", (id) => {
    const c = referenceCase(id);
    const rake = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run")) / RAD;
    const m = miter({ angle: rake, depths: [num(c.inputs, "depth_rake"), num(c.inputs, "depth_level")] });
    const found = misses(c, {
      lean: [m.lean, num(c.expected, "joint_lean_from_plumb_deg")],
      level: [m.second.miter, num(c.expected, "level_miter_deg")],
      rake: [m.first.miter, num(c.expected, "rake_miter_deg")],
      joint: [m.jointLength, num(c.expected, "joint_length")],
      rakeLong: [m.first.longMinusShort, num(c.expected, "rake_long_minus_short")],
      levelLong: [m.second.longMinusShort, num(c.expected, "level_long_minus_short")],
    });
    expect(found).toEqual([]);
  });

  // Source: shared/published-joints.json, bisector mitre (NAVEDTRA 14251 ch. 3 construction).
  it.each(referenceIds("mitre-"))("meets the published planar mitre %s", (id) => {
    const c = referenceCase(id);
    const od = num(c.inputs, "width_or_OD_mm");
    const m = miter({ angle: num(c.inputs, "turn_deg"), depths: [od, od] });
    const found = misses(c, {
      first: [m.first.miter, num(c.expected, "saw_angle_from_square_deg")],
      second: [m.second.miter, num(c.expected, "saw_angle_from_square_deg")],
      halfCutback: [m.first.longMinusShort / 2, num(c.expected, "half_cutback_mm")],
      long: [m.second.longMinusShort, num(c.expected, "long_to_short_mm")],
      ellipse: [m.jointLength, num(c.expected, "ellipse_major_mm")],
    });
    expect(found).toEqual([]);
  });

  it("stands plumb where the level rail is as deep as the raking one is plumb (closed form)", () => {
    const m = miter({ angle: 40, depths: [50, 50 / Math.cos(40 * RAD)] });
    expect(m.second.miter).toBeCloseTo(0, 12);
    expect(m.first.miter).toBeCloseTo(40, 12);
    expect(m.jointLength).toBeCloseTo(50 / Math.cos(40 * RAD), 12);
  });

  it("puts a deep level rail's long point at the bottom (worked by hand to three figures)", () => {
    // tan φ = (1/2 − cos 35.54°)/sin 35.54° = (0.5 − 0.81373)/0.58124 = −0.5398.
    const m = miter({ angle: RAKE, depths: [1, 2] });
    expect(m.second.miter).toBeCloseTo(-28.36, 2);
    expect(m.first.miter).toBeCloseTo(63.9, 2);
  });

  it("splices equal rails square and refuses unequal ones at no turn", () => {
    const cut = { miter: 0, longMinusShort: 0 };
    expect(miter({ angle: 0, depths: [40, 40] })).toEqual({
      lean: 0,
      first: cut,
      second: cut,
      jointLength: 40,
    });
    expect(() => miter({ angle: 0, depths: [40, 30] })).toThrow(/^no-miter: .*40 mm and 30 mm/);
  });

  it.each([
    ["angle", { angle: Number.NaN, depths: [40, 40] }],
    ["angle", { angle: 180, depths: [40, 40] }],
    ["angle", { angle: -180, depths: [40, 40] }],
    ["depths[0]", { angle: 30, depths: [0, 40] }],
    ["depths[1]", { angle: 30, depths: [40, Number.POSITIVE_INFINITY] }],
  ] as const)("names a wrong %s", (field, input) => {
    expect(() => miter(input)).toThrow(`bad-miter: \`${field}\``);
  });

  const turn = fc.double({ min: 0.5, max: 170, noNaN: true });
  const depth = fc.double({ min: 5, max: 200, noNaN: true });

  it("lands both undersides on one point (second route: the crossing of two lines)", () => {
    // Level rail: top z = 0, bottom z = −d2. Raking rail: top along (cos θ, sin θ) to the origin, bottom d1 square below it.
    fc.assert(
      fc.property(turn, depth, depth, (angle, d1, d2) => {
        const m = miter({ angle, depths: [d1, d2] });
        const [cos, sin] = [Math.cos(angle * RAD), Math.sin(angle * RAD)];
        const [x, z] = [m.jointLength * Math.sin(m.lean * RAD), -m.jointLength * Math.cos(m.lean * RAD)];
        const scale = Math.max(m.jointLength, d1, d2);
        expect(Math.abs(z + d2)).toBeLessThanOrEqual(1e-11 * scale);
        expect(Math.abs(sin * x - cos * z - d1)).toBeLessThanOrEqual(1e-11 * scale);
        // Top edges end at the origin; the bottom edges end where the bottom corner lies along each rail.
        expect(Math.abs(m.first.longMinusShort + (cos * x + sin * z))).toBeLessThanOrEqual(1e-9 * scale);
        expect(Math.abs(m.second.longMinusShort - x)).toBeLessThanOrEqual(1e-9 * scale);
      }),
    );
  });

  it("turns over with the bend: a valley is the crest with long and short points exchanged", () => {
    fc.assert(
      fc.property(turn, depth, depth, (angle, d1, d2) => {
        const crest = miter({ angle, depths: [d1, d2] });
        const valley = miter({ angle: -angle, depths: [d1, d2] });
        expect(valley.first.miter).toBeCloseTo(-crest.first.miter, 9);
        expect(valley.second.longMinusShort).toBeCloseTo(-crest.second.longMinusShort, 6);
        expect(valley.jointLength / crest.jointLength).toBeCloseTo(1, 12);
      }),
    );
  });

  it("scales: lengths by the factor, angles not at all; shares the turn between the cuts", () => {
    fc.assert(
      fc.property(turn, depth, depth, fc.double({ min: 0.1, max: 30, noNaN: true }), (angle, d1, d2, k) => {
        fc.pre(Math.abs(d1 - d2) > 1e-3);
        const [a, b] = [miter({ angle, depths: [d1, d2] }), miter({ angle, depths: [k * d1, k * d2] })];
        expect(b.first.miter).toBeCloseTo(a.first.miter, 8);
        expect(b.jointLength / a.jointLength).toBeCloseTo(k, 8);
        expect(a.first.miter + a.second.miter).toBeCloseTo(angle, 10);
      }),
    );
  });

  it("is continuous to a straight run for equal depths: half a small turn each (closed form)", () => {
    const m = miter({ angle: 1e-7, depths: [40, 40] });
    expect(m.first.miter).toBeCloseTo(5e-8, 20);
    expect(m.first.longMinusShort / (40 * Math.tan(5e-8 * RAD))).toBeCloseTo(1, 12);
  });
});
