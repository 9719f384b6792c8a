/**
 * Joints asked for, and the smallest input that makes each refusal.
 */
import { describe, expect, it } from "vitest";
import { type Decision, endKey } from "../../src/joints/decision.js";
import { explicitDecisions } from "../../src/joints/explicit.js";
import type { CutDirection, Joint, MemberEnd } from "../../src/joints/index.js";
import type { Member } from "../../src/members/index.js";
import { post, RAD, rail } from "./models.js";

const RULES = { nodeTolerance: 0.1, gap: 0.5, overhang: 0 };
const P1: MemberEnd = { member: "P", end: 1 };
const level = rail("R", [0, 0, 900], [3000, 0, 900]);
const p = post("P", [1000, 0, 0], [1000, 0, 900]);
const t = 35 * RAD;
const raking = rail("A", [-1000 * Math.cos(t), 0, 900 - 1000 * Math.sin(t)], [0, 0, 900]);

function asked(joints: readonly Joint[], members: readonly Member[] = [level, p]) {
  const { byEnd, diagnostics } = explicitDecisions(
    { members, joints },
    new Map(members.map((m) => [m.id, m])),
    RULES,
  );
  return { at: (e: MemberEnd): Decision | undefined => byEnd.get(endKey(e)), byEnd, diagnostics };
}

const codes = (joints: readonly Joint[], members?: readonly Member[]): string[] =>
  asked(joints, members).diagnostics.map((d) => d.code);

describe("a cope asked for", () => {
  it("takes the rules' gap and refuses an overhang unless told otherwise", () => {
    const plain: Joint = { kind: "cope", id: "K", end: P1, onto: ["R"] };
    const wanted = {
      kind: "skin",
      joint: "K",
      onto: ["R"],
      gap: 0.5,
      shoulder: "refuse",
      combine: { by: "min" },
    };
    expect(asked([plain]).at(P1)).toEqual(wanted);
    expect(asked([{ ...plain, gap: 0, shoulder: "midline" }]).at(P1)).toEqual({
      ...wanted,
      gap: 0,
      shoulder: "midline",
    });
  });

  it("onto two mitred rails asks whether they make a crest or a valley, in whatever order the joints are named", () => {
    const under = post("P", [0, 0, 0], [0, 0, 900]);
    const cope: Joint = { kind: "cope", id: "K", end: P1, onto: ["A", "R"] };
    const miter: Joint = {
      kind: "miter",
      id: "M",
      ends: [
        { member: "A", end: 1 },
        { member: "R", end: 0 },
      ],
    };
    const high = rail("A", [-1000, 0, 1500], [0, 0, 900]);
    for (const joints of [
      [miter, cope],
      [cope, miter],
    ]) {
      expect(asked(joints, [raking, level, under]).at(P1)).toMatchObject({ combine: { by: "min" } });
      expect(asked(joints, [high, level, under]).at(P1)).toMatchObject({ combine: { by: "max" } });
    }
    const corner = rail("A", [0, -1000, 900], [0, 0, 900]);
    expect(asked([cope, miter], [corner, level, under]).at(P1)).toMatchObject({ combine: { by: "select" } });
  });

  it("onto one header named twice is a cope onto one", () => {
    expect(asked([{ kind: "cope", id: "K", end: P1, onto: ["R", "R"] }]).at(P1)).toMatchObject({
      onto: ["R"],
    });
  });

  it("onto nothing, or onto itself, is refused: cope-onto-nothing", () => {
    expect(codes([{ kind: "cope", id: "K", end: P1, onto: [] }])).toEqual(["cope-onto-nothing"]);
    expect(codes([{ kind: "cope", id: "K", end: P1, onto: ["P"] }])).toEqual(["cope-onto-nothing"]);
    expect(asked([{ kind: "cope", id: "K", end: P1, onto: ["P", "R"] }]).byEnd.size).toBe(0);
  });
});

