/**
 * Plan corners: the L-shaped kiln loft against the demo data (shared/demo-data.json, computed independently), and each way to
 * build a corner through the solver.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { solidOf } from "../../src/joints/index.js";
import { buildGuard } from "../../src/layout/index.js";
import { demo, INCH, inches } from "./cases.js";
import type { Loose } from "./designs.js";

const TEXT = readFileSync(new URL("../../examples/kiln-loft.json", import.meta.url), "utf8");
const loft = (change: (document: Loose) => void = () => undefined): Loose => {
  const document: Loose = JSON.parse(TEXT);
  // The corner is what is looked at here: without bars and handrail.
  delete document.infill;
  delete document.handrails;
  change(document);
  return document;
};

/** Without lower rails: a corner of mitred rails needs none. */
const bare = (d: Loose) => {
  for (const leg of d.legs) leg.undersides = {};
};

function built(document: Loose) {
  const guard = buildGuard(document);
  expect(guard.diagnostics.map((d) => `${d.code} ${d.message}`)).toEqual([]);
  for (const piece of guard.pieces) {
    expect(piece.status, piece.id).toBe("ok");
    expect(solidOf(piece).ok, piece.id).toBe(true);
  }
  return guard;
}

const { Lshaped } = demo;

describe("the corner post of the kiln loft", () => {
  const guard = built(loft());
  const report = guard.report!;

  it("has the demo stair's pitch and the height of the rake at the corner", () => {
    expect(report.pitch).toBeCloseTo(Lshaped.pitchDeg, 9);
    const [corner] = report.corners;
    inches(corner?.x, Lshaped.edgeLineSetback);
    inches(corner?.heightBefore, Lshaped.rakeHeightAtCorner36);
    inches((corner?.heightAfter ?? 0) - (corner?.heightBefore ?? 0), Lshaped.stepAtCornerPost);
    expect(corner?.twist).toBe(0);
  });

  it("stands at the corner, 1 in above the higher rail with its cap, both rails cut to it", () => {
    const post = guard.members.find((m) => m.id === "corner-1-post")!;
    inches(post.from[0], 3);
    inches(post.to[2], 42 + 1 - 0.25);
    const cuts = ["stair-top", "landing-top"].map((id) => guard.pieces.find((p) => p.id === id)!.cuts);
    expect(cuts[0]![1].onto).toEqual(["corner-1-post"]);
    expect(cuts[1]![0].onto).toEqual(["corner-1-post"]);
  });

  it("turns the landing leg to the left: Y, from the corner", () => {
    const rail = guard.members.find((m) => m.id === "landing-top")!;
    inches(rail.from[0], 3);
    inches(rail.to[0], 3);
    inches(rail.from[1], 0);
    inches(rail.to[1], Lshaped.edgeLeg - 0.375);
    inches(rail.to[2], 42 - 0.75);
  });

  it("puts equal spaces of at most 48 in between 42 3/4 and 125 1/4", () => {
    const posts = report.posts.filter((post) => post.leg === "landing").map((post) => post.offset / INCH);
    expect(posts).toHaveLength(3);
    [42.75, 84, 125.25].forEach((at, i) => {
      expect(posts[i]).toBeCloseTo(at, 9);
    });
  });

  it("comes apart at the corner: the post goes with the stair", () => {
    const [lower, upper] = guard.assemblies;
    expect(guard.assemblies.map((own) => own.kind)).toEqual(["welded", "welded"]);
    expect(lower?.pieces).toContain("corner-1-post");
    expect(upper?.pieces).toContain("landing-top");
    expect(guard.assemblies.flatMap((own) => own.pieces).sort()).toEqual(
      guard.members.map((m) => m.id).sort(),
    );
  });
});

describe("the whole kiln loft", () => {
  it("builds: bars shaped to both rails, a handrail on brackets, nothing in the way", () => {
    const guard = built(JSON.parse(TEXT));
    const { infill, handrails } = guard.report!;
    expect(infill).toHaveLength(5);
    for (const bay of infill) expect(bay.clear / INCH).toBeLessThanOrEqual(3.75 + 1e-9);
    inches(handrails[0]?.heights?.least.railTop, 35);
    inches(handrails[0]?.heights?.greatest.railTop, 35);
  });
});

describe("a level piece before the corner", () => {
  it("has the demo data's break, miters and shortest edge", () => {
    const guard = built(
      loft((d) => {
        bare(d);
        d.legs[0].top = "42";
        d.legs[1].turn = { angle: 90, past: "3", corner: "level" };
      }),
    );
    const { breaks, corners } = guard.report!;
    const wanted = Lshaped.levelFirst42_42;
    expect(breaks[0]?.topEdge).toBe(wanted.break);
    expect(breaks[0]?.miter).toBeCloseTo(wanted.elevMiter, 9);
    inches(corners[0]?.shortestEdge, wanted.stubShortestEdge);
    const stub = guard.members.find((m) => m.id === "landing-corner-top")!;
    inches(Math.hypot(...stub.to.map((c, i) => c - stub.from[i]!)), wanted.stubAxis);
    const cut = guard.pieces.find((p) => p.id === "landing-corner-top")!.cuts[1];
    expect(Math.abs(cut.saw?.miter ?? 0)).toBeCloseTo(wanted.planMiter, 9);
    expect(cut.saw?.bevel).toBeCloseTo(0, 9);
  });

  it("carries the lower rail round the corner too", () => {
    const guard = built(
      loft((d) => {
        d.legs[0].top = "42";
        d.legs[1].undersides.low = "1/2";
        d.legs[1].turn = { angle: 90, past: "6", corner: "level" };
      }),
    );
    expect(guard.pieces.filter((p) => /^bay-2-low/.test(p.id))).toHaveLength(3);
  });

  it("says when the corner leaves it no room", () => {
    const tight = (past: string) =>
      buildGuard(
        loft((d) => {
          bare(d);
          d.legs[0].top = "42";
          d.legs[1].turn = { angle: 90, past, corner: "level" };
        }),
      ).diagnostics.map((d) => d.code);
    // Shortest edge = past − d·tan(θ/2) − w/2 = past − 0.4607 − 0.75 in (demo data at 3 in: 1.7893).
    expect(tight("1.20")).toContain("corner-level-too-short");
    expect(tight("1.25")).not.toContain("corner-level-too-short");
  });
});

