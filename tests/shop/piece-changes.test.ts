/**
 * What moved between two sets of pieces: expected numbers are the moves made here, in closed form; the paper is read as text.
 *
 * 1/32 in = 0.79375 mm exactly (the inch of 1959 is 25.4 mm).
 */
import { describe, expect, it } from "vitest";
import type { Joint, Piece } from "../../src/joints/index.js";
import type { MadeMisfit, PieceState } from "../../src/layout/index.js";
import { plate } from "../../src/members/index.js";
import { differences } from "../../src/shop/changes/compare.js";
import { OVER_MM, type PieceChange, pieceChanges, pieceChangesText } from "../../src/shop/index.js";
import { BAR20, INCH, pieceOf, post, RAD, rail, SQUARE40, solve, TUBE42, TUBE60 } from "../joints/models.js";

const INCHES = { unit: "in", denominator: 32 } as const;
const MM = { unit: "mm", denominator: 32 } as const;
const HEAD = { job: "Kiln room (invented)", old: "issue 1", new: "issue 2" };

/** A square post under a round rail, drilled for a bar. */
function guard({ top = 900, bar = 450, section = SQUARE40, mark = "P1", lean = 0 } = {}): readonly Piece[] {
  const r = rail("R", [0, 0, top - 1000 * lean], [2000, 0, top + 1000 * lean]);
  const p = post("P", [1000, 0, 0], [1000, 0, top], { section, mark });
  const b = rail("B", [0, 0, bar], [2000, 0, bar], { role: "rail", section: BAR20 });
  return solve([r, p, b], [{ kind: "through", id: "h", bar: "B", member: "P", clearance: 0.5 }]).pieces;
}

const old = guard();
const of = (changed: readonly PieceChange[], id: string): PieceChange => {
  const found = changed.find((own) => own.id === id);
  if (!found) throw new Error(`nothing of ${id} moved`);
  return found;
};
/** What moved of a piece, by its words. */
const moved = (change: PieceChange): Record<string, number | null> =>
  Object.fromEntries(change.numbers.map((own) => [own.what, own.difference]));

describe("what counts as moved", () => {
  it("is more than 1/32 in by default, which is what the papers print", () => {
    expect(OVER_MM).toBe(0.79375);
    expect(pieceChanges(old, guard({ bar: 450 + 0.79 })).changed).toEqual([]);
    expect(pieceChanges(old, guard({ bar: 450 + 0.8 })).changed.map((own) => own.id)).toEqual(["P"]);
    expect(pieceChanges(old, guard({ bar: 450 + 0.8 }), { over: 0.9 }).changed).toEqual([]);
    expect(pieceChanges(old, guard({ bar: 450 + 0.1 }), { over: 0.05 }).changed).toHaveLength(1);
  });

  it("is more than 0.1 degree by default", () => {
    const turned = (degrees: number) =>
      pieceChanges(old, guard({ lean: Math.tan(degrees * RAD) }), { over: 9 });
    expect(turned(0.09).changed).toEqual([]);
    const { changed } = turned(0.11);
    expect(moved(of(changed, "P"))).toEqual({ "TOP end, saddle to R, angle": expect.closeTo(-0.11, 6) });
    expect(
      pieceChanges(old, guard({ lean: Math.tan(0.11 * RAD) }), { over: 9, overAngle: 0.2 }).changed,
    ).toEqual([]);
  });

  it("is nothing between the same pieces, and a count says so", () => {
    expect(pieceChanges(old, guard())).toMatchObject({ changed: [], added: [], gone: [], unchanged: 3 });
  });

  it("goes the short way round a tube", () => {
    const into = differences(1, 1, () => false);
    into.turn("end", "roll", 359, 1.5);
    into.turn("end", "roll", 1.5, 359);
    into.turn("end", "roll", 359.5, 0.4);
    into.turn("end", "roll", -179, 179.5);
    expect(into.found.map((own) => own.difference)).toEqual([2.5, -2.5, -1.5]);
  });
});

