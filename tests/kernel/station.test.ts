/** 'Equal' is one decision: what happens at R − r = 0, ±1e-7 and ±1e-5 mm. */
import { describe, expect, it } from "vitest";
import { solidOfBar } from "../../src/kernel/bar-solid.js";
import { firstHitProfile, pieceHeight, projectLoop } from "../../src/kernel/profile.js";
import { circleLoop, pointOn } from "../../src/kernel/region.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import { branchStations, extremesOf, snapProfile } from "../../src/kernel/station.js";
import { barOf, box, onLoop, onRound, rect, square, tube } from "../support/bars.js";

describe("extremesOf", () => {
  it("are where the tangent is square to the direction", () => {
    const [arc] = circleLoop([5, 5], 10, "wall");
    const ts = extremesOf(arc!, Math.cos(1), Math.sin(1));
    expect(ts).toHaveLength(1);
    const [u, v] = pointOn(arc!, ts[0]!);
    expect([u, v]).toEqual([
      expect.closeTo(5 + 10 * Math.cos(1), 12),
      expect.closeTo(5 + 10 * Math.sin(1), 12),
    ]);
    expect(extremesOf(box(40, 20).outer[0]!, 1, 0)).toEqual([]);
  });
});

describe("branchStations", () => {
  it("span the section across the header", () => {
    const h = branchStations(tube(40, 4), Math.SQRT1_2, Math.SQRT1_2, 7);
    expect([h[0], h.at(-1)]).toEqual([expect.closeTo(-13, 12), expect.closeTo(27, 12)]);
    const b = branchStations(box(40, 20), 0.6, 0.8, 0);
    expect([b[0], b.at(-1)]).toEqual([expect.closeTo(-20, 12), expect.closeTo(20, 12)]);
  });
});

describe("snapProfile", () => {
  const profileOf = (r: number) => firstHitProfile(circleLoop([0, 0], r, "wall"));

  it("moves what is within a micrometre's thousandth onto the branch's own value", () => {
    const snapped = snapProfile(profileOf(24.1500001), [-24.15, 24.15]);
    expect(snapped.breaks).toEqual([-24.15, 24.15]);
    expect(snapped.pieces[0]).toMatchObject({ kind: "round", h: 0, radius: 24.15 });
  });

  it("moves a silhouette onto the outermost of several values that it agrees with", () => {
    // The nearest would leave 2·10⁻¹¹ mm of the branch hanging off.
    const [low, high] = [24.15 - 2e-11, 24.15];
    expect(snapProfile(profileOf(24.15 - 3e-11), [-24.15, -24.15 + 2e-11, low, high]).breaks).toEqual([
      -24.15, 24.15,
    ]);
  });

  it("moves a corner along the flat that it runs into, and their break with it", () => {
    // A rectangle turned by 10⁻³ rad: its upper sides run up to the corner almost upright.
    const loop = box(40, 30, 5).outer;
    const [c, s] = [Math.cos(1e-3), Math.sin(1e-3)];
    const profile = firstHitProfile(projectLoop(loop, [c, s], [-s, c]));
    const reach = profile.breaks.at(-1)!;
    const snapped = snapProfile(profile, [-reach, reach]);
    for (const near of [4e-7, -4e-7]) {
      const moved = snapProfile(profile, [profile.breaks[0]! + near, reach + near]);
      for (const [k, piece] of moved.pieces.entries()) {
        const before = moved.pieces[k - 1];
        if (!before) continue;
        const h = moved.breaks[k]!;
        expect(Math.abs(pieceHeight(before, h) - pieceHeight(piece, h))).toBeLessThan(1e-9);
      }
    }
    expect(snapped.breaks).toEqual(profile.breaks);
  });

  it("leaves what is farther", () => {
    const profile = profileOf(24.15001);
    expect(snapProfile(profile, [-24.15, 24.15])).toEqual(profile);
  });
});

describe("nearly equal tubes", () => {
  const kinds = (spare: number): string[] => {
    const made = solidOfBar(barOf(tube(48.3, 3.2), square(), onRound(48.3 + 2 * spare, 500, 60)));
    if (!made.ok) return made.diagnostics.map((d) => d.code);
    expect(validateSolid(made.value)).toEqual([]);
    return [...new Set(made.value.edges.map((e) => e.curve.kind))].sort();
  };

  it.each([0, 1e-7, -1e-7, 4e-7])("are equal at R - r = %s", (spare) => {
    // The outer edge is an exact ellipse; the bore's is a saddle, the upright lines are lines.
    const outer = solidOfBar(barOf(tube(48.3, 3.2), square(), onRound(48.3 + 2 * spare, 500, 60)));
    if (!outer.ok) throw new Error(outer.diagnostics[0]?.message);
    expect(kinds(spare)).toEqual(["conic", "line", "saddle"]);
    // Two half circles below, and outside two ellipses in two halves each.
    expect(outer.value.edges.filter((e) => e.curve.kind === "conic")).toHaveLength(4 + 2);
    expect(validateSolid(outer.value)).toEqual([]);
  });

  it("are wider from 1e-5 mm on", () => {
    const made = solidOfBar(barOf(tube(48.3, 3.2), square(), onRound(48.30002, 500, 60)));
    if (!made.ok) throw new Error(made.diagnostics[0]?.message);
    expect(made.value.edges.filter((e) => e.curve.kind === "conic")).toHaveLength(4);
  });

  it("hang off from -1e-5 mm on, by that much", () => {
    const made = solidOfBar(barOf(tube(48.3, 3.2), square(), onRound(48.29998, 500, 60)));
    expect(made.diagnostics[0]).toMatchObject({ code: "branch-hangs-off" });
    expect(made.diagnostics[0]?.values.missBy).toBeCloseTo(1e-5, 9);
  });

  it.each([0, 1e-7, -1e-7])("and equal widths at %s", (spare) => {
    const made = solidOfBar(
      barOf(rect(40, 40, 3, 6, 3), square(), onLoop(box(40 + 2 * spare, 25, 5).outer, 500, 60)),
    );
    if (!made.ok) throw new Error(made.diagnostics[0]?.message);
    expect(validateSolid(made.value)).toEqual([]);
  });
});
