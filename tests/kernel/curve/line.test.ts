/** A line is its own tangent; the parameter is millimetres. */
import { describe, expect, it } from "vitest";
import { lineAt, lineDerivatives } from "../../../src/kernel/curve/line.js";

describe("line", () => {
  const line = { kind: "line", origin: [1, 2, 3], direction: [0.6, 0, 0.8] } as const;

  it("walks millimetres along a unit direction", () => {
    expect(lineAt(line, 0)).toEqual([1, 2, 3]);
    expect(lineAt(line, 10)).toEqual([7, 2, 11]);
    expect(lineAt(line, -5)).toEqual([-2, 2, -1]);
  });

  it("has its direction as first derivative and no second", () => {
    expect(lineDerivatives(line, 10)).toEqual({ p: [7, 2, 11], d1: [0.6, 0, 0.8], d2: [0, 0, 0] });
  });
});
