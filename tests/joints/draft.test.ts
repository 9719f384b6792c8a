/**
 * An end that compiles may still have no faces: then the piece is blocked, and the cut list does not have it.
 *
 * A branch 40 mm wide under two headers along x. The lower, 30 mm wide, is passed by fibres more than 15 mm off its axis;
 * at 15 mm its side is at its axis' height, and the upper one's near side at 560 − √(30.15² − 15²) (circle, closed form).
 */
import { describe, expect, it } from "vitest";
import { solidOf } from "../../src/joints/index.js";
import { type Member, roundBar } from "../../src/members/index.js";
import { codesOf, pieceOf, post, rail, solve, TUBE60 } from "./models.js";

const header = (id: string, z: number, section = TUBE60) =>
  rail(id, [-300, 0, z], [300, 0, z], { section, role: "rail" });
const branch = post("P", [0, 0, 0], [0, 0, 500], { section: roundBar({ od: 40 }) });
const LOW = header("LOW", 500, roundBar({ od: 30 }));
const HIGH = header("HIGH", 560);
const under = (...headers: Member[]) =>
  solve(
    [branch, ...headers],
    [{ kind: "cope", id: "J", end: { member: "P", end: 1 }, onto: headers.map((h) => h.id) }],
  );

describe("an end that has no faces", () => {
  it("blocks its piece, with the step it would have", () => {
    const solution = under(LOW, HIGH);
    const found = solution.diagnostics.find((d) => d.code === "end-steps");
    expect(found).toMatchObject({ severity: "error", joint: "J", end: 1 });
    expect(found?.members[0]).toBe("P");
    expect(found?.message).toMatch(/^P: The cut of end 1 steps/);
    const step = 560 - Math.sqrt(30.15 ** 2 - 15 ** 2) - 500;
    expect(found?.values.step as number).toBeCloseTo(step, 5);
    expect(pieceOf(solution, "P").status).toBe("blocked");
    expect(solidOf(pieceOf(solution, "P")).ok).toBe(true);
  });

  it("does not block one that has them", () => {
    const solution = under(HIGH);
    expect(codesOf(solution)).toEqual([]);
    expect(pieceOf(solution, "P").status).toBe("ok");
  });
});
