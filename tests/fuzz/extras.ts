/**
 * What some of the random cases have besides: an end under a plan corner, a section that is not convex, a bore.
 *
 * Drawn from a stream of their own, so that the other cases stay what their numbers always were.
 */
import type { Bore, Region } from "../../src/kernel/index.js";
import { angleBar, channelBar } from "../../src/members/index.js";
import { drilledByRays } from "../support/drilled.js";
import {
  type EndCase,
  halfWidth,
  type JointCase,
  type Outline,
  type SectionCase,
} from "../support/joint-case.js";
import { corner } from "../support/named-cases.js";
import { volumeByRays } from "../support/quadrature.js";
import type { Random } from "../support/random.js";
import { movePoints, reachOf } from "../support/random-cases.js";

/** An angle or a channel without roundings in place of the section: a box `width` × `depth` less a smaller one. */
export interface Profile {
  readonly kind: "angle" | "channel";
  readonly width: number;
  readonly depth: number;
  readonly wall: number;
}

/** A post's end under two mitred rails that turn a corner in plan. */
export function underCorner(random: Random, branch: Outline): EndCase {
  const equal = branch.kind === "round" && random.chance(0.3);
  const half = equal ? branch.radius : reachOf(branch) * random.between(1.02, 1.6);
  const outline: Outline = random.chance(0.6)
    ? { kind: "round", radius: half }
    : {
        kind: "rect",
        width: 2 * half,
        depth: 2 * half * random.between(0.5, 1.5),
        corner: half * random.between(0.05, 0.3),
      };
  const turn = random.between(0, 360);
  const rise = random.pick([0, random.between(-0.8, 0.8)]);
  // The faces of rectangular rails meet in their miter only where both rise alike.
  const goesOn = outline.kind === "rect" ? rise : random.pick([0, rise, -rise]);
  return corner(outline, [turn, rise], [turn + random.pick([90, random.between(60, 150)]), goesOn]);
}

/** A profile that fits into an outline. */
export function profileIn(random: Random, o: Outline): Profile {
  const [a, b] =
    o.kind === "round"
      ? [0.7 * o.radius, 0.7 * o.radius]
      : [o.width / 2 - 0.3 * o.corner, o.depth / 2 - 0.3 * o.corner];
  const wall = 2 * Math.min(a, b) * random.between(0.08, 0.25);
  return { kind: random.pick(["angle", "channel"]), width: 2 * a, depth: 2 * b, wall };
}

export function regionOf({ kind, width, depth, wall }: Profile): Region {
  const sharp = { rootRadius: 0, toeRadius: 0 };
  if (kind === "angle") return angleBar({ width, depth, thickness: wall, ...sharp }).region;
  return channelBar({ width, depth, web: wall, flange: wall, ...sharp }).region;
}

/** Volume of a bar with a profile: that of its box less that of what is open, each by the quadrature, mm³. */
export function profileVolume(joint: JointCase, p: Profile, within: number, rays: number): number {
  const box = (width: number, depth: number, u: number, v: number): number => {
    const moved = (e: EndCase): EndCase =>
      movePoints(
        e,
        ([x, y, z]) => [x - u, y - v, z],
        (d) => d,
      );
    const [low, high] = joint.ends;
    const section: SectionCase = { outer: { kind: "rect", width, depth, corner: 0 } };
    return volumeByRays({ name: joint.name, section, ends: [moved(low), moved(high)] }, within, rays);
  };
  const { width, depth, wall } = p;
  const whole = box(width, depth, 0, 0);
  if (p.kind === "angle") return whole - box(width - wall, depth - wall, wall / 2, wall / 2);
  return whole - box(width - wall, depth - 2 * wall, wall / 2, 0);
}

/** A hole some 15 mm above z = 0, where every case has a whole section, through one wall or both, raked as far as there is room. */
export function boreThrough(random: Random, section: SectionCase): Bore {
  const way = random.between(0, 2 * Math.PI);
  const [x, y] = [Math.cos(way), Math.sin(way)];
  const room = halfWidth(section.hole ?? section.outer, y, -x);
  const r = Math.min(room * random.between(0.1, 0.5), 5);
  const beside = random.between(-1, 1) * (0.85 * room - r);
  const rake =
    random.pick([0, random.between(-1, 1)]) * Math.min(1, (12 - 1.5 * r) / (2 * reachOf(section.outer)));
  return {
    id: "drill",
    point: [beside * y, -beside * x, 15],
    direction: [x, y, rake],
    diameter: 2 * r,
    through: section.hole && random.chance(0.4) ? "first" : "both",
  };
}

/** What a bore takes out, mm³. */
export const boreVolume = drilledByRays;
