/**
 * Sections rolled against each other at a miter: the twist of the handbook's cases, and the roll that takes it away.
 */
import { describe, expect, it } from "vitest";
import { compoundMiter } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { codesOf, RAD, RECT60X30, rail, SQUARE40, solve, TUBE48 } from "./models.js";

function corner(
  slopeIn: number,
  slopeOut: number,
  turn: number,
  section = RECT60X30,
  reversed = false,
  roll = 0,
) {
  const way = (slope: number, heading: number): Vec3 => [
    1000 * Math.cos(slope * RAD) * Math.cos(heading * RAD),
    1000 * Math.cos(slope * RAD) * Math.sin(heading * RAD),
    1000 * Math.sin(slope * RAD),
  ];
  const [x, y, z] = way(slopeIn, 0);
  const out = way(slopeOut, turn);
  const top: Vec3 = [0, 0, 0];
  return solve([
    rail("A", [-x, -y, -z], [0, 0, 0], { section }),
    rail("B", reversed ? out : top, reversed ? top : out, { section, roll }),
  ]);
}

/** Handbook, compound miters b10, b11, b14, b18: slopes, plan turn, twist to two decimals. */
const CASES = [
  [35.54, 35.54, 90, 60.33],
  [35.54, 0, 90, 35.54],
  [30, 0, 45, 12.67],
  [37, 20, 90, 51.51],
] as const;

describe("a rectangular tube mitred round a plan corner on a rake", () => {
  it.each(CASES)(
    "%d to %d deg, turned %d: twist %d deg, and rolled back its sides meet",
    (t1, t2, turn, twist) => {
      for (const reversed of [false, true]) {
        const solved = corner(t1, t2, turn, RECT60X30, reversed);
        expect(codesOf(solved)).toEqual(["miter-twists"]);
        const [{ severity, values, hint }] = solved.diagnostics as [(typeof solved.diagnostics)[0]];
        expect(severity).toBe("warning");
        expect(values.twist).toBeCloseTo(twist, 1);
        const exact = compoundMiter({ slopeIn: t1, slopeOut: t2, turn }).twist;
        expect(values.twist).toBeCloseTo(exact, 9);
        expect(hint).toMatch(/plumb post.*level piece.*round tube.*roll B/);
        expect(codesOf(corner(t1, t2, turn, RECT60X30, reversed, Number(values.roll)))).toEqual([]);
      }
    },
  );

  it("a square tube needs no more than the least of the turns that bring its sides together", () => {
    const { values } = corner(35.54, 35.54, 90, SQUARE40).diagnostics[0]!;
    expect(Number(values.roll)).toBeCloseTo(90 - 60.33, 1);
  });

  it.each([
    ["level round the corner", 0, 0, 90, RECT60X30],
    ["up and down alike", 30, -30, 90, RECT60X30],
    ["in one plumb plane", 35, 0, 0, RECT60X30],
    ["in round tube", 35.54, 0, 90, TUBE48],
  ] as const)("%s there is none", (_name, t1, t2, turn, section) => {
    expect(codesOf(corner(t1, t2, turn, section))).toEqual([]);
  });
});
