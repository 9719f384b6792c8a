/**
 * Random joints of an ordinary shop and beyond: round and rectangular, angles 20° to 90°, offsets, gaps, rolls.
 *
 * Every case is one the library must solve: headers are at least as wide as their branches.
 */
import type { Vec3 } from "../../src/kernel/index.js";
import {
  cross3,
  dot3,
  type EndCase,
  grown,
  type HeaderCase,
  halfWidth,
  type JointCase,
  type Outline,
  type SectionCase,
  SQUARE,
  unit3,
} from "./joint-case.js";
import { type Random, randomFrom } from "./random.js";

const RAD = Math.PI / 180;

/** What a random case is made of. */
export const CLASSES = [
  "round on round",
  "equal tubes",
  "rect on round",
  "round on rect",
  "rect on rect",
  "crest",
  "valley",
  "corner of two headers",
  "header and plane",
  "both ends",
] as const;
export type CaseClass = (typeof CLASSES)[number];

export function randomSection(random: Random, kind: "round" | "rect"): SectionCase {
  const hollow = random.chance(0.7);
  const wall = random.between(1.5, 5);
  if (kind === "round") {
    const radius = random.between(8, 30);
    return {
      outer: { kind: "round", radius },
      ...(hollow && { hole: { kind: "round" as const, radius: radius - wall } }),
    };
  }
  const [width, depth] = [random.between(20, 60), random.between(20, 60)];
  const corner = random.pick([0, wall, 2 * wall]);
  const hole = {
    kind: "rect" as const,
    width: width - 2 * wall,
    depth: depth - 2 * wall,
    corner: Math.max(0, corner - wall),
  };
  return { outer: { kind: "rect", width, depth, corner }, ...(hollow && { hole }) };
}

export const reachOf = (o: Outline): number =>
  o.kind === "round" ? o.radius : Math.hypot(o.width / 2, o.depth / 2) - (Math.SQRT2 - 1) * o.corner;

export interface HeaderWish {
  readonly shape: "round" | "rect";
  /** Degrees between branch and header, and of the header about the branch. */
  readonly angle: number;
  readonly turn: number;
  /** As wide as the branch to the last digit that doubles allow. */
  readonly equal?: boolean;
  /** Wider than the branch by this factor; random above 1 when not given. */
  readonly times?: number;
  /** And by this many millimetres. */
  readonly spare?: number;
  readonly gap?: number;
  /** Of the axes from each other, as a share of the branch's half width. */
  readonly offset?: number;
  /** Degrees a rectangular outline is turned about the header's own axis. */
  readonly roll?: number;
  /** Corner radius of a rectangular outline that is `roll`ed by 0, as a share of its width. */
  readonly corner?: number;
}

/** A header over a branch, its axis crossing the line beside the z axis at `z`. */
export function headerOver(random: Random, branch: Outline, z: number, wish: HeaderWish): HeaderCase {
  const [a, t] = [wish.angle * RAD, wish.turn * RAD];
  const axis: Vec3 = [Math.sin(a) * Math.cos(t), Math.sin(a) * Math.sin(t), Math.cos(a)];
  const n: Vec3 = [Math.sin(t), -Math.cos(t), 0];
  const needed = halfWidth(branch, n[0], n[1]);
  const gap = wish.gap ?? 0;
  const offset = (wish.offset ?? 0) * needed;
  const times = wish.equal ? 1 : (wish.times ?? random.between(1.02, 1.8));
  const half = (needed + Math.abs(offset)) * times + (wish.spare ?? 0) - gap;
  const m = cross3(axis, n);
  const roll = wish.shape === "rect" ? (wish.roll ?? random.pick([0, 90, random.between(0, 360)])) * RAD : 0;
  const across: Vec3 = unit3([
    Math.cos(roll) * n[0] + Math.sin(roll) * m[0],
    Math.cos(roll) * n[1] + Math.sin(roll) * m[1],
    Math.cos(roll) * n[2] + Math.sin(roll) * m[2],
  ]);
  const at: Vec3 = [n[0] * offset, n[1] * offset, z];
  if (wish.shape === "round") return { outline: { kind: "round", radius: half }, at, axis, across, gap };
  const depth = random.between(0.5, 1.5);
  const rough = { kind: "rect" as const, width: 1, depth, corner: wish.corner ?? random.pick([0, 0.1, 0.2]) };
  const k = half / halfWidth(rough, Math.cos(roll), -Math.sin(roll));
  return {
    outline: { kind: "rect", width: k, depth: depth * k, corner: rough.corner * k },
    at,
    axis,
    across,
    gap,
  };
}

/** How far below its own z a header may cut into a branch. */
function reachBelow(branch: Outline, header: HeaderCase): number {
  const cos = Math.abs(header.axis[2]);
  return (reachOf(grown(header.outline, header.gap)) + reachOf(branch) * cos) / Math.sqrt(1 - cos * cos);
}

/** The least height over the section that an end can have. */
function lowest(e: EndCase, branch: Outline): number {
  if (e.kind === "hit") return e.header.at[2] - reachBelow(branch, e.header);
  if (e.kind !== "plane") return Math.min(...e.of.map((x) => lowest(x, branch)));
  const [nx, ny, nz] = e.normal;
  const onAxis = e.point[2] + (nx * e.point[0] + ny * e.point[1]) / nz;
  return onAxis - (reachOf(branch) * Math.hypot(nx, ny)) / Math.abs(nz);
}

