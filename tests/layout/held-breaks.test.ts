/**
 * Breaks that are held: by a plumb leg, a straight compromise, the riser face; and on a landing that slopes. Against the shop
 * cases and demo data (computed independently) and against `dropToHold`, the handbook's closed form, as a second route.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dropToHold } from "../../src/layout/index.js";
import { plumbLeg } from "../../src/layout/rails/plumb-leg.js";
import { demo, INCH, inches, shopCase } from "./cases.js";
import { codesOf, example, laidOut, plain, whole, withFloor } from "./designs.js";

const { straight } = demo;

describe("plumbLeg", () => {
  it("is the handbook's leg for a level upper run (cases a20, a21)", () => {
    const { expected, near } = shopCase("a20");
    const leg = plumbLeg(6, [7.5 / 10.5, 0], 1.5);
    near("miter_rake_vertical_deg", leg.miters[0]);
    near("miter_vertical_level_deg", leg.miters[1]);
    near("leg_edge_long", leg.longEdge);
    near("leg_edge_short", leg.shortEdge);
    near("min_leg", leg.shortestLeg);
    expect(leg.feasible).toBe(true);
    expect(plumbLeg(0.3, [7.5 / 10.5, 0], 1.5).feasible).toBe(false);
    expect(expected.min_leg).toBeGreaterThan(0.3);
  });

  it("agrees with dropToHold up and down at any pitch", () => {
    const num = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(num(0, 60), num(-400, 400), num(10, 80), (pitch, rise, depth) => {
        fc.pre(Math.abs(rise) > 1e-6);
        const other = dropToHold({ heightRake: 0, heightLevel: rise, at: 0, pitch, depth });
        const leg = plumbLeg(rise, [Math.tan((pitch * Math.PI) / 180), 0], depth);
        expect(leg.length).toBe(other.leg);
        for (const key of ["longEdge", "shortEdge", "shortestLeg"] as const) {
          expect(leg[key], key).toBeCloseTo(other[key], 9);
        }
        expect(leg.miters[0]).toBeCloseTo(other.miterRake, 9);
      }),
    );
  });
});

describe("a break held by a plumb leg", () => {
  const guard = whole(
    plain((d) => {
      d.legs[0].top = "36";
      d.legs[1].break = "drop";
    }),
  );

  it("stands over the nosing, and its axis is as long as the centrelines are apart", () => {
    const [found] = guard.report!.breaks;
    expect(found?.type).toBe("drop");
    inches(found?.legToHold, straight.break36_42_drop_leg_to_hold_at_0);
    expect(found?.midDepth).toBe(0);
    const leg = guard.members.find((m) => m.id === "landing-top-drop")!;
    expect([leg.from[0], leg.to[0]]).toEqual([0, 0]);
    // Centrelines: 6 in between the tops, and the rake's axis lies (sec θ − 1)·0.95 in deeper (by hand).
    const secant = 1 / Math.cos((straight.pitchDeg * Math.PI) / 180);
    inches(leg.to[2] - leg.from[2], 6 + (secant - 1) * 0.95);
    inches(found?.leg?.length, 6 + (secant - 1) * 0.95);
  });

  it("keeps both heights, and the piece's lengths are the leg's edges", () => {
    const heights = guard.report!.nosings.slice(0, -1).map((own) => own.railTop);
    for (const height of heights) inches(height, 36);
    const piece = guard.pieces.find((p) => p.id === "landing-top-drop")!;
    expect(piece.lengths.shortPoint.value).toBeCloseTo(guard.report!.breaks[0]!.leg!.shortEdge, 6);
  });

  it("goes down where the level rail is the lower one, and at the foot", () => {
    whole(
      plain((d) => {
        d.legs[0].top = "42";
        d.legs[1].top = "36";
        d.legs[1].break = { type: "drop", at: 0 };
      }),
    );
    const foot = whole(
      withFloor((d) => {
        d.legs[0].top = "36";
        d.legs[1].break = "drop";
      }),
    );
    const [found] = foot.report!.breaks;
    expect(found?.midDepth).toBeCloseTo(-13 * 10.625 * INCH, 6);
    expect(found?.leg?.length).toBeGreaterThan(0);
  });

  it("needs room for its two miters", () => {
    const close = (top: string) =>
      codesOf(
        plain((d) => {
          d.legs[0].top = top;
          d.legs[1].break = "drop";
        }),
      );
    expect(close("41.9")).toContain("drop-too-short");
    expect(close("41")).not.toContain("drop-too-short");
  });
});

describe("a straight compromise", () => {
  it("has the demo data's height at every nosing, and breaks over the top one", () => {
    const { report } = whole(
      plain((d) => {
        d.legs[0].top = "36";
        d.legs[1].break = "compromise";
      }),
    );
    const wanted = straight.compromise_36_at_nosing1_to_42_at_13;
    report!.nosings.forEach((own, i) => {
      inches(own.railTop, wanted.heightPerNosing[i]!);
    });
    expect(report!.breaks[0]?.topEdge).toBe(0);
    expect(report!.breaks[0]!.miter * 2).toBeCloseTo(wanted.railPitchDeg, 9);
  });
});

describe("a break over the riser face", () => {
  it("sets the level rail's height by case a19's law: 36 + o·tan θ", () => {
    const { report } = whole(
      plain((d) => {
        d.stair.overhang = "1";
        d.legs[0].top = "36";
        d.legs[1].break = "riser";
      }),
    );
    const [found] = report!.breaks;
    inches(found?.topEdge, 1);
    inches(found?.heightLevel, 36 + straight.riser / straight.going);
  });
});

describe("a landing that slopes", () => {
  it("moves case a29's break: 1.400 in becomes 1.421 at 0.6 deg", () => {
    const at = (slope: number) =>
      laidOut(
        example((d) => {
          Object.assign(d.stair, { risers: 12, floorToFloor: "90", going: "10 1/2" });
          d.endPosts = undefined;
          d.legs[0].top = "41";
          d.legs[1].slope = slope;
        }),
      ).report.breaks[0]!.topEdge / INCH;
    expect(at(0)).toBeCloseTo(1.4, 9);
    expect(at(0.6)).toBeCloseTo(1.421, 3);
  });

  it("stands its posts plumb on plates that lie on the slope", () => {
    const guard = whole(plain((d) => (d.legs[1].slope = 2)));
    const plate = guard.pieces.find((p) => p.id === "landing-post-2-base")!;
    expect((Math.acos(plate.frame.z[2]) * 180) / Math.PI).toBeCloseTo(2, 9);
    const post = guard.pieces.find((p) => p.id === "landing-post-2")!;
    expect(post.frame.z[2]).toBeCloseTo(1, 12);
  });
});
