import { describe, expect, it } from "vitest";
import { checkJoints } from "../../src/joints/check-joints.js";
import { type Joint, type JointRules, solveJoints } from "../../src/joints/index.js";
import { RakewrightError } from "../../src/kernel/index.js";
import { rail } from "./models.js";

const RULES = { nodeTolerance: 0.1, gap: 0, overhang: 0 };
const end = { member: "A", end: 1 } as const;
const cope: Joint = { kind: "cope", id: "K", end, onto: ["R"] };
const cut: Joint = { kind: "cut", id: "C", end, cut: { type: "plane", normal: [1, 0, 0] }, at: [0, 0, 0] };

/** The field a refusal names. */
function refused(joints: readonly Joint[], rules: Required<JointRules> = RULES): string {
  try {
    checkJoints(joints, rules);
  } catch (e) {
    if (e instanceof RakewrightError && e.code === "bad-joint") return e.diagnostic.path;
    throw e;
  }
  return "nothing";
}

describe("checkJoints", () => {
  it("passes good numbers, a gap of nothing among them", () => {
    expect(refused([cope, { ...cope, gap: 0 }, { ...cope, gap: 2 }, cut])).toBe("nothing");
  });

  it("refuses numbers that are none and gaps below nothing, by name", () => {
    expect(refused([{ ...cope, gap: -1 }])).toBe("K.gap");
    expect(refused([{ ...cope, gap: Number.NaN }])).toBe("K.gap");
    expect(refused([{ ...cut, at: [0, Number.NaN, 0] }])).toBe("C.at");
    expect(refused([{ ...cut, cut: { type: "plane", normal: [1, 0, Number.POSITIVE_INFINITY] } }])).toBe(
      "C.cut.normal",
    );
    expect(refused([], { ...RULES, gap: -0.1 })).toBe("rules.gap");
    expect(refused([], { ...RULES, overhang: -1 })).toBe("rules.overhang");
    expect(refused([], { ...RULES, nodeTolerance: 0 })).toBe("rules.nodeTolerance");
  });

  it("is asked by the solver", () => {
    const members = [rail("A", [0, 0, 0], [900, 0, 0])];
    expect(() => solveJoints({ members, joints: [{ ...cut, at: [Number.NaN, 0, 0] }] })).toThrow(
      RakewrightError,
    );
  });
});
