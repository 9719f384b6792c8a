/** Members: where the section stands. Directions are by hand from the layout frame (X uphill, Y left, Z up). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RakewrightError } from "../../src/kernel/diagnostic.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { type MemberInput, member } from "../../src/members/member.js";
import { roundTube } from "../../src/members/sections/round.js";

const section = roundTube({ od: 42.4, wall: 3.2 });
const make = (from: Vec3, to: Vec3, more: Partial<MemberInput> = {}) =>
  member({ id: "R1", section, from, to, ...more });
const near = (got: Vec3, want: Vec3) => {
  for (const i of [0, 1, 2] as const) expect(got[i]).toBeCloseTo(want[i], 12);
};

describe("member", () => {
  it("a level rail going uphill: u left, v up, z along", () => {
    const { frame } = make([0, 0, 900], [1000, 0, 900]);
    near(frame.x, [0, 1, 0]);
    near(frame.y, [0, 0, 1]);
    near(frame.z, [1, 0, 0]);
    expect(frame.origin).toEqual([0, 0, 900]);
  });

  it("a rail raking 3 up in 4: sides plumb, v square to the axis", () => {
    const { frame } = make([0, 0, 0], [400, 0, 300]);
    near(frame.x, [0, 1, 0]);
    near(frame.y, [-0.6, 0, 0.8]);
    near(frame.z, [0.8, 0, 0.6]);
  });

  it("a post drawn up: v uphill, width across the stair; drawn down the same v", () => {
    const up = make([0, 0, 0], [0, 0, 950]).frame;
    near(up.y, [1, 0, 0]);
    near(up.x, [0, -1, 0]);
    const down = make([0, 0, 950], [0, 0, 0]).frame;
    near(down.y, [1, 0, 0]);
    near(down.x, [0, 1, 0]);
  });

  it("a post out of plumb by 3 mm sideways keeps its faces to the stair", () => {
    const { frame } = make([0, 0, 0], [0, 3, 950]);
    near(frame.y, [1, 0, 0]);
    expect(frame.z[1]).toBeCloseTo(3 / Math.hypot(3, 950), 12);
  });

  it("takes its up from the caller, and turns by the roll, right-handed about from → to", () => {
    near(make([0, 0, 0], [0, 0, 950], { up: [0, 1, 0] }).frame.y, [0, 1, 0]);
    near(make([0, 0, 0], [0, 0, 950], { up: [0, 5, 7] }).frame.y, [0, 1, 0]);
    const rolled = make([0, 0, 0], [1000, 0, 0], { roll: 90 }).frame;
    near(rolled.x, [0, 0, 1]);
    near(rolled.y, [0, -1, 0]);
  });

  it("fills in defaults and leaves an absent mark absent", () => {
    const plain = make([0, 0, 0], [1000, 0, 0]);
    expect(plain).toMatchObject({ id: "R1", role: "other", material: "mild-steel", section });
    expect("mark" in plain).toBe(false);
    const full = make([0, 0, 0], [1000, 0, 0], { mark: "A7", role: "rail", material: "stainless-316" });
    expect(full).toMatchObject({ mark: "A7", role: "rail", material: "stainless-316" });
  });

  it("has a right-handed orthonormal frame along the axis, v nearest to up, for every direction", () => {
    const at = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    const point = fc.tuple(at, at, at);
    const d = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    fc.assert(
      fc.property(point, point, fc.double({ min: -720, max: 720, noNaN: true }), (from, to, roll) => {
        const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
        fc.pre(length > 1);
        const { x, y, z } = make(from, to, { roll }).frame;
        for (const [a, b, want] of [
          [x, x, 1],
          [y, y, 1],
          [z, z, 1],
          [x, y, 0],
          [y, z, 0],
          [z, x, 0],
        ] as const) {
          expect(Math.abs(d(a, b) - want)).toBeLessThan(1e-12);
        }
        near([x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2], x[0] * y[1] - x[1] * y[0]], z);
        expect(d(z, [to[0] - from[0], to[1] - from[1], to[2] - from[2]]) / length).toBeCloseTo(1, 12);
        const flat = make(from, to).frame;
        const plumb = Math.hypot(z[0], z[1]) <= Math.sin((5 * Math.PI) / 180);
        expect(Math.abs(plumb ? flat.x[0] : flat.x[2])).toBeLessThan(1e-12);
        expect(plumb ? flat.y[0] : flat.y[2]).toBeGreaterThan(0);
      }),
    );
  });

  it.each([
    [{ id: " " }, "id"],
    [{ to: [0, 0, 0] as const }, "apart"],
    [{ to: [Number.NaN, 0, 0] as const }, "finite"],
    [{ from: [Number.POSITIVE_INFINITY, 0, 0] as const }, "finite"],
    [{ roll: Number.NaN }, "finite"],
    [{ up: [2, 0, 0] as const }, "up"],
    [{ up: [0, 0, 0] as const }, "up"],
    [{ up: [0, Number.NaN, 1] as const }, "up"],
  ])("throws bad-member for %j", (wrong, part) => {
    const act = () => member({ id: "R1", section, from: [0, 0, 0], to: [1000, 0, 0], ...wrong });
    expect(act).toThrow(RakewrightError);
    expect(act).toThrow(/^bad-member: /);
    expect(act).toThrow(part);
  });
});
