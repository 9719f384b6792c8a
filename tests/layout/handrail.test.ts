/**
 * Handrails against closed forms and the worked cases: where they break, how far they go on, where they turn in plan, how short
 * their shortest edges are, and whether the pieces made of them are sound and fit.
 */
import { describe, expect, it } from "vitest";
import { fitsOf, solidOf, solveJoints } from "../../src/joints/index.js";
import type { Layout } from "../../src/layout/lay-out.js";
import type { Member } from "../../src/members/member.js";
import { shopCase } from "./cases.js";
import { example, type Loose, laidOut } from "./designs.js";
import { handrailOf, INCH, twoFlights } from "./handrail-designs.js";

const only = (layout: Layout) => layout.report.handrails[0]!;
const memberOf = (layout: Layout, id: string): Member => {
  const found = layout.members.find((own) => own.id === id);
  if (found === undefined) throw new Error(`no member ${id} among ${layout.members.map((m) => m.id)}`);
  return found;
};
const errors = (layout: Layout) =>
  layout.diagnostics.filter((d) => d.severity === "error").map((d) => d.message);

/** A stair of the worked cases: 7 1/2 on 10 1/2, rail and handrail 1 1/2 square without rounded corners, in inches. */
function worked(handrail: Loose, change: (d: Loose) => void = () => undefined): Layout {
  return laidOut(
    example((d) => {
      d.stair = { risers: 8, floorToFloor: 60, going: 10.5 };
      d.sections.hand = "square bar 1-1/2";
      d.handrails = [{ section: "hand", height: 36, inward: 4, ...handrail }];
      delete d.endPosts;
      d.legs[0].posts.onTreads = [1, 4];
      change(d);
    }),
  );
}

describe("a handrail over flight and landing", () => {
  it("breaks with its top edge plumb over the nosing, its axis (d/2)·tan(θ/2) farther [a17]", () => {
    const layout = worked({});
    const [rake, level] = ["handrail-stair", "handrail-landing"].map((id) => memberOf(layout, id));
    shopCase("a17").near("centre_break_x", rake!.to[0] / INCH);
    expect(rake!.to).toEqual(level!.from);
    shopCase("a17").near(
      "top_break_x",
      rake!.to[0] / INCH - 0.75 * Math.tan((35.537677791974 * Math.PI) / 360),
    );
    expect(only(layout).nosings.every((own) => Math.abs(own.railTop - 36 * INCH) < 1e-9)).toBe(true);
    expect(only(layout).nosings).toHaveLength(8);
  });

  it("stands inward of the guard on the walking side, which is the right of a guard on the left", () => {
    const inward = (side: string) =>
      worked({}, (d) => (d.side = side))
        .members.filter((m) => m.id.startsWith("handrail"))
        .map((m) => m.from[1]);
    for (const y of inward("left")) expect(y).toBeCloseTo(-4 * INCH, 9);
    for (const y of inward("right")) expect(y).toBeCloseTo(4 * INCH, 9);
  });

  it("keeps to its own law where the guard's rail drops or meets elsewhere", () => {
    const layout = worked({}, (d) => {
      d.legs[1].top = "46";
      d.legs[1].break = "drop";
    });
    shopCase("a17").near("centre_break_x", memberOf(layout, "handrail-stair").to[0] / INCH);
  });
});

