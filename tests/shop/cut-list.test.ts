/**
 * The cut list's own numbers and words: long points, long minus short, saddle depth, groups and sums.
 *
 * Sources: shared/shop-cases.json c01, c10 (computed by an independent script from the handbook formulas); closed forms of
 * a plane through a round named beside each check.
 */
import { describe, expect, it } from "vitest";
import { endWord, faceWord } from "../../src/joints/words.js";
import { directionToParent } from "../../src/kernel/frame.js";
import { circleLoop, type Loop, pointOn } from "../../src/kernel/region.js";
import { extentAlong } from "../../src/kernel/region-extent.js";
import { cutEndRow } from "../../src/shop/cut-end.js";
import { cutList } from "../../src/shop/cut-list.js";
import { num, referenceCase } from "../joints/reference.js";
import { cut, INCH, POST_FRAME, piece, plane, railFrame, rakeRail, roundPost, tube } from "./pieces.js";

const byId = (...pieces: ReturnType<typeof piece>[]) => new Map(pieces.map((p) => [p.id, p]));

describe("ends of a rake rail", () => {
  // 7 9/16 over 10 5/8: the stair of the examples. tan of the pitch is rise over run.
  const pitch = (Math.atan2(7.5625, 10.625) * 180) / Math.PI;
  const rail = rakeRail(pitch);

  it("has its foot's long point at the bottom and its miter's at the top", () => {
    // A plumb cut at the foot of a rising rail leaves the bottom long there; a crest miter has its long point on top
    // (handbook rule 'long point on top', common practice, no source).
    const [foot, top] = [cutEndRow(rail, 0, byId(rail)), cutEndRow(rail, 1, byId(rail))];
    expect([foot.name, foot.lies, foot.long?.face]).toEqual(["DOWNHILL", "plumb", "BOTTOM"]);
    expect([top.name, top.lies, top.long?.face]).toEqual(["UPHILL", "sloping", "TOP"]);
  });

  it("tells long minus short as diameter times the tangent of the cut", () => {
    // Closed form: a plane at angle a from square through a round of diameter d: d·tan a.
    const [foot, top] = [cutEndRow(rail, 0, byId(rail)), cutEndRow(rail, 1, byId(rail))];
    expect(foot.long?.minusShort).toBeCloseTo((1.9 * INCH * 7.5625) / 10.625, 9);
    expect(top.long?.minusShort).toBeCloseTo(1.9 * INCH * Math.tan((pitch * Math.PI) / 360), 9);
  });

  it("reads the same long point whichever way the plane's normal is written", () => {
    const turned = { ...rail, ends: [plane([0, 0, 0], [0, 0.58, -0.81]), rail.ends[1]] as const };
    expect(cutEndRow(turned, 0, byId(turned)).long?.face).toBe("BOTTOM");
  });

  it("turns end for end without changing faces", () => {
    // The same rail drawn from its uphill end: a half turn about its own y; ends swap, faces do not.
    const f = rail.frame;
    const back = { ...f, x: directionToParent(f, [-1, 0, 0]), z: directionToParent(f, [0, 0, -1]) };
    const [n0, n1] = [rail.ends[0], rail.ends[1]].map((e) =>
      e.kind === "plane" ? e.normal : ([0, 0, 1] as const),
    );
    const flip = (n: readonly [number, number, number]) => plane([0, 0, 0], [-n[0], n[1], -n[2]]);
    const reversed = { ...rail, frame: back, ends: [flip(n1!), flip(n0!)] as const };
    const [first, second] = [cutEndRow(reversed, 0, byId(reversed)), cutEndRow(reversed, 1, byId(reversed))];
    expect([first.name, first.long?.face]).toEqual(["UPHILL", "TOP"]);
    expect([second.name, second.long?.face]).toEqual(["DOWNHILL", "BOTTOM"]);
  });
});

describe("a saddle", () => {
  const c10 = referenceCase("c10-saddle-post-to-rake");
  const angle = num(c10.inputs, "axis_angle_deg");
  const rail = rakeRail(90 - angle);
  const post = roundPost("P1", angle);
  const [saddle] = cutEndRow(post, 1, byId(rail, post)).saddles;

  it("names heel and toe by the faces of the post: the heel is the downhill face under a rail (case c22's note)", () => {
    expect([saddle?.onto, saddle?.header?.name, saddle?.toe, saddle?.heel]).toEqual([
      "R1",
      "round 1.900 x 0.145",
      "UPHILL",
      "DOWNHILL",
    ]);
  });

  it("has the depth of case c10, not the outer edge's", () => {
    const expected = c10.expected as unknown as { s_outer: number[]; s_effective: number[] };
    const spread = (v: number[]) => Math.max(...v) - Math.min(...v);
    // Outer: both extremes are at stations of the case. Effective: the case has 24 stations, the paper 360, so the
    // paper's may exceed it by what the curve dips between 15° steps: below 0.005 in.
    expect(saddle!.depth!.outer / INCH).toBeCloseTo(spread(expected.s_outer), 9);
    const excess = saddle!.depth!.effective / INCH - spread(expected.s_effective);
    expect(excess).toBeGreaterThanOrEqual(-1e-9);
    expect(excess).toBeLessThan(0.005);
  });

  it("has no depth where the header is not round or not there", () => {
    expect(cutEndRow(post, 1, byId(post)).saddles[0]?.depth).toBeUndefined();
  });

  it("stands on a square cut with no long point", () => {
    const foot = cutEndRow(post, 0, byId(rail, post));
    expect([foot.name, foot.lies, foot.long]).toEqual(["FOOT", "square", undefined]);
  });
});

