/**
 * Cuts beyond the saw. The ways round are judged by turning the cut's plane in space and reading miter and bevel off it by
 * their definitions (handbook of the trade: M = atan2(n·left, n·along), B = asin(n·up)), not by the formulas of the source.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sawLimits } from "../../src/checks/saw-limits.js";
import { sawWays } from "../../src/checks/saw-ways.js";
import type { SawSetting } from "../../src/joints/piece.js";
import { solveJoints } from "../../src/joints/solve.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { type Member, member } from "../../src/members/member.js";
import type { Section } from "../../src/members/section.js";
import { angleBar } from "../../src/members/sections/angle.js";
import { rectTube } from "../../src/members/sections/rect.js";
import { roundTube } from "../../src/members/sections/round.js";

const RAD = Math.PI / 180;
const square = rectTube({ width: 40, depth: 40, wall: 3 });

/** Miter and bevel of a plane from its normal (left, up, along). */
const settingOf = ([left, up, along]: Vec3) => ({
  miter: Math.abs(Math.atan2(left, along) / RAD),
  bevel: Math.abs(Math.asin(up / Math.hypot(left, up, along)) / RAD),
});

/** The normal turned about the tube's axis. */
const rolledBy = ([left, up, along]: Vec3, angle: number): Vec3 => {
  const [c, s] = [Math.cos(angle * RAD), Math.sin(angle * RAD)];
  return [c * left - s * up, s * left + c * up, along];
};

/** A saw setting as a piece has it, from the normal of its plane. */
function sawOf([left, up, along]: Vec3): SawSetting {
  const fromSquare = Math.atan2(Math.hypot(left, up), along) / RAD;
  const signed = {
    miter: Math.atan2(left, along) / RAD,
    bevel: Math.asin(up / Math.hypot(left, up, along)) / RAD,
  };
  return { ...signed, fromSquare, fromLength: 90 - fromSquare, clock: Math.atan2(up, left) / RAD };
}

/** A rail that rakes, cut plumb at both ends. */
function plumbRail(pitch: number, section: Section, id = "R1"): Member {
  const [x, z] = [1000 * Math.cos(pitch * RAD), 1000 * Math.sin(pitch * RAD)];
  return member({ id, role: "rail", section, from: [0, 0, 0], to: [x, 0, z] });
}

const plumbEnds = (id: string) =>
  ([0, 1] as const).map((end) => ({
    kind: "cut" as const,
    id: `${id}-${end}`,
    end: { member: id, end },
    cut: { type: "plumb" as const },
  }));

function limitsOf(rail: Member, saw: { miter: number; bevel: number }) {
  const { pieces, diagnostics } = solveJoints({ members: [rail], joints: plumbEnds(rail.id) });
  expect(diagnostics).toEqual([]);
  return sawLimits(pieces, { saw });
}

describe("the ways of a saw", () => {
  const normals = fc
    .tuple(fc.double({ min: -1.5, max: 1.5, noNaN: true }), fc.double({ min: -1.5, max: 1.5, noNaN: true }))
    .map(([left, up]): Vec3 => [left, up, 1]);

  it("set the plane itself, turned a quarter, or by its clock angle", () => {
    fc.assert(
      fc.property(normals, (normal) => {
        const saw = sawOf(normal);
        const ways = sawWays(saw, "rect-tube", { miter: 90, bevel: 90 });
        const turned = {
          upright: settingOf(normal),
          "on-side": settingOf(rolledBy(normal, 90)),
          rolled: settingOf(rolledBy(normal, -saw.clock)),
        };
        for (const way of ways) {
          if (way.lie === "across") continue;
          expect(way.miter).toBeCloseTo(turned[way.lie].miter, 9);
          expect(way.bevel).toBeCloseTo(turned[way.lie].bevel, 6);
        }
        expect(ways.map((way) => way.lie)).toContain("across");
      }),
    );
  });

  it("across the fence: the saw's swing and the true angle make a right angle", () => {
    const saw = sawOf([Math.tan(60 * RAD), 0, 1]);
    const [way, ...more] = sawWays(saw, "round-tube", { miter: 45, bevel: 45 });
    expect(more).toEqual([]);
    expect(way?.lie).toBe("across");
    expect(way?.miter).toBeCloseTo(30, 9);
  });

  it("never pass a limit, and are all there without limits", () => {
    const limit = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(normals, limit, limit, (normal, miter, bevel) => {
        const saw = sawOf(normal);
        for (const way of sawWays(saw, "rect-bar", { miter, bevel })) {
          expect(way.miter).toBeLessThanOrEqual(miter + 1e-6);
          expect(way.bevel).toBeLessThanOrEqual(bevel + 1e-6);
        }
      }),
    );
  });

  it("of an open section is the upright one alone", () => {
    const saw = sawOf([0.2, 0.3, 1]);
    expect(sawWays(saw, "channel", { miter: 90, bevel: 90 }).map((way) => way.lie)).toEqual(["upright"]);
    expect(sawWays(saw, "channel", { miter: 5, bevel: 90 })).toEqual([]);
  });
});

