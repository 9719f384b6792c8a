/**
 * Members that run through each other away from any joint. Depths are closed forms of two round bars; the rest is told by
 * points sampled in both, from the sections alone.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Joint, Piece } from "../../src/joints/index.js";
import { pointToLocal, pointToParent, type Vec3 } from "../../src/kernel/index.js";
import { type Member, member, rectTube, roundBar, roundTube } from "../../src/members/index.js";
import { materialDistance } from "./fit.js";
import {
  BAR20,
  FLAT,
  pieceOf,
  post,
  potteryGuard,
  rail,
  SQUARE40,
  solve,
  TUBE42,
  TUBE48,
  TUBE60,
} from "./models.js";

const crossed = (members: readonly Member[], joints: readonly Joint[] = []) =>
  solve(members, joints).diagnostics.filter((d) => d.code === "members-cross");

const level = rail("R", [0, 0, 900], [3000, 0, 900]);

describe("members that run through each other", () => {
  it("are named, with the place and how deep (closed form: r₁ + r₂ − distance of the axes)", () => {
    const other = rail("B", [1000, -500, 930], [1000, 500, 930], { section: TUBE42 });
    const [found] = crossed([level, other]);
    expect(found).toMatchObject({ severity: "error", members: ["R", "B"] });
    expect(Number(found?.values.depth)).toBeCloseTo(24.15 + 21.2 - 30, 9);
    expect(found?.message).toContain("R and B run through each other at (");
    expect(Math.hypot(found!.point![0] - 1000, found!.point![1], found!.point![2] - 915)).toBeLessThan(45);
    for (const p of solve([level, other]).pieces) expect(p.status).toBe("blocked");
  });

  it("are told from those that touch within the nodes' tolerance", () => {
    const at = (z: number) => crossed([level, rail("B", [1000, -500, z], [1000, 500, z])]).length;
    expect([at(900 + 48.3 + 1), at(900 + 48.3), at(900 + 48.3 - 0.09), at(900 + 48.3 - 0.2)]).toEqual([
      0, 0, 0, 1,
    ]);
    const flat = (z: number) =>
      crossed([
        rail("R", [0, 0, 900], [3000, 0, 900], { section: SQUARE40 }),
        rail("B", [500, 0, z], [2500, 0, z], { section: SQUARE40 }),
      ]).length;
    expect([flat(941), flat(940), flat(939.95), flat(939)]).toEqual([0, 0, 0, 1]);
  });

  it("run alike: two rails between the same posts, nearer than they are deep", () => {
    const posts = [0, 1000].map((x) => post(`P${x}`, [x, 0, 0], [x, 0, 900]));
    const between = (id: string, z: number) =>
      rail(id, [0, 0, z], [1000, 0, z], { role: "rail", section: TUBE42 });
    const [found] = crossed([...posts, between("A", 500), between("B", 530)]);
    expect(found?.members).toEqual(["A", "B"]);
    expect(Number(found?.values.depth)).toBeCloseTo(42.4 - 30, 9);
    expect(crossed([...posts, between("A", 500), between("B", 543)])).toEqual([]);
  });

  it("count for what they are made of: a rod down the middle of a tube is in nobody's way, one in its wall is", () => {
    const rod = (y: number) => rail("S", [500, y, 900], [1500, y, 900], { section: BAR20 });
    expect(crossed([level, rod(0)])).toEqual([]);
    expect(crossed([level, rod(15)])).toHaveLength(1);
    expect(crossed([level, rod(35)])).toEqual([]);
  });

  it("end where their cuts end: a post drawn to its rail's axis is not in the way of a rod above its ears", () => {
    // The post's highest point: 900 − √(24.15² − 21.2²), 1.6 mm under the rod.
    expect(895 - 5 - (900 - Math.sqrt(24.15 ** 2 - 21.2 ** 2))).toBeGreaterThan(1.5);
    const above = rail("B", [1000, -500, 895], [1000, 500, 895], {
      section: roundBar({ od: 10 }),
      role: "rail",
    });
    expect(crossed([level, post("P", [1000, 0, 0], [1000, 0, 900]), above])).toEqual([
      expect.objectContaining({ members: ["R", "B"] }),
    ]);
  });
});

describe("members that meet by design", () => {
  const bar = rail("B", [1000, -500, 500], [1000, 500, 500], { section: BAR20 });
  const drilled = post("P", [1000, 0, 0], [1000, 0, 900]);
  const bore = (diameter: number, y = 0): Joint => ({
    ...{
      kind: "bore",
      id: "D",
      member: "P",
      at: [1000, y, 500],
      direction: [0, 1, 0],
      diameter,
      through: "both",
    },
  });

  it("are passed over: a bar declared through, or inside a hole drilled for it", () => {
    expect(crossed([drilled, bar])).toHaveLength(1);
    const through: Joint = { kind: "through", id: "T", bar: "B", member: "P", clearance: 1 };
    expect(crossed([drilled, bar], [through])).toEqual([]);
    expect(crossed([drilled, bar], [bore(22)])).toEqual([]);
    expect(crossed([drilled, bar], [bore(18)])).toHaveLength(1);
    const beside: Joint = { ...bore(22), at: [1005, 0, 500] } as Joint;
    expect(crossed([drilled, bar], [beside])).toHaveLength(1);
  });

  it("mitred, coped, flush and side by side: the pottery studio's guard and a corner post have none", () => {
    expect(potteryGuard().diagnostics.filter((d) => d.code === "members-cross")).toEqual([]);
    const corner = post("P", [0, 0, 0], [0, 0, 900]);
    const low = (id: string, to: Vec3) => rail(id, [0, 0, 500], to, { role: "rail", section: TUBE42 });
    const top = (id: string, to: Vec3) => rail(id, [0, 0, 900], to);
    expect(
      crossed([
        corner,
        low("A", [900, 0, 500]),
        low("B", [0, 900, 500]),
        top("C", [900, 0, 900]),
        top("D", [0, 900, 900]),
      ]),
    ).toEqual([]);
  });
});

/** Least depth, over places spread through a piece's material, to which one lies inside the other too; + when outside. */
function deepest(a: Piece, b: Piece, length: number): number {
  let best = Number.POSITIVE_INFINITY;
  const size = 32;
  for (let i = -size; i <= size; i++) {
    for (let j = -size; j <= size; j++) {
      const [u, v] = [(i / size) * 31, (j / size) * 31];
      const own = materialDistance(a.section, u, v);
      if (own > 0) continue;
      for (let s = 0; s <= length; s += 1) {
        const [x, y, z] = pointToLocal(b.frame, pointToParent(a.frame, [u, v, s]));
        const other = Math.max(materialDistance(b.section, x, y), -z, z - 120);
        best = Math.min(best, Math.max(own, other, -s, s - 120));
      }
    }
  }
  return best;
}

