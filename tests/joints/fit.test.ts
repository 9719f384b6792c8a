/**
 * After fitting no two pieces overlap and no joint stands open wider than its gap (design, section 5: −2e-6 to gap + 2e-6 mm).
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Contact, type Piece, solidOf } from "../../src/joints/index.js";
import { pointToLocal, type Vec3 } from "../../src/kernel/index.js";
import { contactRange, endPoints, materialDistance, placed, pointsInside, skinDistance } from "./fit.js";
import { frames, solveFrame } from "./frames.js";
import {
  cutPieces,
  pieceOf,
  post,
  potteryGuard,
  RECT60X30,
  rail,
  SQUARE40,
  TUBE42,
  TUBE48,
  withoutPlates,
} from "./models.js";

const TIGHT = 2e-6;

/** The joints of a solution whose mate is met on its skin; a miter's mate is met on a plane. */
function open(pieces: readonly Piece[], contacts: readonly Contact[]): string[] {
  const out: string[] = [];
  for (const c of contacts) {
    const [piece, mate] = [pieceOf({ pieces }, c.piece), pieceOf({ pieces }, c.onto)];
    const kind = piece.cuts[c.end].kind;
    if (kind === "miter" || piece.cuts[c.end].joint === "rule:last-rail") continue;
    const { least, greatest, count, shoulder } = contactRange(piece, mate, c);
    if (count === 0 || least < c.gap - TIGHT || greatest > c.gap + TIGHT || shoulder < c.gap - TIGHT) {
      out.push(
        `${c.piece} on ${c.onto}: ${least} to ${greatest}, shoulder ${shoulder}, gap ${c.gap}, ${count} points`,
      );
    }
  }
  return out;
}

describe("the pottery guard", () => {
  const guard = withoutPlates(potteryGuard());
  const all = guard.pieces.map(placed);

  it("stands on the skin of what it yields to, everywhere along each cut", () => {
    expect(guard.contacts.length).toBeGreaterThan(20);
    expect(open(guard.pieces, guard.contacts)).toEqual([]);
  });

  it("has both rails of the break on one plane", () => {
    const [a, b] = [pieceOf(guard, "stair-top"), pieceOf(guard, "landing-top")];
    // Through the break at half the turn: normal and point from B's own three points, none from its numbers.
    const ring = endPoints(b, 0, "stair-top").map((x) => x.p);
    const [p, q, r] = [ring[0]!, ring[4]!, ring[8]!];
    const sub = (x: Vec3, y: Vec3): Vec3 => [x[0] - y[0], x[1] - y[1], x[2] - y[2]];
    const [e, f] = [sub(q, p), sub(r, p)];
    const n: Vec3 = [e[1] * f[2] - e[2] * f[1], e[2] * f[0] - e[0] * f[2], e[0] * f[1] - e[1] * f[0]];
    const off = (x: Vec3): number => {
      const w = sub(x, p);
      return Math.abs(w[0] * n[0] + w[1] * n[1] + w[2] * n[2]) / Math.hypot(...n);
    };
    const mates = endPoints(a, 1, "landing-top");
    expect(mates.length).toBeGreaterThan(20);
    for (const x of [...ring, ...mates.map((m) => m.p)]) expect(off(x)).toBeLessThan(TIGHT);
    // Round rails of one size: their outer edges are one ellipse, on both skins.
    for (const { p: x } of mates) {
      const [u, v] = pointToLocal(b.frame, x);
      expect(Math.abs(materialDistance(b.section, u, v))).toBeLessThan(TIGHT);
    }
  });

  it("has no point of a piece inside another", () => {
    let pairs = 0;
    for (const one of all) {
      for (const other of all) {
        if (one === other) continue;
        pairs++;
        expect(pointsInside(one, other, 0.06), `${one.piece.id} in ${other.piece.id}`).toBe(0);
      }
    }
    expect(pairs).toBe(all.length * (all.length - 1));
  });

  it("is judged by checks that can fail: a post a millimetre too high is inside its rail, a low one stands open", () => {
    const lifted = (by: number): Piece => {
      const p = pieceOf(guard, "stair-post-2");
      return {
        ...p,
        frame: { ...p.frame, origin: [p.frame.origin[0], p.frame.origin[1], p.frame.origin[2] + by] },
      };
    };
    const high = lifted(1);
    expect(pointsInside(placed(high), placed(pieceOf(guard, "stair-top")), 0.06)).toBeGreaterThan(10);
    const contact = guard.contacts.find((c) => c.piece === high.id)!;
    const others = guard.pieces.filter((p) => p.id !== high.id);
    expect(open([...others, high], [contact])).toHaveLength(1);
    expect(open([...others, lifted(-0.001)], [contact])).toHaveLength(1);
  });
});

describe("small frames", () => {
  it("stand on their mates' skins, a gap away where one is asked for (random frames)", () => {
    let joints = 0;
    fc.assert(
      fc.property(frames, (frame) => {
        const { pieces, contacts } = solveFrame(frame);
        const whole = new Set(pieces.filter((p) => p.status === "ok" && solidOf(p).ok).map((p) => p.id));
        const own = contacts.filter((c) => whole.has(c.piece) && whole.has(c.onto));
        // Under a break a post may rest on one rail only: the other is a contact without points.
        const single = own.filter(
          (c) => own.filter((d) => d.piece === c.piece && d.end === c.end).length === 1,
        );
        joints += single.length;
        expect(open(pieces, single)).toEqual([]);
      }),
      { numRuns: 60 },
    );
    expect(joints).toBeGreaterThan(150);
  });

  it("fit at a crest and at a valley over a post, without overlap", () => {
    for (const z of [400, 1500]) {
      for (const [railSection, postSection] of [
        [TUBE48, TUBE42],
        [TUBE48, TUBE48],
        [SQUARE40, SQUARE40],
        [RECT60X30, TUBE42],
      ] as const) {
        const pieces = cutPieces([
          rail("A", [-900, 0, z], [0, 0, 900], { section: railSection }),
          rail("B", [0, 0, 900], [900, 0, 900], { section: railSection }),
          post("P", [0, 0, 0], [0, 0, 900], { section: postSection }),
        ]);
        const [a, b, p] = pieces.map(placed) as [
          ReturnType<typeof placed>,
          ReturnType<typeof placed>,
          ReturnType<typeof placed>,
        ];
        for (const r of [a, b]) {
          expect(pointsInside(p, r, 0.06)).toBe(0);
          expect(pointsInside(r, p, 0.06)).toBe(0);
        }
        // Every point of the post's top is on one rail's skin at least, and outside both where they are rails.
        for (const onto of ["A", "B"]) {
          const mate = pieceOf({ pieces }, onto);
          const points = endPoints(pieces[2]!, 1, onto);
          expect(points.length).toBeGreaterThan(10);
          for (const { p: x } of points) {
            const [u, v] = pointToLocal(mate.frame, x);
            expect(Math.abs(skinDistance(mate.section, u, v))).toBeLessThan(TIGHT);
          }
        }
      }
    }
  });
});
