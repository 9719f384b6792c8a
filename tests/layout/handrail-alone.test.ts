/** A stair side without a guard: handrails alone, on brackets from a wall. */
import { describe, expect, it } from "vitest";
import { solidOf } from "../../src/joints/index.js";
import { buildGuard } from "../../src/layout/build-guard.js";
import { codesOf, type Loose } from "./designs.js";

const alone = (change: (d: Loose) => void = () => undefined): Loose => {
  const document: Loose = {
    ...{ version: 1, job: "Glaze store stair, wall side (invented)", unit: "mm", side: "right" },
    stair: { risers: 6, floorToFloor: 1050, going: 280 },
    sections: { hand: "round 42.4 x 2.6", arm: "round bar 12" },
    rails: [],
    legs: [
      { along: "stair" },
      { along: "landing", length: 1500, turn: { angle: 90, past: 500, corner: "post" } },
    ],
    handrails: [
      {
        ...{ section: "hand", height: 900, inward: 80, bottom: { extend: 300 } },
        top: { extend: -200, return: "wall", distance: 80, endPlate: 6 },
        brackets: {
          ...{ from: "wall", section: "arm", drop: 70, wall: 80, greatest: 900, ends: 150 },
          flange: { thickness: 6, width: 60, height: 60 },
        },
      },
    ],
  };
  change(document);
  return document;
};

describe("handrails alone", () => {
  it("are laid out without rail, posts or heights of one, and built", () => {
    const guard = buildGuard(alone());
    expect(guard.diagnostics).toEqual([]);
    expect(guard.members.length).toBeGreaterThan(10);
    expect(guard.members.some((own) => own.role === "post" || own.role === "top-rail")).toBe(false);
    for (const piece of guard.pieces)
      expect([piece.id, piece.status, solidOf(piece).ok]).toEqual([piece.id, "ok", true]);
    const { handrails, nosings, posts } = guard.report!;
    expect([nosings, posts]).toEqual([[], []]);
    expect(handrails[0]!.nosings).toHaveLength(6);
    // The wall stands in the guard's plane: flanges end there.
    const flange = guard.members.find((own) => own.id === "handrail-bracket-1-flange")!;
    expect(flange.to[1]).toBeCloseTo(guard.members.find((own) => own.id === "handrail-stair")!.to[1] - 80, 9);
  });

  it("read without what only a guard needs, and ask for it where there is one", () => {
    expect(codesOf(alone((d) => (d.handrails = [])))).toContain("top-rail-count");
    expect(codesOf(alone((d) => (d.legs[0].posts = { onTreads: [1], behindNosing: 50 })))).toEqual([
      "bad-value",
    ]);
    const railed = alone((d) => (d.rails = [{ role: "top", section: "hand" }]));
    expect(codesOf(railed)).toEqual(["missing", "missing", "missing"]);
    expect(codesOf(alone((d) => (d.toeBoard = { section: "flat", gap: 10 })))).toContain("unknown-section");
    const board = alone((d) => {
      d.sections.flat = "flat 100 x 6";
      d.toeBoard = { section: "flat", gap: 10 };
    });
    expect(codesOf(board)).toEqual(["toe-board-without-bay"]);
  });

  it("name the longest piece", () => {
    expect(buildGuard(alone()).report!.longest?.mark).toBe("H2");
  });
});
