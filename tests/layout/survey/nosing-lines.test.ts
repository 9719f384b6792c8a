/**
 * Lines through measured nosings against shop case a07 (shared/shop-cases.json, computed independently), the trade handbook's
 * figures a08 and a09, the demo survey (shared/demo-survey.json), and the height band against the line of least greatest
 * miss, which shares no code with its decision.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import table from "../../../shared/shop-cases.json" with { type: "json" };
import { fitNosings, measuredLine, type PlumbPoint, railBand } from "../../../src/layout/index.js";
import { adjusted, DEMO, demo } from "./survey-cases.js";

const a07 = table.cases.find((own) => own.id.startsWith("a07")) as unknown as {
  inputs: { nosings: [number, number][]; rail_height_over_fit: number };
  expected: {
    lsq: { intercept: number; slope: number; theta_deg: number };
    minimax: { theta_deg: number; max_dev: number };
    height_over_each_nosing: number[];
  };
};
const taped = a07.inputs.nosings.map(([x, z]): PlumbPoint => ({ x, z }));

describe("fitNosings", () => {
  it("is the least-squares line of case a07", () => {
    const fit = fitNosings(taped);
    expect(fit.z0).toBeCloseTo(a07.expected.lsq.intercept, 9);
    expect(fit.slope).toBeCloseTo(a07.expected.lsq.slope, 11);
    expect(fit.pitch).toBeCloseTo(a07.expected.lsq.theta_deg, 9);
  });

  it("finds the nosing misread by 20 mm where raw misses would not: a09", () => {
    const points = [0, 1, 2, 3, 4].map((i) => ({ x: 280 * i, z: 190 * i + (i === 3 ? 20 : 0) }));
    const { studentised } = fitNosings(points);
    expect(studentised.map((own) => Number(own!.toFixed(1)) + 0)).toEqual([0, -2.4, -4.5, 16.7, -12.6]);
    const half = fitNosings(points, 2).studentised;
    expect(half[3]).toBeCloseTo(studentised[3]! / 2, 12);
  });

  it("cannot check two nosings: a08", () => {
    const fit = fitNosings([
      { x: 0, z: 0 },
      { x: 270, z: 190 },
    ]);
    expect(fit.studentised).toEqual([null, null]);
    expect(fit.misses.map((own) => own + 0)).toEqual([0, 0]);
  });

  it.each([
    ["all", DEMO],
    ["withoutR8", DEMO.filter((own) => own.id !== "R8")],
    [
      "heightsAt4_7_10_13only",
      DEMO.filter((own) => own.kind !== "height" || [4, 7, 10, 13].includes(own.to as number)),
    ],
    ["floorToFloorOnly", DEMO.filter((own) => own.kind !== "height" || own.to === 13)],
  ] as const)("has the demo survey's pitch: %s", (key, readings) => {
    const nosings = adjusted(readings).points.filter((own) => own.point !== 0);
    const fit = fitNosings(nosings.map((own) => ({ x: own.x!, z: own.z! })));
    expect(fit.pitch).toBeCloseTo(demo.adjust[key].fitPitchDeg, 4);
    if (key === "withoutR8") {
      fit.misses.forEach((own, i) => {
        expect(Math.abs((own / 25.4) * 16 - demo.nosingOffsetsFromFit_16ths[i]!)).toBeLessThanOrEqual(0.051);
      });
    }
  });

  it("refuses nosings that make no line", () => {
    expect(() => fitNosings([{ x: 0, z: 0 }])).toThrow(/survey-bad-nosings: .*got 1\./);
    expect(() =>
      fitNosings([
        { x: 0, z: 0 },
        { x: 0, z: 190 },
      ]),
    ).toThrow(/nosing 2 at 0, 190 mm/);
  });
});

const stair = fc
  .array(
    fc.tuple(fc.double({ min: 220, max: 320, noNaN: true }), fc.double({ min: 150, max: 210, noNaN: true })),
    { minLength: 2, maxLength: 9 },
  )
  .map((steps) => {
    const points: PlumbPoint[] = [{ x: 0, z: 0 }];
    for (const [run, rise] of steps) {
      const last = points.at(-1)!;
      points.push({ x: last.x + run, z: last.z + rise });
    }
    return points;
  });
const missOf = (points: readonly PlumbPoint[]) =>
  points.length < 3 ? 0 : measuredLine(points.map((own) => ({ run: own.x, height: own.z + 1 }))).worstMiss;

describe("railBand", () => {
  it("lays the rail of case a07 with its heights over every nosing", () => {
    const found = railBand(taped, { least: 912, most: 916 });
    expect(found.possible).toBe(true);
    if (!found.possible) return;
    expect(found.rail.pitch).toBeCloseTo(a07.expected.minimax.theta_deg, 9);
    found.rail.heights.forEach((own, i) => {
      expect(own).toBeCloseTo(a07.expected.height_over_each_nosing[i]!, 8);
    });
    expect(found.pitches[0]).toBeLessThan(found.rail.pitch);
    expect(found.pitches[1]).toBeGreaterThan(found.rail.pitch);
  });

  it("says of case a07 what band it takes, where the band is narrower than twice the worst miss", () => {
    const needs = 2 * a07.expected.minimax.max_dev;
    expect(railBand(taped, { least: 914, most: 914 + needs + 1e-6 }).possible).toBe(true);
    const found = railBand(taped, { least: 914, most: 914 + needs - 1e-6 });
    expect(found.possible).toBe(false);
    expect(!found.possible && found.needs).toBeCloseTo(needs, 9);
  });

  it("names the one step that is in the way", () => {
    // By hand: a true stair but for nosing 4, which stands 30 mm proud.
    const points = [0, 1, 2, 3, 4, 5, 6].map((i) => ({ x: 280 * i, z: 180 * i + (i === 3 ? 30 : 0) }));
    expect(railBand(points, { least: 900, most: 920 })).toMatchObject({ possible: false, steps: [4] });
    // Two of them: no one step alone.
    const two = points.map((own, i) => ({ ...own, z: own.z - (i === 1 ? 40 : 0) }));
    expect(railBand(two, { least: 900, most: 920 })).toMatchObject({ possible: false, steps: [] });
  });

  it("is possible exactly where the worst miss is within half the band", () => {
    let [yes, no] = [0, 0];
    fc.assert(
      fc.property(stair, fc.double({ min: 0, max: 60, noNaN: true }), (points, width) => {
        const [miss, found] = [missOf(points), railBand(points, { least: 900, most: 900 + width })];
        fc.pre(Math.abs(2 * miss - width) > 1e-6);
        expect(found.possible).toBe(2 * miss < width);
        if (found.possible) {
          yes++;
          for (const own of found.rail.heights) {
            expect(own).toBeGreaterThanOrEqual(900 - 1e-9);
            expect(own).toBeLessThanOrEqual(900 + width + 1e-9);
          }
        } else {
          no++;
          const cures = points.flatMap((_, i) =>
            2 * missOf(points.filter((_own, k) => k !== i)) < width ? [i + 1] : [],
          );
          expect(found.steps).toEqual(cures);
        }
      }),
      { numRuns: 300 },
    );
    expect(Math.min(yes, no)).toBeGreaterThan(20);
  });

  it("has pitches at which a rail just passes, and none beyond", () => {
    fc.assert(
      fc.property(stair, (points) => {
        const width = 2 * missOf(points) + 5;
        const found = railBand(points, { least: 900, most: 900 + width });
        expect(found.possible).toBe(true);
        if (!found.possible) return;
        // At a slope, the heights a rail needs are as far apart as the nosings stand off it.
        const spread = (pitch: number) => {
          const off = points.map((own) => own.z - Math.tan((pitch * Math.PI) / 180) * own.x);
          return Math.max(...off) - Math.min(...off);
        };
        const [flattest, steepest] = found.pitches;
        expect(spread(flattest)).toBeCloseTo(width, 7);
        expect(spread(steepest)).toBeCloseTo(width, 7);
        expect(spread(flattest - 0.01)).toBeGreaterThan(width);
        expect(spread(steepest + 0.01)).toBeGreaterThan(width);
      }),
      { numRuns: 100 },
    );
  });

  it("refuses limits that are none", () => {
    expect(() => railBand(taped, { least: 920, most: 900 })).toThrow(/survey-bad-band: .*920 to 900/);
    expect(() => railBand([taped[0]!], { least: 900, most: 920 })).toThrow(/survey-bad-nosings/);
  });
});
