/**
 * Drilled pieces: bores asked for as joints, in the piece's frame, and what makes two drilled pieces the same.
 */
import { describe, expect, it } from "vitest";
import {
  type Joint,
  type Member,
  member,
  rectTube,
  roundTube,
  solidOf,
  solveJoints,
} from "../../src/index.js";
import type { Vec3 } from "../../src/kernel/index.js";

const tube = rectTube({ width: 40, depth: 40, wall: 3 });
const post = (id: string, x: number, turned = false): Member =>
  member({
    id,
    section: tube,
    role: "post",
    from: turned ? [x, 0, 900] : [x, 0, 0],
    to: turned ? [x, 0, 0] : [x, 0, 900],
  });
const drill = (
  id: string,
  on: string,
  at: Vec3,
  direction: Vec3,
  through: "first" | "both" = "both",
): Joint => ({
  kind: "bore",
  id,
  member: on,
  at,
  direction,
  diameter: 8,
  through,
});

describe("bores as joints", () => {
  it("stand in the piece's own frame, where its solid is drilled", () => {
    const joints = [drill("h", "P", [500, 0, 300], [0.8, 0, 0.6])];
    const { pieces, diagnostics } = solveJoints({ members: [post("P", 500)], joints });
    expect(diagnostics).toEqual([]);
    const [piece] = pieces;
    expect(piece?.bores).toHaveLength(1);
    expect(piece?.bores[0]?.point[2]).toBeCloseTo(300, 12);
    const solid = solidOf(piece!);
    expect(solid.ok && solid.value.faces.filter((f) => f.provenance.from === "bore").length).toBe(4);
  });

  it("block their piece with a reason when they cannot be drilled, and leave the others", () => {
    const joints = [drill("h", "P", [500, 0, 2], [1, 0, 0])];
    const { pieces, diagnostics } = solveJoints({ members: [post("P", 500), post("Q", 900)], joints });
    expect(diagnostics).toMatchObject([{ code: "bore-meets-end", members: ["P"], bore: "h" }]);
    expect(pieces.map((p) => p.status)).toEqual(["blocked", "ok"]);
    expect(pieces[0]?.bores).toEqual([]);
  });
});

describe("identity of drilled pieces", () => {
  const identities = (members: readonly Member[], joints: readonly Joint[]) =>
    solveJoints({ members, joints }).pieces.map((p) => [p.identity, p.handOf]);

  it("is shared by posts drilled alike, one of them drawn upside down", () => {
    const members = [post("A", 0), post("B", 500), post("C", 1000, true)];
    const joints = [0, 500, 1000].map((x, k) =>
      drill(`h${k}`, ["A", "B", "C"][k]!, [x, 0, 300], [0.8, 0, 0.6]),
    );
    expect(identities(members, joints).map(([i]) => i)).toEqual(["A", "A", "A"]);
  });

  it("is not shared when a hole is 1 mm off, another size of drill, or through one wall only", () => {
    const members = [post("A", 0), post("B", 500), post("C", 1000), post("D", 1500)];
    const joints = [
      drill("a", "A", [0, 0, 300], [0.8, 0, 0.6]),
      drill("b", "B", [500, 0, 301], [0.8, 0, 0.6]),
      { ...drill("c", "C", [1000, 0, 300], [0.8, 0, 0.6]), diameter: 9 } as Joint,
      drill("d", "D", [1500, 0, 300], [0.8, 0, 0.6], "first"),
    ];
    expect(new Set(identities(members, joints).map(([i]) => i)).size).toBe(4);
  });

  it("tells left from right hand: two directions of holes that only a mirror brings together", () => {
    const members = [post("A", 0), post("B", 500)];
    const joints = [
      drill("a1", "A", [0, 0, 300], [0.8, 0, 0.6]),
      drill("a2", "A", [0, 0, 500], [0, 0.6, 0.8]),
      drill("b1", "B", [500, 0, 300], [0.8, 0, 0.6]),
      drill("b2", "B", [500, 0, 500], [0, -0.6, 0.8]),
    ];
    expect(identities(members, joints)).toEqual([
      ["A", undefined],
      ["B", "A"],
    ]);
  });

  it("holds for round posts turned about their axis", () => {
    const round = (id: string, x: number, roll: number): Member =>
      member({
        id,
        section: roundTube({ od: 48.3, wall: 3.2 }),
        role: "post",
        from: [x, 0, 0],
        to: [x, 0, 900],
        roll,
      });
    const rail = member({
      id: "R",
      section: roundTube({ od: 48.3, wall: 3.2 }),
      role: "top-rail",
      from: [-300, 0, 900 - 225],
      to: [900, 0, 900 + 675],
    });
    const members = [rail, { ...round("A", 0, 0) }, { ...round("B", 0, 137) }].map((m) => m);
    const apart = members.map((m) =>
      m.id === "B" ? member({ ...m, from: [400, 0, 300], to: [400, 0, 1200], up: m.frame.y }) : m,
    );
    const joints = [
      drill("a", "A", [0, 0, 300], [0.8, 0, 0.6]),
      drill("b", "B", [400, 0, 600], [0.8, 0, 0.6]),
    ];
    const solved = solveJoints({ members: apart, joints });
    expect(solved.diagnostics).toEqual([]);
    expect(solved.pieces.map((p) => p.identity)).toEqual(["R", "A", "A"]);
  });
});
