/**
 * The rules of the trade, one by one: design section "joints" and common practice, no source, where nothing else is named.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decide } from "../../src/joints/decide.js";
import { type Decision, endKey } from "../../src/joints/decision.js";
import type { JointModel } from "../../src/joints/index.js";
import type { Member } from "../../src/members/index.js";
import { post, RAD, rail, SQUARE40, TUBE42 } from "./models.js";

function decided(members: readonly Member[], rest: Omit<JointModel, "members"> = {}) {
  const { byEnd, diagnostics } = decide({ members, ...rest });
  const at = (member: string, end: 0 | 1): Decision => byEnd.get(endKey({ member, end }))!;
  return { at, byEnd, codes: diagnostics.map((d) => d.code), diagnostics };
}

const level = rail("R", [0, 0, 900], [3000, 0, 900]);

describe("an end that meets nothing", () => {
  it("is cut square at its own place", () => {
    const { at, codes } = decided([level]);
    expect(codes).toEqual([]);
    const free = { kind: "flat", joint: "rule:free-end", onto: [], normal: [1, 0, 0], miter: false, step: 0 };
    expect(at("R", 0)).toEqual({ ...free, point: [0, 0, 900] });
    expect(at("R", 1)).toEqual({ ...free, point: [3000, 0, 900] });
  });
});

describe("an end on a span", () => {
  it("is cut to that member's skin, whatever the roles, with the rules' gap", () => {
    const p = post("P", [1000, 0, 0], [1000, 0, 900]);
    const skin = {
      kind: "skin",
      joint: "rule:end-on-span",
      onto: ["R"],
      gap: 0,
      shoulder: "refuse",
      combine: { by: "min" },
    };
    expect(decided([level, p]).at("P", 1)).toEqual(skin);
    expect(decided([level, p], { rules: { gap: 1.6 } }).at("P", 1)).toEqual({ ...skin, gap: 1.6 });
    const low = rail("L", [1000, 0, 400], [2000, 0, 400], { role: "rail" });
    const other = post("Q", [2000, 0, 0], [2000, 0, 900]);
    const both = decided([level, p, other, low]);
    expect(both.at("L", 0)).toMatchObject({ kind: "skin", onto: ["P"] });
    expect(both.at("L", 1)).toMatchObject({ kind: "skin", onto: ["Q"] });
  });

  it("is found within the node tolerance and not outside it", () => {
    const p = post("P", [1000, 0, 0], [1000, 0, 899.7]);
    expect(decided([level, p]).at("P", 1).joint).toBe("rule:free-end");
    expect(decided([level, p], { rules: { nodeTolerance: 0.5 } }).at("P", 1).joint).toBe("rule:end-on-span");
  });
});

describe("two that end together", () => {
  it("are mitred when both are rails, both posts or both others, with a rail beside a post not", () => {
    const raking = rail("A", [-1000, 0, 200], [0, 0, 900]);
    const mitred = decided([raking, level]);
    expect(mitred.at("A", 1)).toMatchObject({ miter: true, onto: ["R"], joint: "rule:ends-together" });
    expect(mitred.at("R", 0)).toMatchObject({ miter: true, onto: ["A"] });
    const foot = post("P", [0, 0, 0], [0, 0, 900]);
    const bent = post("Q", [0, 0, 900], [0, 300, 1400]);
    expect(decided([foot, bent]).at("P", 1)).toMatchObject({ miter: true, onto: ["Q"] });
    expect(decided([foot, level]).at("P", 1)).toMatchObject({ kind: "skin", joint: "rule:post-under-rail" });
  });
});

describe("a post where rails end", () => {
  const p = post("P", [0, 0, 0], [0, 0, 900]);

  it("is shaped to both rails of a break, nearer under a crest, farther under a valley", () => {
    const rake = (z: number) => rail("A", [-1000, 0, z], [0, 0, 900]);
    const crest = decided([rake(200), level, p]);
    expect(crest.at("P", 1)).toMatchObject({
      joint: "rule:post-under-break",
      onto: ["A", "R"],
      combine: { by: "min" },
    });
    expect(crest.at("A", 1)).toMatchObject({ miter: true, onto: ["R"] });
    expect(decided([rake(1600), level, p]).at("P", 1)).toMatchObject({ combine: { by: "max" } });
  });

  it("is shaped to each of two mitred rails on its own side where they turn a plan corner over it", () => {
    const corner = decided([rail("A", [0, -1000, 900], [0, 0, 900]), level, p]);
    expect(corner.codes).toEqual([]);
    expect(corner.at("P", 1)).toMatchObject({
      onto: ["A", "R"],
      combine: { by: "select", point: [0, 0, 900] },
    });
  });

  it("is shaped to the one rail that ends there, which goes on flush with its far face (design: the last rail)", () => {
    const { at, codes } = decided([level, p]);
    expect(codes).toEqual([]);
    expect(at("P", 1)).toMatchObject({ kind: "skin", joint: "rule:post-under-rail", onto: ["R"] });
    const cut = at("R", 0) as Extract<Decision, { kind: "flat" }>;
    expect(cut).toMatchObject({ joint: "rule:last-rail", onto: ["P"] });
    // Half of 42.4 past the post's axis, square to the rail's direction in plan.
    expect(cut.point[0]).toBeCloseTo(-21.2, 12);
    expect(Math.abs(cut.normal[0])).toBeCloseTo(1, 12);
  });

  it("cuts a raking last rail plumb, flush with a square post's far face", () => {
    const t = 35 * RAD;
    const rake = rail("A", [0, 0, 900], [1000 * Math.cos(t), 0, 900 + 1000 * Math.sin(t)]);
    const square = post("P", [0, 0, 0], [0, 0, 900], { section: SQUARE40 });
    const cut = decided([rake, square]).at("A", 0) as Extract<Decision, { kind: "flat" }>;
    expect(cut.point[0]).toBeCloseTo(-20, 12);
    expect(cut.normal[0]).toBeCloseTo(-1, 12);
    expect(cut.normal[2]).toBeCloseTo(0, 12);
  });
});

describe("a node with more members of one kind than a miter joins", () => {
  it("is not guessed at: said once, naming all, and each end left square", () => {
    const three = [
      rail("A", [-1000, 0, 900], [0, 0, 900]),
      rail("B", [0, 0, 900], [1000, 0, 900]),
      rail("C", [0, 0, 900], [0, 1000, 900]),
    ];
    const { codes, diagnostics, at } = decided(three);
    expect(codes).toEqual(["node-unresolved"]);
    expect(diagnostics[0]).toMatchObject({
      severity: "error",
      members: ["A", "B", "C"],
      values: { ends: 3 },
    });
    expect([at("A", 1), at("B", 0), at("C", 0)].map((d) => d.joint)).toEqual(Array(3).fill("rule:free-end"));
    // Named joints resolve it: two mitred, the third coped to one of them.
    const named = decided(three, {
      joints: [
        {
          kind: "miter",
          id: "M",
          ends: [
            { member: "A", end: 1 },
            { member: "B", end: 0 },
          ],
        },
        { kind: "cope", id: "K", end: { member: "C", end: 0 }, onto: ["A", "B"] },
      ],
    });
    expect(named.codes.filter((c) => c === "node-unresolved")).toEqual([]);
  });
});

describe("joints asked for", () => {
  it("win over every rule", () => {
    const p = post("P", [1000, 0, 0], [1000, 0, 900], { section: TUBE42 });
    const { at, codes } = decided([level, p], {
      joints: [{ kind: "cut", id: "K", end: { member: "P", end: 1 }, cut: { type: "level" } }],
    });
    expect(codes).toEqual([]);
    expect(at("P", 1)).toMatchObject({ kind: "flat", joint: "K", normal: [0, 0, 1] });
  });
});

describe("the decisions", () => {
  it("do not depend on the order of the members", () => {
    const members = [
      rail("A", [-2000, 0, -500], [0, 0, 900]),
      level,
      rail("C", [3000, 0, 900], [3000, 2000, 900]),
      ...[-1000, 0, 1500].map((x, i) => post(`P${i}`, [x, 0, -900], [x, 0, x < 0 ? 200 : 900])),
      post("Q", [3000, 2000, 0], [3000, 2000, 900]),
      rail("L", [0, 0, 300], [1500, 0, 300], { role: "rail" }),
    ];
    const seen = (list: readonly Member[]) => {
      const { byEnd } = decide({ members: list });
      return list
        .flatMap((m) =>
          ([0, 1] as const).map((end) => [m.id, end, byEnd.get(endKey({ member: m.id, end }))] as const),
        )
        .map(([id, end, d]) => `${id}.${end}: ${d?.kind} ${d?.joint} ${[...(d?.onto ?? [])].sort()}`)
        .sort();
    };
    const first = seen(members);
    expect(first.filter((line) => line.includes("rule:free-end")).length).toBeLessThan(8);
    fc.assert(
      fc.property(
        fc.shuffledSubarray(members, { minLength: members.length, maxLength: members.length }),
        (other) => {
          expect(seen(other)).toEqual(first);
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe("a guard's last rail", () => {
  const last = rail("R", [0, 0, 900], [2000, 0, 900]);
  const end = post("P", [2000, 0, 0], [2000, 0, 900]);

  it("ends flush with the far face of its last post, or past it by the stated overhang (closed form)", () => {
    const flush = { kind: "flat", joint: "rule:last-rail", onto: ["P"], normal: [1, 0, 0] };
    expect(decided([last, end]).at("R", 1)).toMatchObject({ ...flush, point: [2000 + 42.4 / 2, 0, 900] });
    const past = decided([last, end], { rules: { overhang: 60 } });
    expect(past.at("R", 1)).toMatchObject({ ...flush, point: [2000 + 42.4 / 2 + 60, 0, 900] });
    expect(past.at("P", 1)).toMatchObject({ kind: "skin", joint: "rule:post-under-rail", onto: ["R"] });
    expect(past.at("R", 0).joint).toBe("rule:free-end");
  });

  it("measures the overhang square to the post on a rake as well", () => {
    const raking = rail("R", [0, 0, 0], [2000, 0, 1400]);
    const p = post("P", [2000, 0, 500], [2000, 0, 1400]);
    const made = decided([raking, p], { rules: { overhang: 50 } }).at("R", 1);
    expect(made).toMatchObject({ normal: [1, 0, 0], point: [2000 + 42.4 / 2 + 50, 0, 1400] });
  });
});

describe("a member that another one is asked to yield to", () => {
  it("goes on: no rule makes it yield in turn", () => {
    const r = rail("R", [0, 0, 900], [2000, 0, 900]);
    const p = post("P", [2000, 0, 0], [2000, 0, 900]);
    const cope = { kind: "cope", id: "K", end: { member: "R", end: 1 }, onto: ["P"] } as const;
    const { at, codes } = decided([r, p], { joints: [cope] });
    expect(at("R", 1)).toMatchObject({ kind: "skin", joint: "K" });
    expect(at("P", 1)).toMatchObject({ kind: "flat", joint: "rule:free-end" });
    expect(codes).toEqual([]);
  });
});
