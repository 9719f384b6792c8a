/**
 * What follows from posts that stand off their designed places: holes, lengths, cuts, plates, rails and infill.
 *
 * Sources: shared/demo-as-set.json (computed independently: holes move on the post by dx·tan θ − dz before lean); the meeting
 * of two straight lines for leaning posts, computed here; Pythagoras.
 */
import { describe, expect, it } from "vitest";
import demo from "../../../shared/demo-as-set.json" with { type: "json" };
import { fitOf, type Piece } from "../../../src/joints/index.js";
import { addScaled, dot } from "../../../src/kernel/vec.js";
import { type BuiltGuard, buildGuard } from "../../../src/layout/build-guard.js";
import { example, type Loose, plain as plainExample } from "../designs.js";
import { asSetExample, both, codesIn, INCH, standingOn, throughBars } from "./documents.js";

const piece = (built: BuiltGuard, mark: string): Piece => {
  const own = built.pieces.find((one) => one.mark === mark);
  if (own === undefined) throw new Error(`no piece ${mark}`);
  return own;
};

/** Distances of a post's holes from its foot along its axis, from below. */
const holes = (built: BuiltGuard, mark: string): number[] =>
  piece(built, mark)
    .bores.map((bore) => {
      // Where the hole's axis passes the post's own: both lie in the guard's plane.
      const { point, direction } = bore;
      return point[2] - (direction[1] === 0 ? 0 : (direction[2] * point[1]) / direction[1]);
    })
    .sort((a, b) => a - b);

function fits({ contacts, pieces }: BuiltGuard): void {
  for (const contact of contacts) {
    const fit = fitOf(contact, pieces);
    if (!fit.ok) throw new Error(contact.joint);
    expect(fit.value.overlap, `${contact.piece} in ${contact.onto}`).toBeLessThanOrEqual(2e-6);
    expect(fit.value.gap, `${contact.piece} on ${contact.onto}`).toBeLessThanOrEqual(contact.gap + 2e-6);
  }
}

const slope = 7.5625 / 10.625;

describe("holes for bars through the posts", () => {
  const upright = asSetExample((document) => {
    for (const post of document.posts) delete post.lean;
  });
  const leaning = asSetExample();
  const design = throughBars();
  const [{ plain, set }, { set: leans }] = [both(design, upright), both(design, leaning)];

  it.each(demo.posts.slice(0, 4))("move on $post by dx·tan θ − dz before lean", (own) => {
    const [before, after] = [holes(plain, own.post), holes(set, own.post)];
    expect(before.length).toBe(8);
    expect(after.length).toBe(8);
    const inch = (text: string) =>
      text
        .replace("-", "")
        .split(" ")
        .reduce((sum, part) => {
          const [a = "0", b] = part.split("/");
          return sum + (b === undefined ? Number(a) : Number(a) / Number(b));
        }, 0) * (text.startsWith("-") ? -1 : 1);
    const [dx, dz] = [inch(own.xSet) - inch(own.xDesigned), inch(own.baseSet) - inch(own.baseDesigned)];
    after.forEach((at, i) => {
      const shift = (at - before[i]!) / INCH;
      expect(shift).toBeCloseTo(dx * slope - dz, 9);
      // The table is rounded to a thousandth of an inch.
      expect(Math.abs(shift - own.holeShiftOnPost_in)).toBeLessThanOrEqual(5.1e-4);
      expect(Math.abs(shift * 32 - own.holeShift32nds)).toBeLessThanOrEqual(0.051);
    });
  });

  it("P5, where the bars of the rake end: their axes meet the post's 0.0445 in lower", () => {
    const own = demo.posts[4]!;
    const ends = (built: BuiltGuard) =>
      built.members
        .filter(({ id }) => /^bay-4-line-\d+$/.test(id) || /^bay-1-line-\d+$/.test(id))
        .map(({ to }) => to);
    const [before, after] = [ends(plain), ends(set)];
    expect(before.length).toBe(8);
    before.forEach((to, i) => {
      expect((after[i]![2] - to[2]) / INCH).toBeCloseTo(-slope / 16, 9);
      expect(Math.abs((after[i]![2] - to[2]) / INCH - own.holeShiftOnPost_in)).toBeLessThanOrEqual(5.1e-4);
    });
  });

  it.each(demo.posts.slice(0, 4))("of $post leaning: where the bar's line meets the post's", (own) => {
    const { post, leanDegUphill } = own;
    const report = plain.report!.posts.find(({ mark }) => mark === post)!;
    const stands = leans.report!.posts.find(({ mark }) => mark === post)!;
    const t = Math.tan((leanDegUphill * Math.PI) / 180);
    const plate = 0.375 * INCH;
    const expected = holes(plain, post).map((along) => {
      // The bar: through the designed hole at the pitch. The post: from its foot, t along for each up.
      const [bx, bz, fx, fz] = [report.x, report.baseZ + plate + along, stands.x, stands.baseZ + plate];
      const up = (bz - fz + slope * (fx - bx)) / (1 - slope * t);
      return Math.hypot(up, t * up);
    });
    holes(leans, post).forEach((at, i) => {
      expect(at).toBeCloseTo(expected[i]!, 7);
    });
    expect(Math.abs(piece(leans, post).frame.z[0] / piece(leans, post).frame.z[2] - t)).toBeLessThan(1e-12);
  });

  it("lets everything fit", () => {
    fits(leans);
    expect(codesIn(leans).filter((code) => code !== "infill-wider-space")).toEqual(
      codesIn(plain).filter((code) => code !== "infill-wider-space"),
    );
  });
});