export const movePoints = (e: EndCase, point: (p: Vec3) => Vec3, direction: (p: Vec3) => Vec3): EndCase => {
  if (e.kind === "plane") return { ...e, point: point(e.point), normal: direction(e.normal) };
  if (e.kind === "select") {
    const of = e.of.map((x) => movePoints(x, point, direction)) as unknown as typeof e.of;
    return { ...e, point: point(e.point), normal: direction(e.normal), of };
  }
  if (e.kind !== "hit") return { ...e, of: e.of.map((x) => movePoints(x, point, direction)) };
  const { header } = e;
  const [axis, across] = [direction(header.axis), direction(header.across)];
  return { kind: "hit", header: { ...header, at: point(header.at), axis, across } };
};

/** Moves an end outwards so that every fibre is at least `least` mm long above z = 0. */
export function raised(e: EndCase, branch: Outline, least = 30): EndCase {
  const up = least - lowest(e, branch);
  return movePoints(
    e,
    (p) => [p[0], p[1], p[2] + up],
    (d) => d,
  );
}

/** The end seen in a mirror that lies in z = 0: an end for the other side. */
export function mirrored(e: EndCase): EndCase {
  const flip = (p: Vec3): Vec3 => [p[0], p[1], -p[2]];
  return movePoints(e, flip, flip);
}

const hitOn = (header: HeaderCase): EndCase => ({ kind: "hit", header });

function lifted(headers: readonly HeaderCase[], branch: Outline): EndCase[] {
  const all = raised({ kind: "min", of: headers.map(hitOn) }, branch);
  return all.kind === "min" ? [...all.of] : [all];
}

/** True when the thinner of two round headers passes right through the other, by 0.1 mm at least. */
function pierces(a: HeaderCase, b: HeaderCase): boolean {
  const n = unit3(cross3(a.axis, b.axis));
  const apart = Math.abs(dot3(n, [a.at[0] - b.at[0], a.at[1] - b.at[1], a.at[2] - b.at[2]]));
  return Math.abs(reachOf(a.outline) - reachOf(b.outline)) > apart + 0.1;
}

/** The random case with a number: class by class, repeatable. */
export function randomCase(number: number, start: number): JointCase {
  const random = randomFrom(start + 7919 * number);
  const cls = CLASSES[number % CLASSES.length]!;
  const rectBranch = cls === "rect on round" || cls === "rect on rect";
  const free =
    cls !== "equal tubes" && cls !== "round on round" && cls !== "round on rect" && random.chance(0.35);
  const section = randomSection(random, rectBranch || free ? "rect" : "round");
  const branch = section.outer;
  const shape = cls === "round on rect" || cls === "rect on rect" ? "rect" : "round";
  const wish = (more: Partial<HeaderWish> = {}): HeaderWish => ({
    shape,
    angle: random.chance(0.2) ? 90 : random.between(20, 90),
    turn: random.between(0, 360),
    gap: random.chance(0.3) ? random.between(0.5, 3) : 0,
    offset: random.chance(0.3) ? random.between(-0.6, 0.6) : 0,
    ...more,
  });
  const name = `${number} ${cls}`;
  const header = (more: Partial<HeaderWish> = {}, z = 0) => headerOver(random, branch, z, wish(more));
  const case1 = (high: EndCase, low: EndCase = SQUARE): JointCase => ({ name, section, ends: [low, high] });
  switch (cls) {
    case "equal tubes":
      return case1(lifted([header({ equal: true, gap: 0, offset: 0 })], branch)[0]!);
    case "crest":
    case "valley": {
      // Two headers in one plane with the branch, as rails over a post.
      const turn = random.between(0, 360);
      const same = { turn, offset: 0, gap: 0, equal: random.chance(0.3) };
      const [first, second] = [
        header({ ...same, angle: random.between(35, 85) }),
        header({ ...same, angle: 90 }),
      ];
      return case1({ kind: cls === "crest" ? "min" : "max", of: lifted([first, second], branch) });
    }
    case "corner of two headers": {
      const turn = random.between(0, 360);
      const at = { angle: random.between(40, 90), gap: 0 };
      const over = { angle: random.between(40, 90), gap: 0, turn: turn + random.between(60, 120) };
      const first = header({ ...at, turn });
      const second = header(over, random.between(-4, 4));
      // Headers of which neither passes right through the other make one loop that turns back: refused so far.
      const pair = pierces(first, second) ? [first, second] : [first, { ...second, at: first.at }];
      return case1({ kind: random.pick(["min", "max"]), of: lifted(pair, branch) });
    }
    case "header and plane": {
      const [top] = lifted([header()], branch);
      if (top?.kind !== "hit") return case1(SQUARE);
      const height = top.header.at[2] - reachOf(top.header.outline) * random.between(0.6, 1);
      const [tilt, way] = [Math.tan(random.between(0, 20) * RAD), random.between(0, 2 * Math.PI)];
      const normal: Vec3 = [tilt * Math.cos(way), tilt * Math.sin(way), 1];
      return case1({ kind: "min", of: [top, { kind: "plane", point: [0, 0, height], normal }] });
    }
    case "both ends":
      return case1(lifted([header()], branch)[0]!, mirrored(lifted([header()], branch)[0]!));
    default:
      return case1(lifted([header()], branch)[0]!);
  }
}
