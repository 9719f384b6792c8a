/**
 * The true order of the trade on one guard: posts dry-set on their plates, measured, taken down, cut at the top and drilled
 * as measured, set; then the rails issued against the posts as they stand.
 *
 * At each stage exactly what is not made moves. The measured stair is the pottery studio's (invented) with other figures.
 * The order is common practice, no source; expected misfits are closed forms of the moves made here.
 */
import { describe, expect, it } from "vitest";
import { fitsOf, type Piece, solidOf } from "../../../src/joints/index.js";
import { validateSolid } from "../../../src/kernel/index.js";
import {
  type AsSet,
  type BuiltGuard,
  buildGuard,
  type Feature,
  type MadePiece,
  NOTHING_SET,
  type PostStage,
} from "../../../src/layout/index.js";
import { type PieceChanges, pieceChanges } from "../../../src/shop/index.js";
import { example, type Loose } from "../designs.js";

const FIT = 2e-6;
const ALL: readonly Feature[] = ["start", "end", "holes"];

/** The studio's guard with bars through its posts and bolted plates. */
function design(change: (document: Loose) => void = () => undefined): unknown {
  return example((d) => {
    d.endPosts = undefined;
    d.sections.bar = "round bar 1/2";
    d.infill = {
      ...{ type: "rails", section: "bar", clear: "4" },
      ...{ through: true, clearance: "1/32", past: "1" },
    };
    d.foot.holes = { diameter: "7/16", along: "2 3/4", across: "2 3/4" };
    change(d);
  });
}

/** The stair and the posts as they were found: treads higher, posts off by up to a quarter inch. */
const measured = (d: Loose): void => {
  d.stair.floorToFloor = "98 7/8";
  d.legs[0].posts = {
    behindNosing: "3",
    onTreads: [
      { tread: 1, behindNosing: "3 1/8" },
      { tread: 4, behindNosing: "2 15/16" },
      7,
      { tread: 10, behindNosing: "3 1/4" },
    ],
  };
  d.legs[1].posts.at = ["3", "33 3/16", "63 5/8", "93 3/4"];
};

const isPost = ({ role }: Piece): boolean => role === "post";
const isBase = ({ id }: Piece): boolean => id.endsWith("-base");

/** Posts and plates with something made, as one build solved them. */
function madeOf({ pieces }: BuiltGuard, features: readonly Feature[], set: boolean): MadePiece[] {
  return pieces.flatMap((piece): MadePiece[] => {
    if (isBase(piece)) return [{ piece, features: ALL, set, path: `made ${piece.mark}` }];
    return isPost(piece) ? [{ piece, features, set, path: `made ${piece.mark}` }] : [];
  });
}

function posts({ pieces }: BuiltGuard, stage: PostStage): AsSet["posts"] {
  return pieces.filter(isPost).map((own, i) => ({
    ...{ post: own.mark, stage, lean: 0, leanAcross: 0, across: 0, path: `posts[${i}]` },
    sigma: { x: 1, z: 1, lean: 0.1 },
  }));
}

/** Nothing but what is said may be found; every solid is valid. */
function sound(guard: BuiltGuard): BuiltGuard {
  expect(guard.diagnostics.map((d) => d.message)).toEqual([]);
  for (const piece of guard.pieces) {
    const solid = solidOf(piece);
    expect(solid.ok && validateSolid(solid.value), piece.id).toEqual([]);
  }
  return guard;
}

/** The worst gap over the root gap, and the worst overlap, of all contacts. */
function worst(guard: BuiltGuard): readonly [number, number] {
  const fits = fitsOf(guard).map((fit) => {
    if (!fit.ok) throw new Error("no fit");
    return fit.value;
  });
  return [
    Math.max(...fits.map((own) => own.gap - own.contact.gap)),
    Math.max(...fits.map((own) => own.overlap)),
  ];
}

const sameFrame = (a: Piece, b: Piece): boolean => JSON.stringify(a.frame) === JSON.stringify(b.frame);

const parts = ({ changed }: PieceChanges, which: (id: string) => boolean) =>
  new Set(changed.filter((own) => which(own.id)).flatMap((own) => own.numbers.map((n) => n.part)));

const POST = /-post-\d+$/;
const issued = sound(buildGuard(design()));
const drySet: AsSet = {
  ...NOTHING_SET,
  posts: posts(issued, "dry-set"),
  made: madeOf(issued, ["start"], false),
};

