/** Densities against the published constants of shared/published-sections.json, `limit-materials` (EN 1993-1-1, EN 10088-1). */
import { describe, expect, it } from "vitest";
import { isMaterialName, MATERIALS, materialOf } from "../../src/members/materials.js";
import { publishedOf } from "./published.js";

describe("materials", () => {
  it("has the published densities", () => {
    const [published] = publishedOf(/^limit-materials$/);
    expect(MATERIALS["mild-steel"].density).toBe(published?.expected.steel_density);
    expect(materialOf("stainless-304").density).toBe(published?.expected.ss304_density);
    expect(materialOf("stainless-316").density).toBe(published?.expected.ss316_density);
  });

  it("does not know other names, nor those every object has", () => {
    for (const name of ["brass", "", "toString", "__proto__"]) {
      expect(isMaterialName(name)).toBe(false);
      expect(() => materialOf(name)).toThrow(/^unknown-material: .*mild-steel/);
    }
  });
});
