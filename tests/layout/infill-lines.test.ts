/**
 * Bars along the rails: the handbook's pattern numbers (cases d11 and d12, computed independently), spaces measured between the
 * members' own lines, and the pieces: built exactly, none in another (fitsOf measures from the solids).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cross, length, sub } from "../../src/kernel/vec.js";
import type { Member } from "../../src/members/index.js";
import { INCH, inches } from "./cases.js";
import { codesOf, type Loose, laidOut, withFloor } from "./designs.js";
import { filled, infillOf, soundGuard, twoFlights } from "./infill-cases.js";

const rails = (more: Loose = {}) => ({ type: "rails", section: "bar", clear: "3 1/4", ...more });
const LEVEL = { angle: 90, past: 60, before: 480, corner: "level" };
const POST = { angle: 90, past: 60, before: 260, corner: "post", above: 60, section: "corner" };

/** Distance between two parallel centrelines. */
function between(a: Member, b: Member): number {
  const along = sub(a.to, a.from);
  return length(cross(along, sub(b.from, a.from))) / length(along);
}

/** Pitch 7 1/2 in 10 1/2; rails so high that 31 in plumb are clear on the rake and 36 1/2 on the level. */
const pattern = (infill: Loose) =>
  filled(infill, (d) => {
    const secant = Math.hypot(7.5, 10.5) / 10.5;
    d.stair = { risers: 13, floorToFloor: "97 1/2", going: "10 1/2" };
    Object.assign(d.sections, { rail: "square 1-1/2 x 0.120", bar: "round bar 3/16" });
    Object.assign(d.legs[0], { top: 31 + 0.5 + 2.5 * secant, undersides: { low: "1/2" } });
    Object.assign(d.legs[1], { top: 36.5 + 2 + 2.5, undersides: { low: "2" } });
  });

