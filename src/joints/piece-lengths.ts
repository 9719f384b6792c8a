/**
 * The lengths of a piece, each with the two points it runs between.
 *
 * Every length is read off the same exact end functions that make the solid: s₁(u, v) at the high end, s₀(u, v) at the low
 * one, along the section's outline. Millimetres, in the piece's frame.
 *
 * @packageDocumentation
 */

import { type CompiledEnd, endAt } from "../kernel/end-compile.js";
import type { Frame } from "../kernel/frame.js";
import { closeIn, greatestOnOutline, type OutlineMaximum } from "../kernel/outline.js";
import { type Loop, loopsOf, pointOn, type Segment } from "../kernel/region.js";
import { extentAlong, farthestAlong } from "../kernel/region-extent.js";
import type { Sheet } from "../kernel/sheet.js";
import { SQUARE_SLOPE } from "../kernel/tolerance.js";
import type { Vec2 } from "../kernel/vec.js";
import type { Section } from "../members/section.js";
import type { MeasuredLength, NamedPoint, PieceLengths } from "./piece.js";
import { inwardAt, wallOf } from "./wall.js";
import { endWord, faceWord } from "./words.js";

/** All lengths of a piece with these two ends. */
export function pieceLengths(
  section: Section,
  frame: Frame,
  low: CompiledEnd,
  high: CompiledEnd,
): PieceLengths {
  const { region } = section;
  const out = (end: CompiledEnd, u: number, v: number): number => endAt(end, u, v).out;
  const fibre = (u: number, v: number): number => out(high, u, v) + out(low, u, v);
  const names = namesFor(frame);
  const atFibre = ([u, v]: Vec2, what: string): MeasuredLength => ({
    value: fibre(u, v),
    from: names.point(what, 0, u, v, -out(low, u, v)),
    to: names.point(what, 1, u, v, out(high, u, v)),
  });
  const extent = (lowAt: Reach, highAt: Reach, what: string): MeasuredLength => ({
    value: highAt.value + lowAt.value,
    from: names.point(what, 0, lowAt.at[0], lowAt.at[1], -lowAt.value),
    to: names.point(what, 1, highAt.at[0], highAt.at[1], highAt.value),
  });
  const loops = loopsOf(region);
  const reach = (end: CompiledEnd): Reach =>
    flatReach(region.outer, [end], 1) ?? greatestOnOutline(loops, (u, v) => out(end, u, v));
  const long = flatReach(region.outer, [low, high], 1) ?? greatestOnOutline([region.outer], fibre);
  const short =
    flatReach(region.outer, [low, high], -1) ?? greatestOnOutline([region.outer], (u, v) => -fibre(u, v));
  const axis = fibre(0, 0);
  return {
    blank: extent(reach(low), reach(high), "farthest point"),
    longPoint: atFibre(long.at, "long point"),
    shortPoint: atFibre(short.at, "short point"),
    squareCut: extent(squareReach(section, low), squareReach(section, high), "square-cut point"),
    top: atFibre(crown(region.outer, 1), ""),
    bottom: atFibre(crown(region.outer, -1), ""),
    ...(Number.isFinite(axis) ? { axis: atFibre([0, 0], "axis") } : {}),
  };
}

type Reach = { readonly value: number; readonly at: Vec2 };

/** The greatest sum of flat ends (times `sign`) on the outline in closed form; null when an end is shaped. */
function flatReach(outer: Loop, ends: readonly CompiledEnd[], sign: 1 | -1): OutlineMaximum | null {
  if (ends.some((e) => e.root.kind !== "leaf")) return null;
  let [c, a, b] = [0, 0, 0];
  for (const end of ends) {
    const sheet = end.sheets[0] as Sheet;
    c += sign * end.dir * sheet.c;
    a += sign * end.dir * sheet.a;
    b += sign * end.dir * sheet.b;
  }
  const slope = Math.hypot(a, b);
  // Level within a rounding of the outline's size: every fibre is as long, and the top is named.
  if (slope < SQUARE_SLOPE) return { value: c, at: crown(outer, 1) };
  const at = farthestAlong(outer, [a / slope, b / slope]);
  return { value: c + a * at[0] + b * at[1], at };
}

/** The outermost point of the outline in ±v, on the middle of the side. */
function crown(outer: Loop, sign: 1 | -1): Vec2 {
  const { least, greatest } = extentAlong(outer, [0, 1]);
  return [0, sign > 0 ? greatest : least];
}

/** How far an end reaches when its wall is cut square through: at each place the nearest contact over the wall decides. */
function squareReach(section: Section, end: CompiledEnd): Reach {
  const { outer } = section.region;
  const wall = wallOf(section);
  const shaped = end.hits.length > 0;
  if (!shaped || wall === 0) return greatestOnOutline([outer], (u, v) => endAt(end, u, v).out);
  return greatestOnOutline([outer], (_u, _v, segment, t) => leastOverWall(end, segment, t, wall));
}

const DEPTHS = 6;

/** The nearest contact over the wall behind a place: at an edge of the wall or inside it. */
function leastOverWall(end: CompiledEnd, segment: Segment, t: number, wall: number): number {
  const [u, v] = pointOn(segment, t);
  const [nu, nv] = inwardAt(segment, t);
  const nearer = (d: number): number => -endAt(end, u + d * nu, v + d * nv).out;
  let [depth, best] = [0, nearer(0)];
  for (let k = 1; k <= DEPTHS; k++) {
    const d = (wall * k) / DEPTHS;
    const x = nearer(d);
    if (x > best) [depth, best] = [d, x];
  }
  const step = wall / DEPTHS;
  if (depth === 0 || depth === wall) return -best;
  const [, closest] = closeIn(nearer, depth - step, depth + step, depth, best, wall);
  return -closest;
}

function namesFor(frame: Frame): {
  point: (what: string, end: 0 | 1, u: number, v: number, s: number) => NamedPoint;
} {
  return {
    point: (what, end, u, v, s) => {
      const where = u === 0 && v === 0 ? "" : faceWord(frame, u, v);
      const parts = [what, where].filter((x) => x !== "");
      return { name: `${parts.join(", ")}, ${endWord(frame, end)} end`, point: [u, v, s] };
    },
  };
}
