/**
 * Pieces that are cut already: kept as they are, and fitted to where they stand.
 */
import { describe, expect, it } from "vitest";
import { solidOf, solveJoints } from "../../src/joints/index.js";
import { frameFromAxis } from "../../src/kernel/index.js";
import { codesOf, pieceOf, post, RAD, rail, solve, TUBE42, TUBE60 } from "./models.js";

const r = rail("R", [0, 0, 900], [3000, 0, 900]);
const p = post("P", [1000, 0, 0], [1000, 0, 900]);
const low = rail("L", [1000, 0, 400], [2000, 0, 400], { role: "rail", section: TUBE42 });
const q = post("Q", [2000, 0, 0], [2000, 0, 900]);
const cut = solve([r, p, low, q]);

describe("a fixed piece", () => {
  it("is the same object, whatever happens to what it was cut to", () => {
    const higher = rail("R", [0, 0, 950], [3000, 0, 950]);
    const solved = solveJoints({ members: [higher, p, low, q], fixed: [pieceOf(cut, "P")] });
    expect(pieceOf(solved, "P")).toBe(pieceOf(cut, "P"));
    expect(pieceOf(solved, "P").lengths.blank.value).toBe(pieceOf(cut, "P").lengths.blank.value);
    expect(solved.contacts).toContainEqual(expect.objectContaining({ piece: "P", onto: "R" }));
  });

  it("is fitted to where it stands, not to where its member was drawn", () => {
    const old = pieceOf(cut, "P");
    const moved = { ...old, frame: { ...old.frame, origin: [1005, 0, 0] as const } };
    const solved = solveJoints({ members: [r, p, low, q], fixed: [moved] });
    expect(codesOf(solved)).toEqual([]);
    // The rail's end stays on its own centreline; what it is cut to is the post where it stands.
    const [before, after] = [pieceOf(cut, "L"), pieceOf(solved, "L")];
    expect(before.lengths.blank.value - after.lengths.blank.value).toBeCloseTo(5, 9);
    expect(pieceOf(solved, "P")).toBe(moved);
  });

  it("leaning: the rail's saddle follows the lean (closed form: distance to a tilted axis)", () => {
    const old = pieceOf(cut, "P");
    const lean = 2 * RAD;
    const z = [Math.sin(lean), 0, Math.cos(lean)] as const;
    const frame = frameFromAxis([1000, 0, 0], z, old.frame.x);
    const solved = solveJoints({
      members: [r, p, low, q],
      fixed: [{ ...old, frame }],
      rules: { nodeTolerance: 20 },
    });
    const { cope } = pieceOf(solved, "L").cuts[0];
    expect(cope[0]?.angle).toBeCloseTo(88, 9);
  });

  it("gives its plane to the one mitred to it", () => {
    const a = rail("A", [-1000, 0, 200], [0, 0, 900]);
    const b = rail("B", [0, 0, 900], [1500, 0, 900]);
    const mitred = solve([a, b]);
    // The level rail changes its slope after the raking one is cut: it takes the cut that is there.
    const sloped = rail("B", [0, 0, 900], [1500, 0, 950]);
    const solved = solveJoints({ members: [a, sloped], fixed: [pieceOf(mitred, "A")] });
    expect(codesOf(solved)).toEqual(["miter-steps"]);
    const fresh = solve([a, sloped]);
    const fromSquare = (s: typeof fresh) => pieceOf(s, "B").cuts[0].saw!.fromSquare;
    const halfTurn = Math.atan2(700, 1000) / RAD / 2;
    const slope = Math.atan2(50, 1500) / RAD;
    // Half of the old turn plus all of the new slope, against half of the new turn.
    expect(fromSquare(solved)).toBeCloseTo(halfTurn - slope, 9);
    expect(fromSquare(fresh)).toBeCloseTo(halfTurn - slope / 2, 9);
    expect(pieceOf(solved, "A")).toBe(pieceOf(mitred, "A"));
  });

  it("beside another on one header: only the other gives way", () => {
    const at = (id: string, to: readonly [number, number, number]) =>
      rail(id, [0, 0, 500], to, { role: "rail", section: TUBE42 });
    const corner = post("C", [0, 0, 0], [0, 0, 900], { section: TUBE60 });
    const [one, two] = [at("A", [400, 300, 500]), at("B", [400, -100, 500])];
    const first = solve([corner, one]);
    const solved = solveJoints({ members: [corner, one, two], fixed: [pieceOf(first, "A")] });
    expect(codesOf(solved)).toEqual([]);
    expect(pieceOf(solved, "A").ends[0].kind).toBe("hit");
    expect(pieceOf(solved, "B").cuts[0].onto).toEqual(["C", "A"]);
    expect(solidOf(pieceOf(solved, "B")).ok).toBe(true);
  });

  it("beside one that cannot be shaped to it: both are named", () => {
    const at = (id: string, to: readonly [number, number, number]) =>
      rail(id, [0, 0, 500], to, { role: "rail", section: TUBE42 });
    const corner = post("C", [0, 0, 0], [0, 0, 900]);
    const [one, two] = [at("A", [400, 0, 500]), at("B", [0, 400, 500])];
    const solved = solveJoints({ members: [corner, one, two], fixed: [pieceOf(solve([corner, one]), "A")] });
    expect(codesOf(solved)).toEqual(["members-cross"]);
    expect(solved.diagnostics[0]?.members).toEqual(["B", "A"]);
  });

  it("without a member is said", () => {
    const solved = solveJoints({ members: [r], fixed: [pieceOf(cut, "P")] });
    expect(solved.diagnostics).toEqual([
      expect.objectContaining({ code: "unknown-member", severity: "warning", path: "fixed", members: ["P"] }),
    ]);
    expect(solved.pieces.map((x) => x.id)).toEqual(["R"]);
  });
});