describe("lengths and ends", () => {
  it("a rail that went up: the post is longer by that, and nothing else of it moved", () => {
    const { changed, unchanged } = pieceChanges(old, guard({ top: 910 }));
    expect(unchanged).toBe(2);
    const change = of(changed, "P");
    expect(change.actions).toEqual(["re-cut"]);
    for (const own of change.numbers)
      expect([own.part, own.difference]).toEqual(["length", expect.closeTo(10, 9)]);
    expect(Object.keys(moved(change))).toContain("BLANK");
    const blank = change.numbers.find((own) => own.what === "BLANK");
    expect((blank?.new as number) - (blank?.old as number)).toBeCloseTo(10, 9);
    expect(blank?.between?.new).toMatch(/^from .* to .*$/);
  });

  it("a miter that turned: angle, long point, saw settings in closed form", () => {
    const pair = (rise: number) =>
      solve([rail("A", [-1000, 0, 0], [0, 0, 0]), rail("B", [0, 0, 0], [1000, 0, rise])]).pieces;
    const half = (rise: number) => Math.atan2(rise, 1000) / RAD / 2;
    const rows = moved(of(pieceChanges(pair(500), pair(600)).changed, "A"));
    const by = half(600) - half(500);
    expect(rows["UPHILL end, from square"]).toBeCloseTo(by, 9);
    const long = (rise: number) => 48.3 * Math.tan(half(rise) * RAD);
    expect(rows["UPHILL end, long - short"]).toBeCloseTo(long(600) - long(500), 6);
    expect(Math.abs(rows["UPHILL end, saw bevel"] as number)).toBeCloseTo(by, 9);
    expect(rows["UPHILL end, roll to long point"]).toBeUndefined();
  });

  it("the long point on the other face is a word", () => {
    const pair = (rise: number) =>
      solve([rail("A", [-1000, 0, 0], [0, 0, 0]), rail("B", [0, 0, 0], [1000, 0, rise])]).pieces;
    const change = of(pieceChanges(pair(300), pair(-300)).changed, "A");
    const long = change.numbers.find((own) => own.what === "UPHILL end, long point");
    expect([long?.old, long?.new, long?.difference]).toEqual(["BOTTOM", "TOP", null]);
    expect(moved(change)["UPHILL end, from square"]).toBeUndefined();
  });

  it("a cut a hair off square is still square to the saw", () => {
    const free = (rise: number) =>
      solve(
        [rail("A", [0, 0, 0], [1000, 0, 0])],
        [
          {
            kind: "cut",
            id: "c",
            end: { member: "A", end: 1 },
            cut: { type: "plane", normal: [1, 0, rise] },
          },
        ],
      ).pieces;
    expect(free(1e-4)[0]?.cuts[1].kind).toBe("plane");
    expect(pieceChanges(free(0), free(1e-4)).changed).toEqual([]);
    const rows = moved(of(pieceChanges(free(0), free(0.1)).changed, "A"));
    expect(rows["UPHILL end, from square"]).toBeCloseTo(Math.atan(0.1) / RAD, 9);
    expect("UPHILL end, cut" in rows).toBe(true);
  });

  it("other stock, and another mate", () => {
    const change = of(pieceChanges(old, guard({ section: TUBE42 })).changed, "P");
    expect(change.numbers[0]).toMatchObject({ part: "stock", what: "section", new: TUBE42.name });
    const r2 = rail("R2", [0, 0, 900], [2000, 0, 900], { mark: "TOP-2" });
    const other = solve([r2, post("P", [1000, 0, 0], [1000, 0, 900], { section: SQUARE40 })]).pieces;
    const onto = of(pieceChanges(old, other).changed, "P").numbers.find(
      (own) => own.what === "TOP end, cut to",
    );
    expect([onto?.old, onto?.new]).toEqual(["R", "TOP-2"]);
  });
});