describe("extensions", () => {
  it("go on one going at the slope and then level, and level from the top nosing [a22]", () => {
    const { near } = shopCase("a22");
    const layout = worked({ legs: ["stair"], bottom: { extend: 12 }, top: { extend: 12 } });
    const { bottom, top } = only(layout);
    near("break_x_from_bottom_nosing", -bottom.sloped / INCH);
    near("slope_length_of_extension", bottom.alongRake / INCH);
    near("top_extension_end_x", top.x / INCH);
    expect([bottom.level / INCH, top.level / INCH]).toEqual([expect.closeTo(12, 9), expect.closeTo(12, 9)]);
    // Top of the level part over the floor, 60 in below the landing: its axis and half its depth.
    const foot = memberOf(layout, "handrail-stair-foot");
    near("height_above_floor_at_break", foot.from[2] / INCH + 0.75 + 60);
    expect(foot.from[2]).toBeCloseTo(foot.to[2], 9);
  });

  it("stand the handrail's height over the floor where the nosing line meets it: 6 1/2 / tan θ in front of a lower first riser", () => {
    // Handbook: a first riser of 6.5 at 7.5 on 10.5 meets the floor 9.1 in front. Independent script, not part of the project.
    const taped = Array.from({ length: 8 }, (_, i) => ({ run: 10.5 * i, height: 6.5 + 7.5 * i }));
    const layout = worked({ legs: ["stair"], bottom: { slope: "9.1", extend: 6 } }, (d) => {
      d.stair = { nosings: taped };
    });
    const floor = -(6.5 + 7.5 * 7);
    expect(memberOf(layout, "handrail-stair-foot").to[2] / INCH + 0.75 - floor).toBeCloseTo(36, 9);
  });

  it("are cut plumb over the last nosing where nothing is said", () => {
    const { bottom, top } = only(worked({ legs: ["stair"] }));
    expect([bottom.x / INCH, top.x]).toEqual([expect.closeTo(-73.5, 9), 0]);
    expect([bottom.sloped, bottom.level, top.sloped, top.level]).toEqual([0, 0, 0, 0]);
  });

  it("go sloped only, or level only", () => {
    const sloped = only(worked({ legs: ["stair"], bottom: {} })).bottom;
    expect([sloped.sloped / INCH, sloped.level]).toEqual([expect.closeTo(10.5, 9), 0]);
    const level = only(worked({ legs: ["stair"], bottom: { slope: 0, extend: 12 } })).bottom;
    expect([level.sloped, level.level / INCH]).toEqual([expect.closeTo(0, 9), expect.closeTo(12, 9)]);
  });

  it("stop short of a level leg's far end, or end at its last post where it has no length", () => {
    const short = only(worked({ top: { extend: "-2" } }));
    expect(short.top.x / INCH).toBeCloseTo(94.75, 9);
    const last = only(
      worked({}, (d) => {
        delete d.legs[1].length;
        d.legs[1].end = { type: "free" };
      }),
    );
    expect(last.top.x / INCH).toBeCloseTo(93.75, 9);
  });
});

describe("returns", () => {
  it("turn level to a wall, a flange short of it", () => {
    const plate = { width: 4, height: 4, holes: { diameter: "3/8", along: "2 1/2", across: "2 1/2" } };
    const back = { return: "wall", distance: 3, endPlate: "1/4", plate };
    const layout = worked({ legs: ["stair"], top: { extend: 12, ...back } });
    const [piece, flange] = [memberOf(layout, "handrail-return-1"), memberOf(layout, "handrail-flange-1")];
    expect(piece.from[0] / INCH).toBeCloseTo(12, 9);
    // The wall is past the guard's plane: outward is left, + Y, of a guard on the left.
    expect(piece.to[1] / INCH).toBeCloseTo(-4 + 2.75, 9);
    expect(flange.to[1] / INCH).toBeCloseTo(-4 + 3, 9);
    expect(flange.section.region.holes).toHaveLength(4);
    const inside = worked({ legs: ["stair"], top: { extend: 12, ...back, towards: "inside" } });
    expect(memberOf(inside, "handrail-flange-1").to[1] / INCH).toBeCloseTo(-7, 9);
  });

  it("turn into the next post at or past the end", () => {
    const layout = worked({ legs: ["stair"], top: { extend: 12, return: "post" } });
    // Posts of the landing stand at 3, 33 1/4, 63 1/2, 93 3/4.
    expect(only(layout).top.level / INCH).toBeCloseTo(33.25, 9);
    const piece = memberOf(layout, "handrail-return-1");
    expect(piece.to[1]).toBeCloseTo(0, 9);
    const cope = layout.joints.find((own) => own.id === "handrail-return-1-post");
    expect(cope).toMatchObject({ kind: "cope", onto: ["landing-post-2"] });
  });

  it("turn plumb to the ground under the end: floor, tread or landing", () => {
    const down = (end: Loose) => worked({ legs: ["stair"], ...end });
    const low = memberOf(down({ bottom: { extend: 12, return: "ground" } }), "handrail-return-0");
    expect(low.from[2] / INCH).toBeCloseTo(-60, 9);
    const high = memberOf(
      down({ top: { extend: 12, return: "ground", endPlate: "1/4" } }),
      "handrail-return-1",
    );
    expect(high.to[2] / INCH).toBeCloseTo(0.25, 9);
    expect(high.from[2] / INCH).toBeCloseTo(36 - 0.75, 9);
    const onTread = memberOf(down({ bottom: { slope: "0", return: "ground" } }), "handrail-return-0");
    expect(onTread.from[2] / INCH).toBeCloseTo(-52.5, 9);
  });

  it("have the edges that their two miters leave, on the side where both are short [b20, b21]", () => {
    // Level part of 12 in between a break of (θ/2) and a return of 45 degrees in plan: square bar, so that the shortest
    // fibre is a corner's: 12 − (d/2)tan(θ/2) of axis, less (d/2)·tan(θ/2) below and (d/2)·tan 45 at the inside.
    const layout = worked({ legs: ["stair"], top: { extend: 12, return: "wall", distance: 3 } });
    const head = only(layout).pieces.find((own) => own.id === "handrail-stair-head")!;
    const tan = Math.tan((35.537677791974 * Math.PI) / 360);
    expect(head.length / INCH).toBeCloseTo(12 - 0.75 * tan, 9);
    expect(head.shortestEdge / INCH).toBeCloseTo(12 - 0.75 * tan - 0.75 * tan - 0.75, 9);
  });
});

