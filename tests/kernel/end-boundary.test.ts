/** Where one contact takes over from another round the outline: closed forms, and the contacts' own heights. */
import { describe, expect, it } from "vitest";
import type { EndExpression } from "../../src/kernel/end.js";
import { type BoundaryInterval, boundaryOf, insidePoint } from "../../src/kernel/end-boundary.js";
import { compileEnd, endAt } from "../../src/kernel/end-compile.js";
import { loopsOf, pointOn, type Region } from "../../src/kernel/region.js";
import { sheetHeight } from "../../src/kernel/sheet.js";
import { BARS, max, min, onRound, plane, rod, tube } from "../support/bars.js";

function boundary(section: Region, end: EndExpression) {
  const made = compileEnd(end, 1, section);
  if (!made.end) throw new Error(made.diagnostics[0]?.message);
  return { end: made.end, intervals: boundaryOf(made.end, section) };
}
const changes = (all: readonly BoundaryInterval[], section: Region): number[] =>
  all.flatMap((i, k) => {
    const before = all[(k + all.length - 1) % all.length]!;
    if (before.sheet === i.sheet) return [];
    const [u, v] = pointOn(loopsOf(section)[i.loop]![i.segment]!, i.t0);
    return [(Math.atan2(v, u) * 180) / Math.PI];
  });

describe("boundaryOf", () => {
  it("is the whole outline under one plane", () => {
    const { intervals } = boundary(tube(40, 4), plane([0, 0, 100], [0, 1, 2]));
    expect(intervals.map((i) => [i.loop, i.segment, i.t0, i.t1])).toEqual([
      [0, 0, 0, 1],
      [0, 1, 0, 1],
      [1, 0, 0, 1],
      [1, 1, 0, 1],
    ]);
  });

  // A roof of two planes falling both ways from the line at 30 degrees changes there and opposite.
  it.each([min, max])("changes where two planes cross", (join) => {
    const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    const roof = join(plane([0, 0, 100], [-s, c, 2]), plane([0, 0, 100], [s, -c, 2]));
    const section = rod(40);
    const found = changes(boundary(section, roof).intervals, section);
    expect(found.sort((a, b) => a - b)).toEqual([-150, 30].map((x) => expect.closeTo(x, 9)));
  });

  // Of two equal headers through one point at 54 and 90 degrees the crossing lies in a plane that halves them.
  it("changes where two copes are equally far", () => {
    const section = rod(42.4);
    const { end, intervals } = boundary(section, min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90)));
    const met = intervals.filter(
      (i, k) => intervals[(k + intervals.length - 1) % intervals.length]!.sheet !== i.sheet,
    );
    expect(met).toHaveLength(2);
    for (const i of met) {
      const [u, v] = pointOn(section.outer[i.segment]!, i.t0);
      const [a, b] = end.sheets.map((s) => sheetHeight(s, u, v));
      expect(a).toBeCloseTo(b!, 9);
      // The axes rise by 36 and 0 degrees in (y, z); the planes that halve them by 18 and 108. The near sides of both
      // headers lie below the axes on either side, so they meet in the steep one.
      expect((a! - 1000) / v).toBeCloseTo(Math.tan((108 * Math.PI) / 180), 9);
    }
  });

  it.each(Object.entries(BARS))("says everywhere what the end itself says: %s", (_, bar) => {
    for (const [k, dir] of [
      [0, -1],
      [1, 1],
    ] as const) {
      const made = compileEnd(bar.ends[k], dir, bar.section);
      if (!made.end) throw new Error(made.diagnostics[0]?.message);
      const intervals = boundaryOf(made.end, bar.section);
      for (const [l, loop] of loopsOf(bar.section).entries()) {
        for (const [s, segment] of loop.entries()) {
          const own = intervals.filter((i) => i.loop === l && i.segment === s);
          // Gapless from 0 to 1.
          expect([0, ...own.map((i) => i.t1)]).toEqual([...own.map((i) => i.t0), 1]);
          for (const i of own) {
            for (const f of [0.02, 0.31, 0.74, 0.98]) {
              const [u, v] = insidePoint(segment, i.t0 + f * (i.t1 - i.t0));
              const said = made.end.sheets[i.sheet]!;
              expect(Math.abs(dir * sheetHeight(said, u, v) - endAt(made.end, u, v).out)).toBeLessThan(1e-5);
            }
          }
        }
      }
    }
  });
});
