/**
 * The next reading against shop case i06 (shared/shop-cases.json, computed independently), against adjusting with the reading
 * really added, and on the ties of the demo survey.
 */
import { describe, expect, it } from "vitest";
import table from "../../../shared/shop-cases.json" with { type: "json" };
import {
  nextReading,
  type PlannedReading,
  quantityOf,
  type Reading,
  splitTie,
} from "../../../src/layout/index.js";
import { adjusted, DEMO, mm } from "./survey-cases.js";

const i06 = table.cases.find((own) => own.id.startsWith("i06")) as unknown as {
  inputs: {
    run: number;
    rise: number;
    sigma_run: number;
    sigma_rise: number;
    candidates: Record<string, { sigma: number }>;
  };
  expected: {
    sigma_length_now: number;
    sigma_theta_now_deg: number;
    sigma_length_after: Record<string, number>;
    sigma_theta_after_deg: Record<string, number>;
    best_for_length: string;
    best_for_angle: string;
  };
};

const KINDS = { run_again: "run", rise_again: "rise", slope_tape: "slope", digital_level: "level" } as const;

describe("nextReading", () => {
  const { inputs, expected } = i06;
  const readings: Reading[] = [
    { id: "run", kind: "run", from: 1, to: 2, value: inputs.run, sigma: inputs.sigma_run },
    { id: "rise", kind: "rise", from: 1, to: 2, value: inputs.rise, sigma: inputs.sigma_rise },
  ];
  const found = adjusted(readings);
  const candidates = Object.entries(KINDS).map(
    ([id, kind]): PlannedReading => ({ id, kind, from: 1, to: 2, sigma: inputs.candidates[id]!.sigma }),
  );

  it.each([
    ["slope", expected.sigma_length_now, expected.sigma_length_after, expected.best_for_length],
    ["level", expected.sigma_theta_now_deg, expected.sigma_theta_after_deg, expected.best_for_angle],
  ] as const)("has the uncertainties of case i06 for the %s", (kind, now, after, best) => {
    const gains = nextReading(found, { kind, from: 1, to: 2 }, candidates);
    expect(gains[0]?.id).toBe(best);
    expect(gains).toHaveLength(4);
    for (const own of gains) {
      expect(own.sigmaNow).toBeCloseTo(now, 8);
      expect(own.sigmaAfter).toBeCloseTo(after[own.id]!, 8);
    }
  });

  it("foretells what the adjustment finds with the reading taken", () => {
    const target = { kind: "slope", from: 2, to: 12 } as const;
    const before = adjusted(DEMO);
    const planned: PlannedReading = { id: "new", kind: "slope", from: 2, to: 12, sigma: 1 };
    const [gain] = nextReading(before, target, [planned]);
    const { value } = quantityOf(before, target);
    const after = adjusted([...DEMO, { ...planned, value }]);
    expect(gain?.sigmaAfter).toBeCloseTo(quantityOf(after, target).sigma, 8);
  });
});

describe("splitTie", () => {
  const few = DEMO.filter((own) => own.kind !== "height" || [4, 7, 10, 13].includes(own.to as number));
  const found = adjusted(few);
  const tie = ["R8", "R9", "R10"];

  it("prefers a reading into the tie to one beside it", () => {
    const splits = splitTie(found, tie, [
      { id: "H13 again", kind: "height", to: 13, sigma: mm("1/16") },
      { id: "H8", kind: "height", to: 8, sigma: mm("1/16") },
      { id: "R8 again", kind: "rise", from: 7, to: 8, sigma: mm("1/16") },
    ]);
    expect(splits.at(-1)).toEqual({ id: "H13 again", groups: [tie], likeness: 1 });
    for (const own of splits.slice(0, 2)) {
      expect(own.groups).toEqual([["R8"], ["R9", "R10"]]);
      expect(own.likeness).toBeLessThan(0.95);
    }
  });

  it("splits as the adjustment finds with the reading taken", () => {
    // R8 is the planted blunder: a true height of nosing 8 parts it from the others.
    const height = DEMO.find((own) => own.id === "H8")!;
    expect(adjusted([...few, height]).suspects[0]?.ids).toEqual(["R8"]);
  });

  it("refuses readings and places the survey does not have", () => {
    expect(() => splitTie(found, ["R8", "R99"], [])).toThrow(/survey-unknown-reading: .*R99/);
    expect(() => nextReading(found, { kind: "rise", from: 13, to: 14 }, [])).toThrow(
      /survey-unknown-place: .*z14/,
    );
  });
});
