/**
 * Infill, handrails and toe boards between and beside posts that stand off: whatever meets a post fits it, whatever does not stays
 * clear of it.
 *
 * How near a sheet or a bar comes to a post is measured here on its corners: their distance from the post's faces in the post's own
 * frame (plane geometry). Names the documents of the other tests of this folder.
 */
import { describe, expect, it } from "vitest";
import { fitOf, type Piece, solidOf } from "../../../src/joints/index.js";
import { pointToLocal, pointToParent } from "../../../src/kernel/frame.js";
import { type BuiltGuard, buildGuard } from "../../../src/layout/build-guard.js";
import { type AsSetPost, NOTHING_SET } from "../../../src/layout/index.js";
import { type Loose, plain } from "../designs.js";
import { handrailOf, twoFlights } from "../handrail-designs.js";

const SIGMA = { x: 1, z: 1, lean: 0.1 };

/** The guard with every post off: by a few millimetres, and leaning `times` a few tenths of a degree this way and that. */
function off(document: Loose, times: number): BuiltGuard {
  const designed = buildGuard(document);
  const known = new Map(designed.report!.posts.map((post) => [post.mark, post]));
  const marks = designed.members.flatMap((own) => (own.role === "post" ? [own.mark ?? own.id] : []));
  const posts = marks.map((post, i): AsSetPost => {
    const { x, baseZ } = known.get(post) ?? known.get(post.replace(/-R$/, "-L"))!;
    return {
      ...{ post, stage: "set", x: x + 2 * ((i % 3) - 1), baseZ: baseZ + (i % 2 === 0 ? 1 : -1) },
      ...{ lean: times * [0.2, -0.1, 0.3][i % 3]!, leanAcross: times * [0, 0.1, -0.1, 0.05][i % 4]! },
      ...{ across: [0, 0.5, -0.4, 0][i % 4]!, sigma: SIGMA, path: `posts[${i}]` },
    };
  });
  const built = buildGuard(document, undefined, { ...NOTHING_SET, posts });
  expect(built.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
  return built;
}

function sound({ pieces, contacts }: BuiltGuard): void {
  const bad = pieces.filter((own) => own.status !== "ok" || !solidOf(own).ok).map((own) => own.id);
  for (const contact of contacts) {
    const fit = fitOf(contact, pieces);
    if (!fit.ok || fit.value.overlap > 2e-6 || fit.value.gap > contact.gap + 2e-6) bad.push(contact.joint);
  }
  expect(bad).toEqual([]);
}

/** Least distance of a piece's corners and edges' ends from the up- and downhill faces of the posts beside it. */
function clearOfPosts(own: Piece, posts: readonly Piece[]): number {
  const solid = solidOf(own);
  if (!solid.ok) throw new Error(own.id);
  const points = solid.value.vertices.map((p) => pointToParent(own.frame, p));
  const gaps = posts.flatMap((post) => {
    const half = post.section.shape.kind === "rect-tube" ? post.section.shape.depth / 2 : Number.NaN;
    return points.map((p) => Math.abs(pointToLocal(post.frame, p)[1]) - half);
  });
  return Math.min(...gaps);
}

const filled = (infill: Loose) =>
  plain((document: Loose) => {
    document.sections.bar = "square bar 1/2";
    document.infill = infill;
  });

describe("infill between posts that lean", () => {
  const posts = (built: BuiltGuard) => built.pieces.filter((own) => own.role === "post");

  it("sheets keep their distance from both posts over their whole height, and no more", () => {
    const clear = 12.7;
    const built = off(filled({ type: "panel", thickness: "1/4", clear: "1/2" }), 5);
    sound(built);
    const sheets = built.pieces.filter((own) => own.id.includes("panel"));
    expect(sheets).toHaveLength(7);
    for (const sheet of sheets) {
      const near = clearOfPosts(sheet, posts(built));
      expect(near, sheet.id).toBeGreaterThanOrEqual(clear - 1e-6);
      // What a post leans across turns its face by a hair over the sheet's thickness and the rail's width.
      expect(near, sheet.id).toBeLessThanOrEqual(clear + 0.05);
    }
  });

  it("plumb bars stay clear of leaning posts, and no space is wider than asked at its wider end", () => {
    const asked = 98.425;
    const built = off(filled({ type: "bars", section: "bar", clear: "3 7/8" }), 5);
    sound(built);
    const bars = built.pieces.filter((own) => /-bar-\d+$/.test(own.id));
    expect(bars.length).toBeGreaterThan(40);
    for (const bar of bars) expect(clearOfPosts(bar, posts(built)), bar.id).toBeGreaterThan(0);
    for (const bay of built.report!.infill) expect(bay.clear).toBeLessThanOrEqual(asked + 1e-6);
    // The widest space of a bay, measured: from a post's face at a bar's two ends to the bar beside it.
    const [p1] = posts(built) as [Piece];
    const solid = solidOf(bars[0]!);
    if (!solid.ok) throw new Error("no bar");
    const away = solid.value.vertices.map((p) => {
      const local = pointToLocal(p1.frame, pointToParent(bars[0]!.frame, p));
      return local[1] - 19.05;
    });
    expect(Math.max(...away) - 12.7).toBeLessThanOrEqual(asked);
    expect(built.report!.infill[0]!.clear).toBeGreaterThan(Math.min(...away));
  });

  it("bars along the rails are cut to their posts", () => {
    sound(off(filled({ type: "rails", section: "bar", clear: "3 1/4" }), 3));
  });
});

const wide = (change: (document: Loose) => void) => (document: Loose) => {
  Object.assign(document.legs[1].turn, { past: 700 });
  Object.assign(document.legs[1], { length: 1800, posts: { at: [300, 1500] } });
  Object.assign(document.legs[2].turn, { before: 700 });
  change(document);
};
const toe = (face: string) => (document: Loose) => {
  document.toeBoard = { section: "toe", gap: 12, face, legs: ["landing", "landing-2"] };
};

describe("what stands beside posts that are off", () => {
  it("brackets from posts and a handrail turned into one", () => {
    const built = off(plain(handrailOf()), 3);
    sound(built);
    expect(built.pieces.filter(({ id }) => id.includes("bracket")).length).toBeGreaterThan(7);
  });

  it.each([
    [
      "between, round corner posts",
      twoFlights({ side: "left", angle: 90, corner: "post" }, wide(toe("between"))),
    ],
    [
      "in front, round corner posts",
      twoFlights({ side: "right", angle: -45, corner: "post" }, wide(toe("inside"))),
    ],
    ["between, a pair that turns level", twoFlights({ side: "both", angle: 90 }, wide(toe("between")))],
  ])("toe boards %s", (_, document) => {
    const built = off(document, 2);
    sound(built);
    expect(built.pieces.filter(({ id }) => id.includes("toe-board")).length).toBeGreaterThan(3);
  });
});
