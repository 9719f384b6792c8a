/**
 * What is made against a new layout: what the solver must leave alone, and every way in which it may no longer fit.
 *
 * Each finding has its smallest input here and a near one without it; sizes are closed forms of the moves made.
 */
import { describe, expect, it } from "vitest";
import type { Joint, Piece } from "../../../src/joints/index.js";
import { stagesOf } from "../../../src/layout/as-set/piece-state.js";
import {
  type AsSet,
  type Feature,
  holdMade,
  type MadePiece,
  NOTHING_SET,
  solveAsSet,
} from "../../../src/layout/index.js";
import { type Member, plate } from "../../../src/members/index.js";
import { BAR20, pieceOf, post, RAD, rail, SQUARE40, solve, TUBE42 } from "../../joints/models.js";

const ALL: readonly Feature[] = ["start", "end", "holes"];
/** Half of 1/32 in: what is cut to its marks may be off by so much itself. */
const HALF_MARK = 25.4 / 64;
const at = (z: number) => rail("R", [0, 0, z], [2000, 0, z]);
const up = (top: number, x = 1000) => post("P", [x, 0, 0], [x, 0, top], { section: SQUARE40, mark: "P1" });
const bar = (z: number) => rail("B", [0, 0, z], [2000, 0, z], { role: "rail", section: BAR20 });
const through: Joint = { kind: "through", id: "h", bar: "B", member: "P", clearance: 0.5 };

const made = (piece: Piece, features: readonly Feature[] = ALL, set = false): MadePiece => ({
  ...{ piece, features, set, path: "made[0]" },
});

function setUp(
  members: readonly Member[],
  own: readonly MadePiece[],
  { joints = [], gap = 0 }: { joints?: readonly Joint[]; gap?: number } = {},
) {
  return solveAsSet({ members, joints, rules: { gap } }, { posts: [], made: own });
}

const first = solve([at(900), up(900), bar(450)], [through]);
const P = pieceOf(first, "P");
const model = (top: number, z = 450) => [at(top), up(top), bar(z)];
const told = (solved: ReturnType<typeof setUp>) =>
  solved.misfits.map(({ feature, kind, onto }) => [feature, kind, onto]);

describe("what the solver must leave alone", () => {
  const as = (own: MadePiece, posts: AsSet["posts"] = []) => holdMade(model(900), { posts, made: [own] });
  const found = {
    ...{ post: "P1", lean: 0, leanAcross: 0, across: 0, path: "posts[0]" },
    sigma: { x: 1, z: 1, lean: 0.1 },
  };

  it("set and wholly made: fixed where it was solved; measured: where it was measured", () => {
    expect(as(made(P, ALL, true)).fixed).toEqual([P]);
    expect(as(made(P, ALL, true)).held).toEqual([]);
    const measured = as(made(P, ALL, true), [{ ...found, stage: "set" }]);
    expect([measured.fixed, measured.held.length, measured.held[0]?.stands]).toEqual([[], 1, undefined]);
  });

  it("set with something still to do stands; made and loose is placed by the layout", () => {
    expect(as(made(P, ["start"], true)).held).toEqual([
      { piece: P, ends: [true, false], holes: false, stands: true },
    ]);
    expect(as(made(P, ["end", "holes"])).held).toEqual([{ piece: P, ends: [false, true], holes: true }]);
  });

  it("two statements about one piece are one", () => {
    const two = holdMade(model(900), { posts: [], made: [made(P, ["start"]), made(P, ["holes"], true)] });
    expect(two.held).toEqual([{ piece: P, ends: [true, false], holes: true, stands: true }]);
  });

  it("a post's plates stand where it does", () => {
    const base = (id: string) =>
      plate({ id, outline: { width: 80, depth: 80 }, thickness: 8, at: [1000, 0, 0], normal: [0, 0, 1] });
    const stages = stagesOf({ posts: [{ ...found, stage: "dry-set" }] }, [
      ...model(900),
      base("P-base"),
      base("Q-base"),
    ]);
    expect([...stages]).toEqual([
      ["P", "dry-set"],
      ["P-base", "dry-set"],
    ]);
    expect(stagesOf({ posts: [{ ...found, post: "P9", stage: "set" }] }, model(900)).size).toBe(0);
  });

  it("a piece the layout has no more is said: made-without-member", () => {
    const solved = setUp([at(900)], [made(P)]);
    expect(solved.diagnostics).toEqual([
      expect.objectContaining({
        code: "made-without-member",
        severity: "warning",
        path: "made[0]",
        members: ["P"],
      }),
    ]);
    expect(setUp(model(900), [made(P)], { joints: [through] }).diagnostics).toEqual([]);
    const asPlate = plate({
      id: "P",
      outline: { width: 9, depth: 9 },
      thickness: 5,
      at: [1, 0, 0],
      normal: [0, 0, 1],
    });
    expect(setUp([at(900), asPlate], [made(P)]).diagnostics[0]?.message).toContain("got a plate of that id");
  });

  it("a piece that was blocked cannot have been cut: made-blocked", () => {
    const solved = setUp(model(900), [made({ ...P, status: "blocked" })], { joints: [through] });
    expect(solved.diagnostics.map((d) => [d.code, d.severity])).toEqual([["made-blocked", "error"]]);
    expect(solved.states.every((own) => own.start === "designed")).toBe(true);
  });

  it("nothing made is a plain solve", () => {
    const solved = solveAsSet({ members: model(900), joints: [through], rules: {} }, NOTHING_SET);
    expect(solved.pieces).toEqual(first.pieces);
    expect(solved.misfits).toEqual([]);
  });
});

