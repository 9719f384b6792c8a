/**
 * Bores that cross from one side of a section to the next: over rounded and sharp corners, and whole sides. Volumes
 * against Open CASCADE Technology (boolean cuts) and a quadrature of ray casts (drilled.ts).
 */
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { Bore } from "../../src/kernel/bar.js";
import { solidOfBar } from "../../src/kernel/bar-solid.js";
import type { Solid, Vec3 } from "../../src/kernel/index.js";
import { massProperties } from "../../src/kernel/mass.js";
import { checkMesh } from "../../src/kernel/mesh/gate.js";
import { tessellate } from "../../src/kernel/mesh/tessellate.js";
import { eulerOf } from "../../src/kernel/rules/euler-number.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { drilledByRays } from "../support/drilled.js";
import { areaOf, barOf, type SectionCase, SQUARE } from "../support/joint-case.js";
import { bar, square, tube } from "../support/named-cases.js";
import { loadOcct, type Occt } from "../support/occt.js";

const LENGTH = 600;
const RAD = Math.PI / 180;

/** A bore in the direction `turn` round the bar and `rake` up it, `off` to its right. */
function bore(turn: number, rake: number, off: number, diameter: number, more: Partial<Bore> = {}): Bore {
  const [c, s] = [Math.cos(turn * RAD), Math.sin(turn * RAD)];
  const point: Vec3 = [off * s, -off * c, LENGTH / 2];
  const direction: Vec3 = [c * Math.cos(rake * RAD), s * Math.cos(rake * RAD), Math.sin(rake * RAD)];
  return { id: "h", point, direction, diameter, through: "both", ...more };
}

function made(section: SectionCase, bores: readonly Bore[]) {
  const end = { kind: "plane", point: [0, 0, LENGTH], normal: [0, 0, 1] } as const;
  return solidOfBar({ ...barOf({ name: "bar", section, ends: [SQUARE, end] }), bores });
}

function solid(section: SectionCase, bores: readonly Bore[]): Solid {
  const result = made(section, bores);
  if (!result.ok) throw new Error(result.diagnostics.map((d) => `${d.code}: ${d.message}`).join("; "));
  return result.value;
}

const plain = (section: SectionCase): number =>
  (areaOf(section.outer) - (section.hole ? areaOf(section.hole) : 0)) * LENGTH;

/** 1-1/2 in square tube, 0.120 in wall, 3/16 in outside corner radius. */
const POST = square(38.1, 3.048, 4.7625);
const SHARP = square(38.1, 3.048, 0);
const SHARP_BAR: SectionCase = { outer: { kind: "rect", width: 30, depth: 30, corner: 0 } };
const FLAT: SectionCase = { outer: { kind: "rect", width: 50, depth: 12, corner: 2 } };

const CASES: readonly (readonly [string, SectionCase, Bore])[] = [
  ["a raking cable off the middle of a face, half on the corner", POST, bore(90, 35.44, 12.5, 6)],
  ["the same on the other hand", POST, bore(90, 35.44, -12.5, 6)],
  ["10 mm through two rounded corners", POST, bore(45, 0, 0, 10)],
  ["10 mm through two rounded corners, raking", POST, bore(45, 35.44, 0, 10)],
  ["a bore narrower than the corner", POST, bore(45, 20, 0, 3)],
  ["a bore of the corner's own radius about its own axis", square(40, 3, 5), bore(45, 0, 0, 10)],
  ["wide enough to part four corners in two", square(40, 3, 4), bore(45, 10, 3, 21)],
  ["through two sharp corners, on their lines", SHARP, bore(45, 30, 0, 10)],
  ["through two sharp corners, beside their lines", SHARP, bore(45, 30, 1.3, 10)],
  ["through a solid bar from corner to corner", SHARP_BAR, bore(45, -25, 0, 12)],
  ["across the corner of a solid bar", SHARP_BAR, bore(45, 15, 12, 8)],
  ["over a narrow side of a flat bar, with both its corners", FLAT, bore(30, 0, 6, 14)],
  ["a round tube so wide drilled that no split is clear", tube(42.4, 3.2), bore(10, 20, 0, 34)],
  ["a round bar", bar(30), bore(0, 40, 5, 16)],
];

