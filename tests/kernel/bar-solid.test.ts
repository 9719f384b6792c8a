/** What a bar's solid is made of, and the smallest input of every diagnostic it can give. */
import { describe, expect, it } from "vitest";
import { solidOfBar } from "../../src/kernel/bar-solid.js";
import type { Diagnostic } from "../../src/kernel/diagnostic.js";
import { massProperties } from "../../src/kernel/mass.js";
import { eulerOf } from "../../src/kernel/rules/euler-number.js";
import { polygonLoop } from "../../src/members/sections/custom.js";
import {
  barOf,
  box,
  max,
  min,
  onLoop,
  onRound,
  plane,
  rect,
  rod,
  solidFor,
  square,
  tube,
} from "../support/bars.js";

/** The one diagnostic of a bar that has no solid. */
function refusal(...bar: Parameters<typeof barOf>): Diagnostic {
  const made = solidOfBar(barOf(...bar));
  expect(made.ok).toBe(false);
  expect(made.diagnostics).toHaveLength(1);
  const [only] = made.diagnostics;
  expect(only).toMatchObject({ severity: "error", members: ["B1"] });
  expect(only!.hint).not.toBe("");
  return only!;
}

describe("solidOfBar", () => {
  // Counted by hand: a tube has four half walls and two ends, split where the equal header's silhouette makes a kink.
  it.each([
    ["rod", rod(40), 4, 6, 4, 2],
    ["tube", tube(40, 4), 6, 12, 8, 0],
    ["flat bar", box(40, 10), 6, 12, 8, 2],
    ["rounded tube", rect(40, 40, 3, 6, 3), 18, 48, 32, 0],
  ])("of a square-cut %s", (_, section, faces, edges, vertices, chi) => {
    const solid = solidFor(barOf(section, square(), square(100)));
    expect([solid.faces.length, solid.edges.length, solid.vertices.length]).toEqual([faces, edges, vertices]);
    expect(eulerOf(solid)).toBe(chi);
  });

  it("keeps where every face came from", () => {
    const solid = solidFor(barOf(tube(40, 4), square(), onRound(48.3, 300, 60)));
    expect(solid.faces.map((f) => f.provenance)).toEqual([
      { from: "end", end: 0, joint: "j1", onto: "H1" },
      { from: "end", end: 1, joint: "j1", onto: "H1" },
      ...["wall", "wall"].map((label, segment) => ({ from: "side", loop: 0, segment, label })),
      ...["bore", "bore"].map((label, segment) => ({ from: "side", loop: 1, segment, label })),
    ]);
  });
});

