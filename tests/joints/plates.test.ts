/**
 * Plates among the members: solids and masses against closed forms, Open CASCADE and the mesh gate; posts cut to them.
 */
import { describe, expect, it } from "vitest";
import { toStlBinary } from "../../src/export/index.js";
import {
  fitOf,
  type Joint,
  type JointSolution,
  massOf,
  type Piece,
  solidOf,
} from "../../src/joints/index.js";
import { checkMesh, placeMesh, tessellate, type Vec3, validateSolid } from "../../src/kernel/index.js";
import { type Member, type PlateInput, plate, polygonLoop, rectBar } from "../../src/members/index.js";
import type { JointCase } from "../support/joint-case.js";
import { loadOcct } from "../support/occt.js";
import { codesOf, pieceOf, post, RAD, rail, SQUARE40, solve } from "./models.js";

const base = (more: Partial<PlateInput> = {}): Member =>
  plate({
    id: "BP",
    outline: { width: 100, depth: 100, cornerRadius: 8 },
    thickness: 10,
    holes: [36, -36].flatMap((u) => [36, -36].map((v) => ({ at: [u, v] as const, diameter: 11 }))),
    at: [0, 0, 0],
    normal: [0, 0, 1],
    ...more,
  });
const onPlate = (onto: string | undefined = "BP"): Joint => ({
  kind: "cut",
  id: "foot",
  end: { member: "P", end: 0 },
  cut: { type: "face" },
  ...(onto === undefined ? {} : { onto }),
});

function solid(piece: Piece) {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => d.message).join(" "));
  return made.value;
}
function seatOf(solution: JointSolution, piece: string) {
  const contact = solution.contacts.find((c) => c.piece === piece);
  const made = contact && fitOf(contact, solution.pieces);
  if (!made?.ok) throw new Error(`no fit of ${piece}`);
  return made.value;
}

describe("a plate as a piece", () => {
  it("is of its own kind, square at both faces, and weighs its area by its thickness (closed form, 7850 kg/m³)", () => {
    const piece = pieceOf(solve([base()]), "BP");
    expect(piece).toMatchObject({ kind: "plate", status: "ok" });
    expect(piece.cuts.map((c) => c.kind)).toEqual(["square", "square"]);
    expect(piece.lengths.blank.value).toBe(10);
    const mass = massOf(piece);
    if (!mass.ok) throw new Error("no mass");
    const volume = 10 * (100 * 100 - (4 - Math.PI) * 64 - 4 * Math.PI * 5.5 ** 2);
    expect(mass.value.volume / volume).toBeCloseTo(1, 13);
    expect(mass.value.mass).toBeCloseTo(volume * 7.85e-6, 9);
    expect(mass.value.centroid[2]).toBeCloseTo(5, 12);
    expect(pieceOf(solve([base({ id: "L", kind: "bracket" })]), "L").kind).toBe("bracket");
  });

  it("has a valid solid and a mesh that passes the gate and the STL writer; each hole is a handle", () => {
    const tab = base({
      id: "T",
      outline: polygonLoop([
        [-20, 0],
        [20, 0],
        [20, 30],
        [8, 48],
        [-8, 48],
        [-20, 30],
      ]),
      holes: [{ at: [0, 34], diameter: 13 }],
      normal: [0.2, 1, 0],
    });
    for (const [member, holes] of [
      [base(), 4],
      [base({ id: "N", holes: [] }), 0],
      [tab, 1],
    ] as const) {
      const piece = pieceOf(solve([member]), member.id);
      const made = solid(piece);
      expect(validateSolid(made)).toEqual([]);
      const mesh = tessellate(made);
      const report = checkMesh(mesh, "full");
      expect(report.diagnostics).toEqual([]);
      // Euler's number of a body with n handles.
      expect(report.euler).toBe(2 - 2 * holes);
      expect(toStlBinary([{ name: piece.mark, mesh: placeMesh(mesh, piece.frame) }]).ok).toBe(true);
    }
  });

  it("has the volume that Open CASCADE gives the same outline with one hole", async () => {
    const occt = await loadOcct();
    const flat = (z: number) => ({ kind: "plane", point: [0, 0, z], normal: [0, 0, 1] }) as const;
    const same: JointCase = {
      name: "plate",
      section: {
        outer: { kind: "rect", width: 100, depth: 100, corner: 8 },
        hole: { kind: "round", radius: 11 },
      },
      ends: [flat(0), flat(10)],
    };
    const mass = massOf(pieceOf(solve([base({ holes: [{ at: [0, 0], diameter: 22 }] })]), "BP"));
    if (!mass.ok) throw new Error("no mass");
    expect(mass.value.volume / occt.volume(same)).toBeCloseTo(1, 9);
  });

  it("shares its identity with a plate of the same outline and holes only", () => {
    const holes = [{ at: [30, 30] as const, diameter: 11 }];
    const { pieces } = solve([
      base({ id: "A" }),
      base({ id: "B", at: [900, 0, 30] }),
      base({ id: "C", at: [1800, 0, 0], holes }),
      base({ id: "D", at: [2700, 0, 0], thickness: 12 }),
    ]);
    expect(pieces.map((p) => p.identity)).toEqual(["A", "A", "C", "D"]);
  });
});

