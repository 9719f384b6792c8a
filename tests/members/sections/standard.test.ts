/** All tables together: every section is found again by its name, is sound, and says where its sizes come from. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sectionProperties } from "../../../src/members/properties.js";
import { customSection } from "../../../src/members/sections/custom.js";
import {
  findStandardSection,
  standardSection,
  standardSections,
} from "../../../src/members/sections/standard.js";

const all = standardSections();

describe("standard sections", () => {
  it("have names of their own that find them again, in any case and spacing", () => {
    expect(all.length).toBeGreaterThan(800);
    expect(new Set(all.map((s) => s.name)).size).toBe(all.length);
    for (const section of all) {
      expect(standardSection(section.name), section.name).toEqual(section);
      expect(findStandardSection(` ${section.name.toLowerCase().replace(/ x /g, "x")} `)?.name).toBe(
        section.name,
      );
    }
  });

  it("say their source, and survive a structured clone", () => {
    for (const section of all) expect(section.source).toMatch(/^(ASME|EN|ASTM|common)/);
    expect(structuredClone(all)).toEqual(all);
  });

  // customSection asks what no constructor here asks: that the outline closes and nowhere crosses itself (second route).
  it("are closed outlines that do not cross", () => {
    for (const { name, region } of all) {
      expect(() => customSection({ name, ...region }), name).not.toThrow();
    }
  });

  it("have their centroid inside their box and moments that order as they must", () => {
    for (const section of all) {
      const p = sectionProperties(section);
      expect(p.iMajor).toBeGreaterThanOrEqual(Math.max(p.ix, p.iy) * (1 - 1e-12));
      expect(p.iMinor).toBeGreaterThan(0);
      expect(p.wPlasticX).toBeGreaterThan(p.wElasticX);
      expect(p.massPerMetre).toBeGreaterThan(0.2);
      expect(p.massPerMetre).toBeLessThan(60);
    }
  });

  it("are symmetrical in width and depth: sizes turned round give the section turned by a quarter", () => {
    const turned = all
      .filter(({ shape }) => shape.kind === "rect-tube" || shape.kind === "angle")
      .flatMap((section) => {
        const found = /^(.*?)(\S+) x (\S+) x (\S+)$/.exec(section.name);
        return found === null
          ? []
          : [[section, `${found[1]}${found[3]} x ${found[2]} x ${found[4]}`] as const];
      });
    expect(turned.length).toBeGreaterThan(200);
    for (const [section, name] of turned) {
      const [p, q] = [sectionProperties(section), sectionProperties(standardSection(name))];
      expect(Math.abs(q.iy / p.ix - 1), name).toBeLessThan(1e-12);
      expect(Math.abs(q.ix / p.iy - 1), name).toBeLessThan(1e-12);
    }
  });

  it("are refused by a message that shows names when there is none", () => {
    expect(() => standardSection("EN 10219 41 x 3")).toThrow(/^unknown-section: .*got "EN 10219 41 x 3"/);
    expect(findStandardSection("")).toBeUndefined();
  });

  it("never throw on a look-up, whatever the text", () => {
    const pieces = fc.constantFrom(
      "EN 10219",
      "HSS",
      "L",
      "UPE",
      "C",
      " ",
      "x",
      "2",
      "1/2",
      "1/0",
      "-",
      ".",
      "mm",
      '"',
      "inch flat",
    );
    const text = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.array(pieces, { maxLength: 9 }).map((a) => a.join("")),
    );
    fc.assert(
      fc.property(text, (name) => {
        const section = findStandardSection(name);
        if (section !== undefined) expect(findStandardSection(section.name)).toEqual(section);
      }),
      { numRuns: 1000 },
    );
  });
});
