/**
 * The setting-out block against shared/demo-data.json (invented data, numbers computed independently), and what the paper
 * says of a root gap against H / cos θ (handbook formula for a rail between plumb faces, case c30).
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import demo from "../../shared/demo-data.json" with { type: "json" };
import { buildGuard, parseAsSet, parseDesign } from "../../src/layout/index.js";
import { cutList, cutListText, pieceRecords, settingOutText } from "../../src/shop/index.js";

const document = JSON.parse(readFileSync("examples/pottery-studio.json", "utf8"));
const style = { unit: "in", denominator: 32 } as const;
const paper = (doc: unknown, job = "Kiln room stair"): string => {
  const { pieces, report } = buildGuard(doc);
  return cutListText(cutList(pieces, style), { job, basis: "typed", settingOut: report! });
};
const decimal = (x: number): string => `(${x.toFixed(3)})`;

describe("settingOutText", () => {
  const { report } = buildGuard(document);
  const text = settingOutText(report!, style).join("\n").replace(/\n\s+/g, " ");

  it("gives pitch, break, every nosing and every post of the demo", () => {
    const { straight } = demo;
    expect(text).toContain(`${straight.pitchDeg.toFixed(1)}°`);
    expect(text).toContain(decimal(straight.breakUndersidePastNosing));
    expect(text).toContain(decimal(straight.breakMidDepthPastNosing));
    expect(text.match(/^Nosing .*top of rail 42 \(42\.000\)/gm)).toHaveLength(straight.risers);
    for (const x of [...straight.postStations.stair, ...straight.postStations.landing]) {
      expect(text).toContain(decimal(x));
    }
    expect(text).toContain(decimal(straight.stairPost.railTopAboveTread));
    expect(text).toContain(decimal(straight.stairPost.railUndersideAtAxis));
    expect(text).toContain(decimal(straight.postStations.alongRake));
  });

  it("names the open side and keeps to the width of the paper", () => {
    expect(text).toContain("open side LEFT");
    const right = buildGuard({ ...document, side: "right" });
    expect(settingOutText(right.report!, style)[0]).toContain("open side RIGHT");
    for (const line of paper(document).split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("gives number, clear space and pitch of every bay's infill", () => {
    const bar = { ...document.sections, bar: "round bar 1/2" };
    const say = (infill: unknown): string =>
      settingOutText(buildGuard({ ...document, sections: bar, infill }).report!, style)
        .join("\n")
        .replace(/\n\s+/g, " ");
    // P1 is 2 in, P2 1 1/2 in, 31 7/8 in apart: 30 1/8 clear, 6 bars of 1/2 in, 27 1/8 in 7 spaces.
    expect(say({ type: "bars", section: "bar", clear: "3 7/8" })).toContain(
      "P1 to P2: 6 plumb bars, 3-7/8 (3.875) clear at most, level; 4-3/8 (4.375) centre to centre level",
    );
    // 42 less 2 + 1 + 1.9 in: 37.1 less one bar, halved; the next bar's centre is half a bar farther on either side.
    expect(say({ type: "rails", section: "bar", count: 1 })).toContain(
      "P7 to P8: 1 bar along the rails, 18-5/16 (18.300)",
    );
    expect(say({ type: "panel", thickness: "1/8", clear: "1/2" })).toContain(
      "P7 to P8: 1 panel, 1/2 (0.500) clear all round",
    );
  });

  it("goes into the records as data", () => {
    const { pieces } = buildGuard(document);
    const records = pieceRecords(pieces, new Map(), { generator: "g", job: "j", report: report! });
    expect(records.report?.nosings.map((n) => n.railTop / 25.4)).toEqual(
      Array(13).fill(expect.closeTo(42, 6)),
    );
    expect(pieceRecords(pieces, new Map(), { generator: "g", job: "j" }).report).toBeNull();
  });
});

describe("a handrail on the paper", () => {
  const handrails = [
    {
      ...{ section: "rail", height: "36", inward: "4", legs: ["stair"] },
      ...{ bottom: { extend: "12" }, top: { extend: "12" } },
      brackets: { from: "posts", section: "arm", drop: "3" },
    },
  ];
  const sections = { ...document.sections, arm: "round bar 1/2" };

  it("says its heights, extensions and brackets, within the width of the paper", () => {
    const text = paper({ ...document, sections, handrails });
    const flat = text.replace(/\n\s+/g, " ");
    expect(flat).toContain("top 36 (36.000) up, over its nosings from 36 (36.000) to 36 (36.000)");
    // One going at the slope is going / cos θ along it; 12 in level at both ends; 3 in less half the arm is clear.
    const along = Math.hypot(10.625, 98.3125 / 13);
    expect(flat).toContain(
      `10-5/8 (10.625) in plan at the slope (13-1/32 ${decimal(along)} along it) and 12 (12.000) level`,
    );
    expect(flat).toContain(
      "past the top nosing 0 (0.000) in plan at the slope (0 (0.000) along it) and 12 (12.000) level",
    );
    expect(flat).toContain("2-3/4 (2.750) clear under it");
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("is not on the paper of a guard without one", () => {
    expect(paper(document)).not.toContain("Handrail");
  });
});

describe("a root gap on the paper", () => {
  it("is named at every end it was taken off, and is what the length is short by", () => {
    const gap = 1 / 16;
    const gapped = buildGuard({ ...document, gap: "1/16" });
    const tight = buildGuard(document);
    const B1 = (g: typeof gapped): number =>
      g.pieces.find((p) => p.mark === "B1")!.lengths.longPoint.value / 25.4;
    const cos = Math.cos((demo.straight.pitchDeg * Math.PI) / 180);
    expect(B1(tight) - B1(gapped)).toBeCloseTo((2 * gap) / cos, 9);
    const text = paper({ ...document, gap: "1/16" });
    const sawn = gapped.pieces.filter((p) => p.role === "rail");
    const rows = cutList(sawn, style).groups.flatMap((g) => g.rows);
    expect(text.match(/ALREADY taken off/g)).toHaveLength(2 * rows.length);
    expect(paper(document)).not.toContain("ALREADY");
  });
});

describe("a job name", () => {
  it("cannot forge a line of the paper", () => {
    const text = paper(document, "Kiln\nCAUTION  none\u001b[2J");
    expect(text).not.toMatch(/^CAUTION {2}none/m);
    expect(text).not.toContain("\u001b");
  });
});

describe("posts as set", () => {
  it("puts the designed place beside that of a post as set, with its lean and what it stands aside", () => {
    const say = (set: readonly unknown[]): string => {
      const design = parseDesign(document);
      const read = design.ok && parseAsSet({ version: 1, unit: "in", posts: set }, design.value);
      if (read === false || !read.ok) throw new Error("not read");
      return settingOutText(buildGuard(document, undefined, read.value).report!, style)
        .join("\n")
        .replace(/\n\s+/g, " ");
    };
    expect(paper(document)).not.toContain("AS SET");
    const leaning = say([{ post: "P2", x: "-92 3/4", lean: -0.1, leanAcross: 0.2, across: "-1/16" }]);
    expect(leaning).toContain(
      "Post P2  centre at -92-3/4 (-92.750), on tread 4, 2-7/8 (2.875) behind its nosing, base -68-1/16 (-68.063) high: AS SET, leaning 0.1° downhill and 0.2° to the left, 1/16 (0.063) to the right of the middle (designed: centre at -92-5/8 (-92.625), base -68-1/16 (-68.063) high);",
    );
    expect(leaning).toContain("Stood up to be measured, not set for good: P2.");
    expect(leaning).toContain("posts that were found beside it stand there");
    expect(say([{ post: "P6", stage: "set" }])).toContain(": AS SET, plumb (designed: centre at 33-1/4");
    expect(say([{ post: "P6", stage: "set" }])).not.toContain("not set for good");
  });
});
