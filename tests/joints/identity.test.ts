/**
 * Same to cut, or left and right hand. A mirrored piece is never the same (design, section 5); which pieces are equal
 * follows here from how each was made: by turning, sliding, drawing the other way round, or mirroring one.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Joint, Piece } from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import { SAME_PIECE_MM } from "../../src/kernel/tolerance.js";
import { type Member, member, rectTube, type Section } from "../../src/members/index.js";
import {
  BAR20,
  cutPieces,
  FLAT,
  pieceOf,
  potteryGuard,
  RECT60X30,
  SQUARE40,
  TUBE42,
  TUBE48,
} from "./models.js";

interface Shape {
  readonly section: Section;
  readonly length: number;
  /** Normals of both cuts in the member's own axes (left, up, along). */
  readonly normals: readonly [Vec3, Vec3];
}

interface Lay {
  readonly x: number;
  /** Roll of the whole piece, cuts and all, degrees. */
  readonly roll?: number;
  readonly reversed?: boolean;
  readonly mirrored?: boolean;
}

/** A member along X laid as told, with its two joints. */
function laid(id: string, shape: Shape, lay: Lay): { member: Member; joints: Joint[] } {
  const roll = ((lay.roll ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(roll), Math.sin(roll)];
  // Along X with up Z: left is Y. A mirror changes left for right.
  const toLayout = ([u0, v, w]: Vec3): Vec3 => {
    const u = lay.mirrored ? -u0 : u0;
    return [w, c * u - s * v, s * u + c * v];
  };
  const [from, to]: [Vec3, Vec3] = [
    [lay.x, 0, 0],
    [lay.x + shape.length, 0, 0],
  ];
  const up = toLayout([0, 1, 0]);
  const made = lay.reversed
    ? member({ id, section: shape.section, from: to, to: from, up })
    : member({ id, section: shape.section, from, to, up });
  const joints = ([0, 1] as const).map(
    (k): Joint => ({
      kind: "cut",
      id: `${id}-${k}`,
      end: { member: id, end: lay.reversed ? ((1 - k) as 0 | 1) : k },
      cut: { type: "plane", normal: toLayout(shape.normals[k]) },
    }),
  );
  return { member: made, joints };
}

/** Identities of shapes laid in one model. */
function identities(...list: readonly (readonly [Shape, Lay])[]): Piece[] {
  const all = list.map(([shape, lay], i) => laid(`M${i}`, shape, lay));
  return cutPieces(
    all.map((a) => a.member),
    all.flatMap((a) => a.joints),
  );
}

const square: Vec3 = [0, 0, 1];
const leanUp: Vec3 = [0, -0.4, 1];
const leanLeft: Vec3 = [-0.3, 0, 1];
const handed: Shape = { section: SQUARE40, length: 600, normals: [leanUp, leanLeft] };

describe("pieces that are the same", () => {
  const sections: readonly (readonly [string, Section, readonly number[]])[] = [
    ["round tube", TUBE42, [0, 17, 90, 123.4, 180]],
    ["round bar", BAR20, [0, 45, 301]],
    ["square tube", SQUARE40, [0, 90, 180, 270]],
    ["rectangular tube", RECT60X30, [0, 180]],
    ["flat bar", FLAT, [0, 180]],
  ];
  const tilt = fc.double({ min: -0.6, max: 0.6, noNaN: true });

  it.each(sections)(
    "are found however one is slid, rolled by the section's symmetry or drawn from the other end: %s",
    (_name, section, rolls) => {
      fc.assert(
        fc.property(
          tilt,
          tilt,
          tilt,
          tilt,
          fc.constantFrom(...rolls),
          fc.boolean(),
          (a, b, c, d, roll, reversed) => {
            const shape: Shape = {
              section,
              length: 600,
              normals: [
                [a, b, 1],
                [c, d, 1],
              ],
            };
            const [first, second] = identities([shape, { x: 0 }], [shape, { x: 1000, roll, reversed }]);
            expect(first!.identity).toBe("M0");
            expect(second!.identity).toBe("M0");
            expect(second!.handOf).toBeUndefined();
          },
        ),
        { numRuns: 40 },
      );
    },
  );

  it("turn end for end into themselves: a trapezoid seen from either side", () => {
    // Both long points on top: over in plan, the low end is the high one.
    const trapezoid: Shape = {
      section: RECT60X30,
      length: 600,
      normals: [
        [0, 0.3, 1],
        [0, -0.3, 1],
      ],
    };
    const [, other] = identities([trapezoid, { x: 0 }], [trapezoid, { x: 1000, mirrored: true }]);
    expect(other!.identity).toBe("M0");
  });

  it("are told apart past the tolerance and not below it (definition)", () => {
    const plain: Shape = { section: TUBE42, length: 600, normals: [square, leanUp] };
    const longer = (by: number): string =>
      identities([plain, { x: 0 }], [{ ...plain, length: 600 + by }, { x: 1000 }])[1]!.identity;
    expect(longer(SAME_PIECE_MM)).toBe("M0");
    expect(longer(4 * SAME_PIECE_MM)).toBe("M1");
  });
});

describe("pieces that are hands of each other", () => {
  it("never share an identity, however they are laid, and each hand has its own", () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 90, 180, 270), fc.boolean(), (roll, reversed) => {
        const [a, b, c, d] = identities(
          [handed, { x: 0 }],
          [handed, { x: 1000, mirrored: true, roll, reversed }],
          [handed, { x: 2000, mirrored: true }],
          [handed, { x: 3000, roll, reversed }],
        );
        expect([a!.identity, b!.identity, c!.identity, d!.identity]).toEqual(["M0", "M1", "M1", "M0"]);
        expect([a!.handOf, b!.handOf, c!.handOf, d!.handOf]).toEqual([undefined, "M0", "M0", undefined]);
      }),
      { numRuns: 30 },
    );
  });

  it("round tube too, where only the clocking between its ends tells them apart", () => {
    const clocked: Shape = { section: TUBE48, length: 600, normals: [leanUp, leanLeft] };
    const skew: Shape = { section: TUBE48, length: 600, normals: [leanUp, [-0.28, -0.28, 1]] };
    for (const shape of [clocked, skew]) {
      const [, b] = identities([shape, { x: 0 }], [shape, { x: 1000, mirrored: true, roll: 40 }]);
      expect([b!.identity, b!.handOf]).toEqual(["M1", "M0"]);
    }
    // With both ends leaning one way a tube is its own mirror image.
    const even: Shape = { section: TUBE48, length: 600, normals: [leanUp, [0, 0.7, 1]] };
    const [, b] = identities([even, { x: 0 }], [even, { x: 1000, mirrored: true, roll: 77 }]);
    expect([b!.identity, b!.handOf]).toEqual(["M0", undefined]);
  });
});

