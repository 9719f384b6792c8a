/**
 * Pieces of which some is made: that stays to the last bit, the rest follows the model, and others take what is cut.
 *
 * Expected numbers are closed forms of the moves made here (millimetres moved, angles of two slopes); the fit is `fitOf`'s,
 * which the fit tests hold against rays on the finite headers.
 */
import { describe, expect, it } from "vitest";
import { partingPlane } from "../../src/joints/fixed.js";
import {
  fitsOf,
  type HeldPiece,
  type JointSolution,
  type Piece,
  solidOf,
  solveJoints,
} from "../../src/joints/index.js";
import { plate } from "../../src/members/index.js";
import { BAR20, codesOf, pieceOf, post, RAD, rail, SQUARE40, solve, TUBE42, TUBE60 } from "./models.js";

const FIT = 2e-6;
const FOOT = [true, false] as const;
const TOP = [false, true] as const;
const BOTH = [true, true] as const;

const r = rail("R", [0, 0, 900], [3000, 0, 900]);
const raised = rail("R", [0, 0, 950], [3000, 0, 950]);
const p = post("P", [1000, 0, 0], [1000, 0, 900]);
const longer = post("P", [1000, 0, 0], [1000, 0, 950]);
const cut = solve([r, p]);

const hold = (piece: Piece, ends: HeldPiece["ends"], holes = false): HeldPiece => ({ piece, ends, holes });

/** Gap and overlap of every contact of a piece. */
function fitOfPiece(solution: JointSolution, id: string) {
  const contacts = solution.contacts.filter((c) => c.piece === id);
  return fitsOf({ ...solution, contacts }).map((fit) => {
    if (!fit.ok) throw new Error("no fit");
    return { onto: fit.value.contact.onto, gap: fit.value.gap, overlap: fit.value.overlap };
  });
}

describe("a post with its foot made", () => {
  const solved = solveJoints({ members: [raised, longer], held: [hold(pieceOf(cut, "P"), FOOT)] });
  it("keeps the foot and grows with the rail", () => {
    const [before, after] = [pieceOf(cut, "P"), pieceOf(solved, "P")];
    expect(codesOf(solved)).toEqual([]);
    expect(after.ends[0]).toBe(before.ends[0]);
    expect(after.cuts[0]).toBe(before.cuts[0]);
    expect(after.frame).toEqual(before.frame);
    expect(after.hook.end).toBe(0);
    expect(after.lengths.blank.value - before.lengths.blank.value).toBeCloseTo(50, 9);
    expect(solidOf(after).ok).toBe(true);
    for (const { gap, overlap } of fitOfPiece(solved, "P")) expect(Math.max(gap, overlap)).toBeLessThan(FIT);
  });
});

describe("a post with its top made", () => {
  const solved = solveJoints({ members: [raised, longer], held: [hold(pieceOf(cut, "P"), TOP)] });
  it("hangs from its top: the frame slides, the foot is where it is drawn", () => {
    const [before, after] = [pieceOf(cut, "P"), pieceOf(solved, "P")];
    expect(after.ends[1]).toBe(before.ends[1]);
    expect(after.frame.origin[2]).toBeCloseTo(50, 9);
    expect(after.lengths.blank.value - before.lengths.blank.value).toBeCloseTo(50, 9);
    // The end that is there is the one to hook.
    expect(after.hook).toEqual({ end: 1, name: "TOP end" });
    for (const { gap, overlap } of fitOfPiece(solved, "P")) expect(Math.max(gap, overlap)).toBeLessThan(FIT);
  });
});

describe("a post with both ends made", () => {
  it("stands on its foot, the same object, and stands off by what the rail went up", () => {
    const solved = solveJoints({ members: [raised, longer], held: [hold(pieceOf(cut, "P"), BOTH)] });
    expect(pieceOf(solved, "P")).toBe(pieceOf(cut, "P"));
    const [fit] = fitOfPiece(solved, "P");
    // At the crown under the rail's axis the skin went up square to itself.
    expect(fit?.gap).toBeCloseTo(50, 6);
    expect(fit?.overlap).toBe(0);
  });

  it("overlaps by what the rail went down", () => {
    const lower = rail("R", [0, 0, 895], [3000, 0, 895]);
    const solved = solveJoints({
      members: [lower, post("P", [1000, 0, 0], [1000, 0, 895])],
      held: [hold(pieceOf(cut, "P"), BOTH)],
    });
    expect(codesOf(solved)).toEqual([]);
    expect(fitOfPiece(solved, "P")[0]?.overlap).toBeGreaterThan(4.9);
    expect(fitOfPiece(solved, "P")[0]?.overlap).toBeLessThanOrEqual(5 + FIT);
  });

  it("where nothing has moved is the same object and fits", () => {
    const solved = solveJoints({ members: [r, p], held: [hold(pieceOf(cut, "P"), BOTH, true)] });
    expect(pieceOf(solved, "P")).toBe(pieceOf(cut, "P"));
    expect(fitOfPiece(solved, "P").every((f) => f.gap === 0 && f.overlap === 0)).toBe(true);
  });

  it("that stands somewhere else is met there", () => {
    const low = rail("L", [1000, 0, 400], [2000, 0, 400], { role: "rail", section: TUBE42 });
    const first = solve([r, p, low]);
    const old = pieceOf(first, "P");
    const moved = { ...old, frame: { ...old.frame, origin: [1005, 0, 0] as const } };
    const solved = solveJoints({
      members: [r, p, low],
      held: [{ ...hold(moved, FOOT), stands: true }],
    });
    const [before, after] = [pieceOf(first, "L"), pieceOf(solved, "L")];
    expect(pieceOf(solved, "P").frame.origin).toEqual([1005, 0, 0]);
    expect(before.lengths.blank.value - after.lengths.blank.value).toBeCloseTo(5, 9);
    for (const { gap, overlap } of fitOfPiece(solved, "L")) expect(Math.max(gap, overlap)).toBeLessThan(FIT);
  });
});

