/**
 * The general solver against published problems (shared/published-adjustments.json): NIST StRD nonlinear sets with certified
 * values (Misra1a, Misra1b, Chwirut2, BoxBOD, MGH09, Rat43, Thurber), two levelling networks, a plane trilateration. Each
 * entry of the file carries its source.
 */
import { describe, expect, it } from "vitest";
import table from "../../../shared/published-adjustments.json" with { type: "json" };
import { inverseNormal } from "../../../src/layout/survey/factor.js";
import { leastSquares, type ResidualRow } from "../../../src/layout/survey/least-squares.js";

type Model = (x: number, b: readonly number[]) => readonly [value: number, ...gradient: number[]];

/** The models as NIST's data files state them, with their derivatives by hand. */
const MODELS: Record<string, Model> = {
  misra1a: (x, [b1 = 0, b2 = 0]) => {
    const e = Math.exp(-b2 * x);
    return [b1 * (1 - e), 1 - e, b1 * x * e];
  },
  misra1b: (x, [b1 = 0, b2 = 0]) => {
    const u = 1 + (b2 * x) / 2;
    return [b1 * (1 - u ** -2), 1 - u ** -2, b1 * x * u ** -3];
  },
  chwirut2: (x, [b1 = 0, b2 = 0, b3 = 0]) => {
    const [e, d] = [Math.exp(-b1 * x), b2 + b3 * x];
    return [e / d, (-x * e) / d, -e / d ** 2, (-x * e) / d ** 2];
  },
  mgh09: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0]) => {
    const [n, d] = [x * x + x * b2, x * x + x * b3 + b4];
    return [(b1 * n) / d, n / d, (b1 * x) / d, (-b1 * n * x) / d ** 2, (-b1 * n) / d ** 2];
  },
  rat43: (x, [b1 = 0, b2 = 0, b3 = 0, b4 = 0]) => {
    const e = Math.exp(b2 - b3 * x);
    const y = b1 * (1 + e) ** (-1 / b4);
    const de = (-y * e) / (b4 * (1 + e));
    return [y, y / b1, de, -x * de, (y * Math.log(1 + e)) / b4 ** 2];
  },
  thurber: (x, b) => {
    const [b1 = 0, b2 = 0, b3 = 0, b4 = 0, b5 = 0, b6 = 0, b7 = 0] = b;
    const n = b1 + b2 * x + b3 * x ** 2 + b4 * x ** 3;
    const d = 1 + b5 * x + b6 * x ** 2 + b7 * x ** 3;
    const f = -n / d ** 2;
    return [n / d, 1 / d, x / d, x ** 2 / d, x ** 3 / d, f * x, f * x ** 2, f * x ** 3];
  },
};
MODELS.boxbod = MODELS.misra1a as Model;

interface Strd {
  readonly inputs: { x: number[]; y: number[]; start1: number[]; start2: number[] };
  readonly expected: {
    parameters: number[];
    parameter_std_dev: number[];
    residual_sum_of_squares: number;
    residual_std_dev: number;
  };
}

const entry = (id: string) => {
  const found = table.entries.find((own) => own.id === id);
  if (found === undefined) throw new Error(`no entry ${id}`);
  return found as unknown as { inputs: never; expected: never };
};

/** Least digits in which got agrees with a certified value (NIST's log relative error). */
const agree = (got: readonly number[], wanted: readonly number[]) =>
  Math.min(...wanted.map((own, i) => -Math.log10(Math.abs((got[i]! - own) / own) || 1e-16)));

describe("leastSquares on the NIST StRD nonlinear sets", () => {
  const names = table.entries.map((own) => own.id).filter((id) => id.startsWith("nist-strd-"));
  const runs = names
    .flatMap((id) => (["start1", "start2"] as const).map((start) => [id, start] as const))
    .filter(([id, start]) => !(id === "nist-strd-boxbod" && start === "start1"));

  it("knows a model for each of the seven sets", () => {
    expect(names).toHaveLength(7);
    expect(names.filter((id) => MODELS[id.replace("nist-strd-", "")] === undefined)).toEqual([]);
  });

  it.each(runs)("has the certified digits of %s from %s", (id, start) => {
    const { inputs, expected } = entry(id) as unknown as Strd;
    const model = MODELS[id.replace("nist-strd-", "")]!;
    const found = leastSquares(
      (b) =>
        inputs.x.map((x, i): ResidualRow => {
          const [value, ...gradient] = model(x, b);
          return { residual: inputs.y[i]! - value, gradient };
        }),
      inputs[start],
    );
    expect(found.settled).toBe(true);
    expect(found.dof).toBe(inputs.x.length - expected.parameters.length);
    const variance = found.chi2 / found.dof;
    const deviations = inverseNormal(found.factor).map((row, i) => Math.sqrt(row[i]! * variance));
    expect(agree(found.parameters, expected.parameters)).toBeGreaterThan(9);
    expect(agree([found.chi2], [expected.residual_sum_of_squares])).toBeGreaterThan(9);
    expect(agree([Math.sqrt(variance)], [expected.residual_std_dev])).toBeGreaterThan(9);
    expect(agree(deviations, expected.parameter_std_dev)).toBeGreaterThan(8);
  });
});

