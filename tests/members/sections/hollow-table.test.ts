/**
 * Hollow sections of the tables: masses read in other tables (shared/published-rolled.json), corner radii by the standards' rules,
 * and the sizes of shared/published-sections.json, which carry their radii.
 */
import { describe, expect, it } from "vitest";
import { sectionProperties } from "../../../src/members/properties.js";
import { HOLLOW } from "../../../src/members/sections/hollow-table.js";
import { findStandardSection, standardSection } from "../../../src/members/sections/standard.js";
import { input, publishedOf } from "../published.js";
import { named, offFigures, ROLLED } from "../rolled.js";

describe("mass", () => {
  it.each(named(ROLLED.hollowMass))("%s", (name, want) => {
    const p = sectionProperties(standardSection(name));
    // US tables weigh the nominal wall at 490 lb/ft³.
    const mass = name.startsWith("HSS") ? (p.area / 25.4 ** 2 / 144) * 490 : p.massPerMetre;
    expect(offFigures(want, { mass }, 0.002)).toEqual([]);
  });
});

describe("corners", () => {
  const FAMILIES = { cf: "EN 10219", hf: "EN 10210" } as const;
  const rows = publishedOf(/^(cf|hf)[sr]hs-/).filter(
    (e) => input(e, "H_mm") <= 100 && input(e, "B_mm") <= 100,
  );

  it("has sizes to look at", () => {
    expect(rows.length).toBeGreaterThan(30);
  });

  it.each(rows.map((e) => [e.id, e] as const))("%s: radii as its published properties assume", (id, e) => {
    const standard = FAMILIES[id.slice(0, 2) as "cf" | "hf"];
    const [width, depth, wall] = [input(e, "B_mm"), input(e, "H_mm"), input(e, "T_mm")];
    const section = standardSection(`${standard} ${width} x ${depth} x ${wall}`);
    const shape = {
      kind: "rect-tube",
      width,
      depth,
      wall,
      outerRadius: input(e, "ro_mm"),
      innerRadius: input(e, "ri_mm"),
    };
    expect(section.shape).toMatchObject({ kind: "rect-tube", width, depth, wall });
    if (section.shape.kind !== "rect-tube") return;
    expect(section.shape.outerRadius).toBeCloseTo(shape.outerRadius, 12);
    expect(section.shape.innerRadius).toBeCloseTo(shape.innerRadius, 12);
  });

  it("cold formed above 6 and above 10 mm: 2.5 walls", () => {
    expect(standardSection("EN 10219 60 x 60 x 6.3").shape).toMatchObject({ outerRadius: 15.75 });
    expect(standardSection("EN 10219 100 x 100 x 10").shape).toMatchObject({
      outerRadius: 25,
      innerRadius: 15,
    });
  });
});

describe("names", () => {
  it("the first size lies across the member, whichever is longer", () => {
    expect(standardSection("EN 10219 60 x 40 x 3")).toMatchObject({
      name: "EN 10219 60 x 40 x 3",
      shape: { width: 60, depth: 40 },
      source: "EN 10219-2",
    });
    expect(standardSection("EN 10219-2 RHS 40x60x3.0 mm")).toMatchObject({
      name: "EN 10219 40 x 60 x 3",
      shape: { width: 40, depth: 60 },
    });
  });

  it("reads inches as fractions and as decimals of three places", () => {
    const section = standardSection("HSS 1-1/2 x 1-1/2 x 3/16");
    for (const name of [
      "hss1-1/2x1-1/2x3/16",
      "HSS 1.5 x 1.5 x .188",
      "HSS 1 1/2 X 1 1/2 X 3/16 in",
      "hss 1-1/2×1-1/2×0.1875",
    ]) {
      expect(standardSection(name)).toEqual(section);
    }
    expect(section.name).toBe("HSS 1-1/2 x 1-1/2 x 3/16");
    expect(standardSection("HSS1.900X0.145").name).toBe("HSS 1.9 x 0.145");
  });

  it.each([
    "EN 10219 48.3",
    "EN 10219 48.3 x 3.1",
    "EN 10210 48.3 x 3",
    "EN 10219 40 x 40 x 3 in",
    "HSS 2 x 2",
    "HSS 2 x 2 x 1/8 mm",
    "EN 10305 40 x 2",
    "hss 1/0 x 2 x 3",
  ])("does not know %j", (name) => {
    expect(findStandardSection(name)).toBeUndefined();
    expect(HOLLOW.find(name.toLowerCase())).toBeUndefined();
  });
});
