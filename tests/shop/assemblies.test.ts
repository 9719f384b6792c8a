/**
 * Assemblies: weight, size and balance. Sources: closed forms of boxes and centroids; the vertices of fine meshes as a second
 * route to sizes over all; the studio's stair (invented) for the whole way.
 */
import { describe, expect, it } from "vitest";
import { massOf, type Piece, type PieceMass, solidOf, solveJoints } from "../../src/joints/index.js";
import { placeMesh, type Solid, tessellate, type Vec3 } from "../../src/kernel/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { type Member, member, rectTube, roundTube } from "../../src/members/index.js";
import { assemblies, longestLoose } from "../../src/shop/assemblies.js";
import { assembliesText } from "../../src/shop/assemblies-text.js";
import { convexHull } from "../../src/shop/convex-hull.js";
import { cutList, cutListText, pieceRecords } from "../../src/shop/index.js";
import { example } from "../layout/designs.js";

const RAD = Math.PI / 180;
const ROUND = roundTube({ od: 48.3, wall: 3.2 });

function partsOf(pieces: readonly Piece[]) {
  const solids = new Map<string, Solid>();
  const masses = new Map<string, PieceMass>();
  for (const piece of pieces) {
    const [solid, mass] = [solidOf(piece), massOf(piece)];
    if (!solid.ok || !mass.ok) throw new Error(`no solid of ${piece.id}`);
    solids.set(piece.id, solid.value);
    masses.set(piece.id, mass.value);
  }
  return { pieces, solids, masses };
}

function reportOf(pieces: readonly Piece[], ids = pieces.map((p) => p.id)) {
  const { reports, diagnostics } = assemblies([{ id: "A", mark: "A1", pieces: ids }], partsOf(pieces));
  expect(diagnostics).toEqual([]);
  const [report] = reports;
  if (!report) throw new Error("no report");
  return report;
}

const solve = (members: readonly Member[]) => solveJoints({ members }).pieces;

/** A tube of length 2000 that rakes, heading so far to the left of uphill. */
const raking = (pitch: number, heading: number, section = ROUND): Member => {
  const [c, s] = [2000 * Math.cos(pitch * RAD), 2000 * Math.sin(pitch * RAD)];
  const from: Vec3 = [100, 200, 300];
  return member({
    id: "R",
    section,
    from,
    to: [from[0] + c * Math.cos(heading * RAD), from[1] + c * Math.sin(heading * RAD), from[2] + s],
  });
};

/** Vertices of the pieces' fine meshes, where they stand. */
function verticesOf(pieces: readonly Piece[]): readonly Vec3[] {
  const { solids } = partsOf(pieces);
  return pieces.flatMap((piece) => {
    const { positions } = placeMesh(tessellate(solids.get(piece.id) as Solid, { chord: 0.05 }), piece.frame);
    return Array.from(
      { length: positions.length / 3 },
      (_, i): Vec3 => [
        positions[3 * i] as number,
        positions[3 * i + 1] as number,
        positions[3 * i + 2] as number,
      ],
    );
  });
}

/** How far points reach along a direction. */
function reachOf(points: readonly Vec3[], [x, y, z]: Vec3): number {
  let [least, greatest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const p of points) {
    const at = p[0] * x + p[1] * y + p[2] * z;
    [least, greatest] = [Math.min(least, at), Math.max(greatest, at)];
  }
  return greatest - least;
}

