/** Pitch and slope against shop cases a01–a03 and the demo stairs (shared/*.json, computed independently). */
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../src/kernel/diagnostic.js";
import { nosingLine } from "../../src/layout/site/nosing-line.js";
import { demo, shopCase } from "./cases.js";

describe("nosingLine", () => {
  it.each(["a01", "a02", "a03"])("has the pitch and slope per step of case %s", (id) => {
    const { inputs, near } = shopCase(id);
    const line = nosingLine({ risers: 5, floorToFloor: 5 * inputs.rise!, going: inputs.run! });
    near("theta_deg", line.pitch);
    near("slope_per_step", line.slopePerStep);
    near("slope_ratio", line.slope);
  });

  it.each([demo.straight, demo.Lshaped])("agrees with the demo stair of $risers risers", (stair) => {
    const line = nosingLine(stair);
    expect(line.pitch).toBeCloseTo(stair.pitchDeg, 9);
    expect(line.riser).toBeCloseTo(stair.riser, 9);
    expect(line.nosings).toHaveLength(stair.risers);
  });

  it("runs from nosing 1 to the landing edge as the demo data says", () => {
    const { nosing1to13, slopePerStep } = demo.straight;
    const line = nosingLine(demo.straight);
    const low = line.nosings[0]!;
    expect(-low.x).toBeCloseTo(nosing1to13.run, 9);
    expect(-low.z).toBeCloseTo(nosing1to13.rise, 9);
    expect(Math.hypot(low.x, low.z)).toBeCloseTo(nosing1to13.slope, 9);
    expect(line.slopePerStep).toBeCloseTo(slopePerStep, 9);
    expect(line.nosings.at(-1)).toEqual({ number: 13, x: 0, z: 0 });
  });

  it("has the L-shaped stair's run, rise and slope", () => {
    const { stairRunNosing, stairRise, slope } = demo.Lshaped;
    const low = nosingLine(demo.Lshaped).nosings[0]!;
    expect([-low.x, -low.z]).toEqual([stairRunNosing, stairRise]);
    expect(Math.hypot(low.x, low.z)).toBeCloseTo(slope, 9);
  });

  it("meets the floor one going in front of nosing 1 (trade geometry: the first riser is like the others)", () => {
    const line = nosingLine(demo.straight);
    expect(line.nosings[0]!.x - line.footX).toBeCloseTo(line.going, 9);
    expect(line.footX * line.slope).toBeCloseTo(line.floorZ, 9);
  });

  it.each([
    { risers: 0, floorToFloor: 100, going: 10 },
    { risers: 2.5, floorToFloor: 100, going: 10 },
    { risers: 3, floorToFloor: 0, going: 10 },
    { risers: 3, floorToFloor: 100, going: Number.NaN },
    { risers: 3, floorToFloor: Number.POSITIVE_INFINITY, going: 10 },
  ])("refuses $risers risers, $floorToFloor, $going", (stair) => {
    expect(() => nosingLine(stair)).toThrow(RakewrightError);
    expect(() => nosingLine(stair)).toThrow(/bad-stair/);
  });
});