describe("two loose bars anywhere", () => {
  it("cross when a place sampled in the material of one is inside the other's, and not when all stay apart", () => {
    const sections = fc.constantFrom(
      TUBE48,
      TUBE60,
      BAR20,
      SQUARE40,
      FLAT,
      roundTube({ od: 30, wall: 2 }),
      rectTube({ width: 50, depth: 30, wall: 3 }),
      roundBar({ od: 12 }),
    );
    const unit = fc.double({ min: -1, max: 1, noNaN: true });
    const place = fc.tuple(unit, unit, unit);
    let [yes, no] = [0, 0];
    fc.assert(
      fc.property(sections, sections, place, place, unit, (one, two, d, p, roll) => {
        const size = Math.hypot(...d);
        fc.pre(size > 0.1);
        const way: Vec3 = [(d[0] / size) * 120, (d[1] / size) * 120, (d[2] / size) * 120];
        const at: Vec3 = [p[0] * 70, p[1] * 70, 60 + p[2] * 80];
        const from: Vec3 = [at[0] - way[0] / 2, at[1] - way[1] / 2, at[2] - way[2] / 2];
        const to: Vec3 = [at[0] + way[0] / 2, at[1] + way[1] / 2, at[2] + way[2] / 2];
        // Ends that share a node are a joint, whatever the rest does.
        fc.pre([from, to].every((q) => [0, 120].every((z) => Math.hypot(q[0], q[1], q[2] - z) > 1)));
        const members = [
          member({ id: "A", section: one, from: [0, 0, 0], to: [0, 0, 120] }),
          member({ id: "B", section: two, from, to, roll: roll * 90 }),
        ];
        const solved = solve(members);
        const found = solved.diagnostics.some((x) => x.code === "members-cross");
        const [a, b] = [pieceOf(solved, "A"), pieceOf(solved, "B")];
        const depth = Math.min(deepest(a, b, 120), deepest(b, a, 120));
        if (depth < -0.5) expect(found).toBe(true);
        // A grid of one millimetre misses no overlap deeper than its half diagonal.
        if (depth > 1) expect(found).toBe(false);
        if (depth < -0.5) yes++;
        else if (depth > 1) no++;
      }),
      { numRuns: 60, seed: 20260308 },
    );
    expect(Math.min(yes, no)).toBeGreaterThan(10);
  });
});