describe("bars along the rails", () => {
  it("are the handbook's patterns: 7 and 2.989 in, 3.904 plumb, on the rake (d11); 10 and 3.148 in on the level (d12)", () => {
    const { report } = laidOut(pattern(rails()));
    const [rake, level] = [report.infill[0]!, report.infill.at(-1)!];
    expect([rake.count, level.count]).toEqual([7, 10]);
    expect(rake.clear / INCH).toBeCloseTo(2.989, 3);
    expect(rake.pitch! / INCH).toBeCloseTo(3.904, 3);
    expect(level.clear / INCH).toBeCloseTo(3.148, 3);
    inches(rake.asked, 3.25);
  });

  it("stand by number where it is given: 3 bars of 1/2 in leave a quarter of 36 1/2 in less 1 1/2", () => {
    const layout = laidOut(pattern({ type: "rails", section: "low", count: 3 }));
    const level = layout.report.infill.at(-1)!;
    inches(level.clear, (36.5 - 3 * 1) / 4);
    expect(level.asked).toBeUndefined();
    const [a, b] = infillOf(layout, 7);
    inches(between(a!, b!), (36.5 - 3) / 4 + 1);
    expect(infillOf(layout, 7).map((own) => own.mark)).toEqual(["MR7-1", "MR7-2", "MR7-3"]);
  });

  it("are sound pieces cut to their posts, in the example and round the corner of two flights", () => {
    const straight = soundGuard(filled(rails()));
    const bars = straight.pieces.filter((own) => own.id.includes("-line-"));
    expect(bars.length).toBe(straight.report!.infill.reduce((sum, own) => sum + own.count, 0));
    for (const bar of bars) for (const cut of bar.cuts) expect(cut.onto[0]).toMatch(/-post-\d$/);
    for (const corner of [LEVEL, POST]) {
      const guard = soundGuard(
        twoFlights(corner, rails({ clear: 110 }), (d) => (d.sections.corner = "square 50 x 4")),
      );
      expect(guard.report!.infill.every((own) => own.count >= 5 && own.clear <= 110)).toBe(true);
    }
  });

  it("break where their rails do, each pair on one miter of half the pitch", () => {
    const guard = soundGuard(twoFlights(LEVEL, rails({ clear: 110 })));
    const broken = guard.pieces.filter((own) => /bay-2-line-\d-a/.test(own.id));
    expect(broken).toHaveLength(6);
    const pitch = guard.report!.flights[0]!.pitch;
    for (const bar of broken) {
      expect(bar.cuts[1].kind).toBe("miter");
      expect(bar.cuts[1].saw?.fromSquare).toBeCloseTo(pitch / 2, 6);
    }
  });

  it("leave equal spaces no greater than asked over random heights, and one bar fewer would", () => {
    const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const random = fc.record({
      clear: mm(40, 200),
      top: mm(800, 1200),
      low: mm(40, 200),
      riser: mm(150, 200),
    });
    fc.assert(
      fc.property(random, fc.constantFrom(8, 12, 20), ({ clear, top, low, riser }, width) => {
        const layout = laidOut(
          twoFlights(LEVEL, rails({ clear }), (d) => {
            d.stair.floorToFloor = 6 * riser;
            d.sections.bar = `round bar ${width}`;
            for (const leg of d.legs) Object.assign(leg, { top, undersides: { low } });
          }),
        );
        for (const bay of [1, 3]) {
          const [floor, ceiling] = ["low", "top"].map(
            (part) =>
              layout.members.find(
                (own) =>
                  own.id === (part === "low" ? `bay-${bay}-low` : bay === 1 ? "stair-top" : "landing-top"),
              )!,
          );
          const stack = [floor!, ...infillOf(layout, bay), ceiling!];
          const half = [12.5, ...infillOf(layout, bay).map(() => width / 2), 24.15];
          const spaces = stack.slice(1).map((own, i) => between(stack[i]!, own) - half[i]! - half[i + 1]!);
          const most = Math.max(...spaces);
          expect(most).toBeLessThanOrEqual(clear + 1e-5);
          expect(most - Math.min(...spaces)).toBeLessThan(1e-6);
          const room = spaces.reduce((sum, own) => sum + own, 0);
          if (spaces.length > 1) expect((room + width) / (spaces.length - 1)).toBeGreaterThan(clear);
          expect(layout.report.infill[bay - 1]!.clear).toBeCloseTo(most, 6);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe("bars through the posts", () => {
  const through = (more: Loose = {}) => rails({ through: true, past: "1", ...more });

  it("are one bar a line: 8 on the rake and 10 on the level, cut to the post at the break, 1 in past the others", () => {
    const guard = soundGuard(filled(through()));
    const bars = guard.pieces.filter((own) => own.id.includes("-line-"));
    expect(bars).toHaveLength(18);
    const [rake, level] = [bars[0]!, bars.at(-1)!];
    expect([rake.cuts[0].kind, rake.cuts[1].onto]).toEqual(["square", ["landing-post-1"]]);
    expect([level.cuts[0].onto, level.cuts[1].kind]).toEqual([["landing-post-1"], "square"]);
    // From P1, at 3 in behind nosing 1, half a post of 1 1/2 and 1 in back, level.
    inches(rake.frame.origin[0], -(12 * 10.625) + 3 - 0.75 - 1);
    const end = guard.members.find((own) => own.id === level.id)!.to;
    inches(end[0], 93.75 + 0.75 + 1);
  });

  it("drill every post they run through by the bar and its clearance all round", () => {
    const guard = soundGuard(filled(through({ clearance: "1/32" })));
    const bores = (mark: string) => guard.pieces.find((own) => own.mark === mark)!.bores;
    expect(["P1", "P4", "P5", "P6", "P8"].map((mark) => bores(mark).length)).toEqual([8, 8, 0, 10, 10]);
    for (const bore of bores("P2")) inches(bore.diameter, 0.5 + 2 / 32);
  });

  it("run on through a break of their bay as two mitred bars, in both guards alike", () => {
    const guard = soundGuard(
      twoFlights(POST, through({ clear: 110, past: 25 }), (d) => {
        d.sections.corner = "square 50 x 4";
        Object.assign(d, { side: "both" });
        Object.assign(d.stair, { width: 900, inset: 40 });
      }),
    );
    const ids = (side: string) =>
      guard.pieces.filter((own) => own.id.startsWith(`${side}-bay`) && own.id.includes("-line-"));
    const [left, right] = [ids("left"), ids("right")];
    // 6 lines of rake and level mitred in bay 2, then 5 of the upper flight from the corner post.
    expect(left).toHaveLength(6 + 6 + 5);
    expect(right.map((own) => own.id.slice(5))).toEqual(left.map((own) => own.id.slice(4)));
    right.forEach((own, i) => {
      expect(own.lengths.blank.value).toBeCloseTo(left[i]!.lengths.blank.value, 6);
    });
  });
});

describe("findings about bars along the rails", () => {
  const compromise = (d: Loose) => {
    d.legs[1].top = "45";
    d.legs[1].break = "compromise";
  };
  /** Rake into level round a plan corner over the top nosing: axes of both rails meet there, half depths 24.15 and 12.5 mm. */
  const round = (infill: Loose) =>
    twoFlights({}, infill, (d) => {
      d.legs.pop();
      const more = Math.hypot(1, 175 / 280) - 1;
      Object.assign(d.legs[1], {
        ...{ turn: { angle: 90, corner: "round" }, top: 1000 - 24.15 * more },
        ...{ undersides: { low: 90 + 12.5 * more }, posts: { at: [300, 800] } },
      });
    });
  it.each([
    ["infill-not-parallel", filled(rails(), compromise), filled({ ...rails(), type: "bars" }, compromise)],
    ["infill-too-wide", filled(rails(), (d) => (d.sections.bar = "round 1.900 x 0.145")), filled(rails())],
    [
      "infill-no-room",
      filled(rails({ clear: undefined, count: 80 })),
      filled(rails({ clear: undefined, count: 8 })),
    ],
    [
      "infill-too-many",
      filled(rails({ clear: "0.01" }), (d) => (d.sections.bar = "round bar 1/16")),
      filled(rails({ clear: "1" })),
    ],
    // At the foot the lower rail and the bars keep the rake down to a post that leaves their break no room, while the top rail, 2 in
    // higher over the floor, turns level 2/tan θ nearer to the stair and stands over them by more.
    [
      "infill-wider-space",
      withFloor((d) => {
        d.sections.bar = "round bar 1/2";
        d.infill = rails();
        Object.assign(d.legs[0], { top: "44", posts: { at: ["9 1/2", "38"] } });
      }),
      filled(rails()),
    ],
    [
      "rails-overlap",
      filled(rails({ clear: undefined, count: 26 })),
      filled(rails({ clear: undefined, count: 8 })),
    ],
  ])("%s", (code, bad, good) => {
    expect(codesOf(bad)).toContain(code);
    expect(codesOf(good)).not.toContain(code);
  });

  it("infill-misses-corner", () => {
    expect(codesOf(round(rails({ clear: 110 })))).toContain("infill-misses-corner");
    expect(codesOf(round({ type: "bars", section: "bar", clear: 95 }))).not.toContain("infill-misses-corner");
  });
});
