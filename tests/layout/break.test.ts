/** Breaks against shop cases a11, a12, a17, a19, a22 and the demo stairs, and by intersecting lines and bisectors. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakPoint, footBreak, heightNeededOverRiser } from "../../src/layout/rails/break.js";
import { demo, shopCase } from "./cases.js";

const pitchOf = (rise: number, run: number) => (Math.atan2(rise, run) * 180) / Math.PI;
const at = (input: Parameters<typeof breakPoint>[0]) => {
  const found = breakPoint(input);
  if (found.kind !== "at") throw new Error(found.kind);
  return found;
};

describe("breakPoint", () => {
  it.each(["a11", "a12"])("breaks where case %s says", (id) => {
    const { inputs, near } = shopCase(id);
    const pitch = pitchOf(inputs.rise!, inputs.run!);
    const found = at({ heightRake: inputs.height_rake!, heightLevel: inputs.height_level!, pitch });
    near("break_x", found.x);
    near("along_rake_from_plumb_over_nosing", found.alongRake);
  });

  it("has mid-depth and underside breaks of case a17", () => {
    const { inputs, near } = shopCase("a17");
    const height = inputs.height_top!;
    const pitch = pitchOf(inputs.rise!, inputs.run!);
    const found = at({ heightRake: height, heightLevel: height, pitch, depth: inputs.depth! });
    near("top_break_x", found.x);
    near("centre_break_x", found.midDepth);
    near("underside_break_x", found.underside);
    near("joint_lean_from_plumb_deg", found.miter);
  });

  it("agrees with both demo stairs", () => {
    const { straight, Lshaped } = demo;
    const flat = at({ heightRake: 42, heightLevel: 42, pitch: straight.pitchDeg, depth: 1.9 });
    expect(flat.x).toBe(straight.break42_42);
    expect(flat.midDepth).toBeCloseTo(straight.breakMidDepthPastNosing, 9);
    expect(flat.underside).toBeCloseTo(straight.breakUndersidePastNosing, 9);
    expect(flat.miter).toBeCloseTo(straight.miterDeg, 9);
    const cases = [
      [straight.break36_42, 36, 42, straight.pitchDeg],
      [straight.break42_36, 42, 36, straight.pitchDeg],
      [Lshaped.break36_42, 36, 42, Lshaped.pitchDeg],
    ] as const;
    for (const [x, heightRake, heightLevel, pitch] of cases)
      expect(at({ heightRake, heightLevel, pitch }).x).toBeCloseTo(x, 9);
  });

  it("is tagged, not infinite, for parallel rails (handbook cases a15, a16: no break, or anywhere)", () => {
    expect(breakPoint({ heightRake: 36, heightLevel: 42, pitch: 0 })).toEqual({ kind: "none", step: 6 });
    expect(breakPoint({ heightRake: 36, heightLevel: 36, pitch: 5, levelSlope: 5 })).toEqual({
      kind: "anywhere",
    });
  });

  it("gives the handbook's other worked numbers (34 to 42 at 60°: 4.619; 1:12: 72; 0.6° landing: 1.421)", () => {
    expect(at({ heightRake: 34, heightLevel: 42, pitch: 60 }).x).toBeCloseTo(4.619, 3);
    expect(at({ heightRake: 36, heightLevel: 42, pitch: pitchOf(1, 12) }).x).toBeCloseTo(72, 9);
    const found = at({ heightRake: 36, heightLevel: 37, pitch: pitchOf(7.5, 10.5), levelSlope: 0.6 });
    expect(found.x).toBeCloseTo(1.421, 3);
  });

  it("lies on both lines, and its underside on both lines offset square to the rails (second route: plane geometry)", () => {
    const height = fc.double({ min: 500, max: 1500, noNaN: true });
    const angle = fc.double({ min: 10, max: 60, noNaN: true });
    const slope = fc.double({ min: -5, max: 5, noNaN: true });
    const depth = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(height, height, angle, slope, depth, (heightRake, heightLevel, pitch, levelSlope, d) => {
        const found = at({ heightRake, heightLevel, pitch, levelSlope, depth: d });
        const line = (h: number, degrees: number, down: number) => {
          const t = (degrees * Math.PI) / 180;
          return (x: number) => h - down / Math.cos(t) + x * Math.tan(t);
        };
        for (const [x, down] of [
          [found.x, 0],
          [found.midDepth, d / 2],
          [found.underside, d],
        ] as const) {
          expect(line(heightRake, pitch, down)(x)).toBeCloseTo(line(heightLevel, levelSlope, down)(x), 6);
        }
      }),
    );
  });
});

describe("heightNeededOverRiser", () => {
  it("is case a19's height", () => {
    const { inputs, near, expected } = shopCase("a19");
    const pitch = pitchOf(inputs.rise!, inputs.run!);
    const input = { heightRake: inputs.height_rake!, overhang: inputs.nosing_overhang!, pitch };
    const height = heightNeededOverRiser(input);
    near("height_level_needed", height);
    expect(at({ heightRake: input.heightRake, heightLevel: height, pitch }).x).toBeCloseTo(
      expected.break_x_wanted!,
      9,
    );
  });
});

describe("footBreak", () => {
  it("is case a22's extension", () => {
    const { inputs, near } = shopCase("a22");
    const pitch = pitchOf(inputs.rise!, inputs.run!);
    const found = footBreak({ firstRiser: inputs.bottom_nosing_above_floor!, pitch });
    near("break_x_from_bottom_nosing", found.x);
    near("slope_length_of_extension", found.alongRake);
  });

  it("follows the first riser (demo data; handbook case a28: 6.5 in at 7.5/10.5 gives 9.1 in)", () => {
    const { riser, pitchDeg, firstRiserRule_x } = demo.straight;
    expect(-footBreak({ firstRiser: riser, pitch: pitchDeg }).x).toBeCloseTo(firstRiserRule_x, 9);
    expect(-footBreak({ firstRiser: 6.5, pitch: pitchOf(7.5, 10.5) }).x).toBeCloseTo(9.1, 9);
  });
});
