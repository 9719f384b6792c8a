/**
 * The whole solver: a piece per member whatever goes wrong, each code of this room with its smallest input, and the same
 * answer every time.
 */
import { describe, expect, it } from "vitest";
import { type Joint, type JointModel, solidOf, solveJoints } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { parseDesign } from "../../src/layout/index.js";
import { layOut } from "../../src/layout/lay-out.js";
import { type Member, rectBar, rectTube, roundBar } from "../../src/members/index.js";
import {
  codesOf,
  numbersIn,
  pieceOf,
  post,
  potteryGuard,
  rail,
  SQUARE40,
  solve,
  TUBE42,
  TUBE60,
} from "./models.js";

const level = rail("R", [0, 0, 900], [3000, 0, 900]);
const P1 = { member: "P", end: 1 } as const;
const under = (x = 1000, section = TUBE42) => post("P", [x, 0, 0], [x, 0, 900], { section });
const cope: Joint = { kind: "cope", id: "K", end: P1, onto: ["R"] };
const square: Joint = { kind: "cut", id: "C", end: P1, cut: { type: "square" } };

const BAR12 = roundBar({ od: 12 });
const crossbar = (from: number, to: number, section = BAR12, z = 500) =>
  rail("B", [1000 + from, 0, z], [1000 + to, 0, z], { section, role: "rail" });
const through: Joint = { kind: "through", id: "T", bar: "B", member: "P", clearance: 1 };

/**
 * The smallest model that makes each code of the room, and whose piece it blocks: the one that yields, or every one of a
 * node that could not be decided.
 */
const CODES: Readonly<
  Record<string, { members: readonly Member[]; joints?: readonly Joint[]; blocked: readonly string[] }>
> = {
  "same-id": { members: [level, rail("R", [0, 0, 0], [1, 0, 0])], blocked: ["R"] },
  "unknown-member": { members: [level], joints: [{ ...cope, end: { member: "X", end: 0 } }], blocked: [] },
  "end-cut-twice": { members: [level, under()], joints: [cope, square], blocked: ["P"] },
  "cope-onto-nothing": { members: [under()], joints: [{ ...cope, onto: [] }], blocked: ["P"] },
  "cut-along-axis": { members: [under()], joints: [{ ...square, cut: { type: "plumb" } }], blocked: ["P"] },
  "through-not-round": {
    members: [under(), crossbar(-50, 50, rectBar({ width: 12, depth: 12 }))],
    joints: [through],
    blocked: ["P"],
  },
  "through-along": {
    members: [under(), post("B", [1500, 0, 0], [1500, 0, 900])],
    joints: [through],
    blocked: ["P"],
  },
  "through-stops-short": { members: [under(), crossbar(-50, 20)], joints: [through], blocked: ["P"] },
  "bore-meets-end": { members: [under(), crossbar(-50, 50, BAR12, 7)], joints: [through], blocked: ["P"] },
  "no-miter": { members: [level, rail("B", [3000, 0, 900], [0, 0, 900])], blocked: ["R", "B"] },
  "miter-steps": { members: [level, rail("B", [3000, 0, 900.05], [3000, 900, 900.05])], blocked: [] },
  "node-unresolved": {
    members: [level, rail("B", [3000, 0, 900], [3000, 900, 900]), rail("C", [3000, 0, 900], [4000, 0, 1500])],
    blocked: ["R", "B", "C"],
  },
  "post-off-break": {
    members: [level, rail("B", [3000, 0, 900], [3000, 900, 900]), under(3000)],
    joints: [{ kind: "cut", id: "K", end: { member: "B", end: 0 }, cut: { type: "square" } }],
    blocked: ["P"],
  },
  "branch-hangs-off": { members: [level, under(1000, TUBE60)], blocked: ["P"] },
  "header-ends-inside-footprint": { members: [level, under(10)], blocked: ["P"] },
  "header-parallel": {
    members: [level, rail("B", [1000, 0, 900], [2000, 0, 900], { role: "rail" })],
    blocked: ["B"],
  },
  "piece-too-short": {
    members: [level],
    joints: [
      { ...square, id: "C0", end: { member: "R", end: 0 }, at: [2000, 0, 900] },
      { ...square, id: "C1", end: { member: "R", end: 1 }, at: [1000, 0, 900] },
    ],
    blocked: ["R"],
  },
  "yield-cycle": {
    members: [rail("A", [0, 0, 0], [900, 0, 0]), rail("B", [0, 0, 0], [0, 900, 0])],
    joints: [
      { kind: "cope", id: "K1", end: { member: "A", end: 0 }, onto: ["B"] },
      { kind: "cope", id: "K2", end: { member: "B", end: 0 }, onto: ["A"] },
    ],
    blocked: ["A", "B"],
  },
  "members-cross": {
    members: [level, rail("B", [1000, -500, 920], [1000, 500, 920])],
    blocked: ["R", "B"],
  },
  "miter-twists": {
    members: [
      rail("A", [-800, 0, 300], [0, 0, 900], { section: SQUARE40 }),
      rail("B", [0, 0, 900], [0, 900, 900], { section: SQUARE40 }),
    ],
    blocked: [],
  },
};

