/** Derivatives of every kind of reading against central differences, and lengths and angles by hand. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { coordinatesOf, linearise, type Place } from "../../../src/layout/survey/reading.js";

const PLACES: readonly Place[] = [
  { kind: "rise", from: 1, to: 2 },
  { kind: "run", from: 1, to: 2 },
  { kind: "height", to: 2 },
  { kind: "distance", to: 2 },
  { kind: "slope", from: 1, to: 2 },
  { kind: "level", from: 1, to: 2 },
  { kind: "side", from: "A", to: "B" },
  { kind: "diagonal", from: "A", to: "C" },
  { kind: "corner", at: "A", from: "B", to: "C" },
  { kind: "offset", at: "A", from: "B", to: "C" },
];

describe("linearise", () => {
  it.each(PLACES)("has the derivatives of a $kind", (place) => {
    const coordinate = fc.double({ min: -1000, max: 1000, noNaN: true });
    const size = coordinatesOf(place).length;
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: size, maxLength: size }), (at) => {
        // Points of one length or angle are some way apart, and an angle is off 0 and 180, where it has no derivative.
        const apart = (i: number, j: number) => Math.hypot(at[i]! - at[j]!, at[i + 1]! - at[j + 1]!) > 50;
        fc.pre(size < 4 || apart(0, 2));
        fc.pre(size < 6 || (apart(0, 4) && apart(2, 4)));
        const { value, derivatives } = linearise(place, at);
        fc.pre(place.kind !== "corner" || (value > 5 && value < 175));
        // On the line itself an offset has none either, as a length has none at nothing.
        fc.pre(place.kind !== "offset" || value > 1);
        fc.pre(place.kind !== "level" || Math.abs(value) < 175);
        expect(derivatives).toHaveLength(size);
        derivatives.forEach((own, i) => {
          const moved = (by: number) =>
            linearise(
              place,
              at.map((v, k) => (k === i ? v + by : v)),
            ).value;
          expect(own).toBeCloseTo((moved(1e-3) - moved(-1e-3)) / 2e-3, 6);
        });
      }),
    );
  });

  it("has lengths and angles known by hand", () => {
    expect(linearise(PLACES[4]!, [10, 10, 50, 40]).value).toBe(50);
    expect(linearise(PLACES[5]!, [0, 0, 100, 100]).value).toBeCloseTo(45, 12);
    const square = linearise(PLACES[8]!, [5, 5, 105, 5, 5, -95]);
    expect(square.value).toBeCloseTo(90, 12);
    expect(linearise(PLACES[2]!, [3, 10]).value).toBe(7);
  });

  it("squares an offset from the wall's line, past its ends and on either side of it", () => {
    const [offset] = PLACES.filter((own) => own.kind === "offset");
    // The wall's line through (0, 0) and (40, 30): 3x = 4y. Square distance |3x − 4y| / 5.
    for (const [x, y] of [
      [50, 0],
      [0, 50],
      [-100, 10],
      [400, 320],
    ] as const) {
      const found = linearise(offset!, [x, y, 0, 0, 40, 30]);
      expect(found.value).toBeCloseTo(Math.abs(3 * x - 4 * y) / 5, 9);
    }
    expect(coordinatesOf(offset!).map((own) => `${own.axis}${own.point}`)).toEqual([
      ...["xA", "yA", "xB", "yB", "xC", "yC"],
    ]);
  });

  it("speaks of the floor by its height alone", () => {
    expect(coordinatesOf(PLACES[2]!)).toEqual([
      { axis: "z", point: 0 },
      { axis: "z", point: 2 },
    ]);
    expect(coordinatesOf(PLACES[3]!)).toEqual([
      { axis: "x", point: 1 },
      { axis: "x", point: 2 },
    ]);
  });
});
