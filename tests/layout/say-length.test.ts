/** Lengths in messages. Source: 1 in = 25.4 mm exactly (international yard and pound agreement of 1959). */
import { describe, expect, it } from "vitest";
import { sayLength } from "../../src/layout/say-length.js";

describe("sayLength", () => {
  it.each([
    [25.4, "25.4 mm (1.000 in)"],
    [1.27, "1.3 mm (0.050 in)"],
    [-12.7, "-12.7 mm (-0.500 in)"],
    [0, "0.0 mm (0.000 in)"],
    // Below half of both last places: no sign is left on a zero.
    [-0.01, "0.0 mm (0.000 in)"],
  ])("%d mm", (mm, words) => {
    expect(sayLength(mm)).toBe(words);
  });
});
