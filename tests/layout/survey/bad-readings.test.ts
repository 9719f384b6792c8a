/** Readings that cannot be adjusted: each refusal by its code, its path and what it names. */
import { describe, expect, it } from "vitest";
import {
  adjustReadings,
  type Reading,
  readingSigma,
  type SurveyUnknowns,
  usualDatum,
} from "../../../src/layout/index.js";
import { adjusted, DEMO } from "./survey-cases.js";

const rise = (id: string, from: number, to: number, value: number): Reading => ({
  id,
  kind: "rise",
  from,
  to,
  value,
  sigma: 1,
});

const refused = (readings: readonly Reading[], unknowns?: SurveyUnknowns) => {
  const found = adjustReadings(readings, unknowns);
  expect(found.ok).toBe(false);
  return found.diagnostics;
};

describe("adjustReadings refuses", () => {
  it("no readings", () => {
    expect(refused([]).map((own) => own.code)).toEqual(["survey-empty"]);
  });

  it("a negative riser, an angle past plumb, a value or an uncertainty that is no number", () => {
    const found = refused([
      rise("R1", 0, 1, -190),
      { id: "L", kind: "level", from: 1, to: 2, value: 90 },
      rise("R2", 1, 2, Number.NaN),
      { ...rise("R3", 2, 3, 190), sigma: 0 },
      { id: "C", kind: "corner", at: "A", from: "B", to: "C", value: 180 },
    ]);
    expect(found.map((own) => [own.code, own.path])).toEqual([
      ["survey-bad-value", "readings[0]"],
      ["survey-bad-value", "readings[1]"],
      ["survey-bad-value", "readings[2]"],
      ["survey-bad-sigma", "readings[3]"],
      ["survey-bad-value", "readings[4]"],
    ]);
    expect(found[0]?.message).toBe("Reading R1 (rise): expected more than 0 mm, got -190.");
    expect(found[0]?.members).toEqual(["R1"]);
  });

  it("places that cannot be", () => {
    const found = refused([
      rise("down", 3, 2, 190),
      rise("half", 1.5, 2, 190),
      { id: "floor", kind: "run", from: 0, to: 1, value: 270 },
      { id: "same", kind: "side", from: "A", to: "A", value: 900 },
      { id: "corner", kind: "corner", at: "A", from: "B", to: "A", value: 90 },
    ]);
    expect(found.map((own) => own.code)).toEqual(Array(5).fill("survey-bad-place"));
    expect(found[2]?.message).toMatch(/the floor has no nosing to measure from, got from 0 to 1/);
  });

  it("two readings of one name", () => {
    const found = refused([rise("R1", 0, 1, 190), rise("R1", 1, 2, 190)]);
    expect(found[0]).toMatchObject({ code: "survey-same-id", path: "readings[1]" });
  });

  it("a datum that is missing", () => {
    const found = refused([rise("R1", 0, 1, 190), rise("R5", 4, 5, 190), rise("R6", 5, 6, 190)]);
    expect(found[0]?.code).toBe("survey-no-datum");
    expect(found[0]?.message).toMatch(/height of nosing 4, height of nosing 5, height of nosing 6\.$/);
    expect(refused([rise("R1", 0, 1, 190)], { fixed: [] })[0]?.code).toBe("survey-no-datum");
  });

  it("a datum that contradicts itself or is no number", () => {
    const z = (value: number) => ({ axis: "z", point: 0, value }) as const;
    const found = refused([rise("R1", 0, 1, 190)], { fixed: [z(0), z(20)] });
    expect(found[0]).toMatchObject({ code: "survey-two-datums", path: "fixed[1]", values: { second: 20 } });
    expect(found[0]?.message).toMatch(/height of the floor is said to be 0 mm and 20 mm/);
    expect(refused([rise("R1", 0, 1, 190)], { fixed: [z(Number.NaN)] })[0]?.code).toBe("survey-bad-datum");
  });

  it("readings that put two nosings into one", () => {
    // A level angle between nosings of one height: only at the same place would it be true, and there it is no angle.
    const fixed = [
      { axis: "x", point: 1, value: 0 },
      { axis: "z", point: 1, value: 0 },
      { axis: "z", point: 2, value: 0 },
    ] as const;
    const found = refused([{ id: "L", kind: "level", from: 1, to: 2, value: 35 }], { fixed });
    expect(found.map((own) => own.code)).toEqual(["survey-not-settled"]);
  });

  it("one slope alone, and says what it leaves open", () => {
    const found = refused([{ id: "S", kind: "slope", from: 1, to: 2, value: 320 }]);
    expect(found[0]?.code).toBe("survey-undetermined");
    expect(found[0]?.message).toMatch(/1 of 2 .*: place along of nosing 2, height of nosing 2\.$/);
  });
});