describe("the box of one tube", () => {
  it.each([
    [0, 0],
    [35.4, 0],
    [35.4, 30],
    [-20, 90],
    [60, -45],
  ])("that rakes %f° and heads %f° is 2000 x 48.3 x 48.3, standing l·cos + d·sin", (pitch, heading) => {
    const { box } = reportOf(solve([raking(pitch, heading)]));
    expect(box.length).toBeCloseTo(2000, 8);
    expect(box.depth).toBeCloseTo(48.3, 8);
    expect(box.thickness).toBeCloseTo(48.3, 8);
    expect(Math.abs(box.rise)).toBeCloseTo(Math.abs(pitch), 8);
    const [c, s] = [Math.cos(pitch * RAD), Math.abs(Math.sin(pitch * RAD))];
    expect(box.standing.length).toBeCloseTo(2000 * c + 48.3 * s, 8);
    expect(box.standing.height).toBeCloseTo(2000 * s + 48.3 * c, 8);
  });

  it("that stands is as long as it is high, from its foot", () => {
    const post = member({
      id: "P",
      section: rectTube({ width: 40, depth: 60, wall: 3 }),
      from: [0, 0, 50],
      to: [0, 0, 950],
    });
    const report = reportOf(solve([post]));
    expect(report.box.length).toBeCloseTo(900, 9);
    expect([report.box.depth, report.box.thickness].map((x) => Math.round(x * 1e6) / 1e6)).toEqual([60, 40]);
    expect(report.box.rise).toBeCloseTo(90, 9);
    expect(report.balance.from).toBe("FOOT");
    expect(report.balance.distance).toBeCloseTo(450, 8);
    expect(report.centre[2]).toBeCloseTo(500, 8);
  });
});

describe("weight and balance", () => {
  it("of two tubes: the mean of their middles by their lengths (closed form)", () => {
    const long = member({ id: "A", section: ROUND, from: [0, 0, 0], to: [3000, 0, 0] });
    const short = member({ id: "B", section: ROUND, from: [0, 0, 1000], to: [1000, 0, 1000] });
    const report = reportOf(solve([long, short]));
    expect(report.centre[0]).toBeCloseTo((3000 * 1500 + 1000 * 500) / 4000, 8);
    expect(report.centre[1]).toBeCloseTo(0, 8);
    expect(report.centre[2]).toBeCloseTo(250, 8);
    // π/4 (48.3² − 41.9²) · 4000 mm³ at 7850 kg/m³.
    expect(report.mass).toBeCloseTo((Math.PI / 4) * (48.3 ** 2 - 41.9 ** 2) * 4000 * 7.85e-6, 9);
    expect(report.box.length).toBeCloseTo(3000, 8);
    expect(report.box.depth).toBeCloseTo(1048.3, 8);
    expect(report.balance).toEqual({ from: "DOWNHILL", distance: expect.closeTo(1250, 8) });
  });

  it("counts a piece named twice once", () => {
    const pieces = solve([raking(0, 0)]);
    expect(reportOf(pieces, ["R", "R"]).mass).toBe(reportOf(pieces).mass);
    expect(reportOf(pieces, ["R", "R"]).pieces).toEqual(["R"]);
  });
});

