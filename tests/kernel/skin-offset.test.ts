/** A root gap: every point of the offset outline keeps exactly the gap from the skin, by brute distance. */
import { describe, expect, it } from "vitest";
import { circleLoop, type Loop, pointOn } from "../../src/kernel/region.js";
import { offsetLoop } from "../../src/kernel/skin-offset.js";
import { polygonLoop } from "../../src/members/sections/custom.js";
import { turnLoop } from "../support/bar-moves.js";
import { box } from "../support/bars.js";
import { densePolygon, distanceFrom, shoelace } from "../support/dense.js";

const cases: [string, Loop][] = [
  ["circle", circleLoop([2, 1], 24, "wall")],
  ["sharp rectangle", box(40, 25).outer],
  ["rounded rectangle", box(40, 25, 6).outer],
  ["turned rectangle", turnLoop(box(40, 25, 6).outer, 0.7)],
  [
    "triangle",
    polygonLoop([
      [0, 0],
      [40, 5],
      [12, 30],
    ]),
  ],
];

describe("offsetLoop", () => {
  it.each(cases)("keeps the gap all round a %s, closed", (_, loop) => {
    const made = offsetLoop(loop, 2.5);
    if (!made.ok) throw new Error(made.diagnostics[0]?.message);
    const skin = densePolygon(loop, 3000);
    for (const [i, s] of made.value.entries()) {
      const next = made.value[(i + 1) % made.value.length]!;
      const [end, start] = [pointOn(s, 1), pointOn(next, 0)];
      expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeLessThan(1e-12);
      for (const t of [0.1, 0.5, 0.8]) {
        // 3000 chords to an arc of 24 leave it by less than 1e-5 mm.
        expect(Math.abs(distanceFrom(skin, pointOn(s, t)) - 2.5)).toBeLessThan(1e-5);
      }
    }
    // Steiner's formula: area grows by perimeter · gap + π · gap².
    const perimeter = skin.reduce((sum, a, i) => {
      const b = skin[(i + 1) % skin.length]!;
      return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
    }, 0);
    const grown = shoelace(densePolygon(made.value, 3000)) - shoelace(skin);
    expect(grown).toBeCloseTo(perimeter * 2.5 + Math.PI * 2.5 ** 2, 2);
  });

  it("leaves a loop alone at no gap", () => {
    const loop = box(40, 25).outer;
    expect(offsetLoop(loop, 0)).toMatchObject({ ok: true, value: loop });
  });

  /** An angle 40 x 40 x 5, its inner corner sharp or with a fillet. */
  const angle = (root: number): Loop => {
    const corners: [number, number][] = [
      [0, 0],
      [40, 0],
      [40, 5],
      [5, 5],
      [5, 40],
      [0, 40],
    ];
    const loop = [...polygonLoop(corners)];
    if (root === 0) return loop;
    loop[2] = { kind: "line", from: [40, 5], to: [5 + root, 5] };
    loop[3] = { kind: "line", from: [5, 5 + root], to: [5, 40] };
    const [centre, start] = [[5 + root, 5 + root] as const, -Math.PI / 2];
    loop.splice(3, 0, { kind: "arc", centre, radius: root, start, sweep: -Math.PI / 2 });
    return loop;
  };

  it.each([0, 6])("keeps the gap in the inner corner of an angle with root radius %d, closed", (root) => {
    const loop = angle(root);
    const made = offsetLoop(loop, 2.5);
    if (!made.ok) throw new Error(made.diagnostics[0]?.message);
    const skin = densePolygon(loop, 3000);
    for (const [i, s] of made.value.entries()) {
      const next = made.value[(i + 1) % made.value.length]!;
      const [end, start] = [pointOn(s, 1), pointOn(next, 0)];
      expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeLessThan(1e-12);
      for (const t of [0, 0.1, 0.5, 0.8, 1])
        expect(Math.abs(distanceFrom(skin, pointOn(s, t)) - 2.5)).toBeLessThan(1e-5);
    }
    // By hand: the inner corner's offset is at (7.5, 7.5) when sharp; its fillet's radius is 3.5 when 6.
    const all = made.value.map((s) => (root === 0 ? pointOn(s, 1) : s.kind === "arc" ? s.radius : 0));
    expect(all).toContainEqual(root === 0 ? [7.5, 7.5] : 3.5);
  });

  it("refuses a gap that has no room in an inner corner", () => {
    for (const [loop, gap] of [
      [angle(2), 2.5],
      [angle(0), 36],
    ] as const) {
      const made = offsetLoop(loop, gap);
      expect(made.ok).toBe(false);
      expect(made.diagnostics[0]).toMatchObject({ code: "gap-on-hollow-skin", values: { gap } });
      expect(made.diagnostics[0]?.hint).toContain("cut the branch to a plane");
    }
  });
});