describe("holes that are drilled besides", () => {
  const drilled = (member: string, direction: Vec3, at: Vec3): Joint => ({
    kind: "bore",
    id: "h",
    member,
    at,
    direction,
    diameter: 6,
    through: "both",
  });

  it("go through a plate's edges at a slant: what they take out is π r² w / cos (closed form)", () => {
    const bar = base({ id: "E", outline: { width: 60, depth: 40 }, thickness: 30, holes: [] });
    const slant = pieceOf(solve([bar], [drilled("E", [0.28, 0.96, 0], [0, 0, 15])]), "E");
    const mass = massOf(slant);
    if (!mass.ok) throw new Error("no mass");
    // v is uphill, so the bore runs across the depth or the width by the larger part: Y is the width.
    expect(60 * 40 * 30 - mass.value.volume).toBeCloseTo((Math.PI * 9 * 60) / 0.96, 6);
  });

  it("are refused by name where they would open on its faces, and are made in flat bar instead (closed form)", () => {
    const refused = solve([base()], [drilled("BP", [0.28, 0, 0.96], [0, 0, 5])]);
    expect(codesOf(refused)).toHaveLength(1);
    expect(codesOf(refused)[0]).toMatch(/^bore-/);
    expect(pieceOf(refused, "BP").status).toBe("blocked");
    const flat = rail("F", [-50, 0, 5], [50, 0, 5], { section: rectBar({ width: 100, depth: 10 }) });
    const made = massOf(pieceOf(solve([flat], [drilled("F", [0.28, 0, 0.96], [0, 0, 5])]), "F"));
    if (!made.ok) throw new Error("no mass");
    expect(100 * 100 * 10 - made.value.volume).toBeCloseTo((Math.PI * 9 * 10) / 0.96, 6);
  });
});