describe("adjustReadings accepts", () => {
  it("one reading, and says that nothing checks it", () => {
    const found = adjustReadings([rise("R1", 0, 1, 190)]);
    expect(found.ok && found.value.points).toEqual([
      { point: 0, z: 0 },
      { point: 1, z: 190 },
    ]);
    expect(found.ok && found.value.coordinates[1]?.sigma).toBeCloseTo(1, 12);
    expect(found.diagnostics.map((own) => own.code)).toEqual(["survey-unchecked"]);
  });

  it("a reading between known places: it checks the datum, and is suspect when it contradicts it", () => {
    const found = adjusted([rise("R1", 0, 1, 190), rise("R2", 1, 2, 191), rise("T", 0, 3, 560)], {
      fixed: [
        { axis: "z", point: 0, value: 0 },
        { axis: "z", point: 3, value: 570 },
      ],
    });
    expect(found.readings[2]).toMatchObject({ residual: -10, redundancy: 1 });
    expect(found.suspects).toEqual([{ ids: ["T"], alsoLikely: [], studentised: -10 }]);
  });

  it("names readings that nothing checks beside others that are", () => {
    const found = adjustReadings([rise("R1", 0, 1, 190), rise("R1b", 0, 1, 190.5), rise("R2", 1, 2, 190)]);
    expect(found.diagnostics.map((own) => [own.code, own.members])).toEqual([["survey-unchecked", ["R2"]]]);
  });

  it("readings in each other's place, with a warning about the step that goes back", () => {
    const found = adjustReadings([
      { id: "H1", kind: "height", to: 1, value: 380 },
      { id: "H2", kind: "height", to: 2, value: 190 },
    ]);
    const back = found.diagnostics.find((own) => own.code === "survey-step-back");
    expect(back?.message).toMatch(/nosing 2 higher than nosing 1, got a rise of -190\.0 mm/);
  });

  it("a second wrong reading beside the first", () => {
    // H4 read 20 mm short as well, 12.6 of its uncertainties against 12 of R8's: judged one after the other, both stand out.
    const two = DEMO.map((own) => (own.id === "H4" ? { ...own, value: own.value - 20 } : own));
    expect(adjusted(two).suspects.map((own) => own.ids)).toEqual([["H4"], ["R8"]]);
  });
});

describe("what is taken when nothing is said", () => {
  it("is the floor and the lowest nosing, or the first two corners", () => {
    expect(usualDatum([{ kind: "slope", from: 2, to: 5 }])).toEqual([
      { axis: "z", point: 2, value: 0 },
      { axis: "x", point: 2, value: 0 },
    ]);
    expect(usualDatum([{ kind: "side", from: "A", to: "B" }])).toEqual([
      { axis: "x", point: "A", value: 0 },
      { axis: "y", point: "A", value: 0 },
      { axis: "y", point: "B", value: 0 },
    ]);
  });

  it("is an uncertainty from the tape's class (JCGM 100:2008, 4.3.7: limit over √3) and the hand", () => {
    const place = { kind: "distance", to: 13 } as const;
    // Class II at 3.3 m: 0.3 + 0.2 · 4 = 1.1 mm; class I: 0.1 + 0.1 · 4 = 0.5 mm.
    expect(readingSigma(place, 3300)).toBeCloseTo(Math.sqrt(1 + 1.1 ** 2 / 3), 12);
    expect(readingSigma(place, 3300, "I")).toBeCloseTo(Math.sqrt(1 + 0.5 ** 2 / 3), 12);
    expect(readingSigma({ kind: "level", from: 1, to: 2 }, 35)).toBe(0.1);
    const found = adjusted([{ ...place, id: "D", value: 3300 }], { tape: "I" });
    expect(found.readings[0]?.sigma).toBeCloseTo(readingSigma(place, 3300, "I"), 12);
  });
});
