/**
 * Bars of angle and channel: cut square, mitred, coped to round and flat headers. Their outlines turn inwards, which no other
 * section here does.
 *
 * Volumes against Open CASCADE Technology (prism over the same outline, boolean cuts) and, for flat cuts, the closed form: area
 * times the height of the cut over the centroid. Solids by every rule, meshes by the gate.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { type Piece, solidOf } from "../../src/joints/index.js";
import {
  checkMesh,
  massProperties,
  type Solid,
  solidOfBar,
  tessellate,
  type Vec3,
  validateSolid,
} from "../../src/kernel/index.js";
import {
  angleBar,
  member,
  roundTube,
  type Section,
  sectionProperties,
  standardSection,
} from "../../src/members/index.js";
import { barOf, type EndCase, type JointCase, SQUARE } from "../support/joint-case.js";
import { header } from "../support/named-cases.js";
import { loadOcct, type Occt } from "../support/occt.js";
import { relative } from "../support/solve-case.js";
import { codesOf, pieceOf, solve } from "./models.js";

const SECTIONS: readonly Section[] = [
  standardSection("L 40 x 60 x 5"),
  angleBar({ width: 50, depth: 50, thickness: 5, rootRadius: 0, toeRadius: 0, name: "sharp angle" }),
  standardSection("UPE 80"),
  standardSection("C3 x 4.1"),
];

const round = (od: number) => ({ kind: "round", radius: od / 2 }) as const;
const on = (...more: Parameters<typeof header>): EndCase => ({ kind: "hit", header: header(...more) });
const plane = (normal: Vec3): EndCase => ({ kind: "plane", point: [0, 0, 120], normal });

const ENDS: Readonly<Record<string, EndCase>> = {
  "cut square": plane([0, 0, 1]),
  "cut to a compound miter": plane([0.3, 1, 1]),
  "coped square to a round header": on(round(114.3), 90),
  "coped to a raking round header": on(round(114.3), 55),
  "coped beside the header's middle": on(round(139.7), 60, { offset: 7 }),
  "coped with a root gap": on(round(114.3), 60, { gap: 2 }),
  "coped to a narrower header, shouldered": on(round(48.3), 90, { shoulder: true }),
  "on a flat side": on({ kind: "rect", width: 120, depth: 60, corner: 8 }, 70),
  "under a crest": { kind: "min", of: [on(round(114.3), 54), on(round(114.3), 90)] },
  "under a valley": { kind: "max", of: [on(round(114.3), 54), on(round(114.3), 90)] },
};

let occt: Occt;
beforeAll(async () => {
  occt = await loadOcct();
});

/** The library's solid of a section between two ends; the case's own section is exchanged for the rolled one. */
function solidFor(section: Section, ends: JointCase["ends"]): Solid {
  const bar = barOf({ name: section.name, section: { outer: round(1) }, ends });
  const made = solidOfBar({ ...bar, section: section.region });
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join(" "));
  return made.value;
}

/** No rule broken, and nothing found by the full gate. */
function expectGood(solid: Solid): void {
  expect(validateSolid(solid)).toEqual([]);
  expect(checkMesh(tessellate(solid, { chord: 0.1 }), "full").diagnostics).toEqual([]);
}

