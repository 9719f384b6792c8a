import { describe, expect, it } from "vitest";
import { combineAt } from "../../src/joints/combine.js";
import type { MemberEnd } from "../../src/joints/joint.js";
import { miterDecisions } from "../../src/joints/miter-decision.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { post, RAD, rail } from "./models.js";

const TOP: Vec3 = [0, 0, 900];
const P: MemberEnd = { member: "P", end: 1 };

/** A post under two rails, given by where their far ends are; each may be drawn towards the break or away from it. */
function over(first: Vec3, second: Vec3, drawn: readonly [0 | 1, 0 | 1] = [1, 0], mitred = false) {
  const towards = (id: string, far: Vec3, end: 0 | 1) =>
    end === 1 ? rail(id, far, TOP) : rail(id, TOP, far);
  const members = [post("P", [0, 0, 0], TOP), towards("A", first, drawn[0]), towards("B", second, drawn[1])];
  const ends: [MemberEnd, MemberEnd] = [
    { member: "A", end: drawn[0] },
    { member: "B", end: drawn[1] },
  ];
  const byId = new Map(members.map((m) => [m.id, m]));
  const made = mitred ? miterDecisions({ kind: "miter", id: "M", ends }, byId).byEnd : new Map();
  return combineAt(byId, P, ends, "J", made);
}

const down35: Vec3 = [-1000, 0, 900 - 1000 * Math.tan(35 * RAD)];
const up35: Vec3 = [1000, 0, 900 + 1000 * Math.tan(35 * RAD)];
const level: Vec3 = [1000, 0, 900];
const levelBack: Vec3 = [-1000, 0, 900];

describe("combineAt", () => {
  it("takes the nearer rail under a crest and the farther one under a valley (by eye)", () => {
    expect(over(down35, level)).toEqual({ combine: { by: "min" } });
    expect(over(levelBack, up35)).toEqual({ combine: { by: "max" } });
    // In one line the two skins are one, and to ask which is nearer is to ask about rounding.
    expect(over(down35, up35)).toEqual({ combine: { by: "first" } });
  });

  it("does not ask which way the rails are drawn", () => {
    for (const drawn of [
      [0, 0],
      [0, 1],
      [1, 1],
    ] as const) {
      expect(over(down35, level, drawn)).toEqual({ combine: { by: "min" } });
      expect(over(levelBack, up35, drawn)).toEqual({ combine: { by: "max" } });
    }
  });

  it("lets mitred rails count on their own sides at a plan corner and where both leave on one side", () => {
    // Halving planes by hand: through the top of the post, normal from the first rail's side to the second's.
    const h = Math.SQRT1_2;
    for (const drawn of [
      [1, 0],
      [0, 0],
      [0, 1],
    ] as const) {
      const { combine, diagnostic } = over(levelBack, [0, 1000, 900], drawn, true);
      expect(diagnostic).toBeUndefined();
      if (combine.by !== "select") throw new Error(combine.by);
      expect(combine.point).toEqual(TOP);
      for (const [k, n] of [h, h, 0].entries()) expect(combine.normal[k]).toBeCloseTo(n, 12);
    }
    expect(over(level, up35, [1, 0], true).combine.by).toBe("select");
  });

  it("says so where rails that are not mitred make a corner or leave on one side: neither nearer nor farther is right", () => {
    const corner = over(levelBack, [0, 1000, 900]).diagnostic!;
    expect(corner).toMatchObject({
      code: "post-off-break",
      severity: "error",
      members: ["P", "A", "B"],
      end: 1,
    });
    expect(corner.message).toContain("common plane");
    expect(corner.joint).toBe("J");
    const side = over(level, up35).diagnostic!;
    expect(side.code).toBe("post-off-break");
    expect(side.message).toContain("same side");
  });
});
