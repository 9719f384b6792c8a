/**
 * Sag of a rail against shop cases f01 and f02 (shared/shop-cases.json, computed independently), against the figures of the
 * trade handbook they come from for two more (f03: 4 ft, 0.05 mm; f04: 0.065 wall, 24 ft, 64.7 mm, 1.62 degrees), and against
 * the beam's own equation E I y″ = M, integrated numerically.
 */
import { describe, expect, it } from "vitest";
import { railSag, stiffnessOf } from "../../src/checks/index.js";
import { rectTube, roundTube, sectionProperties } from "../../src/members/index.js";
import { shopCase } from "../layout/cases.js";

const IN = 25.4;
const pipe = (wall: number) => roundTube({ od: 1.9 * IN, wall: wall * IN });
const tube = (wall: number) =>
  rectTube({ width: 1.5 * IN, depth: 1.5 * IN, wall: wall * IN, outerRadius: 0, innerRadius: 0 });
const square = tube(0.12);
const steel = stiffnessOf("mild-steel");

/** A beam of length L by 20,000 trapezoids: y″ = M(x)/EI twice integrated, straightened so that y is 0 at both ends. */
function deflection(length: number, moment: (x: number) => number, stiff: number) {
  const n = 20_000;
  const h = length / n;
  const [turn, y] = [[0], [0]];
  for (let i = 1; i <= n; i++) {
    const bend = (moment((i - 1) * h) + moment(i * h)) / 2 / stiff;
    turn.push(turn[i - 1]! + bend * h);
    y.push(y[i - 1]! + ((turn[i - 1]! + turn[i]!) / 2) * h);
  }
  const tilt = y[n]! / length;
  return { y: y.map((own, i) => own - tilt * i * h), endTurn: Math.abs(turn[0]! - tilt), middle: n / 2 };
}

describe("railSag", () => {
  it.each([
    ["f01", pipe(0.145)],
    ["f02", square],
  ])("is case %s", (id, section) => {
    const { inputs, near } = shopCase(id);
    const material = { modulus: inputs.E!, density: inputs.density! };
    const found = railSag({ section, material, span: inputs.span!, slope: inputs.theta_deg! });
    near("weight_per_length", found.weightPerLength);
    near("sag", found.sag);
    near("end_slope_deg", found.endSlope);
    near("prop_force", found.prop.force);
    near("max_stress", found.stress);
    near("sag_each_half_after_prop", found.prop.halfSag);
    near("chord_shortening", found.shortening);
  });

  it("has the handbook's figures of a short bay and of a thin long rail", () => {
    const short = railSag({ section: square, material: steel, span: 48 * IN, slope: 0 });
    expect(short.sag.toFixed(2)).toBe("0.05");
    const thin = railSag({ section: tube(0.065), material: steel, span: 288 * IN, slope: 0 });
    expect(thin.sag.toFixed(1)).toBe("64.7");
    expect(thin.endSlope.toFixed(2)).toBe("1.62");
  });

  it("is what the beam's equation gives, with and without the prop", () => {
    const section = pipe(0.145);
    const span = 5000;
    const found = railSag({ section, material: steel, span, slope: 30 });
    const stiff = steel.modulus * sectionProperties(section).ix;
    const w = found.weightPerLength * Math.cos(Math.PI / 6);
    const lying = (x: number) => (-w * x * (span - x)) / 2;
    const bare = deflection(span, lying, stiff);
    expect(Math.abs(bare.y[bare.middle]! / found.sag)).toBeCloseTo(1, 6);
    expect((bare.endTurn * 180) / Math.PI / found.endSlope).toBeCloseTo(1, 6);
    expect(-lying(span / 2) / sectionProperties(section).wElasticX).toBeCloseTo(found.stress, 9);
    // The prop's force is the one that leaves the middle on the line.
    const lift = (x: number) => (found.prop.force * Math.min(x, span - x)) / 2;
    const propped = deflection(span, (x) => lying(x) + lift(x), stiff);
    expect(Math.abs(propped.y[propped.middle]!)).toBeLessThan(1e-5 * found.sag);
    const half = Math.max(...propped.y.map(Math.abs));
    expect(Math.abs(half / found.prop.halfSag - 1)).toBeLessThan(0.003);
  });

  it("grows with the fourth power of the span, and is less on a rake by its cosine", () => {
    const at = (span: number, slope: number) => railSag({ section: square, material: steel, span, slope });
    expect(at(4000, 0).sag / at(2000, 0).sag).toBeCloseTo(16, 10);
    expect(at(4000, 60).sag / at(4000, 0).sag).toBeCloseTo(0.5, 10);
    expect(at(4000, -60)).toEqual(at(4000, 60));
  });

  it("refuses a rail without a span, or plumb", () => {
    const bad = (span: number, slope: number) => () =>
      railSag({ section: square, material: steel, span, slope });
    for (const own of [bad(0, 0), bad(-1, 0), bad(Number.NaN, 0), bad(1000, 90)])
      expect(own).toThrow(/bad-span/);
  });

  it("knows how stiff the materials of the table are", () => {
    // EN 1993-1-4, 2.1.3 and AISC 360 (from memory).
    expect(stiffnessOf("stainless-316")).toMatchObject({ modulus: 200_000, density: 8000 });
    expect(() => stiffnessOf("oak")).toThrow(/unknown-material/);
  });
});