describe("a miter of which one half is made", () => {
  const a = rail("A", [-1000, 0, 200], [0, 0, 900]);
  const mitred = solve([a, rail("B", [0, 0, 900], [1500, 0, 900])]);
  const sloped = rail("B", [0, 0, 900], [1500, 0, 950]);
  const slope = Math.atan2(50, 1500) / RAD;
  const halfTurn = Math.atan2(700, 1000) / RAD / 2;

  it("gives its plane to the other half, and its own far end follows", () => {
    const shorter = rail("A", [-990, 0, 207], [0, 0, 900]);
    const solved = solveJoints({ members: [shorter, sloped], held: [hold(pieceOf(mitred, "A"), TOP)] });
    expect(codesOf(solved)).toEqual(["miter-steps"]);
    const [before, after] = [pieceOf(mitred, "A"), pieceOf(solved, "A")];
    expect(after.ends[1]).toBe(before.ends[1]);
    expect(before.lengths.axis!.value - after.lengths.axis!.value).toBeCloseTo(Math.hypot(10, 7), 9);
    expect(pieceOf(solved, "B").cuts[0].saw!.fromSquare).toBeCloseTo(halfTurn - slope, 9);
    const [fit] = fitOfPiece(solved, "B");
    expect(Math.max(fit!.gap, fit!.overlap)).toBeLessThan(FIT);
  });

  it("does not where the made end is the other one: both take the new plane", () => {
    const solved = solveJoints({ members: [a, sloped], held: [hold(pieceOf(mitred, "A"), FOOT)] });
    expect(codesOf(solved)).toEqual([]);
    expect(pieceOf(solved, "B").cuts[0].saw!.fromSquare).toBeCloseTo(halfTurn - slope / 2, 9);
    expect(pieceOf(solved, "A").cuts[1].saw!.fromSquare).toBeCloseTo(halfTurn - slope / 2, 9);
  });

  it("both made for another slope: the wedge between them is what is measured", () => {
    const held = ["A", "B"].map((id) => hold(pieceOf(mitred, id), id === "A" ? TOP : FOOT));
    const solved = solveJoints({ members: [a, sloped], held });
    const fit = fitOfPiece(solved, "B")[0]!;
    // The planes turn by the new slope about the node: a half tube above opens or closes by its reach times the sine.
    const reach = 48.3 / 2 / Math.cos(halfTurn * RAD);
    expect(fit.gap).toBeCloseTo(reach * Math.sin(slope * RAD), 6);
  });
});

describe("branches parted on one header", () => {
  const at = (id: string, to: readonly [number, number, number]) =>
    rail(id, [0, 0, 500], to, { role: "rail", section: TUBE42 });
  const corner = post("C", [0, 0, 0], [0, 0, 900]);
  const [one, two] = [at("A", [400, 0, 500]), at("B", [0, 400, 500])];
  const parted = solve([corner, one, two]);

  it.each([
    ["held", { held: [hold(pieceOf(parted, "A"), FOOT)] }],
    ["fixed", { fixed: [pieceOf(parted, "A")] }],
  ] as const)("%s: the other takes the plane that is cut", (_, kept) => {
    const solved = solveJoints({ members: [corner, one, two], ...kept });
    expect(codesOf(solved)).toEqual([]);
    const [mine, theirs] = [pieceOf(solved, "A"), pieceOf(solved, "B")].map((own, i) =>
      partingPlane(own, 0, i === 0 ? "B" : "A"),
    );
    const dot = mine!.normal.reduce((sum, x, i) => sum + x * theirs!.normal[i]!, 0);
    expect(Math.abs(dot)).toBeCloseTo(1, 12);
    for (const { gap, overlap } of fitOfPiece(solved, "B")) expect(Math.max(gap, overlap)).toBeLessThan(FIT);
  });
});

