/** A slightly steeper rail, against the demo stair's numbers (36 in over nosing 1, 42 in over nosing 13). */
import { describe, expect, it } from "vitest";
import { compromiseRail } from "../../src/layout/rails/compromise.js";
import { nosingLine } from "../../src/layout/site/nosing-line.js";
import { demo } from "./cases.js";

describe("compromiseRail", () => {
  it("has the demo data's pitch and heights", () => {
    const { railPitchDeg, heightPerNosing } = demo.straight.compromise_36_at_nosing1_to_42_at_13;
    const rail = compromiseRail(nosingLine(demo.straight), { first: 36, last: 42 });
    expect(rail.pitch).toBeCloseTo(railPitchDeg, 9);
    rail.heights.forEach((height, i) => {
      expect(height).toBeCloseTo(heightPerNosing[i]!, 9);
    });
    expect(rail.heights).toHaveLength(heightPerNosing.length);
  });

  it("keeps the stair's own pitch for equal heights and for a single nosing", () => {
    const line = nosingLine({ risers: 4, floorToFloor: 700, going: 250 });
    expect(compromiseRail(line, { first: 900, last: 900 }).pitch).toBeCloseTo(line.pitch, 12);
    const one = nosingLine({ risers: 1, floorToFloor: 175, going: 250 });
    expect(compromiseRail(one, { first: 900, last: 950 })).toEqual({ pitch: one.pitch, heights: [950] });
  });
});
