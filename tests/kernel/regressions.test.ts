/** Bars that random search found broken, each named after what it is in the shop. */
import { describe, expect, it } from "vitest";
import type { EndExpression } from "../../src/kernel/end.js";
import { massProperties } from "../../src/kernel/mass.js";
import { checkMesh } from "../../src/kernel/mesh/gate.js";
import { tessellate } from "../../src/kernel/mesh/tessellate.js";
import { validateSolid } from "../../src/kernel/rules/validate.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { turned } from "../support/bar-moves.js";
import { barOf, box, onLoop, onRound, RAD, rod, solidFor, square, tube } from "../support/bars.js";

/** A contact turned about the bar's axis by `angle` radians while the bar stays. */
function around(end: EndExpression, angle: number): EndExpression {
  if (end.kind !== "hit") throw new Error("expected a hit");
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (p: Vec3): Vec3 => [c * p[0] - s * p[1], s * p[0] + c * p[1], p[2]];
  const { origin, x, y, z } = end.skin.frame;
  return { ...end, skin: { ...end.skin, frame: { origin: at(origin), x: at(x), y: at(y), z: at(z) } } };
}

const errorsOf = (solid: ReturnType<typeof solidFor>): string[] =>
  checkMesh(tessellate(solid, { chord: 0.05 }), "full")
    .diagnostics.filter((d) => d.severity === "error")
    .map((d) => d.message);

describe("regressions", () => {
  // The header's silhouette passes within micrometres of where the section's two half circles meet.
  // Source of the volume: rod less half of Steinmetz' solid, 8R³/(3 sin θ).
  it.each([1e-12, 1e-9, 1.7e-9, 1e-8, 1e-7, 1e-6, 3e-6, 1e-5, 1e-3])(
    "1: equal tubes whose planes differ by %s rad",
    (angle) => {
      const exact = Math.PI * 16.85 ** 2 * 700 - (8 * 16.85 ** 3) / (3 * Math.sin(45 * RAD));
      for (const section of [rod(33.7), tube(33.7, 3)]) {
        const solid = solidFor(barOf(section, square(), around(onRound(33.7, 700, 45), angle)));
        expect(validateSolid(solid)).toEqual([]);
        expect(errorsOf(solid)).toEqual([]);
        if (section.holes.length > 0) continue;
        expect(Math.abs(massProperties(solid).volume / exact - 1)).toBeLessThan(1e-8);
      }
    },
  );

  // Straight walls along a round header, but for a rounding of its direction: an ellipse there would be 1e10 mm long.
  it.each([1e-9, 1e-8, 1e-7])("2: a flat side that runs along its header but for %s rad", (angle) => {
    const solid = solidFor(barOf(box(36.6, 50), square(), around(onRound(60.3, 700, 50), angle)));
    expect(validateSolid(solid)).toEqual([]);
    expect(errorsOf(solid)).toEqual([]);
  });

  // The offset skin's flat ends where the section's wall stands: no ridge runs along a wall.
  it.each([0, 0.7, 1.9])(
    "3: equal widths with a root gap and sharp header corners, turned by %s",
    (angle) => {
      const bar = barOf(box(40, 51, 1.7), square(), onLoop(box(40, 20.7).outer, 401, 50.6, 0, { gap: 1.75 }));
      const solid = solidFor(turned(bar, angle));
      expect(validateSolid(solid)).toEqual([]);
      expect(errorsOf(solid)).toEqual([]);
    },
  );

  // The silhouette is crossed at a corner: its height must not hang on the root of a rounding.
  it("4: shoulders beside a narrow round header keep the volume to rounding at every turn", () => {
    const bar = barOf(box(40, 30, 7), square(), onRound(38.1, 500, 60, 0, { shoulder: "midline" }));
    const volumes = [0, 0.1, 0.4, 0.7, 1.1, 1.3].map((a) => massProperties(solidFor(turned(bar, a))).volume);
    for (const v of volumes) expect(Math.abs(v / volumes[0]! - 1)).toBeLessThan(1e-13);
  });
});