describe("holes", () => {
  it("are told from the end the tape hooks, face by face", () => {
    const change = of(pieceChanges(old, guard({ bar: 462.5 })).changed, "P");
    expect(change.actions).toEqual(["re-mark"]);
    expect(moved(change)).toEqual({
      "hole 1, DOWNHILL, from FOOT end": expect.closeTo(12.5, 9),
      "hole 1, UPHILL, from FOOT end": expect.closeTo(12.5, 9),
    });
    expect(change.notes).toEqual([]);
  });

  it("that do not move from the hook are not listed, however the other end moves", () => {
    const change = of(pieceChanges(old, guard({ top: 950 })).changed, "P");
    expect(change.actions).toEqual(["re-cut"]);
    expect(change.notes).toEqual([]);
  });

  /** A rail drilled 300 from its start, whose start is cut square, on a slope or to a post. */
  const drilled = (start: "square" | "plumb" | "coped") => {
    const slope = start === "plumb" ? 300 : 0;
    const lie = rail("L", [0, 0, 500], [1000, 0, 500 + slope], { role: "rail", section: SQUARE40 });
    const hole: Joint = {
      ...{ kind: "bore", id: "h", member: "L", diameter: 10, through: "both" },
      ...{ at: [300, 0, 500 + 0.3 * slope], direction: [0, 1, 0] },
    };
    const plumb = [
      { kind: "cut", id: "c", end: { member: "L", end: 0 }, cut: { type: "plumb" } },
      { kind: "cut", id: "d", end: { member: "L", end: 1 }, cut: { type: "plumb" } },
    ] as const;
    const up = post("P", [0, 0, 0], [0, 0, 900], { section: TUBE60 });
    return solve(start === "coped" ? [up, lie] : [lie], [hole, ...(start === "plumb" ? plumb : [])]).pieces;
  };

  it("are said to be told from an end that is itself cut anew", () => {
    const change = of(pieceChanges(drilled("square"), drilled("plumb")).changed, "L");
    const along = Math.hypot(300, 90) + (40 / 2) * 0.3;
    expect(moved(change)["hole 1, LEFT, from DOWNHILL end"]).toBeCloseTo(along - 300, 9);
    expect(change.notes).toEqual([expect.stringMatching(/DOWNHILL end, which is cut anew: cut it first/)]);
  });

  it("are told from the new hook where the tape hooks the other end now, old ones too", () => {
    const [before, after] = [drilled("square"), drilled("coped")];
    expect([before[0]?.hook.end, pieceOf({ pieces: after }, "L").hook.end]).toEqual([0, 1]);
    const change = of(pieceChanges(before, after).changed, "L");
    // 700 from the far end in both: nothing to mark anew there, but the reader is told.
    expect(change.numbers.filter((own) => own.part === "holes")).toEqual([]);
    expect(change.notes).toEqual([
      expect.stringMatching(/hooks the UPHILL end now, it was the DOWNHILL end/),
    ]);
  });

  it("new, gone and wider ones are told with all their marks", () => {
    const none = solve([
      rail("R", [0, 0, 900], [2000, 0, 900]),
      post("P", [1000, 0, 0], [1000, 0, 900], { section: SQUARE40, mark: "P1" }),
    ]).pieces;
    const gone = of(pieceChanges(old, none).changed, "P").numbers;
    expect(gone.map((own) => [own.what, own.new])).toEqual([
      ["old hole 1, diameter", null],
      ["old hole 1, DOWNHILL, from FOOT end", null],
      ["old hole 1, UPHILL, from FOOT end", null],
    ]);
    const added = of(pieceChanges(none, old).changed, "P").numbers;
    expect(added.map((own) => own.old)).toEqual([null, null, null]);
    expect(added[1]?.new).toBeCloseTo(450, 9);
    const wide = old.map((own) => ({
      ...own,
      bores: own.bores.map((b) => ({ ...b, diameter: b.diameter + 2 })),
    }));
    expect(moved(of(pieceChanges(old, wide).changed, "P"))).toEqual({ "hole 1, diameter": 2 });
  });
});

