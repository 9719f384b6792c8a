/**
 * Random small guards for fast-check, said in words that can be moved, scaled, mirrored and drawn the other way round.
 */
import fc from "fast-check";
import {
  type EndCut,
  type Joint,
  type JointSolution,
  massOf,
  type Piece,
  solveJoints,
} from "../../src/joints/index.js";
import type { Vec3 } from "../../src/kernel/index.js";
import {
  type Member,
  member,
  type Role,
  rectBar,
  rectTube,
  roundBar,
  roundTube,
  type Section,
} from "../../src/members/index.js";

/** A member whose section is known at any scale, and whose up is stated. */
export interface Part {
  readonly id: string;
  readonly section: (k: number) => Section;
  readonly from: Vec3;
  readonly to: Vec3;
  readonly up: Vec3;
  readonly role: Role;
}

export interface Frame {
  readonly parts: readonly Part[];
  readonly joints: readonly Joint[];
  readonly gap: number;
}

const round = (od: number, wall: number) => (k: number) => roundTube({ od: k * od, wall: k * wall });
const rod = (od: number) => (k: number) => roundBar({ od: k * od });
const rect = (w: number, d: number, wall: number, r: number) => (k: number) =>
  rectTube({
    width: k * w,
    depth: k * d,
    wall: k * wall,
    outerRadius: k * r,
    innerRadius: k * Math.max(0, r - wall),
  });
const flat = (w: number, d: number) => (k: number) => rectBar({ width: k * w, depth: k * d });

interface Sized {
  readonly section: (k: number) => Section;
  readonly width: number;
}
const RAILS: readonly Sized[] = [
  { section: round(48.3, 3.2), width: 48.3 },
  { section: round(60.3, 3.6), width: 60.3 },
  { section: rect(50, 50, 3, 0), width: 50 },
  { section: rect(60, 40, 3, 6), width: 48 },
  { section: flat(50, 15), width: 50 },
];
const POSTS: readonly Sized[] = [
  { section: round(42.4, 3.2), width: 42.4 },
  { section: round(33.7, 2.6), width: 33.7 },
  { section: rect(40, 40, 3, 0), width: 40 },
  { section: rect(40, 30, 3, 6), width: 40 },
  { section: flat(40, 12), width: 40 },
  { section: rod(25), width: 25 },
];
const LOWS: readonly ((k: number) => Section)[] = [
  rod(12),
  rect(20, 20, 2, 0),
  round(21.3, 2),
  rect(25, 15, 2, 3),
  flat(10, 30),
];

const RAD = Math.PI / 180;
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1000 }).map((k) => min + ((max - min) * k) / 1000);

/**
 * Two rails that break over a post, one post under each rail beside it (offset, with a gap), a last post flush with the
 * upper rail's end, and a low rail between two posts.
 */
export const frames: fc.Arbitrary<Frame> = fc
  .record({
    rail: fc.constantFrom(...RAILS),
    posts: fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(...POSTS))),
    low: fc.constantFrom(...LOWS),
    rake: fc.oneof(fc.constant(0), between(-50, 50)),
    second: fc.oneof(fc.constant(0), between(-45, 45)),
    offsets: fc.tuple(between(-0.9, 0.9), between(-0.9, 0.9)),
    gaps: fc.tuple(fc.constantFrom(0, 1.6), between(0, 3)),
    gap: fc.constantFrom(0, 0, 1),
    drawnDown: fc.tuple(fc.boolean(), fc.boolean(), fc.boolean()),
    lowSlope: between(-30, 30),
    flip: fc.tuple(fc.boolean(), fc.boolean()),
  })
  .map((g): Frame => {
    const at = (x: number): Vec3 => [x, 0, 900 + x * Math.tan((x < 0 ? g.rake : g.second) * RAD)];
    const foot = (x: number): Vec3 => [x, 0, -900];
    const spare = (p: Sized) => (g.rail.width - p.width) / 2;
    const shift = ([x, , z]: Vec3, y: number): Vec3 => [x, y, z];
    const upOfRail = (slope: number): Vec3 => [-Math.sin(slope * RAD), 0, Math.cos(slope * RAD)];
    const straight = (id: string, a: Vec3, b: Vec3, slope: number, flip: boolean): Part => ({
      ...{ id, section: g.rail.section, up: upOfRail(slope), role: "top-rail" as const },
      ...(flip ? { from: b, to: a } : { from: a, to: b }),
    });
    const standing = (i: 0 | 1 | 2, x: number, y: number): Part => {
      const [top, bottom] = [shift(at(x), y), shift(foot(x), y)];
      const down = g.drawnDown[i];
      const up: Vec3 = [1, 0, 0];
      const { section } = g.posts[i] as Sized;
      return { id: `P${i}`, section, up, role: "post", from: down ? top : bottom, to: down ? bottom : top };
    };
    const y0 = g.offsets[0] * spare(g.posts[0] as Sized);
    const y1 = g.offsets[1] * spare(g.posts[1] as Sized);
    // Beside the break, clear of it: the first under A, the second under B, the third under the break itself.
    const posts = [standing(0, -500, y0), standing(1, 500, y1), standing(2, 0, 0)];
    const cope = (i: 0 | 1, onto: string): Joint => ({
      kind: "cope",
      id: `K${i}`,
      end: { member: `P${i}`, end: g.drawnDown[i] ? 0 : 1 },
      onto: [onto],
      gap: g.gaps[i],
    });
    const half = 250 * Math.tan(g.lowSlope * RAD);
    const low: Part = {
      ...{ id: "L", section: g.low, from: [-500, 0, 100 - half], to: [0, 0, 100 + half] },
      ...{ up: upOfRail(g.lowSlope), role: "rail" },
    };
    const lowCut: Joint = { kind: "cope", id: "KL", end: { member: "L", end: 0 }, onto: ["P0"] };
    return {
      parts: [
        straight("A", at(-1000), at(0), g.rake, g.flip[0]),
        straight("B", at(0), at(1000), g.second, g.flip[1]),
        ...posts,
        low,
      ],
      joints: [cope(0, "A"), cope(1, "B"), lowCut],
      gap: g.gap,
    };
  });