describe("diagnostics of solidOfBar", () => {
  it("branch-hangs-off says by how much and what closes it", () => {
    const d = refusal(rod(50), square(), onRound(48.3, 500, 60));
    expect(d).toMatchObject({ code: "branch-hangs-off", end: 1 });
    expect(d.values.missBy).toBeCloseTo(0.85, 9);
    expect(d.message).toContain("H1 by 0.850 mm");
    expect(d.hint).toContain("shoulder");
    const moved = refusal(rod(40), onRound(48.3, 0, 90, 6), square(500));
    expect(moved).toMatchObject({ code: "branch-hangs-off", end: 0 });
    expect(moved.values.missBy).toBeCloseTo(20 + 6 - 24.15, 9);
  });

  it("header-parallel", () => {
    const d = refusal(rod(30), square(), onRound(48.3, 500, 0));
    expect(d).toMatchObject({ code: "header-parallel", end: 1, values: { onto: "H1" } });
    expect(d.message).toContain("runs along its header H1");
  });

  it("cut-along-axis", () => {
    const d = refusal(rod(30), square(), plane([0, 0, 500], [1, 0, 0]));
    expect(d).toMatchObject({ code: "cut-along-axis", end: 1 });
    expect(d.message).toContain("never closes it");
  });

  it("empty-end", () => {
    expect(refusal(rod(30), square(), { kind: "min", of: [] })).toMatchObject({ code: "empty-end", end: 1 });
  });

  it("piece-too-short where the ends meet anywhere, not only on the axis", () => {
    const d = refusal(rod(40), square(), plane([0, 0, 10], [0, 1, 1]));
    expect(d.code).toBe("piece-too-short");
    // The cut falls by the radius on one side: 10 − 20.
    expect(d.values.shortest).toBeCloseTo(-10, 4);
    expect(d.message).toContain("B1");
    expect(solidOfBar(barOf(rod(40), square(), plane([0, 0, 20.01], [0, 1, 1]))).ok).toBe(true);
  });

  it("end-open where no contact reaches", () => {
    const narrow = onRound(30, 500, 60);
    const d = refusal(rod(40), square(), min(narrow, narrow));
    expect(d).toMatchObject({ code: "end-open", end: 1 });
    expect(Math.abs(d.values.u as number)).toBeGreaterThan(15 - 1e-9);
    expect(d.hint).toContain("plane");
  });

  it("end-steps where a header ends over the section", () => {
    const d = refusal(rod(40), square(), min(onRound(30, 500, 60), square(500)));
    expect(d).toMatchObject({ code: "end-steps", end: 1 });
    expect(d.values.step as number).toBeGreaterThan(1);
    // The header's silhouette is at ±15 across; the outline is met there.
    expect(Math.abs(d.values.u as number)).toBeCloseTo(15, 6);
  });

  const channel = polygonLoop([
    [-20, -20],
    [-15, -20],
    [-15, 15],
    [15, 15],
    [15, -20],
    [20, -20],
    [20, 20],
    [-20, 20],
  ]);

  it("profile-jumps where a branch reaches over a channel's flange", () => {
    // Its open side is −v; the branch comes from below and sees it from there.
    const seen = [90, -90].map((angle) => solidOfBar(barOf(rod(31), square(), onLoop(channel, 500, angle))));
    expect(seen.filter((m) => m.ok)).toHaveLength(1);
    const d = seen.find((m) => !m.ok)!.diagnostics[0]!;
    expect(d).toMatchObject({ code: "profile-jumps", end: 1, members: ["B1"] });
    expect(d.values.step).toBeCloseTo(35, 9);
  });

  it("a branch that goes in between the flanges, with room or touching both, ends on the web", () => {
    for (const od of [22, 30]) {
      for (const gap of od === 22 ? [0, 1.5] : [0]) {
        const ends = [90, -90].map((angle) => onLoop(channel, 500, angle, 0, { gap }));
        const lengths = ends.map((end) => {
          const made = solidOfBar(barOf(rod(od), square(), end));
          if (!made.ok) throw new Error(made.diagnostics[0]?.message);
          return massProperties(made.value).volume / ((Math.PI * od ** 2) / 4);
        });
        // The axis is at 500; the web's inner face is 15 beyond it, its back 20 before it.
        expect(Math.min(...lengths)).toBeCloseTo(480 - gap, 9);
        expect(Math.max(...lengths)).toBeCloseTo(515 - gap, 9);
      }
    }
  });

  it("gap-on-hollow-skin", () => {
    const angle = polygonLoop([
      [0, 0],
      [40, 0],
      [40, 5],
      [5, 5],
      [5, 40],
      [0, 40],
    ]);
    const d = refusal(rod(10), square(), onLoop(angle, 500, 90, -20, { gap: 36 }));
    expect(d).toMatchObject({ code: "gap-on-hollow-skin", values: { gap: 36 } });
  });

  it("reports both ends at once, each with its own number", () => {
    const off = onRound(30, 0, 60);
    const made = solidOfBar(barOf(rod(40), off, max(off)));
    expect(made.diagnostics.map((d) => [d.code, d.end])).toEqual([
      ["branch-hangs-off", 0],
      ["branch-hangs-off", 1],
    ]);
  });
});