describe("bores across the lines between sides", () => {
  let occt: Occt;
  beforeAll(async () => {
    occt = await loadOcct();
  });

  it.each(CASES)(
    "%s: volume as of the quadrature within 1e-11 of the hole, and as of OCCT",
    (_, section, b) => {
      const volume = massProperties(solid(section, [b])).volume;
      const hole = drilledByRays(section, b);
      expect(Math.abs(plain(section) - volume - hole)).toBeLessThan(1e-11 * hole + 2e-14 * plain(section));
      expect(Math.abs(volume - occt.drilled(section, LENGTH, [b]))).toBeLessThan(1e-7 * volume);
    },
  );

  it.each(CASES)("%s: a sound solid and a closed mesh", (_, section, b) => {
    const s = solid(section, [b]);
    expect(validateSolid(s)).toEqual([]);
    for (const chord of [0.2, 0.05]) {
      const report = checkMesh(tessellate(s, { chord }), "full");
      expect(report.diagnostics).toEqual([]);
      expect(report.euler).toBe(eulerOf(s));
    }
  });

  it("part a side that they take out whole: two corners here, each into two faces", () => {
    const s = solid(POST, [bore(45, 0, 0, 10)]);
    const corners = s.faces.filter((f) => f.provenance.from === "side" && f.provenance.label === "corner");
    expect(corners).toHaveLength(6);
    // A tube is a ring (2 − 2·1); each of the two walls bored adds a handle.
    expect(eulerOf(s)).toBe(-4);
  });

  it("share a side and a line with other bores, one above the other", () => {
    const three = [150, 300, 450].map((z, k) =>
      bore(45, [0, 20, -30][k]!, [0, 0.7, 14][k]!, 9, { id: `h${k}`, point: [0, 0, z] }),
    );
    const small = bore(0, 0, 0, 4, { id: "s", point: [0, 0, 225] });
    const s = solid(POST, [...three, small]);
    expect(validateSolid(s)).toEqual([]);
    expect(eulerOf(s)).toBe(-2 * 8);
    const holes = [...three, small].reduce((sum, b) => sum + drilledByRays(POST, b), 0);
    expect(Math.abs(plain(POST) - massProperties(s).volume - holes)).toBeLessThan(1e-11 * plain(POST));
  });

  it("take out what the quadrature says, in any direction, or are refused by name (property)", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const sizes = fc.record({ side: number(25, 60), wall: number(1.5, 5), corner: number(0, 12) });
    const through = fc.constantFrom("both" as const, "first" as const);
    const drill = fc.record({
      through,
      turn: number(0, 360),
      rake: number(-55, 55),
      off: number(-20, 20),
      d: number(2, 18),
    });
    let cut = 0;
    fc.assert(
      fc.property(sizes, drill, ({ side, wall, corner }, { turn, rake, off, d, through }) => {
        const section = square(side, wall, corner < 0.5 ? 0 : corner);
        const b = bore(turn, rake, off, d, { through });
        const result = made(section, [b]);
        if (!result.ok) {
          const known = /^bore-(leaves-section|leaves-hollow|wider-than-section|misses|touches-edge)$/;
          for (const x of result.diagnostics) expect(x.code).toMatch(known);
          return;
        }
        cut++;
        expect(validateSolid(result.value)).toEqual([]);
        const hole = drilledByRays(section, b);
        const got = plain(section) - massProperties(result.value).volume;
        expect(Math.abs(got - hole)).toBeLessThan(1e-9 * hole + 1e-13 * plain(section));
      }),
      { numRuns: 100 },
    );
    expect(cut).toBeGreaterThan(30);
  });
});
