/**
 * The nearest contact over a wall against a dense look through it, and against the closed form of a tube on a tube.
 */
import { describe, expect, it } from "vitest";
import { leastOverWall } from "../../src/joints/least-over-wall.js";
import { saddle } from "../../src/joints/saddle.js";
import { outlinePlace } from "../../src/joints/wall.js";
import { type CompiledEnd, compileEnd, outAt } from "../../src/kernel/end-compile.js";
import { barOf } from "../support/joint-case.js";
import { CLASSES, randomCase } from "../support/random-cases.js";

const CASES = Array.from({ length: 120 }, (_, n) => barOf(randomCase(n, 31)));
const WALL = 3;
const LOOKS = 1000;

function dense(end: CompiledEnd, place: ReturnType<typeof outlinePlace>): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k <= LOOKS; k++) {
    const d = (WALL * k) / LOOKS;
    least = Math.min(least, outAt(end, place.u + d * place.iu, place.v + d * place.iv));
  }
  return least;
}

describe("leastOverWall", () => {
  it(`is never above a dense look and at most its step below it, for ${CLASSES.length} kinds of joint`, () => {
    let inner = 0;
    for (const bar of CASES) {
      const { end } = compileEnd(bar.ends[1], 1, bar.section);
      if (!end) continue;
      for (const segment of bar.section.outer) {
        for (const t of [0.13, 0.5, 0.77]) {
          const place = outlinePlace(segment, t);
          const [found, looked] = [leastOverWall(end, place, WALL), dense(end, place)];
          // Where the farther of two contacts closes the bar the search stops a 10⁻⁸ of the wall beside a kink.
          const above = end.root.kind === "max" ? 1e-6 : 1e-12;
          expect(found - looked).toBeLessThanOrEqual(above);
          // A quarter of the look's step, at a slope of 30 or of less where it turns.
          expect(looked - found).toBeLessThanOrEqual((30 * WALL) / LOOKS);
          const ends = [0, WALL].map((d) => outAt(end, place.u + d * place.iu, place.v + d * place.iv));
          if (found < Math.min(...ends) - 1e-9) inner++;
        }
      }
    }
    // The nearest place lies inside the wall often enough for this to test something.
    expect(inner).toBeGreaterThan(20);
  });

  it("is the landing of a wall cut square that the saddle's own formula gives (second route)", () => {
    const bar = barOf({
      name: "tube on tube",
      section: { outer: { kind: "round", radius: 24.15 }, hole: { kind: "round", radius: 20.95 } },
      ends: [
        { kind: "plane", point: [0, 0, 0], normal: [0, 0, 1] },
        {
          kind: "hit",
          header: {
            outline: { kind: "round", radius: 24.15 },
            at: [0, 0, 500],
            axis: [Math.cos(Math.PI / 5), 0, Math.sin(Math.PI / 5)],
            across: [0, 1, 0],
            gap: 0,
          },
        },
      ],
    });
    const { end } = compileEnd(bar.ends[1], 1, bar.section);
    const { stations } = saddle({
      branch: { od: 48.3, wall: 3.2 },
      header: { od: 48.3 },
      angle: 54,
      stations: 36,
    });
    for (const { phi, effective } of stations) {
      // The header rises with +u, so φ runs from the toe at +u as the outline does; distances run down from the header.
      const segment = bar.section.outer[phi < 180 ? 0 : 1]!;
      const t = (phi % 180) / 180;
      const landed = 500 - leastOverWall(end!, outlinePlace(segment, t), 3.2);
      expect(landed).toBeCloseTo(effective!, 9);
    }
  });
});