describe("every code of the room", () => {
  it.each(Object.entries(CODES))(
    "%s: has a smallest input, keeps a piece per member, blocks what it must",
    (code, { members, joints, blocked }) => {
      const solved = solve(members, joints);
      expect(codesOf(solved)).toContain(code);
      for (const d of solved.diagnostics) {
        expect(d.message.length * d.hint.length).toBeGreaterThan(0);
        expect(d.message).not.toMatch(/NaN|undefined|null|Infinity/);
      }
      const ids = [...new Set(members.map((m) => m.id))];
      expect(solved.pieces.map((p) => p.id)).toEqual(ids);
      expect(
        solved.pieces
          .filter((p) => p.status === "blocked")
          .map((p) => p.id)
          .filter((id) => !blocked.includes(id)),
      ).toEqual([]);
      for (const id of blocked) expect(pieceOf(solved, id).status).toBe("blocked");
      expect(numbersIn(solved).every(Number.isFinite)).toBe(true);
      // A blocked piece still has a solid: its bare centreline, cut square.
      for (const p of solved.pieces.filter((x) => x.status === "ok")) expect(solidOf(p).ok).toBe(true);
    },
  );
});

describe("a piece with an error", () => {
  const solved = solve([level, under(1000, TUBE60), post("Q", [2000, 0, 0], [2000, 0, 900])]);

  it("is its bare centreline, square; its neighbours are cut as ever", () => {
    const p = pieceOf(solved, "P");
    expect([p.status, p.lengths.blank.value, p.cuts[1].kind, p.cuts[1].joint]).toEqual([
      "blocked",
      900,
      "square",
      "rule:blocked",
    ]);
    expect(pieceOf(solved, "Q")).toMatchObject({
      status: "ok",
      cuts: [{ kind: "square" }, { kind: "cope" }],
    });
    expect(pieceOf(solved, "R").status).toBe("ok");
  });

  it("says by how much in the member's name (closed form: difference of radii)", () => {
    const [found] = solved.diagnostics;
    expect(found).toMatchObject({
      code: "branch-hangs-off",
      members: ["P", "R"],
      joint: "rule:end-on-span",
      end: 1,
      point: [1000, 0, 900],
    });
    expect(found!.values.missBy as number).toBeCloseTo((60.3 - 48.3) / 2, 9);
    expect(found!.message).toContain("P: ");
    expect(found!.message).toContain("6.000 mm");
  });
});

describe("pieces and contacts", () => {
  const parts = [level, under(), post("Q", [2000, 0, 0], [2000, 0, 900], { section: SQUARE40, mark: "P-2" })];

  it("are one per member in their order, with mark, frame and section as designed", () => {
    const { pieces } = solve(parts, [
      { kind: "cut", id: "C", end: { member: "Q", end: 1 }, cut: { type: "square" }, at: [2000, 0, 800] },
    ]);
    expect(pieces.map((p) => [p.id, p.mark, p.role, p.kind])).toEqual([
      ["R", "R", "top-rail", "member"],
      ["P", "P", "post", "member"],
      ["Q", "P-2", "post", "member"],
    ]);
    for (const [i, p] of pieces.entries()) {
      expect(p.frame).toEqual(parts[i]!.frame);
      expect(p.section).toEqual(parts[i]!.section);
    }
  });

  it("say who yields to whom, with the gap asked for, and depend on whom they yield to", () => {
    const { contacts, pieces } = solve(parts, [], { gap: 1.5 });
    expect(contacts).toEqual([
      { piece: "P", end: 1, onto: "R", joint: "rule:end-on-span", kind: "cope", gap: 1.5 },
      { piece: "Q", end: 1, onto: "R", joint: "rule:end-on-span", kind: "cope", gap: 1.5 },
    ]);
    expect(pieces.map((p) => p.dependsOn)).toEqual([[], ["R"], ["R"]]);
    const mitred = solve([rail("A", [-900, 0, 400], [0, 0, 900]), level]);
    expect(mitred.contacts.map((c) => [c.piece, c.end, c.onto, c.gap])).toEqual([
      ["A", 1, "R", 0],
      ["R", 0, "A", 0],
    ]);
  });

  it("hook the tape on a square end where only one is square (common practice, no source)", () => {
    const [p] = solve([under()]).pieces;
    expect(p!.hook).toEqual({ end: 0, name: "FOOT end" });
    const drawnDown = post("P", [1000, 0, 900], [1000, 0, 0]);
    expect(pieceOf(solve([level, drawnDown]), "P").hook).toEqual({ end: 1, name: "FOOT end" });
  });
});

