/** The unrolled guard rolled up again: properties of site and plan. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plansOf, pointOn } from "../../src/layout/site/plan.js";

const turn = fc.record({
  step: fc.double({ min: 100, max: 4000, noNaN: true }),
  angle: fc.oneof(fc.constantFrom(90, -90, 45), fc.double({ min: -150, max: 150, noNaN: true })),
});

describe("the plan of a guard", () => {
  it("is one line: reaches meet at their corners, and keep lengths", () => {
    fc.assert(
      fc.property(
        fc.array(turn, { maxLength: 4 }),
        fc.nat(4),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        (turns, main, y) => {
          let x = -3000;
          const at = turns.map((own) => {
            x += own.step;
            return x;
          });
          const corners = turns.map(({ angle }, i) => ({ x: at[i]!, angle }));
          const index = Math.min(main, corners.length);
          const plans = plansOf(corners, index, y);
          expect(plans).toHaveLength(corners.length + 1);
          expect(pointOn(plans[index]!, 123, 45)).toEqual([123, y, 45]);
          corners.forEach((corner, i) => {
            const [before, after] = [plans[i]!, plans[i + 1]!].map((plan) => pointOn(plan, corner.x, 0));
            for (const k of [0, 1, 2]) expect(after![k]!).toBeCloseTo(before![k]!, 6);
            const turned = plans[i + 1]!.heading - plans[i]!.heading;
            expect(turned).toBeCloseTo(corner.angle, 9);
          });
          for (const plan of plans) {
            const [a, b] = [pointOn(plan, -500, 0, 30), pointOn(plan, 700, 0, 30)];
            expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(1200, 6);
          }
        },
      ),
    );
  });

  it("turns left by +, and left of the guard is left of its way", () => {
    const [, left] = plansOf([{ x: 0, angle: 90 }], 0, 0);
    expect(pointOn(left!, 100, 0)).toEqual([0, 100, 0]);
    expect(pointOn(left!, 100, 0, 10)).toEqual([-10, 100, 0]);
  });

  it("mirrors with the turns' signs", () => {
    const corners = [
      { x: 0, angle: 37 },
      { x: 900, angle: -120 },
    ];
    const [one, other] = [corners, corners.map((own) => ({ ...own, angle: -own.angle }))].map((own) =>
      plansOf(own, 0, 0),
    );
    one!.forEach((plan, i) => {
      const [p, q] = [pointOn(plan, 1300, 5, 20), pointOn(other![i]!, 1300, 5, -20)];
      expect(q[0]).toBeCloseTo(p[0], 9);
      expect(q[1]).toBeCloseTo(-p[1], 9);
    });
  });
});
