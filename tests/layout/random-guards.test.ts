/**
 * Random valid designs lay out: every number finite, every post under its rail, heights what the document asks for away
 * from the breaks (closed form: line through the nosings).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Layout } from "../../src/layout/lay-out.js";
import { laidOut } from "./designs.js";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const guard = fc
  .record({
    risers: fc.integer({ min: 3, max: 30 }),
    riser: mm(120, 230),
    going: mm(200, 400),
    top: mm(700, 1200),
    differ: fc.oneof(fc.constant(0), mm(-150, 150)),
    low: mm(20, 150),
    behind: mm(60, 120),
    rail: fc.constantFrom("round 48.3 x 3.2", "square 40 x 3", "rect 60 x 30 x 2.5", "round bar 30"),
    post: fc.constantFrom("round 42.4 x 2.6", "square 40 x 3", "square 60 x 4"),
    floor: fc.boolean(),
    landing: fc.boolean(),
    wall: fc.boolean(),
  })
  .map((g) => {
    const level = (along: "floor" | "landing", first: number) => ({
      along,
      length: 3000,
      top: g.top + g.differ,
      undersides: { low: g.low },
      posts: { at: [first, 1800, 2800] },
      end: g.wall ? { type: "wall", endPlate: 8 } : { type: "free", overhang: 50 },
    });
    return {
      ...{ version: 1, job: "Random guard", unit: "mm", side: "left" },
      stair: { risers: g.risers, floorToFloor: g.risers * g.riser, going: g.going },
      sections: { rail: g.rail, post: g.post, low: "square 20 x 2" },
      rails: [
        { role: "top", section: "rail" },
        { id: "low", role: "lower", section: "low" },
      ],
      posts: { section: "post" },
      legs: [
        ...(g.floor ? [level("floor", g.going + 500)] : []),
        {
          ...{ along: "stair", top: g.top, undersides: { low: g.low } },
          posts: { onTreads: [1, g.risers - 1], behindNosing: g.behind },
        },
        ...(g.landing ? [level("landing", 500)] : []),
      ],
    };
  });

function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

const errors = (layout: Layout) => layout.diagnostics.filter((d) => d.severity === "error");

describe("random guards", () => {
  it("lay out without an error or a number that is none", () => {
    fc.assert(
      fc.property(guard, (document) => {
        const layout = laidOut(document);
        expect(errors(layout).map((d) => d.message)).toEqual([]);
        expect(numbersIn([layout.members, layout.joints, layout.report]).every(Number.isFinite)).toBe(true);
        const posts = document.legs.length * 3 - 1;
        expect(layout.members.filter((m) => m.role === "post")).toHaveLength(posts);
        expect(layout.report.spacing.every((own) => own.alongRail >= own.plan - 1e-9)).toBe(true);
        expect(structuredClone(layout)).toEqual(layout);
      }),
    );
  });

  it("hold the rail at its height over every nosing between the breaks", () => {
    fc.assert(
      fc.property(guard, (document) => {
        const { report } = laidOut(document);
        const [first, stair, last] = [
          document.legs[0],
          document.legs.find((leg) => leg.along === "stair"),
          document.legs.at(-1),
        ];
        const low = first?.along === "floor" ? report.breaks[0]!.topEdge : Number.NEGATIVE_INFINITY;
        const high = last?.along === "landing" ? report.breaks.at(-1)!.topEdge : Number.POSITIVE_INFINITY;
        const inside = report.nosings.filter((own) => own.x >= low && own.x <= high);
        expect(inside.length).toBeGreaterThan(0);
        for (const nosing of inside) expect(nosing.railTop).toBeCloseTo(stair!.top, 6);
      }),
    );
  });

  it("are the same twice, and do not change the document", () => {
    fc.assert(
      fc.property(guard, (document) => {
        const before = JSON.stringify(document);
        expect(JSON.stringify(laidOut(document))).toBe(JSON.stringify(laidOut(document)));
        expect(JSON.stringify(document)).toBe(before);
      }),
      { numRuns: 20 },
    );
  });
});
