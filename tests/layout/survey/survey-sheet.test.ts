/**
 * The blank sheet: its readings tie every nosing and check each other (counted by hand: 2N − 1 unknowns, 4N − 1 readings), in
 * the order of the walk; how well it has to close, by the law of the tape.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Reading, sheetReadings, surveySheet, surveyStair } from "../../../src/layout/index.js";

/** Readings of a stair whose every step is 180 by 270. */
const taken = (risers: number): Reading[] =>
  sheetReadings(surveySheet(risers)).map((own) => {
    const [up, along] = [180 * (own.to - own.from), 270 * (own.to - own.from)];
    const value = own.kind === "slope" ? Math.hypot(up, along) : own.kind === "run" ? along : up;
    return { ...own, value };
  });

describe("surveySheet", () => {
  it("asks for readings by which any stair is adjusted, each of them checked", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 25 }), (risers) => {
        const readings = taken(risers);
        expect(new Set(readings.map((own) => own.id)).size).toBe(readings.length);
        const { adjustment, nosings, diagnostics } = surveyStair(readings);
        expect(diagnostics).toEqual([]);
        expect(nosings).toHaveLength(risers);
        // Half-way to the top is a slope of its own from three risers on.
        const check = risers > 2 ? 1 : 0;
        expect(readings).toHaveLength(4 * risers - 2 + check);
        expect(adjustment!.dof).toBe(readings.length - (2 * risers - 1));
        expect(Math.min(...adjustment!.readings.map((own) => own.redundancy))).toBeGreaterThan(0.1);
      }),
      { numRuns: 12 },
    );
  });

  it("finds a reading that is off by an inch, wherever it is, alone", () => {
    const sound = taken(13);
    for (const { id } of sound) {
      const wrong = sound.map((own) => (own.id === id ? { ...own, value: own.value + 25.4 } : own));
      const { adjustment } = surveyStair(wrong);
      // A rise to nosing 1 and the height of nosing 1 are one and the same place: they alone stay tied.
      const tied = id === "R1" || id === "H1" ? ["R1", "H1"] : [id];
      expect(adjustment!.suspects[0]?.ids.filter((own) => !tied.includes(own))).toEqual([]);
      expect(adjustment!.suspects[0]?.ids).toContain(id);
    }
  });

  it("walks the stair from its foot up", () => {
    const sheet = surveySheet(13);
    expect(sheet.slopes.map((own) => own.to)).toEqual(Array.from({ length: 12 }, (_, i) => i + 2));
    expect(sheet.steps.map((own) => own.number)).toEqual(Array.from({ length: 13 }, (_, i) => i + 1));
    expect(sheet.steps.at(-1)?.going).toBeUndefined();
    expect(sheet.check).toMatchObject({ id: "S7-13", from: 7, to: 13 });
    expect(surveySheet(2).check).toBeUndefined();
  });

  it("has to close within three standard uncertainties", () => {
    // Class II (2014/32/EU): a riser in the first metre 0.5 mm, 13 · 180 mm in the third 0.9 mm; over √3, with 1 mm of hand.
    const [rise, height] = [Math.hypot(1, 0.5 / Math.sqrt(3)), Math.hypot(1, 0.9 / Math.sqrt(3))];
    const { sum, step } = surveySheet(13).closing;
    expect(sum).toBeCloseTo(3 * Math.sqrt(13 * rise ** 2 + height ** 2), 9);
    expect(step).toBeCloseTo(3 * Math.sqrt(rise ** 2 + 2 * height ** 2), 9);
    expect(surveySheet(13, "I").closing.sum).toBeLessThan(sum);
  });
});