describe("plan corners", () => {
  it.each([
    ["left", 90],
    ["left", -90],
    ["right", 45],
    ["right", -60],
  ] as const)(
    "of a guard on the %s that turns %d keep the handrail inward of both reaches",
    (side, angle) => {
      const layout = laidOut(twoFlights({ side, angle, before: 420 }));
      const rails = layout.members.filter((m) => m.id.startsWith("top-") || m.id.endsWith("-top"));
      const before = memberOf(layout, "handrail-landing-corner");
      const after = memberOf(layout, "handrail-landing");
      expect(before.to).toEqual(after.from);
      // Second route: the corner of the guard's middle line is where the two top rails' lines meet; the offset line's corner is
      // inward / cos(α/2) from it, on the walking side.
      const level = rails.find((m) => m.id === "landing-corner-top")!;
      const [dx, dy] = [before.to[0] - level.to[0], before.to[1] - level.to[1]];
      expect(Math.hypot(dx, dy)).toBeCloseTo(90 / Math.cos((angle * Math.PI) / 360), 6);
      const along = Math.atan2(level.to[1] - level.from[1], level.to[0] - level.from[0]);
      const left = -Math.sin(along) * dx + Math.cos(along) * dy;
      expect(left).toBeCloseTo(side === "left" ? -90 : 90, 6);
      // Level on both sides of the corner, at the handrail's height over the landing.
      for (const own of [before, after]) expect(own.from[2]).toBeCloseTo(own.to[2], 9);
      expect(before.to[2] + 21.2).toBeCloseTo(layout.report.handrails[0]!.nosings[5]!.z + 900, 6);
    },
  );

  it.each([
    ["left", 90, "level"],
    ["left", -45, "level"],
    ["right", 90, "post"],
    ["right", -90, "post"],
    ["both", 90, "level"],
  ] as const)(
    "on the %s, %d degrees, corner %s: sound pieces that fit and do not cross",
    (side, angle, corner) => {
      const layout = laidOut(twoFlights({ side, angle, corner, before: 420 }));
      expect(errors(layout)).toEqual([]);
      const solution = solveJoints(layout);
      expect(solution.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
      for (const piece of solution.pieces) expect([piece.id, solidOf(piece).ok]).toEqual([piece.id, true]);
      for (const fit of fitsOf(solution)) {
        expect(fit.ok).toBe(true);
        if (fit.ok) expect(fit.value.overlap).toBeLessThan(1e-5);
      }
    },
  );
});

describe("shortest edges", () => {
  it("are those of the solids: the shortest arris of every piece of a square handrail", () => {
    const layout = laidOut(
      twoFlights({ side: "left", angle: 90, before: 420, corner: "level" }, (d) => {
        d.sections.hand = "square bar 36";
        d.handrails[0].bottom = { extend: 300, return: "ground" };
        d.handrails[0].top = { extend: 0, return: "wall", distance: 120 };
        delete d.handrails[0].brackets;
      }),
    );
    const solution = solveJoints(layout);
    const { pieces } = layout.report.handrails[0]!;
    expect(pieces.length).toBeGreaterThan(7);
    for (const own of pieces) {
      const made = solidOf(solution.pieces.find((piece) => piece.id === own.id)!);
      if (!made.ok) throw new Error(own.id);
      const { vertices, edges } = made.value;
      const arrises = edges.flatMap(({ curve, from, to }) => {
        const [a, b] = [vertices[from]!, vertices[to]!];
        const along = Math.abs(b[2] - a[2]);
        return curve.kind === "line" && Math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-9 ? [along] : [];
      });
      expect(arrises).toHaveLength(4);
      expect([own.id, Math.min(...arrises)]).toEqual([own.id, expect.closeTo(own.shortestEdge, 6)]);
    }
  });
});

describe("the example with a handrail", () => {
  it("builds sound pieces under marks of their own, and says where they are", () => {
    const layout = laidOut(example(handrailOf()));
    expect(errors(layout)).toEqual([]);
    const marks = layout.members.map((m) => m.mark);
    for (const mark of ["H1", "H2", "H3", "HF1", "HB1a", "HB1b"]) expect(marks).toContain(mark);
    expect(new Set(marks).size).toBe(marks.length);
    const solution = solveJoints(layout);
    expect(solution.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    expect(solution.pieces.every((piece) => piece.status === "ok" && solidOf(piece).ok)).toBe(true);
  });
});
