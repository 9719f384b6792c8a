/**
 * Reading design documents: all JSON is answered, each mistake has its own code and path, and the example reads right.
 * Sizes are checked against their own arithmetic (1 in = 25.4 mm exactly).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseDesign } from "../../src/layout/document/parse-design.js";
import { example, type Loose } from "./designs.js";

/** Change to the example, expected code, expected path, words the message must have. */
const BAD: readonly (readonly [string, (d: Loose) => void, string, string, RegExp])[] = [
  ["a missing key", (d) => delete d.job, "missing", "job", /job: expected a string, got nothing/],
  ["a wrong version", (d) => (d.version = 2), "bad-value", "version", /expected 1, got 2/],
  ["a wrong unit", (d) => (d.unit = "cm"), "bad-value", "unit", /"in" or "mm", got "cm"/],
  ["a misspelt key", (d) => (d.stair.goin = 1), "unknown-key", "stair.goin", /only known keys, got "goin"/],
  [
    "a length of the wrong kind",
    (d) => (d.stair.going = true),
    "wrong-type",
    "stair.going",
    /expected a length.*got true/,
  ],
  [
    "tape language that is none",
    (d) => (d.stair.going = "ten"),
    "bad-length",
    "stair.going",
    /stair\.going.*ten/,
  ],
  ["a going of nothing", (d) => (d.stair.going = 0), "out-of-range", "stair.going", /from 0\.01 mm/],
  ["a negative overhang", (d) => (d.stair.overhang = "-1"), "out-of-range", "stair.overhang", /from 0 mm/],
  ["too many risers", (d) => (d.stair.risers = 101), "out-of-range", "stair.risers", /at most 100, got 101/],
  ["half a riser", (d) => (d.stair.risers = 2.5), "wrong-type", "stair.risers", /a whole number, got 2\.5/],
  ["a section that is none", (d) => (d.sections.rail = "thick"), "bad-section", "sections.rail", /thick/],
  [
    "a name that cannot be a file",
    (d) => (d.rails[0].id = "a/b"),
    "bad-name",
    "rails[0].id",
    /letters, digits/,
  ],
  [
    "a section name that cannot be one",
    (d) => (d.sections["a b"] = "round 2 x 0.1"),
    "bad-name",
    "sections.a b",
    /expected a name/,
  ],
  [
    "an unknown section",
    (d) => (d.posts.section = "pots"),
    "unknown-section",
    "posts.section",
    /rail, low, post, endPost/,
  ],
  [
    "a section every object has",
    (d) => (d.posts.section = "toString"),
    "unknown-section",
    "posts.section",
    /toString/,
  ],
  [
    "an unknown rail",
    (d) => (d.legs[0].undersides.hip = 1),
    "unknown-rail",
    "legs[0].undersides.hip",
    /legs\[0\] \(stair\).*\(low\), got "hip"/,
  ],
  ["two top rails", (d) => (d.rails[1].role = "top"), "top-rail-count", "rails", /exactly one.*got 2/],
  ["an id twice", (d) => (d.rails[0].id = "LOW"), "duplicate-id", "rails[1]", /got low again/],
  [
    "legs downward",
    (d) => d.legs.reverse(),
    "leg-order",
    "legs",
    /floor \(if any\), then a stair.*got landing, stair/,
  ],
  ["no stair leg", (d) => d.legs.shift(), "leg-order", "legs", /got landing/],
  ["an unknown leg", (d) => (d.legs[1].along = "roof"), "wrong-type", "legs[1].along", /`along`, got "roof"/],
  [
    "a tread that is the landing",
    (d) => (d.legs[0].posts.onTreads[3] = 13),
    "no-such-tread",
    "legs[0].posts.onTreads[3]",
    /1 to 12, got 13/,
  ],
  [
    "a wall nowhere",
    (d) => delete d.legs[1].length,
    "missing",
    "legs[1].length",
    /because it ends at a wall/,
  ],
  [
    "an unknown material",
    (d) => (d.material = "oak"),
    "unknown-material",
    "material",
    /mild-steel.*got "oak"/,
  ],
  [
    "a post of the wrong kind",
    (d) => (d.legs[1].posts.at[0] = []),
    "wrong-type",
    "legs[1].posts.at[0]",
    /expected a length, or an object with `at`, got a list of 0/,
  ],
  ["no steps", (d) => (d.stair.risers = 0), "out-of-range", "stair.risers", /at least 2, got 0/],
  [
    "four hundred steps",
    (d) => (d.stair.risers = 400),
    "out-of-range",
    "stair.risers",
    /at most 100, got 400/,
  ],
  [
    "a turn into itself",
    (d) => (d.legs[1].turn = { angle: 180 }),
    "out-of-range",
    "legs[1].turn.angle",
    /at most 150, got 180/,
  ],
  ["no turn at all", (d) => (d.legs[1].turn = { angle: 0 }), "out-of-range", "legs[1].turn.angle", /0\.5/],
  [
    "a turn before the first leg",
    (d) => (d.legs[0].turn = { angle: 90 }),
    "turn-before-first",
    "legs[0].turn",
    /before the first/,
  ],
  [
    "a level corner with a post's fields",
    (d) => (d.legs[1].turn = { angle: 90, corner: "level", above: "1" }),
    "bad-value",
    "legs[1].turn",
    /`above` only with a corner post/,
  ],
  [
    "a cap with no room for it",
    (d) => (d.legs[1].turn = { angle: 90, cap: "1/4" }),
    "out-of-range",
    "legs[1].turn.cap",
    /room for the cap/,
  ],
  [
    "a break at the first leg",
    (d) => (d.legs[0].break = "drop"),
    "no-break-here",
    "legs[0].break",
    /no leg comes before/,
  ],
  [
    "a break at a corner",
    (d) => Object.assign(d.legs[1], { break: "drop", turn: { angle: 90 } }),
    "no-break-here",
    "legs[1].break",
    /turns in plan/,
  ],
  [
    "an end between two legs",
    (d) => (d.legs[0].end = { type: "free" }),
    "end-between-legs",
    "legs[0].end",
    /between two legs/,
  ],
  [
    "nosings that go back",
    (d) =>
      (d.stair = {
        nosings: [
          { run: 0, height: "7" },
          { run: "10", height: "14" },
          { run: "9", height: "21" },
        ],
      }),
    "nosing-order",
    "stair.nosings[2]",
    /farther along and higher/,
  ],
  [
    "nosings that start late",
    (d) =>
      (d.stair = {
        nosings: [
          { run: "10", height: "7" },
          { run: "20", height: "14" },
        ],
      }),
    "nosing-order",
    "stair.nosings[0]",
    /lowest nosing at run 0/,
  ],
  [
    "spaces with two rules",
    (d) => (d.legs[1].posts = { spacing: { from: "3", to: "93", greatest: "40", spaces: 3 } }),
    "bad-spacing",
    "legs[1].posts.spacing",
    /got both/,
  ],
  [
    "spaces backward",
    (d) => (d.legs[1].posts = { spacing: { from: "93", to: "3", spaces: 3 } }),
    "bad-spacing",
    "legs[1].posts.spacing",
    /farther along/,
  ],
  [
    "two flights with nothing between",
    (d) => d.legs.splice(1, 1, { along: "stair", top: "42" }),
    "leg-order",
    "legs[1]",
    /landing between two flights/,
  ],
  ["a pair without the stair's width", (d) => (d.side = "both"), "missing", "stair.width", /both sides/],
  [
    "a guard past the middle of its stair",
    (d) => Object.assign(d.stair, { width: "36", inset: "18" }),
    "out-of-range",
    "stair.inset",
    /half the width/,
  ],
  [
    "posts on treads without a place",
    (d) => (d.legs[0].posts = { onTreads: [1] }),
    "missing",
    "legs[0].posts.onTreads[0].behindNosing",
    /behind its nosing/,
  ],
  ["two legs with one id", (d) => (d.legs[1].id = "Stair"), "duplicate-id", "legs[1]", /Stair again/],
  [
    "two caps",
    (d) =>
      d.rails.push({ id: "c1", role: "cap", section: "rail" }, { id: "c2", role: "cap", section: "rail" }),
    "top-rail-count",
    "rails",
    /at most one cap/,
  ],
  [
    "a side foot without a plate",
    (d) => (d.foot = { type: "side", below: "8" }),
    "missing",
    "foot.plate",
    /got nothing/,
  ],
  [
    "a bad key inside a post",
    (d) => (d.legs[1].posts.at[0] = { att: "3" }),
    "unknown-key",
    "legs[1].posts.at[0].att",
    /"att"/,
  ],
];

