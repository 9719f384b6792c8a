/** What every section's outline must be: closed, the right way round, every side labelled and of some length, plain data. */
import { expect } from "vitest";
import { type Loop, loopsOf, pointOn, segmentLength } from "../../src/kernel/region.js";
import type { Section } from "../../src/members/section.js";

/** Shoelace area of the loop's points, fine enough to tell its sense. */
function sense(loop: Loop): number {
  const points = loop.flatMap((side) => [0, 0.25, 0.5, 0.75].map((t) => pointOn(side, t)));
  return points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + x * ny - nx * y;
  }, 0);
}

export function expectSound(section: Section): void {
  loopsOf(section.region).forEach((loop, l) => {
    expect(Math.sign(sense(loop))).toBe(l === 0 ? 1 : -1);
    loop.forEach((side, i) => {
      const [end, start] = [pointOn(side, 1), pointOn(loop[(i + 1) % loop.length]!, 0)];
      expect(Math.hypot(end[0] - start[0], end[1] - start[1])).toBeLessThan(1e-11);
      expect(segmentLength(side)).toBeGreaterThan(0);
      expect(side.label).toBeDefined();
    });
  });
  expect(structuredClone(section)).toEqual(section);
}

/** Labels of a loop's sides in order. */
export const labels = (loop: Loop) => loop.map((side) => side.label);
