import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { miter } from "../../src/joints/miter.js";
import { type MiterPlane, miterPlane, outward } from "../../src/joints/miter-plane.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { type Member, rectBar } from "../../src/members/index.js";
import { INCH, RAD, RECT60X30, rail, SQUARE40, TUBE42, TUBE48, TUBE60 } from "./models.js";
import { num, referenceCase } from "./reference.js";

type Plane = Extract<MiterPlane, { kind: "plane" }>;

function planeOf(a: Member, endA: 0 | 1, b: Member, endB: 0 | 1): Plane {
  const plane = miterPlane(a, endA, b, endB);
  if (plane.kind !== "plane") throw new Error(plane.why);
  return plane;
}

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

const direction = fc
  .tuple(...[0, 1, 2].map(() => fc.double({ min: -1, max: 1, noNaN: true })))
  .map((d) => d as unknown as Vec3)
  .filter((d) => Math.hypot(...d) > 0.2)
  .map((d): Vec3 => {
    const k = 1 / Math.hypot(...d);
    return [d[0] * k, d[1] * k, d[2] * k];
  });
const UP: Vec3 = [0.31, 0.52, 0.79];

describe("miterPlane of equal members", () => {
  it("halves the angle: as far from each member's direction, and holds their common end (definition)", () => {
    fc.assert(
      fc.property(direction, direction, fc.boolean(), fc.boolean(), (u, v, turnA, turnB) => {
        fc.pre(dot(u, v) > -0.98 && dot(u, v) < 0.9999);
        fc.pre(Math.abs(dot(u, UP)) < 0.99 && Math.abs(dot(v, UP)) < 0.99);
        const P: Vec3 = [120, -40, 900];
        const far = (d: Vec3, k: number): Vec3 => [P[0] + k * d[0], P[1] + k * d[1], P[2] + k * d[2]];
        // The first member runs along u to P, the second along v from P; each drawn either way.
        const extra = { section: TUBE48, up: UP };
        const a = turnA ? rail("A", P, far(u, -800), extra) : rail("A", far(u, -800), P, extra);
        const b = turnB ? rail("B", far(v, 700), P, extra) : rail("B", P, far(v, 700), extra);
        const [ea, eb] = [turnA ? 0 : 1, turnB ? 1 : 0] as const;
        const plane = planeOf(a, ea, b, eb);
        expect(dot(outward(a, ea), u)).toBeCloseTo(1, 12);
        expect(dot(plane.normal, u)).toBeCloseTo(dot(plane.normal, v), 9);
        expect(dot(plane.normal, u)).toBeCloseTo(Math.sqrt((1 + dot(u, v)) / 2), 9);
        expect(Math.hypot(...plane.normal)).toBeCloseTo(1, 12);
        expect(Math.abs(dot(plane.normal, sub(P, plane.point)))).toBeLessThan(1e-8);
        expect(plane.axisGap).toBeLessThan(1e-8);
        expect(plane.step).toBeLessThan(1e-8);
        // The same plane whichever member is named first.
        const other = planeOf(b, eb, a, ea);
        expect(Math.abs(dot(other.normal, plane.normal))).toBeCloseTo(1, 12);
        expect(Math.abs(dot(plane.normal, sub(other.point, plane.point)))).toBeLessThan(1e-8);
      }),
    );
  });
});