describe("the example guard's stair", () => {
  const guard = buildGuard(example());
  const marks = ["R1", "P1", "P2", "P3", "P4", "B1", "B2", "B3"];
  const pieces = guard.pieces.filter((p) => marks.includes(p.mark));
  const report = reportOf(pieces);
  const { box } = report;
  const vertices = verticesOf(pieces);

  it("is as large as the vertices of its meshes say", () => {
    const [x, , z] = box.direction;
    expect(reachOf(vertices, box.direction)).toBeCloseTo(box.length, 1);
    expect(reachOf(vertices, [-z, 0, x])).toBeCloseTo(box.depth, 1);
    expect(reachOf(vertices, [0, 1, 0])).toBeCloseTo(box.thickness, 1);
    expect(reachOf(vertices, [1, 0, 0])).toBeCloseTo(box.standing.length, 1);
    expect(reachOf(vertices, [0, 0, 1])).toBeCloseTo(box.standing.height, 1);
  });

  it("is nowhere less deep, at a thousand directions of its plane", () => {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < 1000; k++) {
      const angle = (Math.PI * k) / 1000;
      least = Math.min(least, reachOf(vertices, [Math.cos(angle), 0, Math.sin(angle)]));
    }
    expect(box.depth).toBeLessThanOrEqual(least + 0.1);
    // It lies about as the pitch does: atan(7.5625 / 10.625) = 35.44°.
    expect(box.rise).toBeGreaterThan(34);
    expect(box.rise).toBeLessThan(37);
  });

  it("weighs what its pieces weigh", () => {
    const { masses } = partsOf(pieces);
    expect(report.mass).toBeCloseTo(
      [...masses.values()].reduce((sum, own) => sum + own.mass, 0),
      9,
    );
    expect(report.pieces).toEqual(pieces.map((p) => p.mark));
  });

  it("stands on the paper and in the records, with what it gets through", () => {
    const access = { corridor: { from: 42 * 25.4, to: 48 * 25.4 } };
    const list = [{ id: "S", mark: "S1", pieces: pieces.map((p) => p.id) }];
    const parts = partsOf(guard.pieces);
    const { reports } = assemblies(list, parts, access);
    const paper = cutListText(cutList(guard.pieces, { unit: "in" }), {
      job: "j",
      basis: "b",
      assemblies: reports,
    });
    const flat = paper.replace(/\s+/g, " ");
    expect(flat).toContain("ASSEMBLIES sizes over all");
    expect(flat).toContain(`S1 8 pieces, ${report.mass.toFixed(1)} kg`);
    expect(flat).toContain("2 (2.000) thick");
    expect(flat).toMatch(
      /corridor its length 179-1\/16 \(179\.050\), at most [\d-/]+ \(123\.\d+\): TOO LONG by/,
    );
    expect(paper.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(paper).not.toMatch(/NaN|undefined|Infinity|null|approved|compliant/);
    const header = { generator: "g", job: "j" };
    expect(pieceRecords([], new Map(), { ...header, assemblies: reports }).assemblies).toEqual(reports);
    expect(pieceRecords([], new Map(), header).assemblies).toEqual([]);
    expect(() => structuredClone(reports)).not.toThrow();
  });

  it("leaves the landing's rail as the longest loose piece", () => {
    const list = [{ id: "S", mark: "S1", pieces: pieces.map((p) => p.id) }];
    expect(longestLoose(guard.pieces, list)?.mark).toBe("R2");
    expect(longestLoose(guard.pieces, [])?.mark).toBe("R1");
    expect(longestLoose(pieces, list)).toBe(undefined);
  });
});

describe("an assembly that cannot be measured", () => {
  const pieces = solve([raking(0, 0)]);
  const parts = partsOf(pieces);

  it("names a piece that is not there", () => {
    const { reports, diagnostics } = assemblies([{ id: "A", mark: "A1", pieces: ["R", "Q"] }], parts);
    expect(reports).toEqual([]);
    expect(diagnostics.map((d) => [d.code, d.severity, d.members])).toEqual([
      ["unknown-piece", "error", ["Q"]],
    ]);
    expect(diagnostics[0]?.message).toMatch(/^Assembly A1: .*got "Q"/);
  });

  it("says so when a piece has no solid, or it has no pieces; others are measured all the same", () => {
    const bare = { ...parts, solids: new Map<string, Solid>() };
    const list = [{ id: "A", mark: "A1", pieces: ["R"] }];
    expect(assemblies(list, bare).diagnostics.map((d) => d.code)).toEqual(["assembly-incomplete"]);
    const both = assemblies([{ id: "E", mark: "E1", pieces: [] }, ...list], parts);
    expect(both.diagnostics.map((d) => [d.code, d.severity])).toEqual([["assembly-incomplete", "warning"]]);
    expect(both.reports.map((own) => own.mark)).toEqual(["A1"]);
  });

  it("leaves no block on the paper", () => {
    expect(assembliesText([], { unit: "mm", denominator: 32 })).toEqual([]);
  });
});

describe("the hull of points", () => {
  it("keeps corners alone, counter-clockwise", () => {
    const square = [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
      [1, 1],
      [1, 0],
      [0, 0],
    ] as const;
    expect(convexHull(square)).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ]);
    expect(convexHull([[3, 4]]).length).toBeLessThan(3);
  });
});
