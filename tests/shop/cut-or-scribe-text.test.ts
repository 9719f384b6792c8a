/** The CUT OR SCRIBE block: what a person finds on it, figures by hand beside each; sentences are the house's own. */
import { describe, expect, it } from "vitest";
import { cutOrScribe } from "../../src/checks/index.js";
import type { EndDecision } from "../../src/layout/index.js";
import { cutList, cutListText, cutOrScribeText, pieceRecords } from "../../src/shop/index.js";
import { example } from "../layout/designs.js";
import { document, guardOf } from "../layout/uncertainty/fit-designs.js";

const INCHES = { unit: "in", denominator: 32 } as const;
const flat = (lines: readonly string[]) => lines.join(" ").replace(/\s+/g, " ");

/** An end with sigma 0.049 in over a gap of 1/16: 2 x 0.049 = 0.098, up to the next 32nd 1/8. */
const end = (more: Partial<EndDecision> = {}): EndDecision => ({
  ...{ piece: "stair-top", mark: "R1", end: 1, name: "UPHILL", meets: "P5" },
  ...{ sigmaLength: 0.049 * 25.4, sigmaAngle: 0.01, angleOverDepth: 0.01, mostly: "the run of nosing 13" },
  ...{ gap: 25.4 / 16, k: 2, decision: "scribe", rule: "closes", leaveLong: 0.098 * 25.4, reason: "" },
  ...more,
});

describe("the block", () => {
  it("leaves long to the next mark up, with the reckoning and where most of it is from", () => {
    expect(flat(cutOrScribeText([end()], INCHES))).toContain(
      "LEAVE LONG AND SCRIBE R1, UPHILL end: leave 1/8 (0.098) long: 2 x 0.049 = 0.098, most of it from the run of nosing 13; over the gap of 1/16 (0.063) to P5",
    );
  });

  it("tells the block rule of a raking rail: 1/2 in over cos 35.54° is 0.614 (shop case c30: 1.2289 for 1)", () => {
    const text = flat(cutOrScribeText([end({ alongPerBlock: 1.228903609578 })], INCHES));
    expect(text).toContain(
      "with a block of 1/2 (0.500) on the plumb face the cut moves 0.614 along the rail",
    );
    expect(flat(cutOrScribeText([end({ alongPerBlock: 1 })], INCHES))).not.toContain("block");
    const metric = cutOrScribeText([end({ alongPerBlock: 1.25 })], { ...INCHES, unit: "mm" });
    expect(flat(metric)).toContain(
      "with a block of 10.0 on the plumb face the cut moves 12.50 along the rail",
    );
  });

  it("says what the angle does where that is more", () => {
    const text = flat(
      cutOrScribeText([end({ sigmaAngle: 0.5, angleOverDepth: 2.54, leaveLong: 5.08 })], INCHES),
    );
    expect(text).toContain("leave 7/32 (0.200) long: 2 x 0.100 = 0.200, from 0.50° of angle");
  });

  it("puts ends that say the same on one line, and counts marks on", () => {
    const free = (mark: string, side: 0 | 1): EndDecision =>
      end({ piece: mark, mark, end: side, name: `${side}`, rule: "free", decision: "cut", leaveLong: 0 });
    const many = ["V1-1", "V1-2", "V1-3", "V2-1", "B1", "B2"].flatMap((mark) => [
      free(mark, 0),
      free(mark, 1),
    ]);
    expect(flat(cutOrScribeText([...many, free("B3", 0)], INCHES))).toContain(
      "CUT TO LENGTH V1-1 to V1-3, V2-1, B1, B2, both ends: nothing meets it, no fit hangs on it B3, 0 end: nothing",
    );
  });

  it("tells a rail between two posts that are not set yet once, where both ends are left long alike", () => {
    const low = end({ end: 0, name: "DOWNHILL", rule: "not-set", meets: "P1" });
    const high = end({ rule: "not-set", meets: "P2" });
    expect(flat(cutOrScribeText([low, high], INCHES))).toContain(
      "R1, both ends: leave 1/8 (0.098) long each: P1 and P2 are not set yet, so",
    );
    const more = { ...high, leaveLong: 0.2 * 25.4 };
    expect(flat(cutOrScribeText([low, more], INCHES))).toContain(
      "R1, DOWNHILL end: leave 1/8 (0.098) long: P1 is",
    );
    const wall = { ...high, meets: "the wall" };
    expect(flat(cutOrScribeText([low, wall], INCHES))).toContain("the wall was not measured as it stands");
  });

  it("is not there without decisions, nor for plates alone", () => {
    expect(cutOrScribeText([], INCHES)).toEqual([]);
    expect(cutOrScribeText([end({ rule: "plate-face" })], INCHES)).toEqual([]);
  });

  it("says that no gap is given", () => {
    expect(flat(cutOrScribeText([end({ gap: 0 })], INCHES))).toContain(
      "neither the design nor the shop file gives one",
    );
  });
});

describe("on the cut list", () => {
  it.each([
    ["counted", example()],
    ["taped", document()],
  ])("of a %s guard it fits the paper and leaves every length as it is", (_, loose) => {
    const guard = guardOf(loose);
    const fits = cutOrScribe({ design: guard.design }, guard, { gap: guard.design.gap });
    if (!fits.ok) throw new Error("not decided");
    const list = cutList(guard.pieces, { unit: guard.design.unit });
    const header = { job: "Glaze store (invented)", basis: "none" };
    const [without, paper] = [cutListText(list, header), cutListText(list, { ...header, fits: fits.value })];
    const block = cutOrScribeText(fits.value, list).join("\n");
    expect(paper).toContain(block);
    expect(block).toContain("LEAVE-LONG IS IN NO LENGTH OF THIS LIST");
    expect(paper.replace(`\n${"=".repeat(100)}\n${block}\n`, "")).toBe(without);
    expect(Math.max(...paper.split("\n").map((line) => line.length))).toBeLessThanOrEqual(100);
    expect(block).not.toMatch(/NaN|undefined|null/);
  });

  it("stands beside each end in the records, or null", () => {
    const guard = guardOf(document());
    const fits = cutOrScribe({ design: guard.design }, guard, { gap: guard.design.gap });
    if (!fits.ok) throw new Error("not decided");
    const header = { generator: "g", job: "Glaze store (invented)" };
    const own = pieceRecords(guard.pieces, new Map(), { ...header, fits: fits.value }).pieces;
    expect(own.flatMap((piece) => piece.ends.map((one) => one.cutOrScribe))).toEqual(fits.value);
    const none = pieceRecords(guard.pieces, new Map(), header).pieces;
    expect(none.every((piece) => piece.ends.every((one) => one.cutOrScribe === null))).toBe(true);
  });
});
