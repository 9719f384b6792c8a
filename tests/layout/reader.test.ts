/**
 * What the sections of a document are called. Source: the document's own words; 1 in = 25.4 mm exactly (agreement of
 * 1959), by which two spellings are the same sizes.
 */
import { describe, expect, it } from "vitest";
import { readerOf } from "../../src/layout/document/reader.js";
import { example, laidOut } from "./designs.js";

function nameOf(words: string, unit: "in" | "mm"): string | undefined {
  const reader = readerOf({}, unit, { post: words });
  expect(reader.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
  return reader.section("post", [])?.name;
}

describe("a section of a document", () => {
  it.each([
    // Without a unit the document's own is added, behind the sizes.
    ["square 2 x 0.188", "in", "square 2 x 0.188 in"],
    ["square 50 x 5", "mm", "square 50 x 5 mm"],
    ["  flat  2 x 3/8 ", "in", "flat 2 x 3/8 in"],
    ["flat 2 x ½", "in", "flat 2 x ½ in"],
    ["2 x 3/8 flat", "in", "2 x 3/8 in flat"],
    ["1.900 x 0.145", "in", "1.900 x 0.145 in"],
    // With a unit the words stay as they are, whatever the document's unit.
    ["square 50 x 5 mm", "in", "square 50 x 5 mm"],
    ["square 50 x 5 mm", "mm", "square 50 x 5 mm"],
    ['round 1.900" x 0.145"', "mm", 'round 1.900" x 0.145"'],
    ["round 2 in x 3 mm", "in", "round 2 in x 3 mm"],
    ["round bar 5/8 inch", "in", "round bar 5/8 inch"],
    ["round bar 1 in.", "in", "round bar 1 in."],
  ] as const)("%s (%s)", (words, unit, name) => {
    expect(nameOf(words, unit)).toBe(name);
  });

  it("of a standard keeps the standard's name", () => {
    expect(nameOf("nps 1-1/2 sch 40", "in")).toBe("NPS 1-1/2 Sch 40");
  });

  it("has one name for equal sizes, the first, so that a second spelling makes no second kind of steel", () => {
    const reader = readerOf({}, "in", {
      a: "square 2 x 1/4",
      b: "square tube 2 x 0.25",
      c: "square 2 x 0.188",
      d: "square bar 2",
    });
    const names = ["a", "b", "c", "d"].map((name) => reader.section(name, [])?.name);
    expect(names).toEqual([
      "square 2 x 1/4 in",
      "square 2 x 1/4 in",
      "square 2 x 0.188 in",
      "square bar 2 in",
    ]);
  });

  it("is called that in messages, and lengths there are in both units: posts 2 in, rail 1.9 in", () => {
    const found = laidOut(example()).diagnostics.filter((d) => d.code === "post-wider-than-rail");
    expect(found).toHaveLength(3);
    for (const { message } of found) {
      expect(message).toContain("(square 2 x 0.188 in)");
      expect(message).toContain("(round 1.900 x 0.145 in)");
      expect(message).toContain("got 1.3 mm (0.050 in) more on each side");
    }
  });
});