describe("a post that was measured", () => {
  it("where it was designed changes no byte, tape words or not", () => {
    const posts = [
      { post: "P1", x: "-124 1/2", base: "-90 3/4" },
      { post: "P2", behindNosing: 3 },
      { post: "P5", x: 3, base: 0, lean: 0 },
      { post: "P6", at: "33 1/4" },
    ];
    const legs = [{ leg: "landing", length: "96 3/4" }];
    for (const design of [example(), throughBars()]) {
      const { plain, set } = both(design, { posts, legs });
      expect(JSON.stringify(set.pieces)).toBe(JSON.stringify(plain.pieces));
      expect(JSON.stringify(set.contacts)).toBe(JSON.stringify(plain.contacts));
    }
  });

  it("moved along the rake keeps its length; raised it is shorter by as much", () => {
    // 10 5/8 in along at 7 9/16 up: a sixteenth of a step.
    const along = { post: "P2", behindNosing: 3 + 10.625 / 16, base: -68.0625 + 7.5625 / 16 };
    const { plain, set } = both(plainExample(), { posts: [along] });
    const blank = (built: BuiltGuard, mark: string) => piece(built, mark).lengths.blank.value;
    expect(blank(set, "P2")).toBeCloseTo(blank(plain, "P2"), 8);
    const raised = both(plainExample(), { posts: [{ post: "P3", base: -45.375 + 0.125 }] }).set;
    expect(blank(raised, "P3")).toBeCloseTo(blank(plain, "P3") - INCH / 8, 8);
    expect(blank(raised, "P2")).toBe(blank(plain, "P2"));
  });

  it("moves its bays' rails by as much along the rake, and its plate with its foot", () => {
    const { plain, set } = both(plainExample(), { posts: [{ post: "P2", x: "-92 3/4" }] });
    const axis = (built: BuiltGuard, mark: string) => {
      const own = built.members.find((one) => one.mark === mark)!;
      return Math.hypot(own.to[0] - own.from[0], own.to[2] - own.from[2]);
    };
    const by = (INCH / 8) * Math.hypot(1, slope);
    expect(axis(set, "B1")).toBeCloseTo(axis(plain, "B1") - by, 9);
    expect(axis(set, "B2")).toBeCloseTo(axis(plain, "B2") + by, 9);
    expect(piece(set, "P2-BP").frame.origin[0]).toBeCloseTo(
      piece(plain, "P2-BP").frame.origin[0] - INCH / 8,
      9,
    );
  });

  it("leaning has its plate lean along, so that its foot stays as it was cut", () => {
    for (const lean of [{ lean: 2 }, { leanAcross: -1.5 }, { lean: -0.7, leanAcross: 0.4 }]) {
      const { plain, set } = both(plainExample(), { posts: [{ post: "P2", ...lean }] });
      const [was, now] = [piece(plain, "P2"), piece(set, "P2")];
      expect([now.cuts[0].kind, now.cuts[0].saw?.fromSquare]).toEqual(["square", 0]);
      expect(now.cuts[0].kind).toBe(was.cuts[0].kind);
      const plate = piece(set, "P2-BP");
      // Square to each other, the foot's centre on the middle of the plate's top, where the post was measured.
      expect(dot(plate.frame.z, now.frame.z)).toBeCloseTo(1, 12);
      expect(dot(plate.frame.y, now.frame.y)).toBeCloseTo(1, 12);
      const thick = plate.lengths.blank.value;
      const top = addScaled(plate.frame.origin, plate.frame.z, thick);
      for (const k of [0, 1, 2] as const) expect(top[k]).toBeCloseTo(now.frame.origin[k], 9);
      for (const k of [0, 1, 2] as const) expect(top[k]).toBeCloseTo(was.frame.origin[k], 9);
      expect(thick).toBeCloseTo(piece(plain, "P2-BP").lengths.blank.value, 12);
      expect(set.diagnostics.filter((own) => own.severity === "error")).toEqual([]);
    }
    const bare = plainExample((document: Loose) => {
      document.foot = undefined;
    });
    for (const own of [{ lean: 2 }, { x: -92 }]) {
      expect(piece(both(bare, { posts: [{ post: "P2", ...own }] }).set, "P2").cuts[0].kind).toBe("square");
    }
  });

  it("reports the designed place beside the set one, and says so among the assumptions", () => {
    const { set } = both(example(), asSetExample());
    const p3 = set.report!.posts.find(({ mark }) => mark === "P3")!;
    expect(p3.x).toBeCloseTo(-60.5625 * INCH, 9);
    expect(p3.asSet?.designed.x).toBeCloseTo(-60.75 * INCH, 9);
    expect(p3.asSet?.designed.baseZ).toBeCloseTo(-45.375 * INCH, 9);
    expect([p3.asSet?.lean, p3.asSet?.stage]).toEqual([0.3, "dry-set"]);
    expect(set.report!.posts.find(({ mark }) => mark === "P6")?.asSet).toBeUndefined();
    expect(set.report!.assumptions.join("\n")).toContain("P1, P2, P3, P4, P5; the others");
  });
});

