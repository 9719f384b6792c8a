/**
 * Branches side by side on one header: parted where they overlap, left alone where they do not.
 *
 * Against Open CASCADE's common volume, a double integral written here, and the crotch of two equal tubes (closed form:
 * in the plane of their axes the inner sides meet r/sin(θ/2) from the header's axis).
 */
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type JointSolution, massOf, type Piece, solidOf } from "../../src/joints/index.js";
import { directionToParent, pointToParent, type Vec3 } from "../../src/kernel/index.js";
import { type Member, roundTube, type Section } from "../../src/members/index.js";
import { loadOcct, type Occt, type StandingBar } from "../support/occt.js";
import { endPoints, skinDistance } from "./fit.js";
import { codesOf, pieceOf, post, RAD, rail, solve, TUBE42, TUBE48, TUBE60 } from "./models.js";

const plan = (degrees: number, out: number, z: number): Vec3 => [
  out * Math.cos(degrees * RAD),
  out * Math.sin(degrees * RAD),
  z,
];
const branch = (id: string, degrees: number, section: Section = TUBE42, z = 500): Member =>
  rail(id, [0, 0, z], plan(degrees, 400, z), { role: "rail", section });
const corner = (section: Section = TUBE42): Member => post("P", [0, 0, 0], [0, 0, 900], { section });

const radius = (section: Section): number => (section.shape as { od: number }).od / 2;
const wall = (section: Section): number => (section.shape as { wall: number }).wall;

/** The branch as Open CASCADE is to build it: a tube with the post cut out, and what the solver decided beside it. */
function standing(
  { section, ends, frame }: Piece,
  postSection: Section,
  headers: readonly Piece[],
): StandingBar {
  const parts = ends[0].kind === "min" ? ends[0].of : [ends[0]];
  const round = (s: Section) => ({ kind: "round", radius: radius(s) }) as const;
  const header = (s: Section, axis: Vec3, across: Vec3, at: Vec3) => ({
    ...{ outline: round(s), at, axis, across, gap: 0 },
  });
  return {
    section: {
      outer: round(section),
      hole: { kind: "round", radius: radius(section) - wall(section) },
    },
    at: frame.origin,
    x: frame.x,
    z: frame.z,
    length: 400,
    headers: [
      header(postSection, [0, 0, 1], [1, 0, 0], [0, 0, 500]),
      ...headers.map((h) => header(h.section, h.frame.z, h.frame.x, h.frame.origin)),
    ],
    planes: parts.flatMap((e) => {
      if (e.kind !== "plane") return [];
      const sign = e.normal[2] > 0 ? -1 : 1;
      const normal = directionToParent(frame, e.normal);
      return [
        {
          point: pointToParent(frame, e.point),
          normal: [sign * normal[0], sign * normal[1], sign * normal[2]] as Vec3,
        },
      ];
    }),
  };
}

/** What two equal tubes square to each other have in common outside a round post of radius R, by midpoints. */
function overlapVolume(ro: number, ri: number, R: number): number {
  const [layers, strips] = [400, 800];
  let sum = 0;
  for (let i = 0; i < layers; i++) {
    const z = ((i + 0.5) / layers) * ro;
    const [a, b] = [Math.sqrt(Math.max(0, ri * ri - z * z)), Math.sqrt(ro * ro - z * z)];
    for (let k = 0; k < strips; k++) {
      const x = a + ((k + 0.5) / strips) * (b - a);
      const low = Math.max(a, Math.sqrt(Math.max(0, R * R - x * x)));
      sum += (Math.max(0, b - low) * (b - a)) / strips;
    }
  }
  return (2 * sum * ro) / layers;
}

const besideOf = (s: JointSolution): string[] =>
  s.contacts.filter((c) => c.joint === "rule:shared-header").map((c) => `${c.piece}>${c.onto}`);