describe("a post's top cut flat along the rake", () => {
  it("is high on the uphill face by case c01's face difference", () => {
    const c01 = referenceCase("c01-post-top-plane");
    const t = (num(c01.expected, "cut_from_square_deg") * Math.PI) / 180;
    const half = (num(c01.inputs, "post_size_along_run") * INCH) / 2;
    const square: Loop = [
      { kind: "line", from: [half, -half], to: [half, half] },
      { kind: "line", from: [half, half], to: [-half, half] },
      { kind: "line", from: [-half, half], to: [-half, -half] },
      { kind: "line", from: [-half, -half], to: [half, -half] },
    ];
    // The rail's underside rises uphill (+X, the section's v): normal (−sin θ, 0, cos θ) in the layout.
    const post = piece({
      id: "P1",
      frame: POST_FRAME,
      section: {
        name: "square",
        shape: { kind: "custom" },
        region: { outer: square, holes: [] },
        source: "as given",
      },
      ends: [plane([0, 0, 0], [0, 0, -1]), plane([0, 0, 900], [0, -Math.sin(t), Math.cos(t)])],
      cuts: [cut(0, "square"), cut(1, "plane")],
    });
    const top = cutEndRow(post, 1, byId(post));
    expect([top.name, top.long?.face]).toEqual(["TOP", "UPHILL"]);
    expect(top.long!.minusShort / INCH).toBeCloseTo(num(c01.expected, "face_difference"), 9);
  });
});

describe("words", () => {
  it("name ends and faces of a rail and of a post", () => {
    const rail = railFrame(35);
    expect([endWord(rail, 0), endWord(rail, 1)]).toEqual(["DOWNHILL", "UPHILL"]);
    expect([
      faceWord(rail, 1, 0),
      faceWord(rail, -1, 0),
      faceWord(rail, 0, 1),
      faceWord(rail, 1, -1),
    ]).toEqual(["LEFT", "RIGHT", "TOP", "BOTTOM-LEFT"]);
    expect([endWord(POST_FRAME, 0), endWord(POST_FRAME, 1)]).toEqual(["FOOT", "TOP"]);
    expect([faceWord(POST_FRAME, 0, 1), faceWord(POST_FRAME, 1, 0)]).toEqual(["UPHILL", "RIGHT"]);
  });
});

describe("extent of a section", () => {
  it("agrees with the farthest of many sampled points, for arcs run either way", () => {
    const arcs: Loop = [
      { kind: "arc", centre: [3, 1], radius: 5, start: 0.3, sweep: 2.1 },
      { kind: "arc", centre: [-2, 4], radius: 2, start: 2.9, sweep: -2.5 },
      { kind: "line", from: [-8, -3], to: [1, -6] },
      ...circleLoop([1, 2], 3, "wall", true),
    ];
    for (let degree = 0; degree < 360; degree += 17) {
      const d = [Math.cos((degree * Math.PI) / 180), Math.sin((degree * Math.PI) / 180)] as const;
      const reach = arcs.flatMap((s) =>
        Array.from({ length: 2001 }, (_, i) => pointOn(s, i / 2000)).map((p) => p[0] * d[0] + p[1] * d[1]),
      );
      const got = extentAlong(arcs, d);
      expect(got.greatest).toBeGreaterThanOrEqual(Math.max(...reach) - 1e-12);
      expect(got.greatest).toBeCloseTo(Math.max(...reach), 5);
      expect(got.least).toBeLessThanOrEqual(Math.min(...reach) + 1e-12);
      expect(got.least).toBeCloseTo(Math.min(...reach), 5);
    }
  });
});

describe("groups", () => {
  const pieces = [
    rakeRail(35),
    roundPost("P1", 55),
    roundPost("P2", 55),
    { ...roundPost("P3", 55), identity: "hand", handOf: "post" },
    { ...rakeRail(35), id: "X", mark: "X", identity: "X", section: tube(30, 2, "round 1.900 x 0.145") },
  ];
  const masses = new Map(pieces.map((p, i) => [p.id, i + 1]));
  const list = cutList(pieces, { unit: "in", masses });

  it("are by what the tube is, not by its name, in the order of the pieces", () => {
    expect(list.groups.map((g) => g.rows.map((r) => r.marks))).toEqual([
      [["R1"]],
      [["P1", "P2"], ["P3"]],
      [["X"]],
    ]);
  });

  it("count every piece once and add up blanks and masses", () => {
    expect(list.groups.reduce((n, g) => n + g.rows.reduce((m, r) => m + r.quantity, 0), 0)).toBe(
      pieces.length,
    );
    expect(list.groups[1]?.totalBlank).toBe(3000);
    expect(list.groups[1]?.mass).toBe(2 + 3 + 4);
  });

  it("say which pieces a mirror image belongs to", () => {
    expect(list.groups[1]?.rows.map((r) => r.handOf)).toEqual([[], ["P1", "P2"]]);
  });

  it("leave a mass out rather than print part of it", () => {
    expect(cutList(pieces, { unit: "in", masses: new Map([["P1", 1]]) }).groups[1]?.mass).toBeUndefined();
  });
});