describe("the same model", () => {
  const pottery = (): JointModel => {
    const guard = potteryGuard();
    const laid = layOut(guard.design!);
    return { members: laid.members, joints: laid.joints, rules: laid.rules };
  };

  it("gives the same bytes twice, and is not changed by it", () => {
    const model = pottery();
    const before = JSON.stringify(model);
    const first = JSON.stringify(solveJoints(model));
    expect(JSON.stringify(solveJoints(model))).toBe(first);
    expect(JSON.stringify(solveJoints(JSON.parse(before) as JointModel))).toBe(first);
    expect(JSON.stringify(model)).toBe(before);
  });

  it("is plain data: cloned or written as JSON and read back it is equal", () => {
    const solved = solveJoints(pottery());
    expect(structuredClone(solved)).toEqual(solved);
    expect(JSON.parse(JSON.stringify(solved))).toEqual(JSON.parse(JSON.stringify(structuredClone(solved))));
    expect(numbersIn(solved).every(Number.isFinite)).toBe(true);
    const piece = structuredClone(solved.pieces[9]!);
    expect(solidOf(piece)).toEqual(solidOf(solved.pieces[9]!));
  });

  it("answers an empty one with nothing", () => {
    expect(solveJoints({ members: [] })).toEqual({ pieces: [], contacts: [], diagnostics: [] });
    expect(parseDesign({}).ok).toBe(false);
  });
});

describe("the pottery guard", () => {
  it("has every piece cut and no finding but the three wide end posts of its design", () => {
    const guard = potteryGuard();
    expect(guard.pieces.every((p) => p.status === "ok")).toBe(true);
    expect(guard.pieces).toHaveLength(guard.members.length);
    expect(guard.diagnostics.map((d) => d.code)).toEqual(Array(3).fill("post-wider-than-rail"));
    const ends: Vec3[] = guard.pieces.map((p) => p.frame.origin);
    expect(numbersIn(ends).every(Number.isFinite)).toBe(true);
  });
});

describe("a raking rail between square posts", () => {
  it("dies into both with plumb cuts (handbook c30: 1-1/2 square on a 7.5/10.5 rake, post faces 48 in apart)", () => {
    const inch = 25.4;
    const rake = Math.atan2(7.5, 10.5);
    const section = rectTube({
      width: 1.5 * inch,
      depth: 1.5 * inch,
      wall: 3,
      outerRadius: 0,
      innerRadius: 0,
    });
    const span = (48 + 1.5) * inch;
    const rise = span * Math.tan(rake);
    const posts = [0, span].map((x, i) => post(`P${i}`, [x, 0, -900], [x, 0, rise + 900], { section }));
    const between = rail("B", [0, 0, 0], [span, 0, rise], { role: "rail", section });
    const piece = pieceOf(solve([...posts, between]), "B");
    expect(piece.cuts.map((c) => c.kind)).toEqual(["plane", "plane"]);
    for (const { saw } of piece.cuts) expect(saw?.fromSquare).toBeCloseTo((rake * 180) / Math.PI, 9);
    expect(piece.lengths.longPoint.value / inch).toBeCloseTo(58.987, 3);
    expect(piece.lengths.blank.value / inch).toBeCloseTo(60.059, 3);
  });

  it("of another tube, past the middle of a round post: the offset is in the cope's numbers (closed form)", () => {
    const posts = [0, 1000].map((x, i) => post(`P${i}`, [x, 0, -900], [x, 0, 1600], { section: TUBE60 }));
    const between = rail("B", [0, 7, 0], [1000, 7, 700], { role: "rail", section: TUBE42 });
    const onto = (member: string, end: 0 | 1): Joint => ({
      ...{ kind: "cope", id: member, end: { member: "B", end }, onto: [member] },
    });
    const solved = solve([...posts, between], [onto("P0", 0), onto("P1", 1)]);
    expect(codesOf(solved)).toEqual([]);
    for (const { cope } of pieceOf(solved, "B").cuts) {
      expect(Math.abs(cope[0]!.offset)).toBeCloseTo(7, 9);
      expect(cope[0]!.angle).toBeCloseTo(90 - (Math.atan2(700, 1000) * 180) / Math.PI, 9);
    }
  });
});