describe("a post on its base plate", () => {
  it("is cut off on top of it, wherever its centreline ends, and sits on it without gap or overlap", () => {
    for (const foot of [10, 0, 4, -60]) {
      const solution = solve([base(), post("P", [0, 0, foot], [0, 0, 900])], [onPlate()]);
      expect(codesOf(solution)).toEqual([]);
      const piece = pieceOf(solution, "P");
      expect(piece.cuts[0]).toMatchObject({ kind: "square", onto: ["BP"], joint: "foot" });
      expect(piece.dependsOn).toEqual(["BP"]);
      // From the top of the plate at 10 to 900.
      expect(piece.lengths.blank.value).toBeCloseTo(890, 9);
      expect(solution.contacts).toMatchObject([{ piece: "P", end: 0, onto: "BP", kind: "seat" }]);
      const { gap, overlap, cut } = seatOf(solution, "P");
      expect([gap, overlap]).toEqual([0, 0]);
      expect(cut!.greatest.value).toBeCloseTo(0, 9);
    }
  });

  it("is measured: a plate too low leaves it open, one too small by what hangs over (closed form)", () => {
    const solution = solve([base(), post("P", [0, 0, 10], [0, 0, 900])], [onPlate()]);
    const others = (more: Partial<PlateInput>): JointSolution => ({
      ...solution,
      pieces: [pieceOf(solution, "P"), pieceOf(solve([base(more)]), "BP")],
    });
    expect(seatOf(others({ at: [0, 0, -0.3] }), "P").gap).toBeCloseTo(0.3, 9);
    expect(seatOf(others({ at: [0, 0, 0.3] }), "P").overlap).toBeCloseTo(0.3, 9);
    const small = { outline: { width: 30, depth: 100 }, holes: [] };
    expect(seatOf(others(small), "P").gap).toBeCloseTo(21.2 - 15, 9);
  });

  it("on a plate along the rake: one flat cut at the rake from square", () => {
    const t = 35 * RAD;
    const leaning = base({ normal: [-Math.sin(t), 0, Math.cos(t)] });
    const solution = solve([leaning, post("P", [0, 0, 0], [0, 0, 900])], [onPlate()]);
    expect(pieceOf(solution, "P").cuts[0].saw!.fromSquare).toBeCloseTo(35, 9);
    const { gap, overlap } = seatOf(solution, "P");
    expect([gap, overlap]).toEqual([0, 0]);
  });

  it("leaves the rules alone: beside a plate a post's ends are what they were", () => {
    const parts = [rail("R", [-900, 0, 900], [900, 0, 900]), post("P", [0, 0, 10], [0, 0, 900])];
    const [bare, with_] = [solve(parts), solve([...parts, base()])];
    expect(with_.pieces.slice(0, 2)).toEqual(bare.pieces);
    expect(codesOf(with_)).toEqual([]);
  });

  it("is refused where the joint names no plate (smallest input)", () => {
    for (const onto of ["R", "anchor", undefined]) {
      const joint: Joint = {
        kind: "cut",
        id: "foot",
        end: { member: "P", end: 0 },
        cut: { type: "face" },
        ...(onto ? { onto } : {}),
      };
      const parts = [rail("R", [-900, 0, 900], [900, 0, 900]), post("P", [0, 0, 10], [0, 0, 500])];
      const solution = solve(parts, [joint]);
      expect(codesOf(solution)).toEqual(["cut-onto-no-plate"]);
      expect(solution.diagnostics[0]!.message).toContain(onto ?? "nothing");
      expect(pieceOf(solution, "P").status).toBe("blocked");
    }
    const along = solve([base({ normal: [1, 0, 0] }), post("P", [0, 0, 0], [0, 0, 500])], [onPlate()]);
    expect(codesOf(along)).toEqual(["cut-along-axis"]);
  });

  it("takes an end plate on a rail and a rail coped to a plate's edge (distance by the sizes)", () => {
    const end = base({ id: "EP", at: [900, 0, 900], normal: [1, 0, 0], holes: [] });
    const solution = solve(
      [rail("R", [-900, 0, 900], [900, 0, 900], { section: SQUARE40 }), end],
      [{ kind: "cut", id: "e", end: { member: "R", end: 1 }, cut: { type: "face" }, onto: "EP" }],
    );
    expect(codesOf(solution)).toEqual([]);
    expect(seatOf(solution, "R")).toMatchObject({ gap: 0, overlap: 0 });
    const fin = base({
      id: "F",
      at: [0, -5, 450],
      normal: [0, 1, 0],
      holes: [],
      outline: { width: 60, depth: 200 },
    });
    const bar = rail("B", [-500, 0, 450], [0, 0, 450], { section: rectBar({ width: 8, depth: 20 }) });
    const coped = solve([bar, fin], [{ kind: "cope", id: "c", end: { member: "B", end: 1 }, onto: ["F"] }]);
    expect(codesOf(coped)).toEqual([]);
    expect(pieceOf(coped, "B").lengths.blank.value).toBeCloseTo(470, 9);
    expect(seatOf(coped, "B")).toMatchObject({ gap: 0, overlap: 0 });
  });
});
