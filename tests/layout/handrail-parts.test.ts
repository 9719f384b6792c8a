/**
 * Brackets, toe boards and the figures of a section: closed forms, published figures, and pieces that are sound.
 */
import { describe, expect, it } from "vitest";
import published from "../../shared/published-sections.json" with { type: "json" };
import { fitsOf, solidOf, solveJoints } from "../../src/joints/index.js";
import { graspOf } from "../../src/layout/handrails/grasp.js";
import type { Layout } from "../../src/layout/lay-out.js";
import { parseSection } from "../../src/members/sections/parse-section.js";
import { example, type Loose, laidOut } from "./designs.js";
import { handrailOf, INCH, twoFlights } from "./handrail-designs.js";

const memberOf = (layout: Layout, id: string) => layout.members.find((own) => own.id === id)!;
const section = (words: string) => {
  const read = parseSection(words, "mm");
  if (!read.ok) throw new Error(words);
  return read.value;
};

/** Sound pieces, no errors, nothing cut into by more than rounding. */
function expectSound(layout: Layout): void {
  expect(layout.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
  const solution = solveJoints(layout);
  expect(solution.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
  for (const piece of solution.pieces) expect([piece.id, solidOf(piece).ok]).toEqual([piece.id, true]);
  for (const fit of fitsOf(solution)) if (fit.ok) expect(fit.value.overlap).toBeLessThan(1e-5);
}

describe("brackets", () => {
  it("from posts: an arm from each post of the legs, level, `drop` under the underside, to a plumb stem", () => {
    const layout = laidOut(example(handrailOf()));
    const { brackets, height } = layout.report.handrails[0]!;
    expect(brackets.map((own) => [own.mark, own.post])).toEqual([
      ["HB1", "P1"],
      ["HB2", "P2"],
      ["HB3", "P3"],
      ["HB4", "P4"],
    ]);
    const tan = (98 + 5 / 16) / 13 / (10 + 5 / 8);
    const secant = Math.hypot(1, tan);
    for (const [i, { x, clear }] of brackets.entries()) {
      const arm = memberOf(layout, `handrail-bracket-${i + 1}-arm`);
      const stem = memberOf(layout, `handrail-bracket-${i + 1}-stem`);
      // Underside over the nosing line: height less the rail's depth along the plumb line.
      const underside = height / INCH + (x / INCH) * tan - 1.5 * secant;
      expect(arm.to[2] / INCH).toBeCloseTo(underside - 3, 8);
      expect(arm.from[2]).toBeCloseTo(arm.to[2], 9);
      expect(stem.from).toEqual(arm.to);
      expect(stem.to[2] / INCH).toBeCloseTo(underside, 8);
      expect(stem.to.slice(0, 2)).toEqual(stem.from.slice(0, 2));
      // Clear under the rail: the drop less half the arm of 1/2 in.
      expect(clear / INCH).toBeCloseTo(2.75, 9);
    }
  });

  it("under a break: a stem shaped to both pieces", () => {
    // A post 1/8 in past the nosing stands under the break of axis to underside.
    const layout = laidOut(
      example((d) => {
        handrailOf({ legs: ["stair", "landing"], top: undefined })(d);
        d.legs[1].posts.at[0] = "1/8";
        d.foot = { type: "bare" };
        delete d.endPosts;
      }),
    );
    const cope = layout.joints.find((own) => own.id === "handrail-bracket-5-rail");
    expect(cope).toMatchObject({ onto: ["handrail-stair", "handrail-landing"] });
    expectSound(layout);
  });

  it.each(["outside", "inside"] as const)("from a wall %s: in equal spaces, with flanges on it", (side) => {
    const layout = laidOut(
      example((d) => {
        handrailOf({
          inward: "38",
          brackets: {
            ...{ from: "wall", section: "arm", drop: "3", side, wall: "3", greatest: "32", ends: "6" },
            flange: { thickness: "1/4", width: "3", height: "3" },
          },
          bottom: { return: "wall", distance: "3", towards: side, endPlate: "1/4" },
          top: { extend: "12", return: "wall", distance: "3", towards: side, endPlate: "1/4" },
        })(d);
      }),
    );
    const { brackets, bottom, top } = layout.report.handrails[0]!;
    const spaces = brackets.slice(1).map((own, i) => own.x - brackets[i]!.x);
    expect(Math.max(...spaces)).toBeLessThanOrEqual(32 * INCH);
    expect(Math.max(...spaces) - Math.min(...spaces)).toBeLessThan(1e-9);
    // One space fewer would be too wide.
    expect((top.x - bottom.x - 12 * INCH) / (spaces.length - 1)).toBeGreaterThan(32 * INCH);
    expect(brackets[0]!.x - bottom.x).toBeCloseTo(6 * INCH, 6);
    expect(top.x - brackets.at(-1)!.x).toBeCloseTo(6 * INCH, 6);
    const face = side === "outside" ? -35 : -41;
    for (let i = 1; i <= brackets.length; i += 1) {
      expect(memberOf(layout, `handrail-bracket-${i}-flange`).to[1] / INCH).toBeCloseTo(face, 9);
    }
    expectSound(layout);
  });
});

describe("the figures of a section", () => {
  it("are the published perimeter and the diameter of a tube", () => {
    const tubes = published.entries.filter((own) => own.id.startsWith("chs-exact-cf-"));
    expect(tubes.length).toBeGreaterThan(3);
    for (const { inputs, expected } of tubes as unknown as {
      inputs: { D_mm: number; t_mm: number };
      expected: { surface_m2_per_m: number };
    }[]) {
      const { perimeter, greatest } = graspOf(section(`round ${inputs.D_mm} x ${inputs.t_mm}`));
      expect(perimeter / 1000).toBeCloseTo(expected.surface_m2_per_m, 9);
      expect(greatest).toBeCloseTo(inputs.D_mm, 9);
    }
  });

  it("are the diagonal of a bar, less what rounded corners take of it", () => {
    expect(graspOf(section("flat 40 x 9")).greatest).toBeCloseTo(Math.hypot(40, 9), 9);
    expect(graspOf(section("flat 40 x 9")).perimeter).toBeCloseTo(98, 9);
    const tube = section("rect 60 x 30 x 3");
    if (tube.shape.kind !== "rect-tube") throw new Error("no tube");
    const r = tube.shape.outerRadius;
    expect(graspOf(tube).greatest).toBeCloseTo(Math.hypot(60 - 2 * r, 30 - 2 * r) + 2 * r, 9);
  });

  it("stand beside the figures asked for, in a note that gives their source and no verdict", () => {
    // 2010 ADA Standards 505.7.2 (read in a stored copy): perimeter 4 to 6 1/4 in, cross-section 2 1/4 in at most.
    const graspable = {
      ...{ perimeterFrom: "4", perimeterTo: "6 1/4", greatest: "2 1/4" },
      source: "2010 ADA Standards 505.7.2",
    };
    const note = (words: string) =>
      laidOut(
        example((d) => {
          handrailOf({ graspable, brackets: undefined })(d);
          d.sections.hand = words;
        }),
      ).diagnostics.find((d) => d.code === "handrail-grasp")!;
    const fits = note("round 1-1/2 x 0.120");
    expect(fits).toMatchObject({ severity: "note", path: "handrails[0].graspable" });
    for (const text of ["4.712 in", "1.500 in", "4.000 in", "6.250 in", "2.250 in", "505.7.2"]) {
      expect(fits.message).toContain(text);
    }
    expect(note("round 2-3/8 x 0.120").severity).toBe("note");
    expect(fits.message + fits.hint).not.toMatch(/complian|approved|pass|fail|too (large|small)/i);
  });
});

describe("toe boards", () => {
  const board = (own: Loose = {}, change: (d: Loose) => void = () => undefined) =>
    laidOut(
      example((d) => {
        d.sections.toe = "flat 4 x 1/4";
        d.toeBoard = { section: "toe", gap: "3/8", ...own };
        d.legs[1].undersides.low = "5";
        change(d);
      }),
    );
  const marks = (layout: Layout) =>
    layout.members.flatMap((own) => (own.mark?.startsWith("TB") ? [own.mark] : []));

  it("between posts: one flat a bay on its narrow side, `gap` over the floor, as long as the posts are apart", () => {
    const layout = board();
    expect(marks(layout)).toEqual(["TB1", "TB2", "TB3"]);
    const own = memberOf(layout, "toe-board-2");
    expect([own.from[1], own.from[2] / INCH]).toEqual([expect.closeTo(0, 9), expect.closeTo(2.375, 9)]);
    // Its width stands: the section's u is plumb.
    expect(Math.abs(own.frame.x[2])).toBeCloseTo(1, 12);
    const piece = solveJoints(layout).pieces.find((one) => one.id === "toe-board-2")!;
    // Posts at 33 1/4 and 63 1/2, both 1 1/2 in.
    expect(piece.lengths.blank.value / INCH).toBeCloseTo(30.25 - 1.5, 9);
    expectSound(layout);
  });

  it("a flat written standing is the same board", () => {
    const lying = board();
    const standing = board({}, (d) => (d.sections.toe = "flat 1/4 x 4"));
    const own = (layout: Layout) => memberOf(layout, "toe-board-1");
    expect(own(standing).from).toEqual(own(lying).from);
    expect(Math.abs(own(standing).frame.y[2])).toBeCloseTo(1, 12);
  });

  it("in front: at the face of the widest post, butting at post centres, flush with the outer ones", () => {
    const layout = board({ face: "inside" });
    const [first, , last] = [1, 2, 3].map((i) => memberOf(layout, `toe-board-${i}`));
    // P5 and P8 are 2 in: their faces are 1 in from the middle, the board's middle 1/8 in farther.
    for (const own of [first, last]) expect(own!.from[1] / INCH).toBeCloseTo(-1.125, 9);
    expect(first!.from[0] / INCH).toBeCloseTo(3 - 1, 9);
    expect(first!.to[0] / INCH).toBeCloseTo(33.25, 9);
    expect(last!.to[0] / INCH).toBeCloseTo(93.75 + 1, 9);
    expectSound(layout);
  });

  it("follow a landing that slopes", () => {
    const layout = board({ gap: "1/2" }, (d) => (d.legs[1].slope = 1));
    const own = memberOf(layout, "toe-board-1");
    const tan = Math.tan(Math.PI / 180);
    expect((own.to[2] - own.from[2]) / (own.to[0] - own.from[0])).toBeCloseTo(tan, 9);
    expect(own.from[2] / INCH).toBeCloseTo(3 * tan + 0.5 + 2 * Math.hypot(1, tan), 9);
    expectSound(layout);
  });

  it.each([
    ["between", "level", 90],
    ["between", "post", 45],
    ["inside", "level", -90],
    ["inside", "post", 90],
    ["inside", "post", 45],
  ] as const)("%s, round a corner (%s, %d degrees): sound pieces", (face, corner, angle) => {
    const layout = laidOut(
      twoFlights({ side: "left", angle, corner }, (d) => {
        d.handrails = [];
        d.toeBoard = { section: "toe", gap: 20, face };
        d.legs = [
          d.legs[0],
          { along: "landing", top: 1000, length: 1200, posts: { at: [200, 1000] } },
          { ...d.legs[1], turn: { ...d.legs[2].turn, past: 200, before: undefined } },
        ];
      }),
    );
    const turning = layout.joints.filter((own) => own.kind === "miter" && own.id.startsWith("toe-board"));
    // In the guard's plane a corner post stands between the two boards.
    expect(turning).toHaveLength(face === "between" && corner === "post" ? 0 : 1);
    expectSound(layout);
  });
});
