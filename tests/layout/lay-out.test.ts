/**
 * The example guard against the demo data (shared/demo-data.json: invented stair, numbers computed independently), and
 * the foot of the stair against shop case z01.
 */
import { describe, expect, it } from "vitest";
import { demo, INCH, inches, shopCase } from "./cases.js";
import { example, laidOut, withFloor } from "./designs.js";

const { straight } = demo;

describe("layOut of the example", () => {
  const layout = laidOut(example());
  const { report } = layout;

  it("has one error-free layout with the members a guard of seven bays needs", () => {
    expect(layout.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    expect(layout.members.map((m) => m.mark).join(" ")).toBe(
      "R1 R2 B1 B2 B3 B4 B5 B6 B7 P1 P2 P3 P4 P5 P6 P7 P8 P1-BP P2-BP P3-BP P4-BP P5-BP P6-BP P7-BP P8-BP EP1",
    );
    expect(new Set(layout.members.map((m) => m.id)).size).toBe(26);
  });

  it("has the demo stair's pitch, riser and slope", () => {
    expect(report.pitch).toBeCloseTo(straight.pitchDeg, 9);
    inches(report.riser, straight.riser);
    inches(report.slopePerStep, straight.slopePerStep);
    inches(report.slopePerStep * 4, straight.postStations.fourTreadsAlongRake);
  });

  it("breaks over the nosing, mid-depth and underside further on", () => {
    const [found] = report.breaks;
    expect(report.breaks).toHaveLength(1);
    inches(found?.topEdge, straight.break42_42);
    inches(found?.midDepth, straight.breakMidDepthPastNosing);
    inches(found?.underside, straight.breakUndersidePastNosing);
    expect(found?.miter).toBeCloseTo(straight.miterDeg, 9);
    expect(found?.legToHold).toBe(0);
  });

  it("has the demo rails' edges and blank", () => {
    const [rake, level] = report.topRails;
    inches(rake?.topEdge, straight.rakeRail.top);
    inches(rake?.bottomEdge, straight.rakeRail.bottom);
    inches(rake?.blank, straight.rakeRail.blank);
    inches(level?.topEdge, straight.levelRail.topFromBreakToEndPlateFace);
    inches(level?.bottomEdge, straight.levelRail.bottom);
    expect(report.longest?.mark).toBe("R1");
    inches(report.longest?.length, straight.rakeRail.blank);
  });

  it("puts the posts at the demo stations", () => {
    const stations = [...straight.postStations.stair, ...straight.postStations.landing];
    expect(report.posts).toHaveLength(stations.length);
    report.posts.forEach((post, i) => {
      inches(post.x, stations[i]!);
    });
    for (const spacing of report.spacing.slice(0, 3)) {
      inches(spacing.plan, straight.postStations.planPitchStair);
      inches(spacing.alongRail, straight.postStations.alongRake);
    }
    for (const spacing of report.spacing.slice(4))
      inches(spacing.plan, straight.postStations.planPitchLanding);
    // The bay over the break: P4 to the nosing along the rake, then level to P5 (Pythagoras).
    inches(report.spacing[3]?.alongRail, Math.hypot(28.875, (28.875 * straight.riser) / straight.going) + 3);
  });

  it("has the demo posts' lengths", () => {
    const stair = report.posts[1]!;
    inches(stair.railTopAboveBase, straight.stairPost.railTopAboveTread);
    inches(stair.railUndersideAboveBase, straight.stairPost.railUndersideAtAxis);
    inches(stair.atAxis, straight.stairPost.postAxisFromTopOfPlate);
    inches(stair.uphillFace, straight.stairPost.uphillFaceAtCentre);
    inches(stair.downhillFace, straight.stairPost.downhillFaceAtCentre);
    const landing = report.posts[5]!;
    inches(landing.railUndersideAboveBase, straight.landingPost.railUnderside);
    inches(landing.atAxis, straight.landingPost.fromTopOfPlate);
  });

  it("stands the rail 42 in over every nosing", () => {
    expect(report.nosings).toHaveLength(13);
    for (const nosing of report.nosings) inches(nosing.railTop, 42);
  });

  it("ends the raking bottom rail p·tan θ above the level one at the break post (demo data)", () => {
    const bay4 = layout.members.find((m) => m.mark === "B4")!;
    const line = (x: number) => 0.5 * INCH + x * (straight.riser / straight.going);
    // Axis of a square 1 in bar lies half an inch square to its underside.
    const half = (0.5 * INCH) / Math.cos((straight.pitchDeg * Math.PI) / 180);
    expect(bay4.to[2]).toBeCloseTo(line(3 * INCH) + half, 6);
    inches(line(3 * INCH) - line(0), straight.infillBreakOffsetAtBreakPost);
  });

  it("starts and ends members where the solver's role rules find each other", () => {
    const byMark = new Map(layout.members.map((m) => [m.mark, m]));
    expect(byMark.get("R1")!.to).toEqual(byMark.get("R2")!.from);
    for (const post of layout.members.filter((m) => m.role === "post")) {
      const rail = byMark.get(post.to[0] < 0 ? "R1" : "R2")!;
      const t = (post.to[0] - rail.from[0]) / (rail.to[0] - rail.from[0]);
      expect(t).toBeGreaterThan(0);
      expect(t).toBeLessThan(1);
      expect(rail.from[2] + t * (rail.to[2] - rail.from[2])).toBeCloseTo(post.to[2], 8);
    }
    layout.members
      .filter((m) => m.role === "rail")
      .forEach((rail, i) => {
        const [low, high] = [byMark.get(`P${i + 1}`)!, byMark.get(`P${i + 2}`)!];
        expect([rail.from[0], rail.to[0]]).toEqual([low.from[0], high.from[0]]);
        expect(rail.from[2]).toBeGreaterThan(low.from[2]);
        expect(rail.to[2]).toBeGreaterThan(high.from[2]);
      });
  });

  it("asks for a shoulder on each post that is wider than the rail, and says by how much: 1 − 0.95 in", () => {
    const warnings = layout.diagnostics.filter((d) => d.code === "post-wider-than-rail");
    expect(warnings.map((d) => d.path)).toEqual([
      "legs[0].posts.onTreads[0]",
      "legs[1].posts.at[0]",
      "legs[1].posts.at[3]",
    ]);
    for (const warning of warnings) inches(warning.values.bySide as number, 0.05);
    const copes = layout.joints.filter((joint) => joint.kind === "cope");
    expect(copes.map((joint) => joint.shoulder)).toEqual(["midline", "midline", "midline"]);
  });

  it("cuts the foot plumb over nosing 1 and the far end square to the end plate", () => {
    const cuts = layout.joints.flatMap((joint) =>
      joint.kind === "cut" && joint.end.member.endsWith("-top") ? [joint] : [],
    );
    expect(cuts.map((joint) => [joint.end, joint.cut.type, joint.onto])).toEqual([
      [{ member: "stair-top", end: 0 }, "plumb", undefined],
      [{ member: "landing-top", end: 1 }, "face", "landing-top-end-plate-1"],
    ]);
    const [plumb, square] = cuts.map((joint) => joint.at!);
    inches(plumb![0], -straight.nosing1to13.run);
    inches(plumb![2], 42 - straight.nosing1to13.rise);
    inches(square![0], straight.levelRail.topFromBreakToEndPlateFace);
  });
});

describe("layOut of other guards", () => {
  it("gives the demo data's breaks for unequal heights, and the leg that would hold them", () => {
    const lower = laidOut(example((d) => (d.legs[0].top = "36"))).report.breaks[0];
    inches(lower?.topEdge, straight.break36_42);
    inches(lower?.legToHold, straight.break36_42_drop_leg_to_hold_at_0);
    const higher = laidOut(example((d) => (d.legs[1].top = "36"))).report;
    inches(higher.breaks[0]?.topEdge, straight.break42_36);
    inches(higher.heights?.least.railTop, 36);
    inches(higher.heights?.greatest.railTop, 42);
  });

  it("has case z01's rails: pitch 7.5/10.5, plumb foot 12 goings before the top nosing, 96 in level", () => {
    const { inputs, near } = shopCase("z01");
    const layout = laidOut(
      example((d) => {
        d.stair = { risers: 13, floorToFloor: 13 * inputs.rise!, going: inputs.run! };
        d.sections.rail = "square 1-1/2 x 0.120";
        d.endPosts = undefined;
        for (const leg of d.legs) leg.top = inputs.height;
        d.legs[1].length = inputs.level_length_from_top_nosing;
        d.legs[1].end = { type: "wall" };
      }),
    );
    const [rake, level] = layout.report.topRails;
    near("theta_deg", layout.report.pitch);
    near("rake_top_edge", rake!.topEdge / INCH);
    near("rake_bottom_edge", rake!.bottomEdge / INCH);
    near("rake_blank", rake!.blank / INCH);
    near("level_top_edge", level!.topEdge / INCH);
    near("level_bottom_edge", level!.bottomEdge / INCH);
    near("break_miter_deg", layout.report.breaks[0]!.miter);
  });

  it("breaks at the foot one going in front of nosing 1 and 42 in above the floor (handbook foot law, case a22)", () => {
    const layout = laidOut(withFloor());
    expect(layout.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
    const [foot] = layout.report.breaks;
    inches(foot?.topEdge, -(straight.nosing1to13.run + straight.going));
    expect(foot?.fromNosing).toBe(0);
    expect(foot?.between).toEqual(["floor-top", "stair-top"]);
    const rail = layout.members.find((m) => m.id === "floor-top")!;
    inches(rail.to[2], 42 - 0.95 - straight.floorToFloor);
    // Free and flush: past the post at 38 in by half of its 1-1/2 in.
    inches(rail.from[0], -(straight.nosing1to13.run + 38 + 0.75));
    expect(layout.members.filter((m) => m.role === "top-rail").map((m) => m.mark)).toEqual([
      "R1",
      "R2",
      "R3",
    ]);
  });

  it("breaks a lower rail in a bay that has room for it, on one node", () => {
    const layout = laidOut(withFloor((d) => (d.legs[0].posts.at = ["22", "38"])));
    const [a, b] = ["bay-2-low-a", "bay-2-low-b"].map((id) => layout.members.find((m) => m.id === id)!);
    expect(a!.to).toEqual(b!.from);
    expect([a!.mark, b!.mark]).toEqual(["B2a", "B2b"]);
    // Undersides meet where 2 in above the floor is 1/2 in above the nosing line: 1.5/tan θ uphill of its foot.
    const underside = -(straight.nosing1to13.run + straight.going) + 1.5 / (straight.riser / straight.going);
    inches(a!.to[0], underside - 0.5 * Math.tan((straight.pitchDeg * Math.PI) / 360));
    inches(a!.to[2], 2 + 0.5 - straight.floorToFloor);
    expect(layout.joints.filter((j) => j.kind === "miter").map((j) => j.id)).toContain("bay-2-low-break-1");
  });

  it("copes a post under the break to both rails", () => {
    const layout = laidOut(example((d) => (d.legs[1].posts.at[0] = { at: "0.5", section: "post" })));
    const cope = layout.joints.find((j) => j.id === "landing-post-1-top");
    expect(cope?.kind === "cope" && cope.onto).toEqual(["stair-top", "landing-top"]);
  });

  it("lets a free rail pass its last post by the overhang", () => {
    const layout = laidOut(example((d) => (d.legs[1].end = { type: "free", overhang: "1" })));
    // End post 2 in square at 93 3/4: its face is at 94 3/4.
    inches(layout.members.find((m) => m.id === "landing-top")!.to[0], 95.75);
  });

  it("pins marks by explicit ids and numbers round them", () => {
    const layout = laidOut(
      example((d) => {
        d.legs[0].posts.onTreads[1] = { tread: 4, id: "P1" };
        d.endPosts.marks = ["P1"];
      }),
    );
    const posts = layout.members.filter((m) => m.role === "post");
    expect(posts.map((m) => m.mark)).toEqual(["P2", "P1", "P3", "P4", "P5", "P6", "P7", "P8"]);
    expect(posts[1]!.id).toBe("P1");
    expect(posts.map((m) => m.section.name === posts[1]!.section.name)).toEqual([
      false,
      true,
      ...Array(6).fill(false),
    ]);
  });

  it("lays out a stair without level legs, cut plumb over both nosings", () => {
    const layout = laidOut(
      example((d) => {
        d.legs.pop();
        d.endPosts = undefined;
      }),
    );
    expect(layout.diagnostics).toEqual([]);
    const [rake] = layout.report.topRails;
    inches(rake?.topEdge, straight.nosing1to13.slope);
    inches(rake?.bottomEdge, straight.nosing1to13.slope);
    expect(layout.joints.map((j) => j.kind === "cut" && j.cut.type)).toEqual([
      "plumb",
      "plumb",
      ...Array(4).fill("face"),
    ]);
  });

  it("changes nothing but the side's name with the side", () => {
    const [left, right] = ["left", "right"].map((side) => laidOut(example((d) => (d.side = side))));
    expect(right!.members).toEqual(left!.members);
    expect(right!.report).toEqual({ ...left!.report, side: "right" });
  });
});