describe("posts dry-set on their plates, then measured", () => {
  const guard = sound(buildGuard(design(measured), undefined, drySet));

  it("keeps every foot and every plate to the last bit", () => {
    for (const [i, piece] of guard.pieces.entries()) {
      const was = issued.pieces[i] as Piece;
      expect(piece.id).toBe(was.id);
      if (isPost(piece)) expect([piece.ends[0], piece.cuts[0]]).toEqual([was.ends[0], was.cuts[0]]);
      if (isBase(piece)) {
        expect({ ...piece, frame: was.frame, identity: was.identity }).toEqual(was);
      }
    }
    // The first and the last post of the landing stand where they were drawn; the others do not.
    const moved = guard.pieces.filter((own, i) => isBase(own) && !sameFrame(own, issued.pieces[i] as Piece));
    expect(moved).toHaveLength(guard.pieces.filter(isBase).length - 2);
  });

  it("issues tops, holes and rails to what was measured, and nothing that is made", () => {
    const changes = pieceChanges(issued.pieces, guard.pieces, { states: guard.states });
    expect(changes.changed.flatMap((own) => own.numbers.filter((n) => n.made))).toEqual([]);
    expect([...changes.added, ...changes.gone]).toEqual([]);
    expect(parts(changes, (id) => POST.test(id))).toEqual(new Set(["length", "end", "holes"]));
    expect(changes.changed.some((own) => own.id.endsWith("-base"))).toBe(false);
    expect(changes.changed.some((own) => own.id === "stair-top")).toBe(true);
  });

  it("fits everywhere within 2e-6 mm", () => {
    const [gap, overlap] = worst(guard);
    expect(gap).toBeLessThan(FIT);
    expect(overlap).toBeLessThan(FIT);
  });

  it("says how far each piece has got", () => {
    const of = (id: string) => guard.states.find((own) => own.id === id);
    const open = { start: "designed", end: "designed", holes: "designed", place: "designed" };
    expect(of("stair-post-2")).toMatchObject({ ...open, start: "made", place: "dry-set" });
    const whole = { start: "made", end: "made", holes: "made", place: "dry-set" };
    expect(of("stair-post-2-base")).toMatchObject(whole);
    expect(of("stair-top")).toMatchObject(open);
  });
});

const cut = buildGuard(design(measured), undefined, drySet);
const set: AsSet = { ...NOTHING_SET, posts: posts(cut, "set"), made: madeOf(cut, ALL, true) };

describe("posts cut, drilled and set", () => {
  it("that stand where they were measured leave every number as it was issued", () => {
    const guard = sound(buildGuard(design(measured), undefined, set));
    expect(guard.misfits).toEqual([]);
    for (const piece of guard.pieces.filter((own) => isPost(own) || isBase(own))) {
      expect(piece).toBe(cut.pieces.find((own) => own.id === piece.id));
    }
    expect(pieceChanges(cut.pieces, guard.pieces, { over: FIT, overAngle: 1e-6 }).changed).toEqual([]);
  });

  // Along a level rail a post may stand anywhere: its top and its holes still fit.
  const slid = (d: Loose): void => {
    measured(d);
    d.legs[1].posts.at = ["3", "33 1/4", "63 1/2", "93 7/8"];
  };
  const guard = sound(buildGuard(design(slid), undefined, set));

  it("that slid on the landing: only rails and bars are issued anew, against the posts as they stand", () => {
    expect(guard.misfits).toEqual([]);
    const changes = pieceChanges(cut.pieces, guard.pieces, { states: guard.states });
    expect(
      changes.changed.map((own) => own.id).filter((id) => POST.test(id) || id.endsWith("-base")),
    ).toEqual([]);
    expect(changes.changed.map((own) => own.id)).toContain("bay-5-low");
    for (const own of changes.changed) expect(own.actions).toEqual(["re-cut"]);
    for (const piece of guard.pieces.filter(isPost)) {
      const was = cut.pieces.find((own) => own.id === piece.id) as Piece;
      const { frame, identity } = was;
      expect({ ...piece, frame, identity }).toEqual(was);
    }
  });

  it("fits within 2e-6 mm what was issued after measuring", () => {
    const [gap, overlap] = worst(guard);
    expect(gap).toBeLessThan(FIT);
    expect(overlap).toBeLessThan(FIT);
  });

  it("that slid on the stair no longer fit, by the move times the sine of the pitch", () => {
    const INCH = 25.4;
    const by = 0.25 * INCH;
    const off = buildGuard(
      design((d) => {
        measured(d);
        d.legs[0].posts.onTreads[2] = { tread: 7, behindNosing: "3 1/4" };
      }),
      undefined,
      set,
    );
    const rise = by * Math.sin(((off.report?.pitch ?? 0) * Math.PI) / 180);
    const mark = "P3";
    const found = off.misfits.filter((own) => own.piece === "stair-post-3");
    // The rail's underside is that much farther off the post's crown, square to the rail; each bar off its hole alike.
    const top = found.find((own) => own.feature === "end");
    expect(top).toMatchObject({ onto: "stair-top", kind: "stands-off" });
    expect(top?.by).toBeCloseTo(rise, 6);
    const holes = found.filter((own) => own.feature === "holes");
    expect(holes).toHaveLength(6);
    for (const own of holes) {
      expect(own.kind).toBe("off-line");
      expect(own.by).toBeCloseTo(rise, 6);
      expect(own.allowed).toBeCloseTo(INCH / 32, 9);
    }
    expect(off.misfits).toHaveLength(found.length);
    const said = off.diagnostics.filter((own) => own.code === "made-misfit");
    expect(said).toHaveLength(7);
    expect(said[0]).toMatchObject({ severity: "warning", path: `made ${mark}`, end: 1 });
    // Rails are cut to the post where it stands all the same.
    const low = fitsOf({ ...off, contacts: off.contacts.filter((own) => own.piece.endsWith("-low")) });
    for (const fit of low) expect(fit.ok && Math.max(fit.value.gap, fit.value.overlap)).toBeLessThan(FIT);
  });
});

describe("everything made and set", () => {
  it("is the same guard again, and nothing moves", () => {
    const all: AsSet = {
      ...set,
      made: cut.pieces.map((piece) => ({ piece, features: ALL, set: true, path: piece.mark })),
    };
    const guard = sound(buildGuard(design(measured), undefined, all));
    for (const [i, piece] of guard.pieces.entries()) expect(piece).toBe(cut.pieces[i]);
    expect(guard.misfits).toEqual([]);
    expect(guard.states.every((own) => own.place === "set" && own.end === "made")).toBe(true);
  });
});