describe("made-misfit of an end", () => {
  it("stands off by what the rail went up, overlaps by what it went down; not where nothing moved", () => {
    const off = setUp([at(903), up(903)], [made(P, ["start", "end"])]);
    expect(told(off)).toEqual([["end", "stands-off", "R"]]);
    expect(off.misfits[0]?.by).toBeCloseTo(3, 6);
    const [said] = off.diagnostics;
    expect(said).toMatchObject({ code: "made-misfit", severity: "warning", members: ["P", "R"], end: 1 });
    expect(said?.message).toBe(
      "P1: its TOP end is made already and stands off R by up to 3.0 mm (0.118 in): expected at most 0.4 mm (0.016 in).",
    );
    expect(said?.hint).toMatch(/Shim/);
    const into = setUp([at(897), up(897)], [made(P, ["start", "end"])]);
    expect(told(into)).toEqual([["end", "overlaps", "R"]]);
    expect(into.misfits[0]?.by).toBeCloseTo(3, 1);
    expect(into.diagnostics[0]?.hint).toMatch(/Recut/);
    expect(setUp([at(900), up(900)], [made(P, ["start", "end"])]).misfits).toEqual([]);
  });

  it("not by less than half a mark, which no paper can print", () => {
    const by = (dz: number) => setUp([at(900 + dz), up(900 + dz)], [made(P, ["start", "end"])]);
    expect(by(HALF_MARK - 0.001).misfits).toEqual([]);
    expect(by(-HALF_MARK + 0.001).misfits).toEqual([]);
    expect(told(by(HALF_MARK + 0.001))).toEqual([["end", "stands-off", "R"]]);
  });

  it("only when over the fit gap, which a joint may stand open", () => {
    const cut = (gap: number) => pieceOf(solve([at(900), up(900)], [], { gap }), "P");
    const by = (dz: number, gap: number) =>
      setUp([at(900 + dz), up(900 + dz)], [made(cut(gap), ["start", "end"])], { gap });
    // Cut a gap off the rail: up by any more it stands open wider than the fit gap; down by the gap it touches.
    expect(by(HALF_MARK - 0.001, 1.5).misfits).toEqual([]);
    expect(told(by(HALF_MARK + 0.001, 1.5))).toEqual([["end", "stands-off", "R"]]);
    expect(by(0, 1.5).misfits).toEqual([]);
    expect(by(-1.4, 1.5).misfits).toEqual([]);
    expect(by(-1.85, 1.5).misfits).toEqual([]);
    expect(told(by(-2, 1.5))).toEqual([["end", "overlaps", "R"]]);
    // Cut without a root gap, the same fit gap allows it to stand off or overlap by that much.
    const tight = (dz: number) =>
      setUp([at(900 + dz), up(900 + dz)], [made(cut(0), ["start", "end"])], { gap: 1.5 });
    expect(tight(1.4).misfits).toEqual([]);
    expect(tight(-1.4).misfits).toEqual([]);
    expect(told(tight(1.6))).toEqual([["end", "stands-off", "R"]]);
    expect(told(tight(-1.6))).toEqual([["end", "overlaps", "R"]]);
  });

  it("a root gap under two rails is wider at the ridge by nature, and no misfit", () => {
    const rails = [rail("A", [-1000, 0, 200], [0, 0, 900]), rail("C", [0, 0, 900], [1500, 0, 900])];
    const under = post("P", [0, 0, 0], [0, 0, 900], { section: TUBE42 });
    const own = pieceOf(solve([...rails, under], [], { gap: 2 }), "P");
    expect(setUp([...rails, under], [made(own)], { gap: 2 }).misfits).toEqual([]);
    const higher = [rail("A", [-1000, 0, 201], [0, 0, 901]), rail("C", [0, 0, 901], [1500, 0, 901])];
    const off = setUp([...higher, post("P", [0, 0, 0], [0, 0, 901], { section: TUBE42 })], [made(own)], {
      gap: 2,
    });
    expect(off.misfits.length).toBeGreaterThan(0);
    expect(new Set(told(off).map(([, kind]) => kind))).toEqual(new Set(["stands-off"]));
  });

  it("of a foot on a post that leans: half its depth times the sine, open on one side and in on the other", () => {
    const base = plate({
      id: "BP",
      outline: { width: 80, depth: 80 },
      thickness: 8,
      at: [1000, 0, 0],
      normal: [0, 0, 1],
    });
    const seat: Joint = {
      kind: "cut",
      id: "f",
      end: { member: "P", end: 0 },
      cut: { type: "face" },
      onto: "BP",
    };
    const LEAN = 2;
    const from = [1000, 0, 8] as const;
    const stand = (x: number) => [at(900), base, post("P", from, [1000 + x, 0, 900], { section: SQUARE40 })];
    const own = pieceOf(solve(stand(0), [seat]), "P");
    const leaning = setUp(stand(892 * Math.tan(LEAN * RAD)), [made(own, ["start"])], { joints: [seat] });
    expect(told(leaning)).toEqual([
      ["start", "stands-off", "BP"],
      ["start", "overlaps", "BP"],
    ]);
    for (const { by } of leaning.misfits) expect(by).toBeCloseTo(20 * Math.sin(LEAN * RAD), 6);
    expect(setUp(stand(0), [made(own, ["start"])], { joints: [seat] }).misfits).toEqual([]);
  });

  it("that was cut for something else is not measured, and said", () => {
    const other = rail("R2", [0, 0, 900], [2000, 0, 900]);
    const moved = setUp([other, up(900)], [made(P, ["start", "end"])]);
    expect(told(moved)).toEqual([["end", "no-mate", "R2"]]);
    expect(moved.diagnostics[0]?.message).toContain("cut for R: expected a cut for R2");
  });

  it("a rail that is set keeps its place: the post made for it fits, whatever the new design says", () => {
    const fixed = first.pieces.map((own) => made(own, ALL, own.id === "R"));
    const solved = setUp(model(905), fixed, { joints: [through] });
    // The rail is set where it was: the post fits under it still, whatever the new design says.
    expect(solved.misfits).toEqual([]);
    expect(pieceOf(solved, "R")).toBe(pieceOf(first, "R"));
  });
});

