/**
 * A header must reach under the whole branch (design, section 9, check 5).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Joint } from "../../src/joints/index.js";
import { codesOf, pieceOf, post, RAD, rail, SQUARE40, solve, TUBE42, TUBE48 } from "./models.js";

const CODE = "header-ends-inside-footprint";

/** A plumb tube under a level rail that ends `past` beyond the tube's axis. */
function nearEnd(past: number, section = TUBE42) {
  const r = rail("R", [-2000, 0, 900], [past, 0, 900]);
  return solve([r, post("P", [0, 0, 0], [0, 0, 900], { section })]);
}

describe("a header that ends inside the footprint", () => {
  it("is found to a hundredth of a millimetre, and its shortfall said (closed form: a radius less the overhang)", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 21, noNaN: true }), (past) => {
        const solved = nearEnd(past);
        expect(codesOf(solved)).toEqual([CODE]);
        const [found] = solved.diagnostics;
        expect(found).toMatchObject({ severity: "error", members: ["P", "R"], end: 1 });
        // Read at 24 places round the tube, the crown at +X among them, just inside the outline.
        expect(Math.abs((found!.values.past as number) - (21.2 - past))).toBeLessThan(1e-5);
        expect(found!.point![0]).toBeCloseTo(21.2, 4);
        expect(pieceOf(solved, "P").status).toBe("blocked");
        expect(pieceOf(solved, "R").status).toBe("ok");
      }),
      { numRuns: 20 },
    );
  });

  it("is not found where the header ends flush with the branch or past it", () => {
    for (const past of [21.2, 21.3, 100]) expect(codesOf(nearEnd(past))).toEqual([]);
    expect(codesOf(nearEnd(20, SQUARE40))).toEqual([]);
    expect(codesOf(nearEnd(19.9, SQUARE40))).toEqual([CODE]);
  });

  it("is measured on the header as it is cut: a plumb cut helps or harms a post under a rake (closed form)", () => {
    const t = 35 * RAD;
    const at = (x: number): [number, number, number] => [x, 0, 900 + x * Math.tan(t)];
    const cutTo = (type: "plumb" | "square", x: number): string[] => {
      const joint: Joint = { kind: "cut", id: "C", end: { member: "R", end: 1 }, cut: { type } };
      return codesOf(solve([rail("R", at(-1500), at(x)), post("P", at(0), [0, 0, 0])], [joint]));
    };
    expect(cutTo("plumb", 21.21)).toEqual([]);
    expect(cutTo("plumb", 21.19)).toEqual([CODE]);
    // A square cut through the same place is uphill of it at the underside: 24.15·sin θ further.
    expect(cutTo("square", 21.2 - 24.15 * Math.sin(t) + 0.5)).toEqual([]);
    expect(cutTo("square", 21.2 - 24.15 * Math.sin(t) - 0.5)).toEqual([CODE]);
  });

  it("asks both rails of a break together: where one ends the other goes on", () => {
    const crest = [
      rail("A", [-900, 0, 400], [0, 0, 900]),
      rail("B", [0, 0, 900], [900, 0, 900]),
      post("P", [0, 0, 0], [0, 0, 900]),
    ];
    expect(codesOf(solve(crest))).toEqual([]);
    const short = [crest[0]!, rail("B", [0, 0, 900], [15, 0, 900]), crest[2]!];
    expect(codesOf(solve(short))).toContain(CODE);
    const wide = post("P", [0, 0, 0], [0, 0, 900], { section: TUBE48 });
    expect(codesOf(solve([crest[0]!, crest[1]!, wide]))).toEqual([]);
  });
});
