/**
 * The bound of an end against its own places, looked at all over a disc (second route), and where it is known exactly.
 */
import { describe, expect, it } from "vitest";
import { compileEnd, outAt } from "../../src/kernel/end-compile.js";
import { endRange } from "../../src/kernel/end-range.js";
import { reachOf } from "../../src/kernel/region-extent.js";
import { barOf, SQUARE } from "../support/joint-case.js";
import { randomCase } from "../support/random-cases.js";

describe("endRange", () => {
  it("is never above a place of the end, both ends, ten kinds of joint", () => {
    for (let n = 0; n < 200; n++) {
      const bar = barOf(randomCase(n, 77));
      const reach = reachOf(bar.section.outer);
      for (const k of [0, 1] as const) {
        const { end } = compileEnd(bar.ends[k], k === 0 ? -1 : 1, bar.section);
        if (!end) continue;
        const bound = endRange(end, reach).least;
        for (let i = 0; i < 60; i++) {
          const [r, phi] = [reach * Math.sqrt((i + 0.5) / 60), 2.4 * i];
          expect(outAt(end, r * Math.cos(phi), r * Math.sin(phi))).toBeGreaterThan(bound - 1e-9);
        }
      }
    }
  });

  it("is the end itself where it is square, and falls by slope times reach (closed form)", () => {
    const section = barOf({
      name: "rod",
      section: { outer: { kind: "round", radius: 10 } },
      ends: [SQUARE, SQUARE],
    });
    const end = (normal: readonly [number, number, number]) =>
      compileEnd(
        { kind: "plane", point: [0, 0, 700], normal, source: { joint: "j", onto: "" } },
        1,
        section.section,
      ).end!;
    expect(endRange(end([0, 0, 1]), 50).least).toBeCloseTo(700, 12);
    expect(endRange(end([3, 0, 4]), 10).least).toBeCloseTo(700 - 7.5, 12);
  });
});
