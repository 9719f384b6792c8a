/** Custom sections: outlines that are no region are refused with the side named. Geometry by hand (closed forms). */
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../../src/kernel/diagnostic.js";
import { circleLoop, type Loop, reverseLoop, type Segment } from "../../../src/kernel/region.js";
import { sectionProperties } from "../../../src/members/properties.js";
import { customSection, polygonLoop } from "../../../src/members/sections/custom.js";
import { rectTube } from "../../../src/members/sections/rect.js";

const plate = polygonLoop([
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
]);
const hole = (u: number, v: number, radius = 5): Loop => circleLoop([u, v], radius, "hole");
const line = (from: readonly [number, number], to: readonly [number, number]): Segment => ({
  kind: "line",
  from,
  to,
});

describe("customSection", () => {
  it("takes an outline with holes, drawn either way round", () => {
    for (const outer of [plate, reverseLoop(plate)]) {
      for (const inner of [hole(20, 20), reverseLoop(hole(20, 20))]) {
        const section = customSection({ name: "base plate", outer, holes: [inner, hole(80, 60)] });
        expect(sectionProperties(section).area).toBeCloseTo(8000 - 2 * Math.PI * 25, 9);
        expect(section).toMatchObject({ name: "base plate", shape: { kind: "custom" }, source: "as given" });
      }
    }
  });

  it("takes what the other constructors make, tangent corners and all", () => {
    const { region } = rectTube({ width: 60, depth: 40, wall: 3 });
    const section = customSection({
      name: "again",
      outer: region.outer,
      holes: region.holes,
      source: "drawing 7",
    });
    expect(section.region).toEqual(region);
    expect(section.source).toBe("drawing 7");
  });

  it("takes a tangent outline typed to seven digits", () => {
    const quarter = 1.5707963;
    const outer: Loop = [
      line([-20, -10], [20, -10]),
      { kind: "arc", centre: [20, 0], radius: 10, start: -quarter, sweep: 2 * quarter },
      line([20, 10], [-20, 10]),
      { kind: "arc", centre: [-20, 0], radius: 10, start: quarter, sweep: 2 * quarter },
    ];
    expect(sectionProperties(customSection({ name: "slot", outer })).area).toBeCloseTo(
      800 + Math.PI * 100,
      4,
    );
  });

  it("tells a hole in an arc's hollow from one inside: the cap of an arc counts", () => {
    const bite: Loop = [
      line([-30, 0], [-20, 0]),
      { kind: "arc", centre: [0, 0], radius: 20, start: Math.PI, sweep: -Math.PI },
      line([20, 0], [30, 0]),
      line([30, 0], [30, 40]),
      line([30, 40], [-30, 40]),
      line([-30, 40], [-30, 0]),
    ];
    expect(() => customSection({ name: "saddle", outer: bite, holes: [hole(0, 10, 2)] })).toThrow(
      "inside the outline",
    );
    expect(customSection({ name: "saddle", outer: bite, holes: [hole(0, 30, 2)] }).region.holes).toHaveLength(
      1,
    );
  });

  const bow = polygonLoop([
    [0, 0],
    [10, 10],
    [10, 0],
    [0, 10],
  ]);
  const there: Loop = [
    line([0, 0], [10, 0]),
    line([10, 0], [4, 0]),
    line([4, 0], [0, 5]),
    line([0, 5], [0, 0]),
  ];
  const nan: Loop = [line([0, 0], [Number.NaN, 0]), line([1, 0], [0, 1]), line([0, 1], [0, 0])];
  const threeQuarter: Loop = [
    { kind: "arc", centre: [0, 0], radius: 5, start: 0, sweep: 1.5 * Math.PI },
    line([0, -5], [5, 0]),
  ];
  it.each([
    ["no name", { name: " ", outer: plate }, "name"],
    ["empty outline", { name: "x", outer: [] }, "at least two sides"],
    ["open outline", { name: "x", outer: plate.slice(1) }, "gap"],
    ["not a number", { name: "x", outer: nan }, "finite"],
    ["hole of a radius no tool makes", { name: "x", outer: plate, holes: [hole(40, 40, 0.0009)] }, "no tool"],
    ["arc over half a turn", { name: "x", outer: threeQuarter }, "half a turn"],
    [
      "side of no length",
      {
        name: "x",
        outer: polygonLoop([
          [0, 0],
          [0, 0],
          [10, 0],
          [0, 10],
        ]),
      },
      "length above 0",
    ],
    ["bow tie", { name: "x", outer: bow }, "meet at (5, 5)"],
    ["doubling back", { name: "x", outer: there }, "meet at"],
    ["hole across the outline", { name: "x", outer: plate, holes: [hole(0, 40)] }, "hole 1"],
    ["hole touching the outline", { name: "x", outer: plate, holes: [hole(5, 40)] }, "hole 1"],
    ["holes overlap", { name: "x", outer: plate, holes: [hole(40, 40), hole(46, 40)] }, "hole 2"],
    ["holes alike", { name: "x", outer: plate, holes: [hole(40, 40), hole(40, 40)] }, "hole 2"],
    ["hole outside", { name: "x", outer: plate, holes: [hole(200, 40)] }, "inside the outline"],
    [
      "hole in a hole",
      { name: "x", outer: plate, holes: [hole(40, 40, 20), hole(40, 40)] },
      "lies inside hole",
    ],
  ])("refuses: %s", (_, input, part) => {
    const act = () => customSection(input);
    expect(act).toThrow(RakewrightError);
    expect(act).toThrow(/^bad-section: /);
    expect(act).toThrow(part);
  });
});