describe("parseDesign", () => {
  it.each(BAD)("answers %s", (_, change, code, path, words) => {
    const read = parseDesign(example(change));
    expect(read.ok).toBe(false);
    const found = read.diagnostics.find((d) => d.code === code && d.path === path);
    expect(read.diagnostics.map((d) => `${d.code} ${d.path}`)).toContain(`${code} ${path}`);
    expect(found?.message).toMatch(words);
    expect(found?.hint).not.toBe("");
  });

  it("suggests the key that was meant", () => {
    const read = parseDesign(example((d) => (d.stair.overhnag = d.stair.overhang)));
    expect(read.diagnostics[0]?.hint).toContain("`overhang`");
    const section = parseDesign(example((d) => (d.posts.section = "pots")));
    expect(section.diagnostics[0]?.hint).toContain("`post`");
  });

  it("tells every mistake at once", () => {
    const read = parseDesign(
      example((d) => {
        d.stair.going = "ten";
        d.posts.section = "nothing";
        d.material = "oak";
      }),
    );
    expect(read.diagnostics.map((d) => d.code).sort()).toEqual([
      "bad-length",
      "unknown-material",
      "unknown-section",
    ]);
  });

  it("lists at most fifty findings, and says that there are more", () => {
    const read = parseDesign(example((d) => (d.legs[1].posts.at = Array(300).fill(null))));
    expect(read.diagnostics).toHaveLength(51);
    expect(read.diagnostics.at(-1)?.code).toBe("more-findings");
  });

  it("reads the example in millimetres", () => {
    const read = parseDesign(example());
    if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join());
    const design = read.value;
    expect(design.stair).toEqual({
      risers: 13,
      floorToFloor: 98.3125 * 25.4,
      going: 10.625 * 25.4,
      overhang: 0.75 * 25.4,
    });
    expect(design.rails.map((rail) => [rail.id, rail.role])).toEqual([
      ["top", "top"],
      ["low", "lower"],
    ]);
    expect(design.foot).toEqual({
      ...{ type: "plate", thickness: 0.375 * 25.4, along: 4 * 25.4, across: 4 * 25.4, cornerRadius: 0 },
    });
    expect(design.legs[1]?.end).toEqual({ type: "wall", endPlate: 0.375 * 25.4, plate: { cornerRadius: 0 } });
    expect([design.material, design.gap]).toEqual(["mild-steel", 0]);
    expect(structuredClone(design)).toEqual(design);
  });

  it("takes tape language in its own unit in either document", () => {
    const metric = parseDesign(example((d) => (d.gap = "1.5 mm")));
    expect(metric.ok && metric.value.gap).toBe(1.5);
  });

  it("answers any JSON and any other value without throwing", () => {
    fc.assert(
      fc.property(fc.anything({ withNullPrototype: true, withBigInt: true, withDate: true }), (value) => {
        expect(parseDesign(value).ok).toBe(false);
      }),
      { numRuns: 500 },
    );
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const read = parseDesign(value);
        expect(read.ok).toBe(false);
        expect(read.diagnostics.length).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });

  it("answers the example with any one value replaced by any JSON", () => {
    const paths: (string | number)[][] = [];
    const walk = (value: Loose, path: (string | number)[]) => {
      if (path.length > 0) paths.push(path);
      if (typeof value !== "object" || value === null) return;
      for (const key of Object.keys(value))
        walk(value[key], [...path, Array.isArray(value) ? Number(key) : key]);
    };
    walk(example(), []);
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
        const read = parseDesign(
          example((d) => {
            const parent = path.slice(0, -1).reduce((own, key) => own[key], d);
            parent[path.at(-1)!] = value;
          }),
        );
        for (const found of read.diagnostics)
          expect(`${found.code}${found.message}${found.hint}`).not.toMatch(/undefined|\[object/);
        expect(read.ok || read.diagnostics.length > 0).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it("keeps its answer short for a document nested a thousand deep", () => {
    let deep: unknown = 1;
    for (let i = 0; i < 1000; i++) deep = { deep };
    const read = parseDesign(example((d) => (d.stair.going = deep)));
    expect(read.diagnostics.map((d) => d.code)).toEqual(["wrong-type"]);
    expect(read.diagnostics[0]!.message.length).toBeLessThan(300);
  });
});
