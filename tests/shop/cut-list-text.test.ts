/**
 * The paper: what a person must find on it, and that it fits. Sentences are the house's own; numbers by hand beside each.
 */
import { describe, expect, it } from "vitest";
import { CAUTION } from "../../src/kernel/caution.js";
import { cutList } from "../../src/shop/cut-list.js";
import { cutListText } from "../../src/shop/cut-list-text.js";
import { sideView } from "../../src/shop/side-view.js";
import { rakeRail, roundPost } from "./pieces.js";

const pitch = (Math.atan2(7.5625, 10.625) * 180) / Math.PI;
const pieces = [rakeRail(pitch), roundPost("P1", 90 - pitch), roundPost("P2", 90 - pitch)];
const list = cutList(pieces, { unit: "in", masses: new Map(pieces.map((p) => [p.id, 10])) });
const paper = cutListText(list, {
  job: "Pottery studio, mezzanine stair",
  basis: "typed figures, no survey",
});

describe("the cut list on paper", () => {
  it("says the job, what it rests on, the rounding, what is left out and the caution", () => {
    for (const words of [
      "Pottery studio, mezzanine stair",
      "typed figures, no survey",
      "inches to the nearest 1/32",
      "BLANKS alone are rounded UP",
      "kerf, leave-long and weld gaps are NOT added",
      CAUTION.slice(0, 50),
    ]) {
      expect(paper.replace(/\s+/g, " ")).toContain(words);
    }
  });

  it("tells each end in both angle conventions with the long point's face and how much", () => {
    // 35.44° and its complement; 1.9 · 7.5625/10.625 = 1.3524 in, nearest 32nd 11/32; half of the pitch 17.72°;
    // 1.9 · tan 17.721° = 0.6071 in, nearest 32nd 19/32 (0.594) against 20/32 (0.625).
    const flat = paper.replace(/\s+/g, " ");
    expect(flat).toContain(
      "DOWNHILL end: plumb cut, 35.4° from square (54.6° from the tube), long point BOTTOM, long - short 1-11/32 (1.352)",
    );
    expect(flat).toContain(
      "UPHILL end: miter to R2, 17.7° from square (72.3° from the tube), long point TOP, long - short 19/32 (0.607)",
    );
  });

  it("tells a saddle with its header, angle, heel face and the command for its ordinates", () => {
    const flat = paper.replace(/\s+/g, " ");
    expect(flat).toContain(
      "TOP end: saddle to R1 (round tube 1.900 x 0.145 wall) at 54.6° between the centrelines",
    );
    expect(flat).toContain("heel (acute side) = DOWNHILL face");
    expect(flat).toContain("rakewright saddle --branch 1.9x0.145 --header 1.9 --angle 54.558 --unit in");
  });

  it("names both points of every length", () => {
    const lengths = paper
      .replace(/\n {27}/g, " ")
      .split("\n")
      .filter((l) => /^ {2}(BLANK|LONG|shortest|along)/.test(l));
    expect(lengths).toHaveLength(6);
    expect(lengths.filter((l) => !/ from .+ to .+/.test(l))).toEqual([]);
  });

  it("counts alike pieces once and gives sums: 2 posts of 1000 mm are 78.740 in, up to 78-3/4", () => {
    expect(paper).toContain("P1, P2   2 off, post, 10.0 kg (22.0 lb) each");
    expect(paper).toContain("sum of blanks 78-3/4 (78.740)");
    expect(paper).toContain("kerf and drops NOT included");
  });

  it("fits 100 columns, has no NaN or undefined, and ends with a line break", () => {
    expect(paper.split("\n").filter((line) => [...line].length > 100)).toEqual([]);
    expect(paper).not.toMatch(/NaN|undefined|Infinity|null/);
    expect(paper.endsWith("\n")).toBe(true);
    expect(paper).not.toMatch(/compliant|approved/i);
  });

  it("marks a blocked piece", () => {
    const blocked = cutListText(cutList([{ ...rakeRail(35), status: "blocked" }], { unit: "mm" }), {
      job: "j",
      basis: "b",
    });
    expect(blocked).toContain("DO NOT CUT");
    expect(blocked).toContain("millimetres to the nearest 0.1 mm");
  });
});

describe("the side view", () => {
  it("draws the rake rail leaning as it is cut: the left end longer below, the right end longer above", () => {
    const [lid, upper, lower, names] = sideView(list.groups[0]!.rows[0]!);
    // Seen in profile both ends lean like a slash: bottom first at the left, top last at the right.
    expect(upper).toMatch(/^TOP +\/ +\/$/);
    expect(lower).toMatch(/^BOTTOM +\/_+\/$/);
    expect(upper!.indexOf("/")).toBe(lower!.indexOf("/") + 1);
    expect(upper!.lastIndexOf("/")).toBe(lower!.lastIndexOf("/") + 1);
    expect(names!.trim()).toMatch(/^DOWNHILL +UPHILL$/);
    expect(lid!.trim()).toMatch(/^_+$/);
  });

  it("draws a post from its foot with its uphill face above and a hollow for the saddle", () => {
    const view = sideView(list.groups[1]!.rows[0]!);
    expect(view[1]).toMatch(/^UPHILL +\| +\($/);
    expect(view[3]!.trim()).toMatch(/^FOOT +TOP$/);
  });
});
