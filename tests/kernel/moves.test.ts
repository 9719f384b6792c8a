/** Named bars keep their exact volume when turned, mirrored, reversed and scaled. */
import { describe, expect, it } from "vitest";
import { massProperties } from "../../src/kernel/mass.js";
import { mirrored, reversed, scaled, turned } from "../support/bar-moves.js";
import { BARS, solidFor } from "../support/bars.js";

describe("the volume of every kind of end", () => {
  it.each(Object.entries(BARS))("%s", (_, bar) => {
    const volume = massProperties(solidFor(bar)).volume;
    for (const angle of [1e-9, 0.7, 2.9, Math.PI / 2]) {
      expect(Math.abs(massProperties(solidFor(turned(bar, angle))).volume / volume - 1)).toBeLessThan(1e-10);
    }
    expect(Math.abs(massProperties(solidFor(mirrored(bar))).volume / volume - 1)).toBeLessThan(1e-10);
    expect(Math.abs(massProperties(solidFor(reversed(bar))).volume / volume - 1)).toBeLessThan(1e-10);
    for (const k of [0.5, 1.37, 3]) {
      expect(Math.abs(massProperties(solidFor(scaled(bar, k))).volume / (k ** 3 * volume) - 1)).toBeLessThan(
        1e-10,
      );
    }
  });
});