describe("a leg that was measured", () => {
  it("ends where it was found to", () => {
    const { plain, set } = both(plainExample(), { legs: [{ leg: "landing", length: "96 5/8" }] });
    const far = (built: BuiltGuard) => piece(built, "EP1").frame.origin[0];
    expect(far(set)).toBeCloseTo(far(plain) - INCH / 8, 9);
    expect(set.report!.assumptions).toContain("Measured to its far end: landing, 2454.3 mm (96.625 in).");
    expect(piece(set, "P8").lengths.blank.value).toBe(piece(plain, "P8").lengths.blank.value);
  });
});

describe("findings on posts as set", () => {
  const said = (posts: Loose[], code: string, design = plainExample()) =>
    buildGuard(design, undefined, standingOn(design, { posts })).diagnostics.filter((d) => d.code === code);

  it("post-hits-nosing: also where only its lean takes it there", () => {
    // The next nosing is 10 5/8 on and 7 9/16 up, the post's half 3/4: 9 7/8 behind its own it touches.
    expect(said([{ post: "P2", behindNosing: "9 7/8" }], "post-hits-nosing")).toEqual([]);
    expect(said([{ post: "P2", behindNosing: "9 15/16" }], "post-hits-nosing")[0]?.message).toMatch(
      /^Post P2, as set: its face passes the next nosing/,
    );
    expect(said([{ post: "P2", behindNosing: "9 27/32", lean: -1 }], "post-hits-nosing")).toEqual([]);
    const leaning = said([{ post: "P2", behindNosing: "9 7/8", lean: 1 }], "post-hits-nosing")[0];
    const t = Math.tan(Math.PI / 180);
    // From the plate's top, 3/8 over the tread, to the nosing; the face is half a depth square to the axis.
    const by = (7.5625 - 0.375) * t + 0.75 * (Math.hypot(1, t) - 1);
    expect((leaning?.values.by as number) / INCH).toBeCloseTo(by, 6);
  });

  it("side-plate-gap: how far a post that leans across stands off the other edge of its plate", () => {
    const side = plainExample((document: Loose) => {
      document.foot = {
        type: "side",
        below: "10",
        plate: { thickness: "3/8", height: "8", along: "4", centre: "5" },
      };
    });
    const [gap] = said([{ post: "P2", leanAcross: 0.5 }], "side-plate-gap", side);
    expect((gap?.values.by as number) / INCH).toBeCloseTo(8 * Math.tan(Math.PI / 360), 6);
    expect(said([{ post: "P2", lean: 0.5 }], "side-plate-gap", side)).toEqual([]);
    // The lower end as measured: the plate goes with it.
    const low = both(side, { posts: [{ post: "P2", base: -80 }] });
    const z = (built: BuiltGuard, mark: string) => piece(built, mark).frame.origin[2];
    expect(z(low.set, "P2")).toBeCloseTo(-80 * INCH, 9);
    expect(z(low.set, "P2-SP") - z(low.plain, "P2-SP")).toBeCloseTo(z(low.set, "P2") - z(low.plain, "P2"), 9);
  });

  it("rail-past-post-side: how much of a lower rail passes the side of a post that stands aside", () => {
    // A 1 in rail on a 1 1/2 in post: a quarter of an inch aside they are flush.
    expect(said([{ post: "P2", across: "1/4" }], "rail-past-post-side")).toEqual([]);
    const [past] = said([{ post: "P2", across: "-5/16" }], "rail-past-post-side");
    expect(past?.message).toMatch(/^Post P2, as set: expected it over the whole width of B1/);
    expect((past?.values.by as number) / INCH).toBeCloseTo(1 / 16, 9);
  });

  it("post-misses-rail: a post that stands wholly beside the rails", () => {
    // Half a post and half a rail: 3/4 + 0.95 in under the top rail, 3/4 + 1/2 at the lower one.
    expect(said([{ post: "P2", across: 1.24 }], "post-misses-rail")).toEqual([]);
    const low = said([{ post: "P2", across: 1.26 }], "post-misses-rail");
    expect(low.map((d) => d.message.slice(0, 48))).toEqual([
      "Post P2, as set: expected it to reach B1, got it",
      "Post P2, as set: expected it to reach B2, got it",
    ]);
    expect(said([{ post: "P2", across: 1.71 }], "post-misses-rail")[0]?.message).toMatch(/to reach rail top/);
  });

  it("posts-overlap: two plumb at their feet may lean into each other", () => {
    const design = plainExample((document: Loose) => {
      document.legs[1].posts.at = ["3", "33 1/4", "57", "61"];
    });
    expect(said([{ post: "P8", lean: -1 }], "posts-overlap", design)).toEqual([]);
    expect(said([{ post: "P8", lean: -5 }], "posts-overlap", design)[0]?.message).toMatch(
      /^Post P8, as set: it overlaps post P7 by /,
    );
  });

  it("leave a pair alone but for the post that was named, and mirror across with the hand", () => {
    const pair = plainExample((document: Loose) => {
      Object.assign(document, { side: "both" });
      Object.assign(document.stair, { width: "44", inset: "4" });
    });
    const { plain, set } = both(pair, {
      posts: [
        { post: "P2-L", across: "1/8", leanAcross: 0.2, lean: 0.3 },
        { post: "P2-R", across: "-1/8", leanAcross: -0.2, lean: 0.3 },
        { post: "P3-R", x: "-60 1/2" },
      ],
    });
    const told = set.report!.posts.filter((own) => own.asSet !== undefined).map((own) => own.mark);
    expect(told).toEqual(["P2-L", "P2-R", "P3-R"]);
    expect(plain.report!.posts.every((own) => own.mark.endsWith("-L"))).toBe(true);
    expect(set.report!.assumptions.join()).toContain("but for what was measured");
    const [left, right] = ["P2-L", "P2-R"].map((mark) => set.members.find((own) => own.mark === mark)!);
    const apart = 44 - 8;
    for (const end of ["from", "to"] as const) {
      expect(right![end][0]).toBeCloseTo(left![end][0], 9);
      expect(right![end][1]).toBeCloseTo(-apart * INCH - left![end][1], 9);
      expect(right![end][2]).toBeCloseTo(left![end][2], 9);
    }
    expect(left!.from[1]).toBeCloseTo(INCH / 8, 9);
    const cut = ({ frame, ends, bores, lengths }: Piece) => JSON.stringify({ frame, ends, bores, lengths });
    const same = (mark: string) => cut(piece(set, mark)) === cut(piece(plain, mark));
    expect([same("P3-L"), same("P3-R"), same("B3-L"), same("B3-R")]).toEqual([true, false, true, false]);
    fits(set);
  });
});
