/** Stock bars: published masses of square bars (EN 10059), closed forms of the others, names. */
import { describe, expect, it } from "vitest";
import { sectionProperties } from "../../../src/members/properties.js";
import { BARS } from "../../../src/members/sections/bar-table.js";
import { standardSection } from "../../../src/members/sections/standard.js";
import { named, offFigures, ROLLED } from "../rolled.js";

describe("bars", () => {
  it.each(named(ROLLED.squareBars))("%s: mass of the published table", (name, want) => {
    expect(offFigures(want, { mass: sectionProperties(standardSection(name)).massPerMetre })).toEqual([]);
  });

  it("are the rectangles and circles of their names", () => {
    expect(standardSection("EN 10058 50 x 10").shape).toEqual({
      kind: "rect-bar",
      width: 50,
      depth: 10,
      edgeRadius: 0,
    });
    expect(standardSection("EN 10058 10 x 50").shape).toMatchObject({ width: 10, depth: 50 });
    expect(standardSection("en10060 16").shape).toEqual({ kind: "round-bar", od: 16 });
    expect(standardSection("inch flat 2 x 3/8").shape).toMatchObject({
      width: 50.8,
      depth: expect.closeTo(9.525, 9),
    });
    expect(standardSection("Inch Round 5/8 in").shape).toEqual({ kind: "round-bar", od: 15.875 });
    expect(standardSection("inch square 9/16").name).toBe("inch square 9/16");
  });

  it.each([
    "en 10058 50",
    "en 10058 50 x 7",
    "en 10059 11",
    "inch flat 2 x 10 mm",
    "flat 50 x 10",
    "round bar 16",
  ])("does not know %j", (name) => {
    expect(BARS.find(name)).toBeUndefined();
  });
});
