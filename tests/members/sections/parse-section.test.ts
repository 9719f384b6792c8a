/** Trade language of sections. What each text means is written out in the sizes beside it; the inch is 25.4 mm. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LengthUnit } from "../../../src/kernel/length.js";
import type { SectionShape } from "../../../src/members/section.js";
import { angleBar } from "../../../src/members/sections/angle.js";
import { channelBar } from "../../../src/members/sections/channel.js";
import { parseSection } from "../../../src/members/sections/parse-section.js";
import { rectBar, rectTube } from "../../../src/members/sections/rect.js";
import { roundBar, roundTube } from "../../../src/members/sections/round.js";
import { standardSection, standardSections } from "../../../src/members/sections/standard.js";

const inch = (n: number) => expect.closeTo(n * 25.4, 9);
const mm = (n: number) => expect.closeTo(n, 9);
type Shape = Partial<Record<"od" | "wall" | "width" | "depth" | "thickness" | "web" | "flange", unknown>> & {
  kind: SectionShape["kind"];
};

const cases: readonly (readonly [string, LengthUnit, Shape])[] = [
  ["round 1.900 x 0.145", "in", { kind: "round-tube", od: inch(1.9), wall: inch(0.145) }],
  ["Round Tube 1-1/2 X .120", "in", { kind: "round-tube", od: inch(1.5), wall: inch(0.12) }],
  ["CHS 48.3 × 3.2", "mm", { kind: "round-tube", od: mm(48.3), wall: mm(3.2) }],
  ["48.3 x 3.2 mm", "in", { kind: "round-tube", od: mm(48.3), wall: mm(3.2) }],
  ["round 48.3 mm x 3.2 mm", "in", { kind: "round-tube", od: mm(48.3), wall: mm(3.2) }],
  ['round 1.9" by 0.145"', "mm", { kind: "round-tube", od: inch(1.9), wall: inch(0.145) }],
  ["square 1-1/2 x 0.120", "in", { kind: "rect-tube", width: inch(1.5), depth: inch(1.5), wall: inch(0.12) }],
  ["square tube 40 x 3", "mm", { kind: "rect-tube", width: mm(40), depth: mm(40), wall: mm(3) }],
  ["rect 2 x 1 x 0.083", "in", { kind: "rect-tube", width: inch(2), depth: inch(1), wall: inch(0.083) }],
  ["flat 2 x 3/8", "in", { kind: "rect-bar", width: inch(2), depth: inch(0.375) }],
  ["bar 2 x 3/8", "in", { kind: "rect-bar", width: inch(2), depth: inch(0.375) }],
  ["flat 2 x 3/8 in", "mm", { kind: "rect-bar", width: inch(2), depth: inch(0.375) }],
  ["50 x 10 flat", "mm", { kind: "rect-bar", width: mm(50), depth: mm(10) }],
  ["round bar 5/8", "in", { kind: "round-bar", od: inch(0.625) }],
  ["round 5/8 bar", "in", { kind: "round-bar", od: inch(0.625) }],
  ["square bar 1/2", "in", { kind: "rect-bar", width: inch(0.5), depth: inch(0.5) }],
  ["angle 2 x 2 x 1/4", "in", { kind: "angle", width: inch(2), depth: inch(2), thickness: inch(0.25) }],
  ["60 x 40 x 5 angle", "mm", { kind: "angle", width: mm(60), depth: mm(40), thickness: mm(5) }],
  ["angle bar 50 x 50 x 7 mm", "in", { kind: "angle", width: mm(50), depth: mm(50), thickness: mm(7) }],
  ["channel 50 x 100 x 5 x 8.5", "mm", { kind: "channel", width: 50, depth: 100, web: 5, flange: 8.5 }],
];

describe("parseSection", () => {
  it.each(cases)("reads %j in a document in %s", (text, unit, shape) => {
    const result = parseSection(text, unit);
    expect(result.ok && result.value.shape).toMatchObject(shape);
  });

  it("reads standard names", () => {
    const result = parseSection("NPS 1-1/2 Sch 40", "mm");
    expect(result).toEqual({ ok: true, value: standardSection("NPS 1-1/2 Sch 40"), diagnostics: [] });
  });

  it("says that bare sizes were taken for a round tube", () => {
    const result = parseSection("48.3 x 3.2", "mm", "sections.post");
    expect(result.diagnostics).toMatchObject([
      { code: "section-assumed", severity: "note", path: "sections.post" },
    ]);
    expect(parseSection("round 48.3 x 3.2", "mm").diagnostics).toEqual([]);
  });

  it("reads back the name every constructor gives, for sizes of whole hundredths", () => {
    const size = fc.integer({ min: 2000, max: 20_000 }).map((n) => n / 100);
    const wall = fc.integer({ min: 1, max: 999 }).map((n) => n / 100);
    fc.assert(
      fc.property(size, size, wall, (a, b, t) => {
        const made = [
          roundTube({ od: a, wall: t }),
          roundBar({ od: a }),
          rectTube({ width: a, depth: b, wall: t }),
          rectTube({ width: a, depth: a, wall: t }),
          rectBar({ width: a, depth: b }),
          rectBar({ width: b, depth: b }),
          angleBar({ width: a, depth: b, thickness: t }),
          channelBar({ width: a, depth: b, web: t, flange: t }),
        ];
        for (const section of made)
          expect(parseSection(section.name, "mm")).toEqual({ ok: true, value: section, diagnostics: [] });
      }),
    );
    for (const section of standardSections())
      expect(parseSection(section.name, "in")).toMatchObject({ ok: true, value: { name: section.name } });
  });

  it.each([
    ["", "in", "bad-section", "sizes"],
    ["tee 2 x 2 x 1/4", "in", "bad-section", "unknown"],
    ["angle 50 x 50", "mm", "bad-section", "2 sizes"],
    ["angle 50 x 40 x 40", "mm", "bad-section", "below 40"],
    ["L 50 x 50 x 7", "mm", "bad-section", "tables of standard sections"],
    ["EN 10219 40 x 40 x 3.1", "mm", "bad-section", "tables of standard sections"],
    ["UPE 90", "mm", "bad-section", "tables of standard sections"],
    ["square 40", "mm", "bad-section", "1 sizes"],
    ["round 48.3 x 3.2 x 2", "mm", "bad-section", "3 sizes"],
    ["round 48.3 x 30", "mm", "bad-section", "below 24.15"],
    ["round 0 x 0", "mm", "bad-section", "above 0"],
    ["NPS 5 Sch 40", "in", "bad-section", "tables of standard sections"],
    ["round 2 in x 3", "mm", "bad-section", "some sizes have a unit"],
    ["flat 2 x 3/8", "mm", "bad-length", "without a unit"],
    ["round 48,3 x 3,2", "mm", "bad-length", "comma"],
    ["round two x three", "mm", "bad-section", "unknown"],
    ["x".repeat(200), "mm", "bad-section", "200 characters"],
  ] as const)("refuses %j in a document in %s", (text, unit, code, part) => {
    const result = parseSection(text, unit, "sections.post");
    expect(result.ok).toBe(false);
    expect(result.diagnostics[0]).toMatchObject({ code, severity: "error", path: "sections.post" });
    expect(result.diagnostics.map((d) => d.message).join()).toContain(part);
  });

  it("never throws, whatever the text", () => {
    const pieces = fc.constantFrom(
      "round",
      "square",
      "rect",
      "bar",
      "flat",
      " ",
      "x",
      "2",
      "1/2",
      "0",
      "-",
      "in",
      "mm",
      '"',
      ".",
      "sch",
      "angle",
      "channel",
      "en 10219",
      "l",
      "hss",
      "40",
      "nps",
    );
    const text = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.array(pieces, { maxLength: 10 }).map((a) => a.join("")),
    );
    fc.assert(
      fc.property(text, fc.constantFrom<LengthUnit>("mm", "in"), (input, unit) => {
        const result = parseSection(input, unit);
        expect(result.ok || result.diagnostics.length > 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
});