describe("pieces that are neither", () => {
  it("differ in section, material, cut or roll that the section does not allow", () => {
    const plain: Shape = { section: SQUARE40, length: 600, normals: [square, leanUp] };
    const thick: Shape = {
      ...plain,
      section: rectTube({ width: 40, depth: 40, wall: 4, outerRadius: 0, innerRadius: 0 }),
    };
    const steeper: Shape = { ...plain, normals: [square, [0, -0.5, 1]] };
    const all = identities([plain, { x: 0 }], [thick, { x: 1000 }], [steeper, { x: 2000 }]);
    expect(all.map((p) => p.identity)).toEqual(["M0", "M1", "M2"]);
    expect(all.map((p) => p.handOf)).toEqual([undefined, undefined, undefined]);
    const onEdge: Shape = { section: RECT60X30, length: 600, normals: [square, leanUp] };
    // The same slope across the other side: another cut.
    const onFlat: Shape = { section: RECT60X30, length: 600, normals: [square, [-0.4, 0, 1]] };
    expect(identities([onEdge, { x: 0 }], [onFlat, { x: 1000 }])[1]!.identity).toBe("M1");
  });
});

describe("copes", () => {
  it("of equal posts along a rail share an identity; one offset to the left is the hand of one to the right", () => {
    const t = (35 * Math.PI) / 180;
    const at = (x: number, y = 0): Vec3 => [x, y, 900 + x * Math.tan(t)];
    const r = member({ id: "R", section: TUBE48, from: at(-3000), to: at(3000), role: "top-rail" });
    const p = (id: string, x: number, y = 0) =>
      member({ id, section: TUBE42, from: [x, y, at(x)[2] - 900], to: at(x, y), role: "post" });
    const turned = member({
      id: "T",
      section: TUBE42,
      from: at(600),
      to: [600, 0, at(600)[2] - 900],
      role: "post",
    });
    const cope = (id: string, end: 0 | 1 = 1): Joint => ({
      kind: "cope",
      id: `K${id}`,
      end: { member: id, end },
      onto: ["R"],
    });
    const pieces = cutPieces(
      [r, p("A", -600), p("B", 0), turned, p("L", 1000, 2.5), p("M", 1500, -2.5), p("N", 2000, 2.5)],
      [cope("L"), cope("M"), cope("N"), cope("T", 0)],
    );
    const identity = Object.fromEntries(pieces.map((x) => [x.id, [x.identity, x.handOf]]));
    expect(identity).toMatchObject({ A: ["A", undefined], B: ["A", undefined], T: ["A", undefined] });
    expect(identity).toMatchObject({ L: ["L", undefined], M: ["M", "L"], N: ["L", undefined] });
  });

  it("of the pottery guard fall into the groups its plan makes (by hand: equal bays, equal stations)", () => {
    const guard = potteryGuard();
    const groups = new Map<string, string[]>();
    for (const p of guard.pieces) groups.set(p.identity, [...(groups.get(p.identity) ?? []), p.id]);
    expect([...groups.values()].filter((g) => g.length > 1).sort()).toEqual([
      ["bay-1-low", "bay-4-low"],
      ["bay-2-low", "bay-3-low"],
      ["bay-5-low", "bay-7-low"],
      ["landing-post-1", "landing-post-4"],
      ["landing-post-2", "landing-post-3"],
      ...[
        [1, 2, 3, 4]
          .flatMap((n) => `stair-post-${n}-base`)
          .concat([1, 2, 3, 4].map((n) => `landing-post-${n}-base`)),
      ],
      ["stair-post-2", "stair-post-3", "stair-post-4"],
    ]);
    expect(pieceOf(guard, "stair-top").identity).toBe("stair-top");
  });
});
