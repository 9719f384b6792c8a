/**
 * The shortest fibre anywhere in the material: a bar between two round headers that lie across each other is shortest
 * inside its section. Closed forms: l − √(R² − u²) − √(R² − v²).
 */
import { describe, expect, it } from "vitest";
import { compileEnd } from "../../src/kernel/end-compile.js";
import type { EndExpression, Region, Vec3 } from "../../src/kernel/index.js";
import { shortFibre } from "../../src/kernel/short-fibre.js";
import { rectBar, roundBar, roundTube } from "../../src/members/index.js";

const R = 24.15;
const header = (s: number, x: Vec3, z: Vec3): EndExpression => {
  const y: Vec3 = [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]];
  const skin = { frame: { origin: [0, 0, s] as Vec3, x, y, z }, loop: roundBar({ od: 2 * R }).region.outer };
  return { kind: "hit", skin, source: { joint: "t", onto: "H" } };
};
const flat = (s: number): EndExpression => ({
  ...{ kind: "plane", point: [0, 0, s], normal: [0, 0, 1], source: { joint: "t", onto: "" } },
});

function short(low: EndExpression, high: EndExpression, section: Region): number | null {
  const [a, b] = [compileEnd(low, -1, section).end, compileEnd(high, 1, section).end];
  if (!a || !b) throw new Error("an end is open");
  return shortFibre(a, b, section);
}
const between = (length: number, section: Region): number | null =>
  short(header(0, [0, 1, 0], [1, 0, 0]), header(length, [1, 0, 0], [0, 1, 0]), section);

describe("shortFibre", () => {
  const bar = roundBar({ od: 20 }).region;

  it("of a solid bar between crossed headers is in its middle, where no outline fibre is short", () => {
    // On the outline the two are nearest at 45 degrees.
    expect(47 - 2 * Math.sqrt(R * R - 50)).toBeGreaterThan(0.5);
    expect(between(47, bar)).toBeCloseTo(47 - 2 * R, 6);
    expect(between(2 * R + 0.01, bar)).toBeNull();
    expect(between(2 * R - 0.01, bar)).toBeCloseTo(-0.01, 6);
  });

  it("of a tube there is at the edge of its hollow", () => {
    const tube = roundTube({ od: 20, wall: 3 }).region;
    const edge = 2 * Math.sqrt(R * R - 7 ** 2 / 2);
    expect(between(edge - 0.2, tube)).toBeCloseTo(-0.2, 6);
    expect(between(edge + 0.01, tube)).toBeNull();
  });

  it("of a bar under a valley is on the valley's floor", () => {
    const roof: EndExpression = {
      kind: "max",
      of: [1, -1].map((sign) => ({
        ...{ kind: "plane", point: [0, 0, 3], normal: [sign, 0, -1], source: { joint: "t", onto: "" } },
      })),
    };
    const section = rectBar({ width: 20, depth: 10 }).region;
    expect(short(flat(3.5), roof, section)).toBeCloseTo(-0.5, 6);
    expect(short(flat(2.9), roof, section)).toBeNull();
  });

  it("passes a long bar on its bound, and a square one on its length", () => {
    expect(between(900, bar)).toBeNull();
    expect(short(flat(0), flat(5), bar)).toBeNull();
    expect(short(flat(0), flat(-5), bar)).toBeCloseTo(-5, 9);
  });
});
