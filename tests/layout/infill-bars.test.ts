/**
 * Plumb bars: counts and spaces by hand from the demo stair's stations (shared/demo-data.json), spaces measured between the
 * members that are laid out, and the pieces: built exactly, none in another (fitsOf measures from the solids).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { buildGuard } from "../../src/layout/build-guard.js";
import { INCH, inches } from "./cases.js";
import { type Loose, laidOut } from "./designs.js";
import { apart, filled, infillOf, soundGuard, twoFlights } from "./infill-cases.js";

const BARS = { type: "bars", section: "bar", clear: "3 7/8" };

describe("plumb bars", () => {
  it("divide the demo's bays: 31 7/8 in between centres and 1 1/2 in posts leave 30 3/8, so 7 bars and 3.359 in", () => {
    const layout = laidOut(filled(BARS));
    const [first] = layout.report.infill;
    expect([first?.type, first?.from, first?.to, first?.count]).toEqual(["bars", "P1", "P2", 7]);
    inches(first?.clear, (30.375 - 7 * 0.5) / 8);
    inches(first?.pitch, (30.375 - 7 * 0.5) / 8 + 0.5);
    inches(first?.asked, 3.875);
    // Level bays of 30 1/4 in: 28 3/4 clear, 6 bars, (28.75 − 3)/7.
    const last = layout.report.infill.at(-1);
    expect(last?.count).toBe(6);
    inches(last?.clear, 25.75 / 7);
    expect(layout.report.infill).toHaveLength(7);
    const [bar, next] = infillOf(layout, 1);
    inches(apart(bar!, next!), 3.359375 + 0.5);
    expect(infillOf(layout, 1).map((own) => own.mark)).toEqual([1, 2, 3, 4, 5, 6, 7].map((k) => `V1-${k}`));
  });

  it("stand plumb, from the lower rail's axis to the top rail's", () => {
    const layout = laidOut(filled(BARS));
    const [bar] = infillOf(layout, 2);
    expect(bar!.from.slice(0, 2)).toEqual(bar!.to.slice(0, 2));
    const on = (id: string) => {
      const rail = layout.members.find((own) => own.id === id)!;
      const t = (bar!.from[0] - rail.from[0]) / (rail.to[0] - rail.from[0]);
      return rail.from[2] + t * (rail.to[2] - rail.from[2]);
    };
    expect(bar!.from[2]).toBeCloseTo(on("bay-2-low"), 8);
    expect(bar!.to[2]).toBeCloseTo(on("stair-top"), 8);
  });

  it("have the length of the opening along their middle: plumb from rail to rail, 42 less (1 1/2 + 1)/cos less 1/2", () => {
    const guard = buildGuard(
      filled({ ...BARS, section: "flat" }, (d) => {
        d.sections.rail = "square 1-1/2 x 0.120";
        d.sections.flat = "square bar 1/2";
      }),
    );
    const bar = guard.pieces.find((own) => own.id === "bay-1-bar-1")!;
    const cos = Math.cos((guard.report!.pitch * Math.PI) / 180);
    inches(bar.lengths.axis?.value, 42 - 1.5 / cos - 0.5 - 1 / cos);
    // Flat on flat: both ends are saw cuts at the pitch.
    for (const cut of bar.cuts) expect(cut.saw?.fromSquare).toBeCloseTo(guard.report!.pitch, 6);
  });

  it.each([
    ["round bar 1/2", "round 1.900 x 0.145"],
    ["square bar 1/2", "round 1.900 x 0.145"],
    ["square 3/4 x 0.065", "square 1-1/2 x 0.120"],
  ])("of %s under %s are sound pieces, one under the break shaped to both rails", (bar, rail) => {
    // A bay over the break from tread 10 (28 7/8 in before the nosing) to 29 5/8 in past it: 13 bars, the middle one at 3/8 in,
    // where the rail's underside is mitred (mid-depth 0.304, underside 0.607 in past the nosing for the round one).
    const clear = bar.includes("3/4") ? 3.65 : 3.87;
    const guard = soundGuard(
      filled({ ...BARS, clear }, (d) => {
        Object.assign(d.sections, { bar, rail });
        d.legs[0].posts.onTreads = [8, 10];
        Object.assign(d.legs[1], { posts: { at: ["29 5/8", "50"] }, end: { type: "free" }, infill: "none" });
      }),
    );
    const under = guard.pieces.filter((own) => own.cuts[1].onto.length === 2 && own.id.includes("-bar-"));
    expect(under.map((own) => own.cuts[1].onto)).toEqual([["stair-top", "landing-top"]]);
    expect(infillOf(guard).length).toBe(guard.report!.infill.reduce((sum, own) => sum + own.count, 0));
  });

  it("over a break of the lower rail is shaped to both of its pieces", () => {
    // Undersides 1/2 in over the rake and 2 in over the landing meet 1.5/tan θ = 2.107 in past the nosing. Which number of bars
    // puts one there is looked for among a few.
    const document = (clear: number) =>
      filled({ ...BARS, clear }, (d) => {
        d.legs[0].posts.onTreads = [8, 10];
        Object.assign(d.legs[1], { posts: { at: ["20", "50"] }, end: { type: "free" }, infill: "none" });
      });
    const over = (clear: number) =>
      laidOut(document(clear)).joints.filter(
        (own) => own.kind === "cope" && own.id.endsWith("-foot") && own.onto.length === 2,
      );
    const found = [3.3, 3.5, 3.7, 3.87].find((clear) => over(clear).length > 0);
    const guard = soundGuard(document(found!));
    const bar = guard.pieces.find((own) => own.cuts[0].onto.length === 2 && own.id.includes("-bar-"))!;
    expect(bar.cuts[0].onto).toEqual(["bay-2-low-a", "bay-2-low-b"]);
    expect(Math.abs(bar.frame.origin[0] / INCH - 2.107)).toBeLessThan(0.75);
  });

  it.each([
    { angle: 90, past: 60, before: 480, corner: "level" },
    { angle: -60, past: 60, before: 480, corner: "level" },
    { angle: 90, past: 60, before: 260, corner: "post", above: 60, section: "corner" },
  ])("turn the corner of two flights ($corner, $angle degrees)", (corner) => {
    const guard = soundGuard(
      twoFlights(corner, { type: "bars", section: "bar", clear: 95 }, (d) => {
        d.sections.corner = "square 50 x 4";
      }),
    );
    expect(guard.report!.infill.every((own) => own.clear <= 95 && own.count > 0)).toBe(true);
  });

  it("leave equal halves of a space at a corner without a post", () => {
    const corner = { angle: 90, past: 60, before: 480, corner: "level" };
    const layout = laidOut(twoFlights(corner, { type: "bars", section: "bar", clear: 95 }));
    // The landing's last post is 300 mm before the corner: 280 from its face; 3 bars and 3 1/2 spaces, (280 − 36)/3.5.
    const bars = infillOf(layout, 4);
    const space = (300 - 20 + 60 - 36) / 3.5;
    expect(apart(bars[0]!, bars[1]!)).toBeCloseTo(space + 12, 6);
    expect(space).toBeLessThanOrEqual(95);
  });

  it("are each other's mirror image in a guard on both sides", () => {
    const corner = { angle: 90, past: 60, before: 480, corner: "level" };
    const guard = soundGuard(
      twoFlights(corner, { type: "bars", section: "bar", clear: 95 }, (d) => {
        Object.assign(d, { side: "both" });
        Object.assign(d.stair, { width: 900, inset: 40 });
      }),
    );
    const side = (prefix: string) =>
      guard.pieces.filter((own) => own.id.startsWith(prefix) && own.id.includes("-bar-"));
    const [left, right] = [side("left-"), side("right-")];
    expect(left.length).toBeGreaterThan(20);
    expect(right.map((own) => own.mark)).toEqual(left.map((own) => own.mark.replace(/-L$/, "-R")));
    right.forEach((own, i) => {
      expect(own.lengths.blank.value).toBeCloseTo(left[i]!.lengths.blank.value, 6);
      // The main flight's guards are mirror images across the middle of the stair: 900 − 2·40 apart.
      const [a, b] = [left[i]!.frame.origin, own.frame.origin];
      expect([b[0], b[1], b[2]]).toEqual([a[0], -820 - a[1], a[2]].map((x) => expect.closeTo(x, 6)));
    });
  });

  it("fill all rows where asked, and only the lowest by default", () => {
    const withMid = (infill: Loose) =>
      twoFlights({ angle: 90, past: 60, before: 480, corner: "level" }, infill, (d) => {
        d.rails.push({ id: "mid", role: "lower", section: "low" });
        for (const leg of d.legs) leg.undersides = { mid: 800, low: 90 };
      });
    const lowest = laidOut(withMid({ type: "bars", section: "bar", clear: 95 }));
    const all = soundGuard(withMid({ type: "bars", section: "bar", clear: 95, rows: "all" }));
    expect(infillOf(all).length).toBe(2 * infillOf(lowest).length);
    expect(all.report!.infill.map((own) => own.row).filter((row) => row === 2)).toHaveLength(5);
    const [bar] = infillOf(lowest, 2);
    // Level bay: from 90 + 25/2 to 800 + 25/2 over the landing.
    expect(
      bar === undefined ? 0 : infillOf(lowest, 3)[0]!.to[2] - infillOf(lowest, 3)[0]!.from[2],
    ).toBeCloseTo(710, 6);
  });

  it("take the infill of the leg the lower post stands on; none leaves its bays open", () => {
    const layout = laidOut(filled(BARS, (d) => (d.legs[1].infill = "none")));
    expect(layout.report.infill.map((own) => `${own.from}-${own.to}`)).toEqual([
      "P1-P2",
      "P2-P3",
      "P3-P4",
      "P4-P5",
    ]);
    const other = laidOut(filled(BARS, (d) => (d.legs[1].infill = { ...BARS, clear: "6" })));
    expect(other.report.infill.map((own) => (own.asked ?? 0) / INCH)).toEqual(
      [3.875, 3.875, 3.875, 3.875, 6, 6, 6].map((x) => expect.closeTo(x, 9)),
    );
  });

  it("leave no space above the one asked for in random bays, and one bar fewer would", () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const random = fc.record({
      clear: mm(40, 150),
      bar: fc.constantFrom(
        { words: "round bar 12", width: 12 },
        { words: "square bar 16", width: 16 },
        { words: "round 20 x 2", width: 20 },
      ),
      apart: mm(150, 1400),
      before: mm(150, 1400),
      riser: mm(150, 200),
      post: fc.constantFrom(30, 40, 50),
    });
    fc.assert(
      fc.property(random, ({ clear, bar: { words, width }, apart: level, before, riser, post }) => {
        const layout = laidOut({
          ...{ version: 1, job: "Random bays", unit: "mm", side: "right" },
          stair: { risers: 9, floorToFloor: 9 * riser, going: 280 },
          sections: { rail: "square 50 x 3", post: `square ${post} x 3`, low: "square 30 x 2", bar: words },
          rails: [
            { role: "top", section: "rail" },
            { id: "low", role: "lower", section: "low" },
          ],
          posts: { section: "post" },
          infill: { type: "bars", section: "bar", clear },
          legs: [
            {
              along: "stair",
              top: 1000,
              undersides: { low: 90 },
              posts: { onTreads: [1, 5], behindNosing: 90 },
            },
            { along: "landing", top: 1000, undersides: { low: 90 }, posts: { at: [before, before + level] } },
          ],
        });
        const posts = layout.members.filter((own) => own.role === "post");
        posts.slice(1).forEach((to, i) => {
          const row = [posts[i]!, ...infillOf(layout, i + 1), to];
          const halves = row.map((own) => (own.role === "post" ? post : width) / 2);
          const spaces = row.slice(1).map((own, k) => apart(row[k]!, own) - halves[k]! - halves[k + 1]!);
          for (const space of spaces) expect(space).toBeLessThanOrEqual(clear + 1e-5);
          for (const space of spaces) expect(space).toBeCloseTo(spaces[0]!, 6);
          expect(layout.report.infill[i]!.clear).toBeCloseTo(spaces[0]!, 6);
          const opening = spaces.reduce((sum, own) => sum + own, 0) + (row.length - 2) * width;
          if (row.length > 2) {
            const fewer = row.length - 3;
            expect((opening - fewer * width) / (fewer + 1)).toBeGreaterThan(clear);
          }
        });
      }),
    );
  });
});
