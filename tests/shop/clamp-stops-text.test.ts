/** The CLAMP STOPS block: figures of case f01 (shared/shop-cases.json) in words, and what it says where there is less. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { railSag, railsAsLaid, railTips, stiffnessOf } from "../../src/checks/index.js";
import { buildGuard, DEFAULT_SHOP, type LaidRailReport, type StopReport } from "../../src/layout/index.js";
import { roundTube } from "../../src/members/index.js";
import { clampStopsText, cutList, cutListText, type LyingRailRow } from "../../src/shop/index.js";

const inch = { unit: "in", denominator: 32 } as const;
const flat = (lines: readonly string[]) => lines.join("\n").replace(/\n {8,}(?=\S)/g, " ");

const stop = (post: string, x: number, own: Partial<StopReport> = {}): StopReport => ({
  ...{ post, leg: "landing", width: 38.1, x, z: 900, touches: "face", aboveBase: 900, aboveFoot: 890.475 },
  ...{ foot: "plate" as const, ...own },
});
const rail = (stops: readonly StopReport[], slope = 0): LaidRailReport => ({
  ...{ id: "top", mark: "R1", slope, stops, past: [0, 0] as const },
});

/** Case f01: 1.900 x 0.145, 20 ft between two stops. */
function f01(mostSag: number, on = ["P1", "P2"]): LyingRailRow {
  const section = roundTube({ od: 48.26, wall: 3.683 });
  const stiffness = stiffnessOf("mild-steel");
  const lying = { section, material: stiffness, span: 6096, slope: 0 };
  const ends = { from: "P1", to: on.at(-1)!, span: 6096, ...railSag(lying) };
  const bay = { ...lying, span: 3048 };
  const longest = on.length === 2 ? ends : { from: "P1", to: "P2", span: 3048, ...railSag(bay) };
  return {
    ...{ rail: "R1", material: "mild-steel", stiffness, depth: 48.26, on, ends, longest, creep: 0, mostSag },
    tips: railTips({ ...lying, past: [0, 0] }),
  };
}

describe("clampStopsText", () => {
  const two = rail([stop("P1", 0), stop("P2", 6096)]);

  it("says sag, prop and scribe of case f01 as the handbook prints them: 1-3/32, 34 lbf, 0.83 degrees, 0.03 in", () => {
    const text = flat(clampStopsText([two], [f01(1.5)], inch));
    expect(text).toContain("on P1 and P2 (240 (240.000) along it): sags 1-3/32 (1.090) in the middle");
    expect(text).toContain("prop at 120 (120.000) along it from P1 with about 151 N (34 lbf) square to it");
    expect(text).toContain("0.83° off, 1/32 (0.028) over its depth");
    expect(text).toContain("bending stress 35 N/mm²");
    expect(text).toContain("scribe      AFTER PROPPING: it sags more than the 1/16 (0.059)");
    expect(text).toContain("E 200 GPa (AISC 360");
    expect(text).not.toContain("creep");
  });

  it("tells the worst case from all stops, and when no prop is called for", () => {
    const three = rail([stop("P1", 0), stop("P2", 3048), stop("P3", 6096)]);
    const on = ["P1", "P2", "P3"];
    const text = flat(clampStopsText([three], [f01(10, on)], inch));
    expect(text).toContain("on P1 and P3 alone, the worst case (240 (240.000) along it)");
    // A sixteenth of the sag: half the span.
    expect(text).toContain(
      "on all of P1, P2, P3: sags no more than 1/16 (0.068) in its longest bay, P1 to P2",
    );
    expect(text).toContain("on all its stops, or AFTER PROPPING: on P1 and P3 alone it sags more than");
    expect(flat(clampStopsText([three], [f01(1, on)], inch))).toContain("(120.000)); prop at 60 (60.000)");
    expect(flat(clampStopsText([three], [f01(30, on)], inch))).toContain("it sags no more than the 1-3/16");
  });

  it("gives each stop from its tread and from the foot of its post, with the corner that carries", () => {
    const raking = rail(
      [stop("P1", 0, { tread: 4, touches: "downhill" }), stop("P2", 900, { tread: 8 })],
      35.54,
    );
    const text = clampStopsText([raking], [], inch).join("\n");
    expect(text).toContain("R1   35.5° from level");
    expect(text).toMatch(
      /P1 +tread 4 +35-7\/16 \(35\.433\) +35-1\/16 \(35\.058\) +1-1\/2 \(1\.500\) +DOWNHILL corner/,
    );
    expect(text).not.toContain("sags");
    const metric = clampStopsText([raking], [f01(1)], { unit: "mm", denominator: 32 }).join("\n");
    expect(metric).toMatch(/P1 +tread 4 +900\.0 +890\.5 +38\.1 +DOWNHILL corner/);
    expect(metric).toContain("151 N square");
  });

  it("says where a rail has one stop or none, where its end lifts it, and is silent without stops", () => {
    const none = { ...rail([]), mark: "R2" };
    const one = clampStopsText([rail([stop("P1", 0)]), none], [], inch).join("\n");
    expect(one).toContain("R1   level; on ONE stop: hold its other end");
    expect(one).toContain("R2   level; lies over no post: hold it at both ends");
    expect(clampStopsText([none], [], inch)).toEqual([]);
    const row = f01(1);
    const tips = [row.tips[0], { ...row.tips[1], lifts: true }] as const;
    const lifted = flat(clampStopsText([two], [{ ...row, tips, creep: 44.4822 }], inch));
    expect(lifted).toContain("LIFTS it off the other stop: hold it down");
    expect(lifted).toContain("its weight pulls it downhill with 44 N (10 lbf): stop its lower end first");
  });

  it("keeps to the width of the paper whatever a leg is called, and stands in the cut list", () => {
    const long = rail([stop("P1", 0, { leg: "the-landing-before-the-kiln-room-door" }), stop("P2", 900)]);
    for (const line of clampStopsText([long], [f01(1)], inch)) expect(line.length).toBeLessThanOrEqual(100);
    const document = JSON.parse(readFileSync("examples/pottery-studio.json", "utf8"));
    const { pieces, report } = buildGuard(document);
    const lying = railsAsLaid(report!.laid, pieces, DEFAULT_SHOP);
    const text = cutListText(cutList(pieces, inch), { job: "a", basis: "b", settingOut: report!, lying });
    expect(text).toContain("\nCLAMP STOPS  ");
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });
});