describe("miterPlane of unequal depths", () => {
  // Source: shared/shop-cases.json b02: 2 in raking into 1-1/2 in level, tops flush.
  it("leans as the worked case does", () => {
    const c = referenceCase("b02-miter-2-into-1.5");
    const rake = Math.atan2(num(c.inputs, "rise"), num(c.inputs, "run"));
    const [d1, d2] = [num(c.inputs, "depth_rake") * INCH, num(c.inputs, "depth_level") * INCH];
    const section = (depth: number) => rectBar({ width: 30, depth });
    const a = rail("A", [-1000 * Math.cos(rake), 0, -1000 * Math.sin(rake)], [0, 0, 0], {
      section: section(d1),
    });
    const b = rail("B", [0, 0, 0], [1000, 0, 0], { section: section(d2) });
    const { normal, point, step } = planeOf(a, 1, b, 0);
    // Lean of the joint from plumb = of its normal from level, long point of the level rail on top.
    expect(Math.atan2(normal[2], normal[0]) / RAD).toBeCloseTo(
      num(c.expected, "joint_lean_from_plumb_deg"),
      9,
    );
    expect(Math.abs(normal[1])).toBeLessThan(1e-12);
    expect(Math.hypot(...point)).toBeLessThan(1e-9);
    expect(step).toBeLessThan(1e-9);
  });

  it("cuts both as the plain function does, crest and valley (second route: miter())", () => {
    const depth = fc.double({ min: 15, max: 60, noNaN: true });
    const angle = fc.double({ min: 5, max: 80, noNaN: true });
    fc.assert(
      fc.property(depth, depth, angle, fc.boolean(), (d1, d2, turn, crest) => {
        const t = (crest ? turn : -turn) * RAD;
        const section = (d: number) => rectBar({ width: 30, depth: d });
        const a = rail("A", [-1000 * Math.cos(t), 0, -1000 * Math.sin(t)], [0, 0, 0], {
          section: section(d1),
        });
        const b = rail("B", [0, 0, 0], [1000, 0, 0], { section: section(d2) });
        const { normal } = planeOf(a, 1, b, 0);
        const lean = Math.atan2(normal[2], normal[0]) / RAD;
        expect(lean).toBeCloseTo(miter({ angle: t / RAD, depths: [d1, d2] }).lean, 7);
      }),
    );
  });

  it("brings both outer and both inner edges together (second route: crossings of lines)", () => {
    // 60 × 30 on edge raking 30° into 40 square: edge lines of both, met with the plane.
    const t = 30 * RAD;
    const a = rail("A", [-1000 * Math.cos(t), 0, -1000 * Math.sin(t)], [0, 0, 0], {
      section: rectBar({ width: 40, depth: 60 }),
    });
    const b = rail("B", [0, 0, 0], [1000, 0, 0], { section: SQUARE40 });
    const { normal, point } = planeOf(a, 1, b, 0);
    for (const side of [1, -1]) {
      const onPlane = (p: Vec3, d: Vec3): Vec3 => {
        const s = dot(sub(point, p), normal) / dot(d, normal);
        return [p[0] + s * d[0], p[1] + s * d[1], p[2] + s * d[2]];
      };
      const ofA = onPlane(
        [-Math.sin(t) * 30 * side, 0, Math.cos(t) * 30 * side],
        [Math.cos(t), 0, Math.sin(t)],
      );
      const ofB = onPlane([0, 0, 20 * side], [1, 0, 0]);
      expect(Math.hypot(...sub(ofA, ofB))).toBeLessThan(1e-9);
    }
  });
});

describe("miterPlane of centrelines that do not quite meet", () => {
  it("goes through the middle of their common perpendicular and says how far apart they pass (closed form)", () => {
    // Along X at z = 0 and along Y at z = 6, crossing in plan at (50, 0).
    const a = rail("A", [-900, 0, 0], [0, 0, 0]);
    const b = rail("B", [50, 10, 6], [50, 900, 6]);
    const plane = planeOf(a, 1, b, 0);
    expect(plane.point).toEqual([50, 0, 3]);
    expect(plane.axisGap).toBeCloseTo(6, 12);
    expect(plane.step).toBeCloseTo(6, 12);
  });

  it("steps by the difference of half widths where the sections are unequal across the turn (closed form)", () => {
    const a = rail("A", [-900, 0, 0], [0, 0, 0], { section: TUBE60 });
    const b = rail("B", [0, 0, 0], [900, 0, 400], { section: TUBE42 });
    expect(planeOf(a, 1, b, 0).step).toBeCloseTo((60.3 - 42.4) / 2, 12);
  });
});

describe("miterPlane of members in one line", () => {
  it("splices equal ones square, half way between their ends", () => {
    const a = rail("A", [-900, 0, 100], [-1, 0, 100]);
    const b = rail("B", [1, 0, 100], [900, 0, 100]);
    expect(planeOf(a, 1, b, 0)).toMatchObject({ point: [0, 0, 100], normal: [1, 0, 0], axisGap: 0, step: 0 });
  });

  it("refuses unequal sections and lines that pass beside each other: no plane makes them flush", () => {
    const a = rail("A", [-900, 0, 0], [0, 0, 0]);
    const step = { kind: "none", why: "step" };
    expect(miterPlane(a, 1, rail("B", [0, 0, 0], [900, 0, 0], { section: TUBE42 }), 0)).toEqual(step);
    expect(miterPlane(a, 1, rail("B", [0, 0.05, 0], [900, 0.05, 0]), 0)).toEqual(step);
    const square = rail("A", [-900, 0, 0], [0, 0, 0], { section: SQUARE40 });
    const wide = { section: rectBar({ width: 60, depth: 40 }) };
    // As deep, but wider.
    expect(miterPlane(square, 1, rail("B", [0, 0, 0], [900, 0, 0], wide), 0)).toEqual(step);
    // The same section, rolled.
    expect(
      miterPlane(
        rail("A", [-900, 0, 0], [0, 0, 0], { section: RECT60X30 }),
        1,
        rail("B", [0, 0, 0], [900, 0, 0], { section: RECT60X30, roll: 90 }),
        0,
      ),
    ).toEqual(step);
  });

  it("refuses a member that runs straight back", () => {
    const a = rail("A", [-900, 0, 0], [0, 0, 0]);
    expect(miterPlane(a, 1, rail("B", [0, 0, 0], [-900, 0, 0]), 0)).toEqual({
      kind: "none",
      why: "straight-back",
    });
  });
});
