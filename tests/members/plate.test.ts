/**
 * Plates: how they stand, and the outlines and holes that are refused. Closed forms; invented sizes.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../src/kernel/index.js";
import {
  type PlateInput,
  plate,
  plateSizes,
  polygonLoop,
  sectionProperties,
} from "../../src/members/index.js";

const base = (more: Partial<PlateInput> = {}): PlateInput => ({
  id: "BP1",
  outline: { width: 100, depth: 80 },
  thickness: 10,
  at: [200, 0, -50],
  normal: [0, 0, 1],
  ...more,
});

/** The refusal of an input that must be refused. */
function refusal(input: PlateInput): RakewrightError {
  try {
    plate(input);
  } catch (error) {
    if (error instanceof RakewrightError) return error;
  }
  throw new Error("was not refused");
}

describe("a plate", () => {
  it("is as long as it is thick, from the face it stands on along its normal", () => {
    const made = plate(base({ normal: [0, 0, 4], mark: "B", role: "other", material: "stainless-steel" }));
    expect(made).toMatchObject({ kind: "plate", from: [200, 0, -50], to: [200, 0, -40], mark: "B" });
    expect(made.material).toBe("stainless-steel");
    expect(made.section.name).toBe("plate 100 x 80");
    // Level: v is uphill (X), so that the depth runs along the stair.
    expect(made.frame.y[0]).toBe(1);
    expect(plate(base({ normal: [1, 0, 0], kind: "bracket" }))).toMatchObject({
      kind: "bracket",
      frame: { y: [0, 0, 1] },
    });
  });

  it("has the area of its outline less its holes (closed form: rounded corners and circles)", () => {
    const { section } = plate(
      base({
        outline: { width: 100, depth: 80, cornerRadius: 8 },
        holes: [36, -36].flatMap((u) => [26, -26].map((v) => ({ at: [u, v] as const, diameter: 11 }))),
      }),
    );
    const want = 100 * 80 - (4 - Math.PI) * 64 - 4 * Math.PI * 5.5 ** 2;
    expect(sectionProperties(section).area).toBeCloseTo(want, 9);
  });

  it("takes any outline; sizes and holes are told from its left and bottom edge", () => {
    const tab = polygonLoop([
      [0, 0],
      [60, 0],
      [60, 25],
      [30, 50],
      [0, 50],
    ]);
    const { section } = plate(base({ outline: tab, holes: [{ at: [20, 30], diameter: 13 }] }));
    expect(plateSizes(section)).toEqual({
      width: 60,
      depth: 50,
      holes: [{ diameter: 13, fromLeft: 20, fromBottom: 30 }],
      otherHoles: 0,
    });
    const centred = plate(base({ holes: [{ at: [-36, 26], diameter: 11 }] }));
    expect(plateSizes(centred.section).holes).toEqual([{ diameter: 11, fromLeft: 14, fromBottom: 66 }]);
  });

  it("survives a structured clone", () => {
    const made = plate(base({ holes: [{ at: [0, 0], diameter: 20 }] }));
    expect(structuredClone(made)).toEqual(made);
  });
});

describe("refused by name", () => {
  it("a hole that leaves less to the edge than the shop's limit, to the micrometre (property)", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 44, noNaN: true }),
        fc.double({ min: 0.5, max: 20, noNaN: true }),
        (u, least) => {
          const left = 50 - u - 5;
          fc.pre(Math.abs(left - least) > 1e-6);
          const input = base({ holes: [{ at: [u, 0], diameter: 10 }], leastEdge: least });
          if (left > least) expect(plate(input).section.region.holes).toHaveLength(1);
          else expect(refusal(input).diagnostic.values.left).toBeCloseTo(left, 9);
        },
      ),
    );
  });

  it.each<[string, string, RegExp, Partial<PlateInput>]>([
    [
      "a hole cut into the edge",
      "bad-plate",
      /hole 1, 11 mm at \(46, 0\), leaves -1\.500 mm to the outline/,
      { holes: [{ at: [46, 0], diameter: 11 }] },
    ],
    [
      "a hole off the plate",
      "bad-plate",
      /hole 1.*leaves -15\.500 mm/,
      { holes: [{ at: [60, 0], diameter: 11 }] },
    ],
    [
      "two holes that meet",
      "bad-plate",
      /holes 1 and 2 leave -1\.000 mm between them/,
      {
        holes: [
          { at: [0, 0], diameter: 11 },
          { at: [10, 0], diameter: 11 },
        ],
      },
    ],
    [
      "two holes nearer than the web asked for",
      "bad-plate",
      /leave 4\.000 mm between them; expected at least 5 mm/,
      {
        leastWeb: 5,
        holes: [
          { at: [0, 0], diameter: 11 },
          { at: [15, 0], diameter: 11 },
        ],
      },
    ],
    [
      "a hole without size",
      "bad-plate",
      /hole 1: expected a centre and a diameter above 0 mm, got 0/,
      { holes: [{ at: [0, 0], diameter: 0 }] },
    ],
    ["a hole nowhere", "bad-plate", /hole 1/, { holes: [{ at: [Number.NaN, 0], diameter: 9 }] }],
    ["no thickness", "bad-section", /thickness above 0 mm, got 0/, { thickness: 0 }],
    [
      "a corner too round",
      "bad-section",
      /cornerRadius/,
      { outline: { width: 100, depth: 80, cornerRadius: 41 } },
    ],
    [
      "an outline that crosses itself",
      "bad-section",
      /meet at/,
      {
        outline: polygonLoop([
          [0, 0],
          [40, 40],
          [40, 0],
          [0, 40],
        ]),
      },
    ],
    ["no direction", "bad-member", /direction for its thickness/, { normal: [0, 0, 0] }],
    ["no id", "bad-member", /expected an id/, { id: " " }],
  ])("%s", (_, code, words, more) => {
    const error = refusal(base(more));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(words);
    expect(error.diagnostic.hint).not.toBe("");
  });
});