describe("cuts beyond the saw", () => {
  it("are none where the rake is within its tilt; a rake at the limit is within it", () => {
    expect(limitsOf(plumbRail(35.4, square), { miter: 45, bevel: 45 })).toEqual([]);
    expect(limitsOf(plumbRail(45, square), { miter: 45, bevel: 45 })).toEqual([]);
  });

  it("of a saw that does not tilt are made on the tube's side", () => {
    const found = limitsOf(plumbRail(35.4, square), { miter: 45, bevel: 0 });
    expect(found.map((d) => [d.code, d.severity, d.members, d.end])).toEqual([
      ["saw-beyond-limit", "warning", ["R1"], 0],
      ["saw-beyond-limit", "warning", ["R1"], 1],
    ]);
    expect(found[0]?.message).toBe(
      "R1, DOWNHILL end: expected a cut within the saw's 45.00° miter and 0.00° bevel, got miter 0.00° and bevel 35.40° from square.",
    );
    expect(found[0]?.hint).toMatch(
      /^Turn the tube a quarter onto its side: miter 35\.40°, bevel 0\.00°\. Or cut it square/,
    );
  });

  it("past half a right angle go across the fence; the cut is depth / cos long: 40 / cos 50° = 62.229", () => {
    const [first] = limitsOf(plumbRail(50, square), { miter: 45, bevel: 45 });
    expect(first?.hint).toMatch(/^Roll the tube by its clock angle -90\.00°, hold it square to the fence/);
    expect(first?.hint).toContain("swing 40.00°: the cut is 62.2 mm (2.450 in) long");
    expect(first?.hint).not.toContain("quarter");
    expect(first?.values).toMatchObject({ miterLimit: 45, bevelLimit: 45 });
    expect(first?.values.bevel).toBeCloseTo(-50, 9);
  });

  it("that no setting reaches are ground to marks on the crowns: 20 tan 35° = 14.004, above and below", () => {
    const round = roundTube({ od: 40, wall: 3 });
    const [first] = limitsOf(plumbRail(35, round), { miter: 30, bevel: 30 });
    expect(first?.hint).toMatch(/^Cut it square to its blank/);
    expect(first?.hint).toContain("TOP -14.0 mm (-0.551 in)");
    expect(first?.hint).toContain("BOTTOM 14.0 mm (0.551 in)");
  });

  it("of open sections are ground to lines on their faces, not rolled", () => {
    const angle = angleBar({ width: 40, depth: 40, thickness: 4 });
    const [first] = limitsOf(plumbRail(50, angle), { miter: 45, bevel: 45 });
    expect(first?.hint).not.toMatch(/[Rr]oll|quarter/);
    expect(first?.hint).toContain(
      "0.00° from square across its lying faces and 50.00° across its standing ones",
    );
  });

  it("are told once for pieces that are alike, and not for plates or blocked pieces", () => {
    const rails = [plumbRail(50, square, "A"), plumbRail(50, square, "B")].map((rail, i) =>
      member({ ...rail, from: [0, 500 * i, 0], to: [rail.to[0], 500 * i, rail.to[2]] }),
    );
    const { pieces } = solveJoints({ members: rails, joints: [...plumbEnds("A"), ...plumbEnds("B")] });
    const found = sawLimits(pieces, { saw: { miter: 45, bevel: 45 } });
    expect(found.map((d) => d.members)).toEqual([
      ["A", "B"],
      ["A", "B"],
    ]);
    expect(found[0]?.message).toMatch(/^A \(and B, cut alike\), DOWNHILL end/);
    const blocked = pieces.map((piece) => ({ ...piece, status: "blocked" as const }));
    expect(sawLimits(blocked, { saw: { miter: 1, bevel: 1 } })).toEqual([]);
    const plates = pieces.map((piece) => ({ ...piece, kind: "plate" as const }));
    expect(sawLimits(plates, { saw: { miter: 1, bevel: 1 } })).toEqual([]);
  });

  it("count the flat part of a cope: a post of 40 under a flat-bottomed rail that rakes 50", () => {
    const rail = plumbRail(50, rectTube({ width: 60, depth: 40, wall: 3 }));
    const [x, z] = [500 * Math.cos(50 * RAD), 500 * Math.sin(50 * RAD)];
    const post = member({ id: "P1", role: "post", section: square, from: [x, 0, z - 900], to: [x, 0, z] });
    const { pieces } = solveJoints({ members: [rail, post], joints: plumbEnds("R1") });
    const found = sawLimits(pieces, { saw: { miter: 45, bevel: 45 } }).filter((d) => d.members[0] === "P1");
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(/P1, TOP end: expected a (cut|flat part) within/);
    expect(found[0]?.values.fromSquare).toBeCloseTo(50, 9);
  });
});
