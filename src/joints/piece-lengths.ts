/**
 * The lengths of a piece, each with the two points it runs between.
 *
 * Every length is read off the same exact end functions that make the solid: s₁(u, v) at the high end, s₀(u, v) at the low
 * one, along the section's outline. Millimetres, in the piece's frame.
 *
 * @packageDocumentation
 */

import { type CompiledEnd, outAt } from "../kernel/end-compile.js";
import type { Frame } from "../kernel/frame.js";
import {
  extremesOnOutline,
  greatestOnOutline,
  type OnOutline,
  type OutlineMaximum,
} from "../kernel/outline.js";
import { type Loop, pointOn, type Segment } from "../kernel/region.js";
import { extentAlong, farthestAlong } from "../kernel/region-extent.js";
import type { Sheet } from "../kernel/sheet.js";
import { SQUARE_SLOPE } from "../kernel/tolerance.js";
import type { Vec2 } from "../kernel/vec.js";
import type { Section } from "../members/section.js";
import { leastOverWall } from "./least-over-wall.js";
import type { MeasuredLength, NamedPoint, PieceLengths } from "./piece.js";
import { outlinePlace, wallOf } from "./wall.js";
import { endWord, faceWord } from "./words.js";

/** All lengths of a piece with these two ends. */
export function pieceLengths(
  section: Section,
  frame: Frame,
  low: CompiledEnd,
  high: CompiledEnd,
): PieceLengths {
  const { region } = section;
  const fibre = (u: number, v: number): number => outAt(high, u, v) + outAt(low, u, v);
  const names = namesFor(frame);
  const atFibre = ([u, v]: Vec2, what: string): MeasuredLength => ({
    value: fibre(u, v),
    from: names.point(what, 0, u, v, -outAt(low, u, v)),
    to: names.point(what, 1, u, v, outAt(high, u, v)),
  });
  const extent = (lowAt: Reach, highAt: Reach, what: string): MeasuredLength => ({
    value: highAt.value + lowAt.value,
    from: names.point(what, 0, lowAt.at[0], lowAt.at[1], -lowAt.value),
    to: names.point(what, 1, highAt.at[0], highAt.at[1], highAt.value),
  });
  const { outer } = region;
  const crowns = crownsOf(outer);
  // Beside a square end every fibre is as long as the other end says.
  const alone = isLevel(low) ? high : isLevel(high) ? low : null;
  const span = spanOf(outer, alone ? [alone] : [low, high], crowns);
  const reach = (end: CompiledEnd): Reach => {
    const out: OnOutline = (u, v) => outAt(end, u, v);
    const flat = flatReach(outer, [end], 1, crowns);
    if (flat) return flat;
    const outside = end === alone ? span.greatest : greatestOnOutline([outer], out);
    return greatestOnOutline(region.holes, out, outside);
  };
  const axis = fibre(0, 0);
  return {
    blank: extent(reach(low), reach(high), "farthest point"),
    longPoint: atFibre(span.greatest.at, "long point"),
    shortPoint: atFibre(span.least.at, "short point"),
    squareCut: extent(squareReach(section, low), squareReach(section, high), "square-cut point"),
    top: atFibre(crowns.top, ""),
    bottom: atFibre(crowns.bottom, ""),
    ...(Number.isFinite(axis) ? { axis: atFibre([0, 0], "axis") } : {}),
  };
}

type Reach = OutlineMaximum;

/** The greatest and the least sum of ends on the outline. */
function spanOf(
  outer: Loop,
  ends: readonly CompiledEnd[],
  crowns: Crowns,
): { readonly greatest: Reach; readonly least: Reach } {
  const [greatest, least] = [flatReach(outer, ends, 1, crowns), flatReach(outer, ends, -1, crowns)];
  if (greatest && least) return { greatest, least };
  return extremesOnOutline(outer, (u, v) => {
    let sum = 0;
    for (const end of ends) sum += outAt(end, u, v);
    return sum;
  });
}

/** True for a flat end square to the axis. */
function isLevel(end: CompiledEnd): boolean {
  const sheet = end.root.kind === "leaf" ? end.sheets[end.root.sheet] : undefined;
  return sheet !== undefined && Math.hypot(sheet.a, sheet.b) < SQUARE_SLOPE;
}

/** Where the sum of flat ends (times `sign`) is greatest on the outline, in closed form; null when an end is shaped. */
function flatReach(
  outer: Loop,
  ends: readonly CompiledEnd[],
  sign: 1 | -1,
  crowns: Crowns,
): OutlineMaximum | null {
  let [c, a, b] = [0, 0, 0];
  for (const end of ends) {
    if (end.root.kind !== "leaf") return null;
    const sheet = end.sheets[0] as Sheet;
    c += sign * end.dir * sheet.c;
    a += sign * end.dir * sheet.a;
    b += sign * end.dir * sheet.b;
  }
  const slope = Math.hypot(a, b);
  // Level within a rounding of the outline's size: every fibre is as long, and the top is named.
  if (slope < SQUARE_SLOPE) return { value: c, at: crowns.top };
  const at = farthestAlong(outer, [a / slope, b / slope]);
  return { value: c + a * at[0] + b * at[1], at };
}

/** The outermost points of the outline in ±v, on the middle of the side. */
interface Crowns {
  readonly top: Vec2;
  readonly bottom: Vec2;
}

function crownsOf(outer: Loop): Crowns {
  const { least, greatest } = extentAlong(outer, [0, 1]);
  return { top: [0, greatest], bottom: [0, least] };
}

/** How far an end reaches when its wall is cut square through: at each place the nearest contact over the wall decides. */
function squareReach(section: Section, end: CompiledEnd): Reach {
  const { outer } = section.region;
  const wall = wallOf(section);
  if (isLevel(end)) {
    const at = pointOn(outer[0] as Segment, 0);
    return { value: outAt(end, at[0], at[1]), at };
  }
  const shaped = end.hits.length > 0;
  if (!shaped || wall === 0) return greatestOnOutline([outer], (u, v) => outAt(end, u, v));
  return greatestOnOutline([outer], (_u, _v, segment, t) =>
    leastOverWall(end, outlinePlace(segment, t), wall),
  );
}

function namesFor(frame: Frame): {
  point: (what: string, end: 0 | 1, u: number, v: number, s: number) => NamedPoint;
} {
  const ends = [endWord(frame, 0), endWord(frame, 1)] as const;
  return {
    point: (what, end, u, v, s) => {
      const where = u === 0 && v === 0 ? "" : faceWord(frame, u, v);
      const comma = what === "" || where === "" ? "" : ", ";
      return { name: `${what}${comma}${where}, ${ends[end]} end`, point: [u, v, s] };
    },
  };
}