describe("holes that are drilled", () => {
  const square = post("P", [1000, 0, 0], [1000, 0, 900], { section: SQUARE40 });
  const bar = (z: number) => rail("B", [0, 0, z], [3000, 0, z], { role: "rail", section: BAR20 });
  const through = (bore = "B-P") =>
    ({ kind: "through", id: bore, bar: "B", member: "P", clearance: 1 }) as const;
  const first = solve([r, square, bar(450)], [through()]);
  const made = pieceOf(first, "P");

  it("stay on the piece when the bar moves; ends follow the model", () => {
    const members = [raised, post("P", [1000, 0, 0], [1000, 0, 950], { section: SQUARE40 }), bar(460)];
    const solved = solveJoints({ members, joints: [through()], held: [hold(made, FOOT, true)] });
    const after = pieceOf(solved, "P");
    expect(after.bores.map((b) => b.point)).toEqual(made.bores.map((b) => b.point));
    expect(after.bores[0]?.marks[0]?.distance.value).toBe(made.bores[0]?.marks[0]?.distance.value);
    expect(after.lengths.blank.value - made.lengths.blank.value).toBeCloseTo(50, 9);
    expect(solidOf(after).ok).toBe(true);
  });

  it("alone place the piece: its ends are cut about them", () => {
    const members = [r, square, bar(460)];
    const solved = solveJoints({ members, joints: [through()], held: [hold(made, [false, false], true)] });
    const after = pieceOf(solved, "P");
    expect(after.frame.origin[2]).toBeCloseTo(10, 9);
    expect(after.lengths.blank.value).toBeCloseTo(made.lengths.blank.value, 9);
    // 10 mm more stock below the hole was wanted, 10 less above: marks from the foot say so.
    const [mark] = after.bores[0]!.marks;
    expect(mark!.distance.value).toBeCloseTo(460, 9);
  });

  it("not made yet are drilled where the model has them, on the piece as it stands", () => {
    const solved = solveJoints({
      members: [r, square, bar(460)],
      joints: [through()],
      held: [hold(made, FOOT)],
    });
    expect(pieceOf(solved, "P").bores[0]!.marks[0]!.distance.value).toBeCloseTo(460, 9);
  });
});

describe("what a piece was made of", () => {
  it("is what others are fitted to, whatever the model says now", () => {
    const low = rail("L", [1000, 0, 400], [2000, 0, 400], { role: "rail", section: TUBE42 });
    const thick = post("P", [1000, 0, 0], [1000, 0, 900], { section: TUBE60 });
    const rail60 = rail("R", [0, 0, 900], [3000, 0, 900], { section: TUBE60 });
    const before = solve([rail60, thick]);
    const solved = solveJoints({ members: [rail60, p, low], held: [hold(pieceOf(before, "P"), FOOT)] });
    expect(pieceOf(solved, "P").section).toBe(pieceOf(before, "P").section);
    // The shortest line of L starts at the crown of the post that is there: 60.3, not 42.4.
    expect(pieceOf(solved, "L").lengths.longPoint.value).toBeLessThan(1000);
    expect(fitOfPiece(solved, "L").every((f) => f.gap < FIT && f.overlap < FIT)).toBe(true);
  });

  it("a plate thicker than drawn now carries its post higher", () => {
    const base = (thickness: number) =>
      plate({
        ...{ id: "BP", outline: { width: 100, depth: 100 }, thickness, at: [1000, 0, 0], normal: [0, 0, 1] },
      });
    const joints = [
      { kind: "cut", id: "f", end: { member: "P", end: 0 }, cut: { type: "face" }, onto: "BP" },
    ] as const;
    const old = solve([r, p, base(12)], joints);
    for (const kept of [{ held: [hold(pieceOf(old, "BP"), BOTH, true)] }, { fixed: [pieceOf(old, "BP")] }]) {
      const solved = solveJoints({ members: [r, p, base(8)], joints, ...kept });
      expect(pieceOf(solved, "BP").lengths.blank.value).toBe(12);
      expect(pieceOf(solved, "P").lengths.blank.value).toBeCloseTo(pieceOf(old, "P").lengths.blank.value, 9);
      expect(fitOfPiece(solved, "P").every((f) => f.gap < FIT && f.overlap < FIT)).toBe(true);
    }
  });
});

it("a model with nothing held solves as ever; a held piece without a member is said", () => {
  expect(solveJoints({ members: [r, p], held: [] })).toEqual(cut);
  const stray = solveJoints({ members: [r], held: [hold(pieceOf(cut, "P"), FOOT)] });
  expect(codesOf(stray)).toEqual(["unknown-member"]);
});
