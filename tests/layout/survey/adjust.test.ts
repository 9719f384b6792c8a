/**
 * Adjusted surveys against the demo survey (shared/demo-survey.json) and shop cases i01, i02, i05, i06, i07, i10
 * (shared/shop-cases.json), all computed by independent scripts; i08, i09 and i11 by the figures of the trade handbook those
 * cases come from (2683.3 mm, rank 4 of 5, ± 1.06 degrees); properties with random stairs.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import table from "../../../shared/shop-cases.json" with { type: "json" };
import { adjustReadings, covarianceOf, quantityOf, type Reading } from "../../../src/layout/index.js";
import { shopCase } from "../cases.js";
import { adjusted, DEMO, demo, mm } from "./survey-cases.js";

const raw = <T>(prefix: string) => table.cases.find((own) => own.id.startsWith(prefix)) as unknown as T;
const SLOPE = { kind: "slope", from: 1, to: 13 } as const;
const kept = (...heights: number[]) =>
  DEMO.filter((own) => own.kind !== "height" || heights.includes(own.to as number));

describe("the demo survey of 41 readings", () => {
  const runs = [
    ["all", DEMO],
    ["withoutR8", DEMO.filter((own) => own.id !== "R8")],
    ["heightsAt4_7_10_13only", kept(4, 7, 10, 13)],
    ["floorToFloorOnly", kept(13)],
  ] as const;

  it.each(runs)("has the independent numbers of %s", (key, readings) => {
    const wanted = demo.adjust[key];
    const found = adjusted(readings);
    expect(Math.abs(found.chi2 - wanted.chi2)).toBeLessThanOrEqual(0.0051);
    expect(found.dof).toBe(wanted.dof);
    const slope = quantityOf(found, SLOPE);
    expect(slope.value / 25.4).toBeCloseTo(wanted.slope1to13, 4);
    expect(slope.sigma / 25.4).toBeCloseTo(wanted.sigmaSlope, 4);
    expect(found.worst?.ids).toEqual(wanted.tiedWith);
    // Printed to two digits; the blunder test's figure.
    expect(Math.abs((found.worst?.studentised ?? 0) - wanted.studentised)).toBeLessThanOrEqual(0.0051);
    const worst = found.readings.find((own) => own.id === wanted.worst);
    expect(Math.abs((worst?.sixteenths ?? 0) - wanted.residual16ths)).toBeLessThanOrEqual(0.0051);
  });

  it("names R8 alone among all readings, and nothing once it is gone", () => {
    const found = adjustReadings(DEMO);
    expect(found.ok && found.value.suspects.map((own) => own.ids)).toEqual([["R8"]]);
    const [first] = found.diagnostics;
    expect(first?.code).toBe("survey-suspect");
    expect(first?.message).toMatch(/R8 does not agree .* \(8\.7 times/);
    const without = adjusted(DEMO.filter((own) => own.id !== "R8"));
    expect(without.suspects).toEqual([]);
    const rise = quantityOf(without, { kind: "rise", from: 7, to: 8 }).value;
    expect(rise / 25.4).toBeCloseTo(demo.adjust.withoutR8.R8adjusted, 4);
    // The planted error was 3/4 in; the stair's own riser is 7 5/8 in.
    expect(Math.abs(rise - mm(demo.planted.true))).toBeLessThan(mm("1/16"));
  });

  it("reports ties as groups", () => {
    const found = adjustReadings(kept(4, 7, 10, 13));
    expect(found.ok && found.value.suspects[0]?.ids).toEqual(["R8", "R9", "R10"]);
    expect(found.diagnostics[0]?.message).toMatch(/^Survey: one of R8, R9, R10 is wrong \(5\.7 times/);
    const tied = found.ok ? found.value.readings.filter((own) => /^R(8|9|10)$/.test(own.id)) : [];
    expect(tied.map((own) => own.studentised?.toFixed(6))).toEqual(
      Array(3).fill(tied[0]?.studentised?.toFixed(6)),
    );
  });

  it.each(["all", "heightsAt4_7_10_13only", "floorToFloorOnly"] as const)(
    "has the independent redundancies of a riser and a going: %s",
    (key) => {
      const found = adjusted(runs.find(([name]) => name === key)![1]);
      for (const id of ["R8", "G5"] as const) {
        const own = found.readings.find((reading) => reading.id === id);
        // Printed to two digits.
        expect(Math.abs(own!.redundancy - demo.localRedundancy[key][id])).toBeLessThanOrEqual(0.0051);
      }
    },
  );

  it("never names a going alone that only slope tapes check", () => {
    // The handbook these data come from: 0 of 400 simulated surveys with a wrong going named it alone.
    const sound = DEMO.filter((own) => own.id !== "R8");
    for (const by of [-19.05, 19.05]) {
      const wrong = sound.map((own) => (own.id === "G5" ? { ...own, value: own.value + by } : own));
      const [first] = adjusted(wrong).suspects;
      expect(first?.ids).toEqual(["G1", "G2", "G3", "G4", "G5", "G6"]);
      expect(Math.sign(first!.studentised)).toBe(Math.sign(by));
    }
  });

  it("gives the redundancies the dof for a sum", () => {
    // Trace of I − Q Qᵀ: readings less rank.
    const found = adjusted(DEMO);
    expect(found.readings.reduce((sum, own) => sum + own.redundancy, 0)).toBeCloseTo(found.dof, 9);
    const chi2 = found.readings.reduce((sum, own) => sum + (own.residual / own.sigma) ** 2, 0);
    expect(chi2).toBeCloseTo(found.chi2, 9);
  });

  it("does not depend on the order of the readings", () => {
    const [one, other] = [adjusted(DEMO), adjusted([...DEMO].reverse())];
    other.points.forEach((own, i) => {
      expect(own.point).toBe(one.points[i]!.point);
      expect(own.z! - one.points[i]!.z!).toBeCloseTo(0, 8);
    });
  });
});

describe("shop cases of adjustment", () => {
  it.each(["i01", "i02"])("carries uncertainties into length and pitch: %s", (id) => {
    const { inputs, near } = shopCase(id);
    const found = adjusted([
      { id: "run", kind: "run", from: 1, to: 2, value: inputs.run!, sigma: inputs.sigma_run! },
      { id: "rise", kind: "rise", from: 1, to: 2, value: inputs.rise!, sigma: inputs.sigma_rise! },
    ]);
    const length = quantityOf(found, { kind: "slope", from: 1, to: 2 });
    const pitch = quantityOf(found, { kind: "level", from: 1, to: 2 });
    near("length", length.value);
    near("theta_deg", pitch.value);
    near("sigma_length", length.sigma);
    near("sigma_theta_deg", pitch.sigma);
    const byName = (g: readonly number[]) => ({ x2: g[0]!, z2: g[1]! });
    const together = covarianceOf(found, byName(length.gradient), byName(pitch.gradient));
    near("correlation", together / (length.sigma * pitch.sigma));
  });

  it("adjusts five mixed readings of a flight: i05", () => {
    const { near } = shopCase("i05");
    const { inputs, expected, tolerance } = raw<{
      inputs: { observations: { kind: "rise" | "run" | "slope" | "angle"; value: number; sigma: number }[] };
      expected: { weighted_residuals: number[]; redundancy: number };
      tolerance: number;
    }>("i05");
    const found = adjusted(
      inputs.observations.map((own, i) => ({
        ...own,
        id: `${i}`,
        kind: own.kind === "angle" ? "level" : own.kind,
        from: 1,
        to: 2,
      })),
    );
    const ask = (kind: "run" | "rise" | "slope" | "level") => quantityOf(found, { kind, from: 1, to: 2 });
    near("run", ask("run").value);
    near("rise", ask("rise").value);
    near("length", ask("slope").value);
    near("theta_deg", ask("level").value);
    near("sigma_run", ask("run").sigma);
    near("sigma_rise", ask("rise").sigma);
    near("sigma_length", ask("slope").sigma);
    near("sigma_theta_deg", ask("level").sigma);
    near("chi2", found.chi2);
    expect(found.dof).toBe(expected.redundancy);
    found.readings.forEach((own, i) => {
      expect(Math.abs(own.residual / own.sigma - expected.weighted_residuals[i]!)).toBeLessThan(
        10 * tolerance,
      );
    });
    expect(found.readings[4]?.sixteenths).toBeNull();
    expect(found.readings[0]?.sixteenths).toBeCloseTo((found.readings[0]!.residual / 25.4) * 16, 12);
  });

  const quad = raw<{
    inputs: { observations: { pair: string; value: number; sigma: number }[] };
    expected: { B: number[]; C: number[]; D: number[]; residuals: number[]; redundancy: number };
    tolerance: number;
  }>("i07");
  const landing = quad.inputs.observations.map(
    ({ pair, value, sigma }): Reading => ({
      id: pair,
      kind: pair === "AC" || pair === "BD" ? "diagonal" : "side",
      from: pair[0]!,
      to: pair[1]!,
      value,
      sigma,
    }),
  );

  it("adjusts a landing by four sides and two diagonals: i07", () => {
    const { near } = shopCase("i07");
    const found = adjusted(landing);
    const at = (name: string) => found.points.find((own) => own.point === name)!;
    for (const name of ["B", "C", "D"] as const) {
      expect(at(name).x).toBeCloseTo(quad.expected[name][0]!, 6);
      expect(at(name).y).toBeCloseTo(quad.expected[name][1]!, 6);
    }
    near("angle_A_deg", quantityOf(found, { kind: "corner", at: "A", from: "B", to: "D" }).value);
    near("chi2", found.chi2);
    expect(found.dof).toBe(quad.expected.redundancy);
    found.readings.forEach((own, i) => {
      expect(own.residual).toBeCloseTo(quad.expected.residuals[i]!, 6);
    });
    // One redundancy: every reading explains the misfit as well as any other.
    expect(found.worst?.ids).toHaveLength(6);
  });

  it("foretells the second diagonal from the first: i08", () => {
    const found = adjusted(landing.filter((own) => own.id !== "BD"));
    expect(found.dof).toBe(0);
    expect(quantityOf(found, { kind: "diagonal", from: "B", to: "D" }).value).toBeCloseTo(2683.3, 1);
  });

  it("calls four sides alone a linkage of rank 4 of 5: i09", () => {
    const found = adjustReadings(landing.filter((own) => own.kind === "side"));
    expect(found.ok).toBe(false);
    expect(found.diagnostics[0]).toMatchObject({
      code: "survey-undetermined",
      values: { rank: 4, unknowns: 5 },
    });
    expect(found.diagnostics[0]?.message).toMatch(/corner C.*corner D|corner D.*corner C/);
    expect(found.diagnostics[0]?.message).not.toMatch(/corner B/);
  });

  it("measures a plan corner by two legs and a diagonal: i10, and how badly short legs do: i11", () => {
    const { inputs, near } = shopCase("i10");
    const corner = (a: number, b: number, c: number) => {
      const sigma = inputs.sigma!;
      const found = adjusted([
        { id: "a", kind: "side", from: "A", to: "B", value: a, sigma },
        { id: "b", kind: "side", from: "A", to: "C", value: b, sigma },
        { id: "c", kind: "diagonal", from: "B", to: "C", value: c, sigma },
      ]);
      return quantityOf(found, { kind: "corner", at: "A", from: "B", to: "C" });
    };
    const long = corner(inputs.a!, inputs.b!, inputs.c!);
    near("angle_deg", long.value);
    near("sigma_deg", long.sigma);
    const short = corner(3, 4, 5);
    expect(short.value).toBeCloseTo(90, 9);
    expect(short.sigma).toBeCloseTo(1.06, 2);
  });

  it("checks nothing with two nosings: a08", () => {
    const found = adjustReadings([
      { id: "rise", kind: "rise", from: 1, to: 2, value: 190 },
      { id: "run", kind: "run", from: 1, to: 2, value: 270 },
    ]);
    expect(found.ok && found.value.dof).toBe(0);
    expect(found.ok && found.value.worst).toBeNull();
    expect(found.ok && found.value.readings.map((own) => own.studentised)).toEqual([null, null]);
    expect(found.diagnostics[0]).toMatchObject({ code: "survey-unchecked", severity: "warning" });
    expect(found.diagnostics[0]?.message).toMatch(/No check is possible/);
  });
});

/** A random stair with every riser, going, slope tape and some heights, each a little off. */
const survey = fc
  .array(
    fc.record({
      going: fc.double({ min: 220, max: 320, noNaN: true }),
      riser: fc.double({ min: 150, max: 210, noNaN: true }),
      off: fc.double({ min: -2, max: 2, noNaN: true }),
    }),
    { minLength: 2, maxLength: 8 },
  )
  .map((steps) => {
    const readings: Reading[] = [];
    let [x, z] = [0, 0];
    steps.forEach(({ going, riser, off }, i) => {
      const [from, to] = [i, i + 1];
      readings.push({ id: `R${to}`, kind: "rise", from, to, value: riser + off, sigma: 1 });
      z += riser;
      readings.push({ id: `H${to}`, kind: "height", to, value: z - off, sigma: 1.5 });
      if (i === 0) return;
      x += going;
      readings.push({ id: `G${to}`, kind: "run", from, to, value: going - off, sigma: 1.2 });
      readings.push({ id: `D${to}`, kind: "distance", to, value: x + off, sigma: 2 });
    });
    const rise = z - steps[0]!.riser;
    readings.push({
      id: "S",
      kind: "slope",
      from: 1,
      to: steps.length,
      value: Math.hypot(x, rise),
      sigma: 1.5,
    });
    return { readings, last: steps.length };
  });