describe("equal rails square to each other on a round corner post", () => {
  let occt: Occt;
  beforeAll(async () => {
    occt = await loadOcct();
  });
  const solved = solve([corner(), branch("A", 0), branch("B", 90)]);
  const [a, b] = [pieceOf(solved, "A"), pieceOf(solved, "B")];

  it("overlap by 308 mm³ when each is cut to the post alone (42.4 x 3.2: integral and Open CASCADE agree)", () => {
    const volume = overlapVolume(21.2, 18, 21.2);
    expect(volume).toBeCloseTo(308, 0);
    const alone = (p: Piece): StandingBar => ({ ...standing(p, TUBE42, []), planes: [] });
    expect(Math.abs(occt.common(alone(a), alone(b)) - volume)).toBeLessThan(0.5);
  });

  it("have nothing in common once they also take their bisector", () => {
    expect(codesOf(solved)).toEqual([]);
    expect(besideOf(solved)).toEqual(["A>B", "B>A"]);
    expect(standing(a, TUBE42, []).planes.length).toBe(1);
    expect(Math.abs(occt.common(standing(a, TUBE42, []), standing(b, TUBE42, [])))).toBeLessThan(1e-6);
    for (const p of [a, b]) expect(solidOf(p).ok).toBe(true);
  });

  it("meet all along the bisector: every edge of one's facet is on the other's skin, hollow or the post's", () => {
    const points = endPoints(a, 0, "B");
    expect(points.length).toBeGreaterThan(30);
    for (const { p } of points) {
      // The facet lies in x = y; the other rail's axis is y.
      expect(Math.abs(p[0] - p[1])).toBeLessThan(1e-9);
      const beside = Math.hypot(p[0], p[2] - 500);
      const near = [beside - 21.2, beside - 18, Math.hypot(p[0], p[1]) - 21.2].map(Math.abs);
      expect(Math.min(...near)).toBeLessThan(1e-6);
    }
  });

  it("lose the same, whichever is named first", () => {
    const turned = solve([branch("B", 90), branch("A", 0), corner()]);
    expect(pieceOf(turned, "A").ends).toEqual(a.ends);
    expect(pieceOf(turned, "A").identity).toBe("B");
    const volumes = [a, b].map((p) => {
      const mass = massOf(p);
      return mass.ok ? mass.value.volume : Number.NaN;
    });
    expect(Math.abs(volumes[0]! - volumes[1]!)).toBeLessThan(1e-6);
  });

  it("three of them are parted two by two", () => {
    const three = solve([corner(TUBE48), branch("A", 0), branch("B", 45), branch("C", 90)]);
    expect(codesOf(three)).toEqual([]);
    // A and C stand square to each other, and their crotch too is outside the post: 21.2·√2 > 24.15.
    expect(besideOf(three).sort()).toEqual(["A>B", "A>C", "B>A", "B>C", "C>A", "C>B"]);
    for (const p of three.pieces) expect(solidOf(p).ok).toBe(true);
    const bars = ["A", "B", "C"].map((id) => standing(pieceOf(three, id), TUBE48, []));
    for (const [i, k] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      expect(Math.abs(occt.common(bars[i]!, bars[k]!))).toBeLessThan(1e-6);
    }
  });

  it("a narrower one at 60 degrees is shaped to the wider as well, and nothing is in common", () => {
    const unequal = solve([corner(TUBE60), branch("B", 60, TUBE48), branch("A", 0, TUBE42)]);
    expect(codesOf(unequal)).toEqual([]);
    expect(besideOf(unequal)).toEqual(["A>B"]);
    const [thin, thick] = [pieceOf(unequal, "A"), pieceOf(unequal, "B")];
    expect(thin.cuts[0].cope.map((c) => [c.onto, Math.round(c.angle)])).toEqual([
      ["P", 90],
      ["B", 60],
    ]);
    const before = occt.common(standing(thin, TUBE60, []), standing(thick, TUBE60, []));
    expect(before).toBeGreaterThan(100);
    const after = occt.common(standing(thin, TUBE60, [thick]), standing(thick, TUBE60, []));
    expect(Math.abs(after)).toBeLessThan(1e-6);
    for (const { p } of endPoints(thin, 0, "B")) {
      const [u, v] = [Math.hypot(p[0] * Math.sin(60 * RAD) - p[1] * Math.cos(60 * RAD), p[2] - 500), 0];
      expect(Math.abs(skinDistance(thick.section, u, v))).toBeLessThan(1e-6);
    }
  });

  it("unequal ones whose skins would also stop each other where nothing stands are parted by a plane, and the step is said", () => {
    const unequal = solve([
      corner(TUBE60),
      branch("A", 0, TUBE48),
      branch("B", 90, roundTube({ od: 45, wall: 3 })),
    ]);
    expect(codesOf(unequal)).toEqual(["miter-steps"]);
    expect(unequal.diagnostics[0]).toMatchObject({ severity: "warning", members: ["A", "B", "P"] });
    const bars = ["A", "B"].map((id) => standing(pieceOf(unequal, id), TUBE60, []));
    expect(bars.map((x) => x.planes.length)).toEqual([1, 1]);
    expect(Math.abs(occt.common(bars[0]!, bars[1]!))).toBeLessThan(1e-6);
  });
});

describe("branches that do not run into each other", () => {
  it.each([
    ["opposite", [corner(), branch("A", 0), branch("B", 180)]],
    ["on a post wide enough", [corner(TUBE60), branch("A", 0), branch("B", 90)]],
    ["at other heights", [corner(), branch("A", 0), branch("B", 90, TUBE42, 543)]],
  ])("%s: are cut to the header alone", (_name, members) => {
    const solved = solve(members);
    expect(codesOf(solved)).toEqual([]);
    expect(besideOf(solved)).toEqual([]);
    expect(pieceOf(solved, "A").ends[0].kind).toBe("hit");
  });

  it("are told from those that do by the crotch of the two tubes (closed form)", () => {
    let parted = 0;
    const size = fc.double({ min: 15, max: 24, noNaN: true });
    fc.assert(
      fc.property(size, fc.double({ min: 30, max: 170, noNaN: true }), (r, angle) => {
        const section = roundTube({ od: 2 * r, wall: 2 });
        const header = roundTube({ od: 49, wall: 3 });
        const solved = solve([corner(header), branch("A", 10, section), branch("B", 10 + angle, section)]);
        const past = r / Math.sin((angle / 2) * RAD) - 24.5;
        fc.pre(Math.abs(past) > 1e-5);
        expect(codesOf(solved)).toEqual([]);
        expect(besideOf(solved).length).toBe(past > 0 ? 2 : 0);
        for (const id of ["A", "B"]) expect(solidOf(pieceOf(solved, id)).ok).toBe(true);
        parted += past > 0 ? 1 : 0;
      }),
      { numRuns: 40, seed: 20260307 },
    );
    expect(parted).toBeGreaterThan(10);
  });
});