describe("plates", () => {
  const base = (size: number, thickness: number, at = 35, holes = 2, cornerRadius = 0) =>
    solve([
      plate({
        ...{ id: "BP", thickness, at: [0, 0, 0], normal: [0, 0, 1] },
        outline: { width: size, depth: 100, cornerRadius },
        holes: [-1, 1].slice(0, holes).map((s) => ({ at: [s * at, 0] as const, diameter: 12 })),
      }),
    ]).pieces;
  const rows = (a: readonly Piece[], b: readonly Piece[]) => moved(of(pieceChanges(a, b).changed, "BP"));

  it("size, thickness and holes from the edges", () => {
    const was = base(100, 10);
    expect(rows(was, base(110, 10))).toEqual({
      "width over all": expect.closeTo(10, 9),
      "hole 1, from left edge": expect.closeTo(5, 9),
      "hole 2, from left edge": expect.closeTo(5, 9),
    });
    expect(rows(was, base(100, 12))).toEqual({ thickness: expect.closeTo(2, 9) });
    expect(rows(was, base(100, 10, 38))).toEqual({
      "hole 1, from left edge": expect.closeTo(-3, 9),
      "hole 2, from left edge": expect.closeTo(3, 9),
    });
    expect(Object.keys(rows(was, base(100, 10, 35, 1)))).toEqual([
      ...["hole 2, diameter", "hole 2, from left edge", "hole 2, from bottom edge"],
    ]);
    expect(rows(was, base(100, 10, 35, 2, 8))).toEqual({ outline: null });
  });
});

describe("pieces that only one set has", () => {
  it("are new or gone; the same thing under another id is said to be", () => {
    const renamed = old.map((own) => (own.id === "P" ? { ...own, id: "Q", mark: "P9" } : own));
    const { added, gone, unchanged } = pieceChanges(old, renamed);
    expect(added).toEqual([expect.objectContaining({ id: "Q", mark: "P9", sameAs: "P1" })]);
    expect(gone).toEqual([expect.objectContaining({ id: "P", mark: "P1", sameAs: "P9" })]);
    expect(unchanged).toBe(2);
    const other = pieceChanges(
      old,
      renamed.map((own) => (own.id === "Q" ? ({ ...guard({ top: 950 })[1], id: "Q" } as Piece) : own)),
    );
    expect(other.added[0]?.sameAs).toBeUndefined();
  });

  it("with another mark are renamed, and keep their marks on the steel", () => {
    const { changed } = pieceChanges(old, guard({ mark: "P7" }));
    expect(changed).toEqual([
      expect.objectContaining({ mark: "P7", oldMark: "P1", actions: ["rename"], numbers: [] }),
    ]);
    expect(pieceChangesText(pieceChanges(old, guard({ mark: "P7" })), HEAD, INCHES)).toContain(
      "P7 (was P1)   NEW MARK: post",
    );
  });
});

describe("what is made already", () => {
  const state = (own: Partial<PieceState>): PieceState => ({
    ...{ id: "P", mark: "P1", start: "designed", end: "designed", holes: "designed", place: "designed" },
    ...own,
  });
  const next = guard({ top: 900 + INCH / 8, bar: 450 + INCH / 4 });

  it("is not to be marked again: it does not fit by so much", () => {
    const changes = pieceChanges(old, next, { states: [state({ holes: "made" })] });
    const change = of(changes.changed, "P");
    expect(change.actions).toEqual(["re-cut", "made-misfit"]);
    expect(change.numbers.filter((own) => own.made).map((own) => own.part)).toEqual(["holes", "holes"]);
    const text = pieceChangesText(changes, HEAD, INCHES);
    expect(text).toContain("made already: no longer fits by 1/4 (0.250)");
    expect(text).toContain("P1   RE-CUT and MADE ALREADY, DOES NOT FIT: post");
  });

  it("of a length is both ends; one made end leaves the other to be cut", () => {
    const parts = (own: Partial<PieceState>) =>
      of(pieceChanges(old, next, { states: [state(own)] }).changed, "P").numbers.find(
        (x) => x.what === "BLANK",
      )?.made;
    expect(parts({ start: "made" })).toBe(false);
    expect(parts({ start: "made", end: "made" })).toBe(true);
  });

  it("prints what was measured of it, in the unit of the paper", () => {
    const bare = { piece: "P", by: 3.2, allowed: 1.6 } as const;
    const misfits: MadeMisfit[] = [
      { ...bare, feature: "end", onto: "R", kind: "stands-off" },
      { ...bare, feature: "end", onto: "R", kind: "overlaps" },
      { ...bare, feature: "holes", onto: "B", hole: "h", kind: "off-line" },
      { ...bare, feature: "end", onto: "R", kind: "no-mate", by: 0 },
      { ...bare, feature: "holes", onto: "B", hole: "h", kind: "no-hole", by: 0 },
      { ...bare, feature: "holes", onto: "", hole: "h", kind: "spare-hole", by: 0 },
    ];
    const changes = pieceChanges(old, guard(), { misfits });
    expect(of(changes.changed, "P").actions).toEqual(["made-misfit"]);
    const text = pieceChangesText(changes, HEAD, MM).replace(/\n +/g, " ");
    expect(text).toContain("no longer fits by 3.2: its TOP end stands off R by up to that; 1.6 may be left");
    expect(text).toContain("no longer fits by 3.2: its TOP end overlaps R by up to that");
    expect(text).toContain("no longer fits by 3.2: hole h is that far off the line of B; 1.6 may be left");
    expect(text).toContain("is to meet R, which it was not cut for. Recut");
    expect(text).toContain("a hole for B (h) is not in it. Drill it");
    expect(text).toContain("hole h is not wanted any more");
  });
});

