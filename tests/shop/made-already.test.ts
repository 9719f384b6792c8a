/**
 * What is made already, on the cut list and in the records.
 */
import { describe, expect, it } from "vitest";
import type { Piece } from "../../src/joints/index.js";
import { buildGuard, NOTHING_SET, type PieceState, pieceStates } from "../../src/layout/index.js";
import { cutList, cutListText, madeAlready, pieceRecords } from "../../src/shop/index.js";
import { example } from "../layout/designs.js";

const { pieces } = buildGuard(
  example((d) => {
    d.foot.holes = { diameter: "7/16", along: "2 3/4", across: "2 3/4" };
  }),
);
const ids = new Map(pieces.map((own) => [own.mark, own]));
const state = (mark: string, own: Partial<PieceState>): PieceState => ({
  ...{ id: (ids.get(mark) as Piece).id, mark },
  ...{ start: "designed", end: "designed", holes: "designed", place: "designed", ...own },
});
const states = [
  state("P2", { start: "made", place: "dry-set" }),
  state("P3", { start: "made", end: "made", holes: "made", place: "set" }),
  state("P2-BP", { start: "made", end: "made", holes: "made", place: "dry-set" }),
  state("R1", { end: "made" }),
];
const HEAD = { job: "Studio (invented)", basis: "test" };

describe("made already", () => {
  const text = cutListText(cutList(pieces, { unit: "in", states }), HEAD);

  it("is one line a piece on the cut list, in the shop's words", () => {
    expect(text).toContain("\n  P2   made already: FOOT end; was dry-set\n");
    // A post without holes has none to make.
    expect(text).toContain("\n  P3   made already: FOOT end, TOP end; is set; do not cut it again\n");
    expect(text).toContain("\n  R1   made already: UPHILL end\n");
    expect(text).toContain("\n  P2-BP   made already: outline and holes; was dry-set; do not cut it again\n");
    expect(text.match(/made already/g)).toHaveLength(4);
  });

  it("changes nothing else on the paper, and nothing where nothing is made", () => {
    const bare = cutListText(cutList(pieces, { unit: "in" }), HEAD);
    expect(
      text
        .split("\n")
        .filter((line) => !line.includes("made already"))
        .join("\n"),
    ).toBe(bare);
    const designed = pieceStates(pieces, NOTHING_SET);
    expect(cutListText(cutList(pieces, { unit: "in", states: designed }), HEAD)).toBe(bare);
    expect(madeAlready(pieces, undefined)).toEqual([]);
  });

  it("is in the records of every piece", () => {
    const { pieces: records } = pieceRecords(pieces, new Map(), { generator: "t", job: "j", states });
    const of = (mark: string) => records.find((own) => own.mark === mark)?.state;
    expect(of("P2")).toEqual({ start: "made", end: "designed", holes: "designed", place: "dry-set" });
    expect(of("P4")).toEqual({ start: "designed", end: "designed", holes: "designed", place: "designed" });
  });
});