describe("a cut asked for", () => {
  const cut = (type: CutDirection, end: MemberEnd = { member: "A", end: 1 }): Joint => ({
    kind: "cut",
    id: "C",
    end,
    cut: type,
  });
  const flat = (j: Joint) =>
    asked([j], [raking, level, p]).at((j as { end: MemberEnd }).end) as Extract<Decision, { kind: "flat" }>;

  it("has the normal of its kind (closed forms)", () => {
    expect(flat(cut({ type: "square" })).normal[0]).toBeCloseTo(Math.cos(t), 12);
    expect(flat(cut({ type: "square" })).normal[2]).toBeCloseTo(Math.sin(t), 12);
    expect(flat(cut({ type: "plumb" })).normal[0]).toBeCloseTo(1, 12);
    expect(flat(cut({ type: "plumb" })).normal[2]).toBe(0);
    expect(flat(cut({ type: "level" })).normal).toEqual([0, 0, 1]);
    const { normal } = flat(cut({ type: "plane", normal: [3, 0, 4] }));
    expect(Math.hypot(normal[0] - 0.6, normal[1], normal[2] - 0.8)).toBeLessThan(1e-15);
  });

  it("goes through the member's own end, or the point given, and keeps the name of what it is cut to", () => {
    expect(flat(cut({ type: "plumb" }))).toMatchObject({ point: [0, 0, 900], onto: [] });
    const j = { ...cut({ type: "plumb" }), at: [-5, 0, 900], onto: "end plate" } as Joint;
    expect(flat(j)).toMatchObject({ point: [-5, 0, 900], onto: ["end plate"], miter: false });
  });

  it("that runs along the member never closes it: cut-along-axis", () => {
    const members = [raking, level, p];
    expect(codes([cut({ type: "plumb" }, P1)], members)).toEqual(["cut-along-axis"]);
    expect(codes([cut({ type: "level" }, { member: "R", end: 0 })], members)).toEqual(["cut-along-axis"]);
    expect(codes([cut({ type: "plane", normal: [1, 0, 0] }, P1)], members)).toEqual(["cut-along-axis"]);
    // On the raking rail: square to its axis, and the same normal mirrored, which is not.
    const square = (x: number): CutDirection => ({
      type: "plane",
      normal: [x * Math.sin(t), 0, Math.cos(t)],
    });
    expect(codes([cut(square(-1))], members)).toEqual(["cut-along-axis"]);
    expect(codes([cut(square(1))], members)).toEqual([]);
    // A normal of no length says nothing.
    expect(codes([cut({ type: "plane", normal: [0, 0, 0] })], members)).toEqual(["cut-along-axis"]);
  });
});

describe("refusals", () => {
  it("unknown-member: a joint that names what the model does not have", () => {
    const far: MemberEnd = { member: "X", end: 0 };
    const { diagnostics, byEnd } = asked([
      { kind: "cope", id: "K", end: P1, onto: ["R", "X"] },
      { kind: "miter", id: "M", ends: [far, { member: "R", end: 0 }] },
      { kind: "cut", id: "C", end: far, cut: { type: "square" } },
    ]);
    expect(diagnostics.map((d) => [d.code, d.joint])).toEqual([
      ["unknown-member", "M"],
      ["unknown-member", "K"],
      ["unknown-member", "C"],
    ]);
    expect(diagnostics[0]!.message).toContain("X");
    expect(byEnd.size).toBe(0);
  });

  it("end-cut-twice: a second joint on an end; a miter goes before, else the first named", () => {
    const square: Joint = { kind: "cut", id: "C", end: P1, cut: { type: "square" } };
    const twice = asked([square, { ...square, id: "D", cut: { type: "level" } }]);
    expect(twice.diagnostics).toMatchObject([{ code: "end-cut-twice", joint: "D", members: ["P"], end: 1 }]);
    expect(twice.at(P1)?.joint).toBe("C");
    const end: MemberEnd = { member: "A", end: 1 };
    const mitred = asked(
      [
        { ...square, end },
        { kind: "miter", id: "M", ends: [end, { member: "R", end: 0 }] },
      ],
      [raking, level],
    );
    expect(mitred.diagnostics).toMatchObject([{ code: "end-cut-twice", joint: "C" }]);
    expect(mitred.at(end)?.joint).toBe("M");
  });
});
