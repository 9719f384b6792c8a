import { describe, expect, it } from "vitest";
import { endExpression } from "../../src/joints/end-expression.js";
import { compileFlattest } from "../../src/joints/flattest.js";
import { compileEnd, endAt } from "../../src/kernel/end-compile.js";
import { pointOn } from "../../src/kernel/region.js";
import { type Member, rectTube } from "../../src/members/index.js";
import { post, RAD, rail, SQUARE40, TUBE60 } from "./models.js";

const t = 35 * RAD;
const branch = (beside = 0, roll = 0, section = rectTube({ width: 25, depth: 25, wall: 2 })): Member =>
  rail("B", [-800 * Math.cos(t), beside, 900 - 800 * Math.sin(t)], [0, beside, 900], {
    section,
    role: "rail",
    roll,
  });

function onto(header: Member, member: Member) {
  const members = new Map([header, member].map((m) => [m.id, m]));
  const skin = {
    kind: "skin",
    joint: "J",
    onto: [header.id],
    gap: 0,
    shoulder: "refuse",
    combine: { by: "min" },
  } as const;
  const expression = endExpression(skin, member, members);
  return {
    flattest: compileFlattest(expression, 1, member.section.region),
    plain: compileEnd(expression, 1, member.section.region),
  };
}

describe("compileFlattest", () => {
  it("makes one plane of a branch that meets one flat side of a square post, cut at the same places", () => {
    const member = branch();
    const { flattest, plain } = onto(post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40 }), member);
    expect(flattest.expression).toMatchObject({ kind: "plane", source: { joint: "J", onto: "P" } });
    expect(flattest.end!.root.kind).toBe("leaf");
    expect(plain.end!.root.kind).toBe("hit");
    for (const s of member.section.region.outer) {
      const [u, v] = pointOn(s, 0.3);
      // The near face stands 20 downhill of the post's axis: s = (800·cos θ − 20 + v·sin θ)/cos θ.
      const wanted = (800 * Math.cos(t) - 20 + v * Math.sin(t)) / Math.cos(t);
      expect(endAt(flattest.end!, u, v).out).toBeCloseTo(wanted, 9);
      expect(endAt(plain.end!, u, v).out).toBeCloseTo(wanted, 9);
    }
  });

  it("leaves a cope a cope: on a round post, over a corner of a square one, onto its rounded edge", () => {
    expect(
      onto(post("P", [0, 0, 0], [0, 0, 2000], { section: TUBE60 }), branch()).flattest.expression.kind,
    ).toBe("hit");
    const turned = post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40, roll: 45 });
    expect(onto(turned, branch()).flattest.expression.kind).toBe("hit");
    const rounded = rectTube({ width: 40, depth: 40, wall: 3, outerRadius: 6 });
    const beside = onto(post("P", [0, 0, 0], [0, 0, 2000], { section: rounded }), branch(5));
    // 5 + 12.5 off the axis is past the flat, which ends at 14.
    expect(beside.flattest.expression.kind).toBe("hit");
    const within = onto(post("P", [0, 0, 0], [0, 0, 2000], { section: rounded }), branch(1.4));
    expect(within.flattest.expression.kind).toBe("plane");
  });

  it("takes a branch exactly as wide as the flat side it meets", () => {
    const wide = branch(0, 0, SQUARE40);
    const { flattest } = onto(post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40 }), wide);
    expect(flattest.diagnostics).toEqual([]);
    expect(flattest.expression.kind).toBe("plane");
  });

  it("passes on why an end cannot be made", () => {
    const hanging = onto(post("P", [0, 0, 0], [0, 0, 2000], { section: SQUARE40 }), branch(15));
    expect(hanging.flattest.end).toBeNull();
    expect(hanging.flattest.diagnostics.map((d) => d.code)).toEqual(["branch-hangs-off"]);
  });

  it("refuses a branch that misses both of its headers at one place, and takes one that each covers in part", () => {
    // Across the stair, 48.3 wide each: from −24.15 of the first to +24.15 of the second.
    const between = (apart: number) => {
      const headers = [0, apart].map((y, i) => rail(`R${i}`, [-500, y, 900], [500, y, 900]));
      const under = post("P", [0, apart / 2, 0], [0, apart / 2, 900], { section: SQUARE40 });
      const members = new Map([...headers, under].map((m) => [m.id, m]));
      const skin = {
        kind: "skin",
        joint: "J",
        onto: ["R0", "R1"],
        gap: 0,
        shoulder: "refuse",
        combine: { by: "min" },
      } as const;
      return compileFlattest(endExpression(skin, under, members), 1, under.section.region);
    };
    expect(between(30).diagnostics).toEqual([]);
    expect(between(30).end).not.toBeNull();
    // Nothing over the middle of the post once they are more than a diameter apart.
    const open = between(49);
    expect(open.end).toBeNull();
    expect(open.diagnostics).toMatchObject([{ code: "branch-hangs-off" }]);
    expect(open.diagnostics[0]!.message).toContain("R0, R1");
  });
});
