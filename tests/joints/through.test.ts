/**
 * Bars that run through drilled members: the hole follows the bar, the bar stays whole, and what does not fit is refused.
 */
import { describe, expect, it } from "vitest";
import {
  type Joint,
  massOf,
  member,
  type Piece,
  rectTube,
  roundBar,
  roundTube,
  solveJoints,
} from "../../src/index.js";
import type { Vec3 } from "../../src/kernel/index.js";

const box = rectTube({ width: 40, depth: 40, wall: 3 });
const post = (section = box) => member({ id: "P", section, role: "post", from: [0, 0, 0], to: [0, 0, 900] });
const bar = (from: Vec3, to: Vec3, od = 12) =>
  member({ id: "B", section: roundBar({ od }), role: "rail", from, to });
const through = (clearance: number): Joint => ({
  kind: "through",
  id: "T",
  bar: "B",
  member: "P",
  clearance,
});
const volume = (piece: Piece): number => {
  const mass = massOf(piece);
  if (!mass.ok) throw new Error("mass");
  return mass.value.volume;
};

describe("a bar through a post", () => {
  it("is met by a hole of its diameter and twice the clearance, through both walls, along its rake", () => {
    const members = [post(), bar([-400, 0, 200], [400, 0, 800])];
    const solved = solveJoints({ members, joints: [through(0.5)] });
    expect(solved.diagnostics).toEqual([]);
    const [drilled, whole] = solved.pieces;
    expect(drilled!.bores.map((b) => [b.id, b.diameter, b.through])).toEqual([["T", 13, "both"]]);
    // Two flat walls of 3 mm; the rake is 3:4, its cosine 4/5.
    const [plain] = solveJoints({ members: [post()] }).pieces;
    expect(volume(plain!) - volume(drilled!)).toBeCloseTo((2 * Math.PI * 6.5 ** 2 * 3) / 0.8, 6);
    expect(whole!.bores).toEqual([]);
    expect(whole!.cuts.map((c) => c.kind)).toEqual(["square", "square"]);
    expect([drilled!.dependsOn, whole!.dependsOn]).toEqual([["B"], []]);
  });

  it("may stand just out of the far side, and no shorter: its rim counts on a slope and on a round wall", () => {
    const out = (section: typeof box, end: Vec3): readonly string[] => {
      const from: Vec3 = [-3 * end[0], 0, 450 - 3 * (end[2] - 450)];
      return solveJoints({ members: [post(section), bar(from, end)], joints: [through(1)] }).diagnostics.map(
        (d) => d.code,
      );
    };
    expect(out(box, [20, 0, 450])).toEqual([]);
    expect(out(box, [19.99, 0, 450])).toEqual(["through-stops-short"]);
    // At 45° the square end of a 12 mm bar is clear of the face when its nearer rim is: 6·sin 45° farther out.
    const far = 20 + 6 * Math.SQRT1_2;
    expect(out(box, [far, 0, 450 + far])).toEqual([]);
    expect(out(box, [far - 0.01, 0, 450 + far - 0.01])).toEqual(["through-stops-short"]);
    expect(out(roundTube({ od: 40, wall: 3 }), [20, 0, 450])).toEqual([]);
  });

  it("misses, or leaves the post's side: refused with the joint's name, and only the post is blocked", () => {
    for (const [y, code] of [
      [40, "bore-misses"],
      [18, "bore-leaves-section"],
      [11, "bore-leaves-hollow"],
    ] as const) {
      const members = [post(), bar([-400, y, 500], [400, y, 500])];
      const { pieces, diagnostics } = solveJoints({ members, joints: [through(1)] });
      expect(diagnostics).toMatchObject([{ code, bore: "T", members: ["P"] }]);
      expect(pieces.map((p) => p.status)).toEqual(["blocked", "ok"]);
    }
  });

  it("throws for a clearance below nothing", () => {
    const members = [post(), bar([-400, 0, 500], [400, 0, 500])];
    expect(() => solveJoints({ members, joints: [through(-0.1)] })).toThrow(/bad-joint.*T\.clearance/);
  });

  it("makes posts alike that are alike drilled", () => {
    const row = [0, 1000].map((x, k) =>
      member({ id: `P${k}`, section: box, role: "post", from: [x, 0, 0], to: [x, 0, 900] }),
    );
    const joints = row.map(
      (p): Joint => ({ kind: "through", id: `T-${p.id}`, bar: "B", member: p.id, clearance: 1 }),
    );
    const level = bar([-100, 0, 500], [1100, 0, 500]);
    expect(solveJoints({ members: [...row, level], joints }).pieces.map((p) => p.identity)).toEqual([
      "P0",
      "P0",
      "B",
    ]);
  });
});
