import { describe, expect, it } from "vitest";
import { outlineStep } from "../../src/joints/outline-step.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { roundBar } from "../../src/members/index.js";
import { RAD, RECT60X30, rail, SQUARE40, TUBE42, TUBE48 } from "./models.js";

const ON: Vec3 = [0, 0, 0];
const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const a = (section = SQUARE40, roll = 0) => rail("A", [-900, 0, 0], ON, { section, roll });
const b = (section = SQUARE40, roll = 0) => rail("B", ON, [900, 0, 0], { section, roll });

describe("outlineStep", () => {
  it("is nothing between equal outlines, straight on or round a corner", () => {
    expect(outlineStep(a(), b(), X, Y, ON)).toBe(0);
    const turned = rail("B", ON, [0, 900, 0], { section: SQUARE40 });
    const bisector: Vec3 = [Math.SQRT1_2, Math.SQRT1_2, 0];
    expect(outlineStep(a(), turned, bisector, [0, 0, 1], ON)).toBe(0);
  });

  it("is the difference of radii, of half sides, and the distance between centrelines (closed forms)", () => {
    expect(outlineStep(a(TUBE48), b(TUBE42), X, Y, ON)).toBeCloseTo((48.3 - 42.4) / 2, 12);
    expect(outlineStep(a(RECT60X30), b(RECT60X30, 90), X, Y, ON)).toBeCloseTo(15, 12);
    expect(outlineStep(a(), b(), X, Y, [0, 0, 7])).toBeCloseTo(7, 12);
    // A square's corner stands (√2 − 1)·20 out of the round bar inside it.
    expect(outlineStep(a(), b(roundBar({ od: 40 })), X, Y, ON)).toBeCloseTo(20 * (Math.SQRT2 - 1), 12);
    expect(outlineStep(a(), b(SQUARE40, 45), X, Y, ON)).toBeCloseTo(20 * (Math.SQRT2 - 1), 12);
  });

  it("is measured on the plane: what is round across a member is long on a slanting cut (closed form)", () => {
    const t = 30 * RAD;
    const slanting: Vec3 = [Math.cos(t), 0, Math.sin(t)];
    expect(outlineStep(a(TUBE48), b(TUBE42), slanting, Y, ON)).toBeCloseTo(2.95 / Math.cos(t), 12);
  });
});
