/**
 * Lines in place of curves kilometres long: on both surfaces by their own equations, and none where the curve can be seen.
 */
import { describe, expect, it } from "vitest";
import { evaluate } from "../../../src/kernel/curve/curve.js";
import { nearRulings } from "../../../src/kernel/curve/near-ruling.js";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import type { CylinderSurface, PlaneSurface, Surface } from "../../../src/kernel/surface.js";
import type { Vec3 } from "../../../src/kernel/vec.js";

const cylinder = (origin: Vec3, axis: Vec3, radius: number): CylinderSurface => ({
  kind: "cylinder",
  frame: frameFromAxis(origin, axis, [0, 0, 1]),
  radius,
});
const plane = (origin: Vec3, normal: Vec3): PlaneSurface => ({
  kind: "plane",
  frame: frameFromAxis(origin, normal, [1, 0, 0]),
});

const header = cylinder([0, 0, 0], [1, 0, 0], 20);

/** mm from a surface, by its equation. */
function off({ kind, frame, ...rest }: Surface, p: Vec3): number {
  const w = [p[0] - frame.origin[0], p[1] - frame.origin[1], p[2] - frame.origin[2]] as const;
  const at = (d: Vec3): number => w[0] * d[0] + w[1] * d[1] + w[2] * d[2];
  return kind === "plane"
    ? at(frame.z)
    : Math.hypot(at(frame.x), at(frame.y)) - (rest as { radius: number }).radius;
}

describe("nearRulings", () => {
  it.each([1e-9, 1e-7, 1e-6])(
    "lie on a header and what is turned from it by %s rad, over all of a section",
    (turn) => {
      const others: Surface[] = [
        plane([0, 0, -12], [turn, 0.1, 1]),
        cylinder([0, 7, 3], [1, turn, 0], 24),
        cylinder([0, 7, 3], [-1, 0, turn], 15),
      ];
      for (const other of others) {
        const lines = nearRulings(header, other, 60)!;
        expect(lines.length).toBe(2);
        for (const line of lines) {
          for (const share of [0, 0.3, 0.5, 1]) {
            const p = evaluate(line, 120 * share);
            expect(Math.abs(off(header, p))).toBeLessThan(1e-9);
            expect(Math.abs(off(other, p))).toBeLessThan(1e-9);
          }
        }
      }
    },
  );

  it("are none where the surfaces stand at an angle, pass each other, are one or bend away from a line", () => {
    expect(nearRulings(header, plane([0, 0, 0], [1e-4, 0, 1]), 60)).toBeNull();
    expect(nearRulings(header, cylinder([0, 0, 5], [1, 1e-4, 0], 20), 60)).toBeNull();
    expect(nearRulings(header, plane([0, 0, 20.1], [1e-6, 0, 1]), 60)).toBeNull();
    expect(nearRulings(header, cylinder([0, 0, 50], [1, 1e-6, 0], 20), 60)).toBeNull();
    expect(nearRulings(header, cylinder([0, 0, 0], [1, 0, 0], 20), 60)).toBeNull();
    // Beside its silhouette a plane's curve turns back within the section.
    expect(nearRulings(header, plane([0, 0, 20 - 1e-3], [9e-6, 0, 1]), 60)).toBeNull();
  });
});
