/**
 * Fixture G1: one guard with everything, counted, made, meshed, and measured for fit. Counts are by hand from its drawing.
 */
import { describe, expect, it } from "vitest";
import { fitsOf, type Piece, solidOf, solveJoints } from "../../src/joints/index.js";
import { compileEnd, endAt } from "../../src/kernel/end-compile.js";
import { checkMesh, pointToLocal, pointToParent, tessellate, validateSolid } from "../../src/kernel/index.js";
import { loopDistance } from "../../src/kernel/loop-distance.js";
import { loopsOf } from "../../src/kernel/region.js";
import { G1 } from "./g1.js";
import { pieceOf } from "./models.js";

const solution = solveJoints(G1);
const meshes = new Map(
  solution.pieces.map((piece) => {
    const made = solidOf(piece);
    if (!made.ok) throw new Error(`${piece.id}: ${made.diagnostics[0]?.message}`);
    return [piece.id, { solid: made.value, mesh: tessellate(made.value, { chord: 0.1 }) }] as const;
  }),
);
const onto = (id: string, end: 0 | 1): readonly string[] => [...pieceOf(solution, id).cuts[end].onto].sort();

describe("G1", () => {
  it("is solved without a finding: 26 pieces, 42 contacts, no end undecided", () => {
    expect(solution.diagnostics).toEqual([]);
    // 4 top rails, 6 posts, 2 x 5 lower rails, 2 frame posts and 2 frame rails, a bar, a plate.
    expect(solution.pieces).toHaveLength(26);
    // Top rails: 2 miters seen from both sides, 2 flush ends, 2 on the corner post and their bisector from both sides: 10.
    // Post tops: P0, P2, P5 on one rail, P1 and P3 under two: 7. Lower rails 20, frame 4, the foot of P4.
    expect(solution.contacts).toHaveLength(10 + 7 + 20 + 4 + 1);
    const free = solution.pieces.flatMap((p) =>
      p.cuts.filter((c) => c.joint === "rule:free-end" && p.kind === "member").map((c) => `${p.id}.${c.end}`),
    );
    // Feet of posts without a plate, tops of the corner post and the frame, both ends of the bar that passes through.
    const ends = [
      "P0.0",
      "P1.0",
      "P2.0",
      "P3.0",
      "P4.1",
      "P5.0",
      "F1.0",
      "F1.1",
      "F2.0",
      "F2.1",
      "B.0",
      "B.1",
    ];
    expect(free.sort()).toEqual(ends.sort());
    expect(solution.pieces.every((p) => p.status === "ok")).toBe(true);
  });

  it("decides the valley, the crest, the corner, the ends and the drilled posts as a fitter would", () => {
    expect([onto("P1", 1), onto("P3", 1), onto("P2", 1)]).toEqual([["T1", "T2"], ["T2", "T3"], ["T2"]]);
    expect([pieceOf(solution, "P1").ends[1].kind, pieceOf(solution, "P3").ends[1].kind]).toEqual([
      "max",
      "min",
    ]);
    expect([onto("T3", 1), onto("T4", 0)]).toEqual([
      ["P4", "T4"],
      ["P4", "T3"],
    ]);
    // The thinner lower rails do not reach each other on the corner post.
    expect([onto("L03", 1), onto("L04", 0)]).toEqual([["P4"], ["P4"]]);
    expect(pieceOf(solution, "T4").cuts[1]).toMatchObject({ joint: "rule:last-rail", onto: ["P5"] });
    // Flush with the far face of a 42.4 post.
    expect(pieceOf(solution, "T4").lengths.blank.to.point[2]).toBeCloseTo(1200 + 21.2, 9);
    expect(
      pieceOf(solution, "P4")
        .bores.map((b) => b.id)
        .sort(),
    ).toEqual(["B through P4", "X250", "X500", "Y550"]);
    expect(pieceOf(solution, "P5").bores.map((b) => b.diameter)).toEqual([13]);
    // The two rows of lower rails are alike, and so are the two bays of the rake.
    const same = (a: string, b: string) =>
      expect(pieceOf(solution, a).identity).toBe(pieceOf(solution, b).identity);
    for (const [a, b] of [
      ["L00", "L10"],
      ["L01", "L02"],
      ["L11", "L12"],
      ["L03", "L13"],
      ["F1", "F2"],
      ["FR0", "FR1"],
    ] as const)
      same(a, b);
  });

  it("makes every piece a valid solid and a closed mesh that does not cross itself", () => {
    for (const [id, { solid, mesh }] of meshes) {
      expect([id, validateSolid(solid)]).toEqual([id, []]);
      expect([id, checkMesh(mesh, "full").ok]).toEqual([id, true]);
    }
  });

  it("fits: no joint open by more than 2e-6 mm, no piece into its mate by more", () => {
    for (const [i, fit] of fitsOf(solution).entries()) {
      if (!fit.ok) throw new Error(fit.diagnostics[0]?.message);
      const { gap, overlap } = fit.value;
      const name = `${solution.contacts[i]?.piece} onto ${solution.contacts[i]?.onto}`;
      expect([name, gap < 2e-6, overlap < 2e-6]).toEqual([name, true, true]);
    }
  });

  it("leaves no two pieces in one place: no point of one is inside the material of another", () => {
    /** How deep a point of the layout is in a piece's material, bores not counted out. */
    const depthIn = (piece: Piece, p: readonly [number, number, number]): number => {
      const [u, v, s] = pointToLocal(piece.frame, p);
      const { region } = piece.section;
      // A hole is walked the other way round, so that material is on the left of it too.
      const wall = Math.min(...loopsOf(region).map((loop) => -loopDistance(loop, [u, v]).distance));
      if (wall <= 0) return wall;
      const [low, high] = ([0, 1] as const).map((e) => {
        const { end } = compileEnd(piece.ends[e], e === 0 ? -1 : 1, region);
        return end ? endAt(end, u, v).out - (e === 0 ? -s : s) : 0;
      }) as [number, number];
      return Math.min(wall, low, high);
    };
    // Half way through a wall of 3.2 the depth is 1.6, and nothing in the hollow: the check can fail.
    const t3 = pieceOf(solution, "T3");
    expect(depthIn(t3, pointToParent(t3.frame, [22.55, 0, 700]))).toBeCloseTo(1.6, 9);
    expect(depthIn(t3, pointToParent(t3.frame, [20, 0, 700]))).toBeLessThan(0);
    // A wall passes through its own hole: the bar and the posts it runs through are left out.
    const throughs = new Set(["B"]);
    let asked = 0;
    for (const a of solution.pieces) {
      const { positions } = (meshes.get(a.id) as { mesh: { positions: Float64Array } }).mesh;
      for (const b of solution.pieces) {
        if (a.id === b.id || throughs.has(a.id) || throughs.has(b.id)) continue;
        for (let i = 0; i < positions.length; i += 3) {
          const p = pointToParent(a.frame, [positions[i]!, positions[i + 1]!, positions[i + 2]!]);
          const depth = depthIn(b, p);
          if (depth > 1e-5) throw new Error(`${a.id} is ${depth} mm inside ${b.id} at ${p}`);
          asked++;
        }
      }
    }
    expect(asked).toBeGreaterThan(100_000);
  });
});