describe("the paper", () => {
  const far = guard({ top: 1010.3, bar: 512.7, lean: 0.1 });
  it("is at most 100 columns wide, in inches and in millimetres, and the same twice", () => {
    for (const style of [INCHES, MM]) {
      const text = pieceChangesText(pieceChanges(old, far), HEAD, style);
      expect(text.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
      expect(pieceChangesText(pieceChanges(old, far), HEAD, style)).toBe(text);
      expect(text).toContain("CAUTION");
    }
  });

  it("writes old, new and difference as the cut list does, each rounded on its own", () => {
    const text = pieceChangesText(pieceChanges(old, guard({ top: 900 + INCH / 8 })), HEAD, INCHES);
    const blank = pieceOf({ pieces: old }, "P").lengths.blank.value / INCH;
    const row = text.split("\n").find((line) => line.startsWith("  BLANK")) ?? "";
    expect(row).toContain(`(${blank.toFixed(3)}) UP`);
    expect(row).toContain(`(${(blank + 0.125).toFixed(3)}) UP`);
    expect(row.endsWith("+1/8 (0.125)")).toBe(true);
    expect(text).toContain("every other length along it");
    expect(text).toContain("unchanged: 2 pieces; their marks stay");
    expect(text).toContain("moved by more than 1/32 (0.031), angles by more than 0.1°");
  });

  it("says when nothing moved, and lets no name steer the terminal", () => {
    const text = pieceChangesText(pieceChanges(old, old), { ...HEAD, job: "a\u001b[31m\nb" }, INCHES);
    expect(text).toContain("Pieces   nothing moved");
    expect(text).not.toContain("\u001b");
    expect(text).toContain("Job      a [31m b");
  });

  it("makes one block of pieces that moved alike", () => {
    const twice = (top: number) =>
      solve([
        rail("R", [0, 0, top], [3000, 0, top]),
        ...[1, 2].map((i) => post(`P${i}`, [1000 * i, 0, 0], [1000 * i, 0, top])),
      ]).pieces;
    expect(pieceChangesText(pieceChanges(twice(900), twice(920)), HEAD, MM)).toContain(
      "P1, P2   RE-CUT each of them: post",
    );
  });

  it("lists new and gone pieces with what they are", () => {
    const [r, p, b] = old as readonly [Piece, Piece, Piece];
    const text = pieceChangesText(pieceChanges([r, p], [r, b]), HEAD, INCHES);
    expect(text).toContain("NEW: 1 piece; cut it from the new cut list\n  B   rail, ");
    expect(text).toContain("GONE: 1 piece; do not cut it\n  P1   post, ");
    expect(text).toContain("unchanged: 1 piece; their marks stay");
  });
});
