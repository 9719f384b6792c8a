import { describe, expect, it } from "vitest";
import { endKey } from "../../src/joints/decision.js";
import { miterDecisions } from "../../src/joints/miter-decision.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, rectTube } from "../../src/members/index.js";
import { RAD, rail, SQUARE40, TUBE42 } from "./models.js";

const A = { member: "A", end: 1 } as const;
const B = { member: "B", end: 0 } as const;

function decide(a: Member, b: Member) {
  const members = new Map([a, b].map((m) => [m.id, m]));
  return miterDecisions({ kind: "miter", id: "J", ends: [A, B] }, members);
}

const a = rail("A", [-900, 0, 0], [0, 0, 0]);

describe("miterDecisions", () => {
  it("gives both ends one plane, each with the other as its mate", () => {
    const { byEnd, diagnostics } = decide(a, rail("B", [0, 0, 0], [900, 0, 500]));
    expect(diagnostics).toEqual([]);
    const [first, second] = [byEnd.get(endKey(A))!, byEnd.get(endKey(B))!];
    expect(first).toMatchObject({ kind: "flat", joint: "J", onto: ["B"], miter: true, step: 0 });
    expect(second).toEqual({ ...first, onto: ["A"] });
  });

  it("warns of a step and cuts all the same, with the numbers (closed form: 0.08 apart)", () => {
    const { byEnd, diagnostics } = decide(a, rail("B", [0, 0, 0.08], [0, 900, 0.08]));
    expect(byEnd.size).toBe(2);
    expect(diagnostics).toMatchObject([
      { code: "miter-steps", severity: "warning", members: ["A", "B"], end: 1 },
    ]);
    expect(diagnostics[0]!.values.step).toBeCloseTo(0.08, 12);
    expect(diagnostics[0]!.values.axisGap).toBeCloseTo(0.08, 12);
    expect(diagnostics[0]!.message).toContain("0.080 mm");
  });

  it("refuses what no plane can join, and says what to do", () => {
    const back = decide(a, rail("B", [0, 0, 0], [-900, 0, 0]));
    expect(back.byEnd.size).toBe(0);
    expect(back.diagnostics).toMatchObject([{ code: "no-miter", severity: "error", members: ["A", "B"] }]);
    expect(back.diagnostics[0]!.message).toContain("straight back");
    const unequal = decide(a, rail("B", [0, 0, 0], [900, 0, 0], { section: TUBE42 }));
    expect(unequal.diagnostics).toMatchObject([{ code: "no-miter" }]);
    expect(unequal.diagnostics[0]!.hint).toContain("sleeve");
  });

  // A square tube that turns a plan corner while it rakes has its sides twisted at the corner (shared/shop-cases.json b10,
  // twist 60 degrees at 35.5 both sides; `faces_meet: false`): the outlines in the common plane do not fall together.
  it("warns where square tubes twist at a plan corner, and not where round ones do", () => {
    const t = 35.537677791974 * RAD;
    const [c, s] = [900 * Math.cos(t), 900 * Math.sin(t)];
    const climb = (section: Member["section"]) =>
      decide(
        rail("A", [-c, 0, -s] as Vec3, [0, 0, 0], { section }),
        rail("B", [0, 0, 0], [0, c, s], { section }),
      ).diagnostics.map((d) => d.code);
    expect(climb(SQUARE40)).toEqual(["miter-twists"]);
    expect(climb(rectTube({ width: 40, depth: 40, wall: 3 }))).toEqual(["miter-twists"]);
    expect(climb(TUBE42)).toEqual([]);
    // Level to level turns without a twist.
    const flat = decide(
      rail("A", [-900, 0, 0], [0, 0, 0], { section: SQUARE40 }),
      rail("B", [0, 0, 0], [0, 900, 0], { section: SQUARE40 }),
    );
    expect(flat.diagnostics).toEqual([]);
  });
});