describe("properties of adjustment", () => {
  it("is not moved by one more reading of what it already says", () => {
    fc.assert(
      fc.property(survey, ({ readings, last }) => {
        const before = adjusted(readings);
        const place = { kind: "slope", from: 1, to: last } as const;
        const { value, sigma } = quantityOf(before, place);
        const after = adjusted([...readings, { ...place, id: "again", value, sigma: 0.5 }]);
        after.coordinates.forEach((own, i) => {
          expect(own.value - before.coordinates[i]!.value).toBeCloseTo(0, 6);
          expect(own.sigma).toBeLessThanOrEqual(before.coordinates[i]!.sigma + 1e-9);
        });
        expect(after.chi2).toBeCloseTo(before.chi2, 6);
        expect(quantityOf(after, place).sigma).toBeLessThan(sigma);
      }),
      { numRuns: 50 },
    );
  });

  it("scales the covariance, and moves nothing, when all uncertainties are scaled", () => {
    fc.assert(
      fc.property(survey, fc.double({ min: 0.1, max: 10, noNaN: true }), ({ readings }, k) => {
        const before = adjusted(readings);
        const after = adjusted(readings.map((own) => ({ ...own, sigma: own.sigma! * k })));
        after.coordinates.forEach((own, i) => {
          expect(own.value - before.coordinates[i]!.value).toBeCloseTo(0, 6);
        });
        after.covariance.forEach((row, i) => {
          row.forEach((own, j) => {
            expect(own / k ** 2 - before.covariance[i]![j]!).toBeCloseTo(0, 6);
          });
        });
        expect(after.chi2 * k ** 2).toBeCloseTo(before.chi2, 6);
      }),
      { numRuns: 50 },
    );
  });

  it("says of exact readings that nothing is wrong, and where every nosing is", () => {
    fc.assert(
      fc.property(survey, ({ readings }) => {
        const first = adjusted(readings);
        const exact = readings.map((own) => ({ ...own, value: quantityOf(first, own).value }));
        const found = adjusted(exact);
        expect(found.chi2).toBeLessThan(1e-12);
        expect(found.suspects).toEqual([]);
        found.coordinates.forEach((own, i) => {
          expect(own.value - first.coordinates[i]!.value).toBeCloseTo(0, 6);
        });
      }),
      { numRuns: 50 },
    );
  });
});
