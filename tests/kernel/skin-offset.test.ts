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

  it("refuses a hollow outline", () => {
    const angle = polygonLoop([
      [0, 0],
      [40, 0],
      [40, 5],
      [5, 5],
      [5, 40],
      [0, 40],
    ]);
    const made = offsetLoop(angle, 1);
    expect(made.ok).toBe(false);
    expect(made.diagnostics[0]).toMatchObject({ code: "gap-on-hollow-skin", values: { gap: 1 } });
    expect(made.diagnostics[0]?.hint).toContain("cut the branch to a plane");
  });
});
