/**
 * Nosings taped one by one: the least greatest miss against shop case a07 (computed independently) and against a search that
 * shares no code.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import table from "../../shared/shop-cases.json" with { type: "json" };
import { buildGuard, measuredLine, nosingLine } from "../../src/layout/index.js";
import { example } from "./designs.js";

describe("measuredLine", () => {
  it("is the minimax line of shop case a07: 35.7156 deg, worst miss 1.305 mm", () => {
    const found = table.cases.find((own) => own.id.startsWith("a07")) as unknown as {
      inputs: { nosings: [number, number][]; rail_height_over_fit: number };
      expected: { minimax: { slope: number; theta_deg: number; worst_miss?: number } };
    };
    const line = measuredLine(found.inputs.nosings.map(([run, z]) => ({ run, height: z + 190 })));
    expect(line.pitch).toBeCloseTo(found.expected.minimax.theta_deg, 9);
    expect(line.slope).toBeCloseTo(found.expected.minimax.slope, 9);
    expect(line.worstMiss).toBeCloseTo(1.305, 3);
    // Handbook a07: a rail 914 above the fit stands 912.70 to 915.30 over the nosings.
    const heights = line.nosings.map((own) => 914 + line.z0 + line.slope * own.x - own.z);
    expect(Math.min(...heights)).toBeCloseTo(912.7, 2);
    expect(Math.max(...heights)).toBeCloseTo(915.3, 2);
  });

  it("misses by no more than any other line tried", () => {
    const step = fc.record({
      run: fc.double({ min: 220, max: 320, noNaN: true }),
      rise: fc.double({ min: 150, max: 210, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(step, { minLength: 2, maxLength: 9 }),
        fc.array(
          fc.tuple(
            fc.double({ min: -0.02, max: 0.02, noNaN: true }),
            fc.double({ min: -5, max: 5, noNaN: true }),
          ),
          {
            minLength: 20,
            maxLength: 20,
          },
        ),
        (steps, tries) => {
          let [run, height] = [0, 180];
          const taped = [{ run, height }];
          for (const own of steps) {
            run += own.run;
            height += own.rise;
            taped.push({ run, height });
          }
          const line = measuredLine(taped);
          const miss = (slope: number, z0: number) =>
            Math.max(...line.nosings.map((own) => Math.abs(own.z - z0 - slope * own.x)));
          expect(miss(line.slope, line.z0)).toBeCloseTo(line.worstMiss, 9);
          for (const [ds, dz] of tries) {
            expect(miss(line.slope + ds, line.z0 + dz)).toBeGreaterThanOrEqual(line.worstMiss - 1e-9);
          }
        },
      ),
    );
  });

  it("is the counted line where every step is true", () => {
    const taped = Array.from({ length: 7 }, (_, i) => ({ run: i * 270, height: (i + 1) * 180 }));
    const [measured, counted] = [
      measuredLine(taped),
      nosingLine({ risers: 7, floorToFloor: 1260, going: 270 }),
    ];
    expect(measured.worstMiss).toBeCloseTo(0, 9);
    for (const key of ["pitch", "slope", "riser", "going", "slopePerStep", "floorZ", "footX"] as const) {
      expect(measured[key], key).toBeCloseTo(counted[key], 6);
    }
  });
});

describe("a design with taped nosings", () => {
  it("lays the rail over the line and prints every nosing's own height", () => {
    const nosings = Array.from({ length: 13 }, (_, i) => ({
      run: i * 10.625,
      height: (i + 1) * 7.5625 + (i === 6 ? 0.25 : 0),
    }));
    const guard = buildGuard(
      example((d) => {
        d.stair = { nosings, overhang: "3/4" };
      }),
    );
    expect(guard.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    const heights = guard.report!.nosings.map((own) => own.railTop / 25.4);
    // One nosing 1/4 in high: the line halves the miss between it and the others (by hand).
    expect(guard.report!.flights[0]?.worstMiss).toBeCloseTo(0.125 * 25.4, 9);
    expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(0.25, 9);
    expect(guard.report!.assumptions[0]).toMatch(/taped one by one/);
    expect(guard.report!.flights[0]?.measured).toBe(true);
  });
});
