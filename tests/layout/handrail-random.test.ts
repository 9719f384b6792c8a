/** Random handrails keep their law: heights, breaks over the nosing, mirror images, sound pieces. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solidOf, solveJoints } from "../../src/joints/index.js";
import type { Layout } from "../../src/layout/lay-out.js";
import type { Member } from "../../src/members/member.js";
import { type Loose, laidOut } from "./designs.js";

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Sections with their depth. */
const DEPTHS: Readonly<Record<string, number>> = {
  ...{ "round 42.4 x 3.2": 42.4, "round bar 35": 35 },
  ...{ "square 40 x 3": 40, "rect 50 x 30 x 2.5": 30 },
};

const drawn = fc.record({
  risers: fc.integer({ min: 3, max: 16 }),
  riser: mm(140, 210),
  going: mm(220, 340),
  height: mm(700, 950),
  inward: mm(75, 200),
  section: fc.constantFrom(...Object.keys(DEPTHS)),
  slope: mm(50, 400),
  low: mm(100, 500),
  high: mm(100, 500),
  angle: fc.constantFrom(90, -90, 45, -60),
  turned: fc.boolean(),
  wall: mm(80, 150),
});

type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const documentOf = (own: Drawn, side: string): Loose => ({
  ...{ version: 1, job: "Random handrail", unit: "mm", side },
  stair: { risers: own.risers, floorToFloor: own.risers * own.riser, going: own.going },
  sections: { rail: "round 48.3 x 3.2", post: "square 40 x 3", hand: own.section, arm: "round bar 14" },
  rails: [{ role: "top", section: "rail" }],
  posts: { section: "post" },
  legs: [
    { along: "stair", top: 1050, posts: { onTreads: [1, own.risers - 1], behindNosing: 100 } },
    {
      ...{ along: "landing", top: 1050, length: 2500, posts: { at: [800, 1900] } },
      ...(own.turned ? { turn: { angle: own.angle, past: 600, corner: "level" } } : {}),
    },
  ],
  handrails: [
    {
      ...{ section: "hand", height: own.height, inward: own.inward },
      bottom: { slope: own.slope, extend: own.low, return: "ground" },
      top: { extend: -own.high, return: "wall", distance: own.wall, towards: "outside" },
      brackets: { from: "posts", section: "arm", drop: 60 },
    },
  ],
});

const handrailMembers = (layout: Layout): Member[] =>
  layout.members.filter((own) => own.id.startsWith("handrail"));

describe("random handrails", () => {
  it("stand at their height over every nosing, and break plumb over the top one where heights are equal", () => {
    fc.assert(
      fc.property(drawn, (own) => {
        const layout = laidOut(documentOf(own, "left"));
        const report = layout.report.handrails[0]!;
        expect(report.nosings).toHaveLength(own.risers);
        for (const nosing of report.nosings) expect(nosing.railTop).toBeCloseTo(own.height, 6);
        expect(report.bottom.sloped).toBeCloseTo(own.slope, 6);
        expect(report.bottom.level).toBeCloseTo(own.low, 6);
        if (own.turned) return;
        // The axes meet (d/2)·tan(θ/2) past the nosing (two lines and their bisector), at both breaks: the rake is as long in
        // plan as its top edge.
        const rake = layout.members.find((one) => one.id === "handrail-stair")!;
        const tan = Math.tan(Math.atan(own.riser / own.going) / 2);
        expect(rake.to[0]).toBeCloseTo(((DEPTHS[own.section] as number) / 2) * tan, 6);
        expect(rake.to[0] - rake.from[0]).toBeCloseTo((own.risers - 1) * own.going + own.slope, 6);
      }),
      { numRuns: 60 },
    );
  });

  it("on the other side are mirror images", () => {
    const y = (point: readonly number[], sign: number) => [point[0], sign * (point[1] as number), point[2]];
    fc.assert(
      fc.property(drawn, (own) => {
        const left = laidOut(documentOf(own, "left"));
        const mirrored = laidOut(documentOf({ ...own, angle: -own.angle as Drawn["angle"] }, "right"));
        const [a, b] = [handrailMembers(left), handrailMembers(mirrored)];
        expect(b.map((one) => one.id)).toEqual(a.map((one) => one.id));
        a.forEach((one, i) => {
          for (const end of ["from", "to"] as const) {
            y(b[i]![end], -1).forEach((value, k) => {
              expect(value).toBeCloseTo(one[end][k] as number, 6);
            });
          }
        });
      }),
      { numRuns: 60 },
    );
  });

  it("are sound pieces wherever the layout finds room", () => {
    fc.assert(
      fc.property(drawn, (own) => {
        const layout = laidOut(documentOf(own, "left"));
        const refused = layout.diagnostics.filter((d) => d.severity === "error");
        const solution = solveJoints(layout);
        const bad = solution.diagnostics.filter(
          (d) => d.severity === "error" && d.members.some((id) => id.startsWith("handrail")),
        );
        if (refused.length === 0) expect(bad.map((d) => d.message)).toEqual([]);
        for (const piece of solution.pieces.filter((one) => one.id.startsWith("handrail"))) {
          if (piece.status === "ok") expect(solidOf(piece).ok).toBe(true);
        }
        const edges = layout.report.handrails[0]!.pieces.map((one) => one.shortestEdge);
        expect(Math.min(...edges)).toBeGreaterThan(0);
      }),
      { numRuns: 40 },
    );
  });

  it("are the same twice", () => {
    fc.assert(
      fc.property(drawn, (own) => {
        const document = documentOf(own, "both");
        document.stair.width = 1200;
        expect(JSON.stringify(laidOut(document))).toBe(JSON.stringify(laidOut(document)));
      }),
      { numRuns: 10 },
    );
  });
});