/** What is to be done to a frame before it is solved. */
export interface Move {
  readonly point?: (p: Vec3) => Vec3;
  readonly direction?: (d: Vec3) => Vec3;
  readonly scale?: number;
  /** Ids of parts to draw the other way round. */
  readonly reverse?: readonly string[];
}

export function membersOf(frame: Frame, move: Move = {}): Member[] {
  const { point = (p) => p, direction = (d) => d, scale = 1, reverse = [] } = move;
  const at = (p: Vec3): Vec3 => point([scale * p[0], scale * p[1], scale * p[2]]);
  return frame.parts.map((p) => {
    const turned = reverse.includes(p.id);
    return member({
      ...{ id: p.id, role: p.role, section: p.section(scale), up: direction(p.up) },
      from: at(turned ? p.to : p.from),
      to: at(turned ? p.from : p.to),
    });
  });
}

export function jointsOf(frame: Frame, { scale = 1, reverse = [] }: Move = {}): Joint[] {
  return frame.joints.map((j) => {
    if (j.kind !== "cope") return j;
    const end = reverse.includes(j.end.member) ? ((1 - j.end.end) as 0 | 1) : j.end.end;
    return { ...j, end: { ...j.end, end }, gap: scale * (j.gap ?? frame.gap) };
  });
}

export function solveFrame(frame: Frame, move: Move = {}): JointSolution {
  const rules = { gap: (move.scale ?? 1) * frame.gap };
  return solveJoints({ members: membersOf(frame, move), joints: jointsOf(frame, move), rules });
}

/** Numbers of a piece that belong to it and not to where it stands. */
export interface Measure {
  readonly status: string;
  /** Millimetres. */
  readonly lengths: readonly number[];
  readonly ends: readonly EndMeasure[];
  /** mm³; NaN where there is no solid. */
  readonly volume: number;
}

export interface EndMeasure {
  readonly kind: string;
  readonly fromSquare: number;
  readonly miter: number;
  readonly bevel: number;
  /** Sorted, so that names and sides do not matter. */
  readonly arris: readonly number[];
  readonly copes: readonly {
    readonly onto: string;
    readonly angle: number;
    readonly offset: number;
    readonly gap: number;
  }[];
  readonly dihedral: readonly number[];
}

function endMeasure(cut: EndCut): EndMeasure {
  return {
    kind: cut.kind,
    fromSquare: cut.saw?.fromSquare ?? 0,
    miter: cut.saw?.miter ?? 0,
    bevel: cut.saw?.bevel ?? 0,
    arris: cut.arris.map((m) => m.offset).sort((a, b) => a - b),
    copes: cut.cope
      .map(({ onto, angle, offset, gap }) => ({ onto, angle, offset, gap }))
      .sort((a, b) => (a.onto < b.onto ? -1 : 1)),
    dihedral: cut.dihedral ? [cut.dihedral.least, cut.dihedral.greatest] : [],
  };
}

export function measure(piece: Piece): Measure {
  const { lengths } = piece;
  const made = massOf(piece);
  const all = [
    lengths.blank,
    lengths.longPoint,
    lengths.shortPoint,
    lengths.squareCut,
    lengths.top!,
    lengths.bottom!,
    lengths.axis!,
  ];
  return {
    status: piece.status,
    lengths: all.map((l) => l.value),
    ends: piece.cuts.map(endMeasure),
    volume: made.ok ? made.value.volume : Number.NaN,
  };
}

export function measures(solution: JointSolution): Map<string, Measure> {
  return new Map(solution.pieces.map((p) => [p.id, measure(p)]));
}