describe.each(SECTIONS.map((s) => [s.name, s] as const))("%s", (_, section) => {
  it.each(Object.entries(ENDS))(
    "%s: volume of OCCT within 1e-7, sound, meshes without a fault",
    (_name, end) => {
      const solid = solidFor(section, [SQUARE, end]);
      const want = occt.volumeOver(section.region.outer, [SQUARE, end]);
      expect(relative(massProperties(solid).volume, want)).toBeLessThan(1e-7);
      expectGood(solid);
    },
  );

  it("over the corners of a narrower flat header, shouldered: sound, meshes without a fault", () => {
    const narrow = on({ kind: "rect", width: 24, depth: 60, corner: 8 }, 70, { shoulder: true });
    expectGood(solidFor(section, [SQUARE, narrow]));
  });

  it("flat cuts leave area times height over the centroid (closed form), and coping both ends is OCCT's volume too", () => {
    const { area, centroid } = sectionProperties(section);
    const height = 120 - (0.3 * centroid[0] + centroid[1]);
    const mitred = massProperties(solidFor(section, [SQUARE, plane([0.3, 1, 1])])).volume;
    expect(relative(mitred, area * height)).toBeLessThan(1e-12);
    const low: EndCase = on(round(114.3), 70, { at: -120 });
    const high: EndCase = on(round(139.7), 50);
    const both = solidFor(section, [low, high]);
    const want = occt.volumeOver(section.region.outer, [low, high]);
    expect(relative(massProperties(both).volume, want)).toBeLessThan(1e-7);
    expectGood(both);
  });

  it("names the faces of its sides", () => {
    const { faces } = solidFor(section, [SQUARE, on(round(114.3), 90)]);
    const named = new Set(faces.flatMap(({ provenance: p }) => (p.from === "side" ? [p.label] : [])));
    for (const label of ["-u", "bottom", "inner -u", "inner bottom", "top"]) expect(named).toContain(label);
  });
});

describe("in a model", () => {
  const angle = standardSection("L 50 x 50 x 5");
  const volume = (piece: Piece): number => {
    const made = solidOf(piece);
    if (!made.ok) throw new Error(piece.id);
    expectGood(made.value);
    return massProperties(made.value).volume;
  };

  it("angle rails mitred at a right corner in plan: each loses at the inside what it has past its axis (closed form)", () => {
    const a = member({ id: "A", section: angle, from: [-500, 0, 900], to: [0, 0, 900], role: "top-rail" });
    const b = member({ id: "B", section: angle, from: [0, 0, 900], to: [0, 500, 900], role: "top-rail" });
    const solution = solve([a, b]);
    expect(codesOf(solution)).toEqual([]);
    const { area, centroid } = sectionProperties(angle);
    // The corner turns left, towards +u, so u is what a fibre is shorter by; the centroid's fibre carries the mean length.
    const want = area * (500 - centroid[0]);
    expect(relative(volume(pieceOf(solution, "A")), want)).toBeLessThan(1e-12);
    expect(relative(volume(pieceOf(solution, "B")), want)).toBeLessThan(1e-12);
  });

  it("an angle post coped to a round rail, and a round post under an angle rail", () => {
    const rail = member({
      id: "R",
      section: roundTube({ od: 114.3, wall: 4 }),
      from: [-500, 0, 400],
      to: [500, 0, 400],
      role: "top-rail",
    });
    const post = member({ id: "P", section: angle, from: [0, 0, 0], to: [0, 0, 400], role: "post" });
    const coped = solve([rail, post]);
    expect(codesOf(coped)).toEqual([]);
    expect(pieceOf(coped, "P").cuts[1]?.kind).toBe("cope");
    const high: EndCase = {
      kind: "hit",
      header: { outline: round(114.3), at: [0, 0, 400], axis: [0, 1, 0], across: [1, 0, 0], gap: 0 },
    };
    expect(
      relative(volume(pieceOf(coped, "P")), occt.volumeOver(angle.region.outer, [SQUARE, high])),
    ).toBeLessThan(1e-7);

    // A round post stands under the lying leg, whose underside is 25 mm below the rail's axis.
    const top = member({
      id: "T",
      section: angle,
      from: [-500, 0, 400],
      to: [500, 0, 400],
      role: "top-rail",
    });
    const tube = member({
      id: "Q",
      section: roundTube({ od: 42.4, wall: 3.2 }),
      from: [0, 0, 0],
      to: [0, 0, 400],
      role: "post",
    });
    const square = solve([top, tube]);
    expect(codesOf(square)).toEqual([]);
    const q = sectionProperties(tube.section).area * 375;
    expect(relative(volume(pieceOf(square, "Q")), q)).toBeLessThan(1e-12);
  });
});