/** Height differences between named points, some fixed, each with its standard uncertainty. */
function level(
  observations: readonly (readonly [string, string, number])[],
  fixed: Readonly<Record<string, number>>,
  names: readonly string[],
  sigmas: readonly number[],
) {
  return leastSquares(
    (h) =>
      observations.map(([from, to, value], i): ResidualRow => {
        const at = (name: string) => fixed[name] ?? h[names.indexOf(name)]!;
        const way = (name: string) => (name === to ? 1 : 0) - (name === from ? 1 : 0);
        const s = sigmas[i]!;
        return { residual: (value - at(to) + at(from)) / s, gradient: names.map((name) => way(name) / s) };
      }),
    names.map(() => 0),
  );
}

describe("leastSquares on published networks", () => {
  it("levels the eight-reading network of entry level-net-gama", () => {
    const { inputs, expected } = entry("level-net-gama") as unknown as {
      inputs: { observations: [string, string, number][]; fixed: Record<string, number>; sigma_mm: number };
      expected: { H4: number; H3: number; H2: number; m0_aposteriori_mm: number; std_dev_mm: number[] };
    };
    const sigmas = inputs.observations.map(() => inputs.sigma_mm / 1000);
    const found = level(inputs.observations, inputs.fixed, ["4", "3", "2"], sigmas);
    for (const [i, key] of (["H4", "H3", "H2"] as const).entries()) {
      expect(Math.abs(found.parameters[i]! - expected[key])).toBeLessThanOrEqual(5e-6);
    }
    expect(Math.abs(Math.sqrt(found.chi2 / found.dof) * 5 - expected.m0_aposteriori_mm)).toBeLessThan(5e-3);
    inverseNormal(found.factor).forEach((row, i) => {
      expect(Math.abs(Math.sqrt(row[i]!) * 1000 - expected.std_dev_mm[i]!)).toBeLessThanOrEqual(0.05);
    });
  });

  it("levels the weighted network of entry level-net-wolf-ghilani-weighted", () => {
    const { inputs, expected } = entry("level-net-wolf-ghilani-weighted") as unknown as {
      inputs: {
        observations: [string, string, number][];
        fixed: Record<string, number>;
        lengths_mi: number[];
      };
      expected: { A: number; B: number; C: number; S0: number };
    };
    const sigmas = inputs.lengths_mi.map((own) => Math.sqrt(own / 12));
    const found = level(inputs.observations, inputs.fixed, ["A", "B", "C"], sigmas);
    for (const [i, key] of (["A", "B", "C"] as const).entries()) {
      expect(Math.abs(found.parameters[i]! - expected[key])).toBeLessThanOrEqual(5e-5);
    }
    expect(Math.abs(Math.sqrt(found.chi2 / found.dof) - expected.S0)).toBeLessThanOrEqual(1e-6);
  });

  it("finds the station of entry trilateration-wolf-ghilani", () => {
    const { inputs, expected } = entry("trilateration-wolf-ghilani") as unknown as {
      inputs: {
        control: Record<string, [number, number]>;
        distances: Record<string, number>;
        start: number[];
      };
      expected: { U: number[]; residuals: number[]; sum_v2: number };
    };
    const found = leastSquares(
      ([x = 0, y = 0]) =>
        Object.entries(inputs.distances).map(([name, value]): ResidualRow => {
          const [cx, cy] = inputs.control[name[0]!]!;
          const d = Math.hypot(x - cx, y - cy);
          return { residual: value - d, gradient: [(x - cx) / d, (y - cy) / d] };
        }),
      inputs.start,
    );
    expected.U.forEach((own, i) => {
      expect(Math.abs(found.parameters[i]! - own)).toBeLessThanOrEqual(2e-6);
    });
    // The published residuals are computed less observed.
    expected.residuals.forEach((own, i) => {
      expect(Math.abs(-found.residuals[i]! - own)).toBeLessThanOrEqual(2e-6);
    });
    expect(Math.abs(found.chi2 - expected.sum_v2)).toBeLessThanOrEqual(1e-9);
  });

  it("says so when residuals are no numbers", () => {
    const found = leastSquares(([b = 0]) => [{ residual: Number.NaN * b, gradient: [1] }], [1]);
    expect(found.settled).toBe(false);
  });

  it("claims no answer from a start too far off: BoxBOD from start 1", () => {
    // NIST calls this one of its hardest starts; b2 runs off to where the model is flat.
    const { inputs, expected } = entry("nist-strd-boxbod") as unknown as Strd;
    const found = leastSquares(
      (b) =>
        inputs.x.map((x, i): ResidualRow => {
          const [value, ...gradient] = MODELS.boxbod!(x, b);
          return { residual: inputs.y[i]! - value, gradient };
        }),
      inputs.start1,
    );
    expect(found.settled).toBe(false);
    expect(found.chi2).toBeGreaterThan(expected.residual_sum_of_squares);
  });
});