describe("a corner turned directly", () => {
  // 36 + 3·tan θ over the landing, less what the axis of a raking 1.5 in rail lies lower: (sec θ − 1)·0.75 (by hand).
  const theta = (Lshaped.pitchDeg * Math.PI) / 180;
  const meets = (36 + 3 * Math.tan(theta) - (1 / Math.cos(theta) - 1) * 0.75).toFixed(4);
  const direct = (corner: string, change: (d: Loose) => void = () => undefined) =>
    loft((d) => {
      bare(d);
      d.legs[1].turn = { angle: 90, past: "3", corner };
      d.legs[1].top = meets;
      change(d);
    });

  it("of square tube splits the twist: both rolled by half, outlines that meet, the demo data's true miter", () => {
    const guard = built(direct("twist"));
    expect(guard.report?.corners[0]?.twist).toBeCloseTo(Lshaped.twistDeg, 6);
    const [rake, level] = ["stair-top", "landing-top"].map((id) => guard.pieces.find((p) => p.id === id)!);
    // Of the cut from square: the true miter is between its miter and bevel, cos τ = cos M · cos B.
    for (const cut of [rake!.cuts[1], level!.cuts[0]]) {
      const { miter, bevel } = cut.saw!;
      const square = Math.cos((miter * Math.PI) / 180) * Math.cos((bevel * Math.PI) / 180);
      expect((Math.acos(square) * 180) / Math.PI).toBeCloseTo(Lshaped.directCorner.trueMiter, 4);
    }
    // The level rail's up leans by half the twist from plumb.
    const lean = (Math.acos(level!.frame.y[2]) * 180) / Math.PI;
    expect(lean).toBeCloseTo(Lshaped.twistDeg / 2, 4);
  });

  it("of plumb-sided square tube is warned of by its twist", () => {
    const found = buildGuard(direct("round")).diagnostics.find((d) => d.code === "miter-twists");
    expect(Math.abs(found?.values.twist as number)).toBeCloseTo(Lshaped.twistDeg, 3);
  });

  it("of round tube needs no roll", () => {
    const round = (36 + 3 * Math.tan(theta) - (1 / Math.cos(theta) - 1) * 0.95).toFixed(4);
    const guard = built(
      direct("round", (d) => {
        d.sections.rail = "round 1.900 x 0.145";
        d.posts.section = "post";
        d.sections.post = "square 1-1/2 x 0.120";
        d.legs[1].top = round;
      }),
    );
    expect(guard.pieces.find((p) => p.id === "landing-top")?.frame.y[2]).toBeCloseTo(1, 9);
  });

  it("says by how much the rails miss each other, and the height that would meet", () => {
    const found = buildGuard(direct("twist", (d) => (d.legs[1].top = "42"))).diagnostics;
    expect(found.map((d) => d.code)).toEqual(["corner-rails-miss"]);
    expect((found[0]?.values.needed as number) / INCH).toBeCloseTo(Number(meets), 4);
    expect(found[0]?.hint).toContain(`${Number(meets).toFixed(3)} in`);
  });
});

describe("a corner between two flights", () => {
  it("climbs round a quarter turn on a post; heights at the corner by hand", () => {
    const guard = buildGuard(
      loft((d) => {
        bare(d);
        Object.assign(d.stair, { risers: 6, floorToFloor: "45", going: "10 1/2" });
        d.sections.rail = "square 1-1/2 x 0.120";
        d.legs = [
          { along: "stair", top: "36", posts: { onTreads: [1, 4], behindNosing: "3" } },
          {
            along: "stair",
            top: "36",
            turn: { angle: 90, past: "10", before: "10", corner: "post", section: "corner" },
            posts: { onTreads: [1, 4], behindNosing: "3" },
          },
        ];
      }),
    );
    expect(guard.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    const corner = guard.report!.corners[0]!;
    // Lower flight 36 + 10·tan θ; upper: its line is 10 + one going past the corner lower (by hand).
    inches(corner.heightBefore, 36 + 10 * (7.5 / 10.5));
    inches(corner.heightAfter, 36 + 7.5 - 10 * (7.5 / 10.5));
    expect(guard.report?.flights.map((flight) => flight.leg)).toEqual(["stair", "stair-2"]);
    expect(guard.report?.nosings).toHaveLength(12);
  });
});