describe("made-misfit of holes", () => {
  const holes = (z: number, joints: readonly Joint[] = [through]) =>
    setUp(model(900, z), [made(P, ["start", "holes"])], { joints });

  it("off the line by more than the room in the hole", () => {
    expect(holes(450.49).misfits).toEqual([]);
    const off = holes(450.6);
    expect(told(off)).toEqual([["holes", "off-line", "B"]]);
    expect(off.misfits[0]).toMatchObject({
      hole: "h",
      by: expect.closeTo(0.6, 9),
      allowed: expect.closeTo(0.5, 9),
    });
    expect(off.diagnostics[0]).toMatchObject({ code: "made-misfit", bore: "h", members: ["P", "B"] });
  });

  it("of a hole with nothing through it: by more than the fit gap", () => {
    const bore = (z: number): Joint => ({
      ...{ kind: "bore", id: "h", member: "P", at: [1000, 0, z], direction: [1, 0, 0] },
      ...{ diameter: 21, through: "both" },
    });
    const own = pieceOf(solve([at(900), up(900)], [bore(450)]), "P");
    const by = (z: number) => setUp([at(900), up(900)], [made(own)], { joints: [bore(z)], gap: 1 }).misfits;
    expect(by(450.9)).toEqual([]);
    expect(by(451.1)).toMatchObject([
      { kind: "off-line", onto: "P", by: expect.closeTo(1.1, 9), allowed: 1 },
    ]);
  });

  it("a hole that is wanted and not there, and one that is there and not wanted", () => {
    const more: Joint = { ...through, id: "h2", bar: "B2" };
    const second = rail("B2", [0, 0, 600], [2000, 0, 600], { role: "rail", section: BAR20 });
    const solved = setUp([...model(900), second], [made(P, ["start", "holes"])], { joints: [through, more] });
    expect(told(solved)).toEqual([["holes", "no-hole", "B2"]]);
    const none = setUp([at(900), up(900)], [made(P, ["start", "holes"])]);
    expect(told(none)).toEqual([["holes", "spare-hole", ""]]);
    expect(none.diagnostics.map((d) => [d.code, d.severity])).toEqual([["made-misfit", "note"]]);
  });
});
