/**
 * What becomes of faces that end in a needle too thin for the mesh?
 *
 * Where a ridge runs almost along a side of the section, the face between the two ends in a needle: two straight edges that
 * come together in its tip. What is thinner than an edge may be short would be turned over by welding, or by the rounding
 * of a file. It is left off: the foot, the end of its shorter edge, becomes a point of the longer one, and beyond it the
 * two edges are one. Where the faces beside the needle stand back to back, as on a thin fin, or are needles with the same
 * tip, as on a spire, it holds them apart and must stay. A spire that welding has closed at its foot holds nothing apart and
 * is left off, also where its shorter edges are pieces of curves, so short that they are straight: they get no points.
 *
 * @packageDocumentation
 */
import { evaluate } from "../curve/curve.js";
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { normalAt } from "../surface.js";
import { cross, distance, dot, length, sub, type Vec3 } from "../vec.js";

/** Needles of a solid. */
export interface Needles {
  /** Straight edges that get vertices of the solid as points of their own, in order from the edge's start. */
  readonly feet: ReadonlyMap<number, readonly number[]>;
  /** Curved edges of spires that are left off: they get no points. */
  readonly bare: ReadonlyMap<number, null>;
  /** How many needles are left off. */
  readonly cut: number;
  /** True when one that must stay has lost half its angle by welding. */
  readonly lost: boolean;
}

/** What is left of an edge in a loop: of a straight one, from where the last needle was cut off to where the next was. */
interface Side {
  readonly edge: number;
  readonly isLine: boolean;
  /** True also of a curve that leaves its chord by less than a needle is thick. */
  readonly isStraight: boolean;
  readonly from: number;
  readonly to: number;
}

/** What is known while the loops of a solid are followed, and what was found. */
interface Look {
  readonly solid: Solid;
  readonly same: readonly number[];
  readonly beside: readonly number[];
  readonly within: number;
  /** The needles that end in each vertex. */
  readonly tips: ReadonlyMap<number, Tip>;
  readonly feet: Map<number, number[]>;
  readonly bare: Map<number, null>;
  cut: number;
  lost: boolean;
}

/** The needles that end in a vertex: how many between lines; of all, the shorter edges, and the longer ones with the feet on them. */
interface Tip {
  lines: number;
  readonly short: Set<number>;
  readonly on: Set<string>;
}

/**
 * Finds needles.
 *
 * @param same - see `EdgeSamples`
 * @param beside - faces by edge: that of its first use at 2e, of its second at 2e + 1
 * @param within - needles whose foot is nearer to their other side are left off, millimetres
 */
export function needlesOf(
  solid: Solid,
  same: readonly number[],
  beside: readonly number[],
  within: number,
): Needles {
  const tips = new Map<number, Tip>();
  const found = { feet: new Map(), bare: new Map(), cut: 0, lost: false };
  const look: Look = { solid, same, beside, within, tips, ...found };
  const all = solid.faces.flatMap(({ loops }) => loops.map((loop) => sidesOf(look, loop)));
  for (const sides of all) {
    for (const [k, a] of sides.entries()) {
      const b = sides[(k + 1) % sides.length] as Side;
      const needle = needleAt(look, a, b);
      if (!needle) continue;
      const tip = tips.get(a.to) ?? { lines: 0, short: new Set(), on: new Set() };
      if (a.isLine && b.isLine) tip.lines++;
      const [long, foot] = longAndFoot(needle, a, b);
      tip.short.add((long === a ? b : a).edge);
      tip.on.add(`${long.edge} ${foot}`);
      tips.set(a.to, tip);
    }
  }
  for (const sides of all) cutNeedles(look, sides);
  for (const [e, on] of look.feet) {
    const { from, to } = solid.edges[e] as Edge;
    const [start, end] = [from, to].map((v) => solid.vertices[v] as Vec3) as [Vec3, Vec3];
    const whole = sub(end, start);
    const along = (v: number): number => dot(sub(solid.vertices[v] as Vec3, start), whole);
    on.sort((a, b) => along(a) - along(b));
  }
  return look;
}

function sidesOf({ solid, same, within }: Look, loop: readonly EdgeUse[]): Side[] {
  const sides = loop.map(({ edge: e, forward }): Side => {
    const edge = solid.edges[e] as Edge;
    const isLine = edge.curve.kind === "line";
    const [a, b] = [same[edge.from] as number, same[edge.to] as number];
    const isStraight = isLine || bend(solid, edge) < within;
    return { edge: e, isLine, isStraight, from: forward ? a : b, to: forward ? b : a };
  });
  return sides.filter(({ from, to }) => from !== to);
}

/** How far an edge leaves its chord, seen at its quarters, millimetres. */
function bend({ vertices }: Solid, { curve, t0, t1, from, to }: Edge): number {
  const [p, q] = [vertices[from] as Vec3, vertices[to] as Vec3];
  const whole = sub(q, p);
  const off = [1, 2, 3].map((k) => {
    const u = sub(evaluate(curve, t0 + ((t1 - t0) * k) / 4), p);
    return length(cross(u, whole));
  });
  return Math.max(...off) / length(whole);
}

/** The needle between two sides: both from its tip to their far ends; null where there is none. */
function needleAt({ solid, within }: Look, a: Side, b: Side): readonly [Vec3, Vec3] | null {
  if (!a.isStraight || !b.isStraight || a.edge === b.edge) return null;
  const [far, tip, end] = [a.from, a.to, b.to].map((v) => solid.vertices[v]) as [Vec3, Vec3, Vec3];
  const [u, w] = [sub(far, tip), sub(end, tip)];
  const [short, long] = [length(u), length(w)].sort((x, y) => x - y) as [number, number];
  // An edge no longer than a needle is thick is the blunt end of one.
  if (short < within || dot(u, w) <= 0) return null;
  // Only a line can take a foot.
  if (!longAndFoot([u, w], a, b)[0].isLine) return null;
  return length(cross(u, w)) / long < within ? [u, w] : null;
}

function cutNeedles(look: Look, all: readonly Side[]): void {
  let sides = all;
  for (let k = 0; k < sides.length && sides.length > 1; k++) {
    const next = (k + 1) % sides.length;
    const [a, b] = [sides[k], sides[next]] as [Side, Side];
    if (sides.length === 3 && isBlunt(look, a, b, sides[(k + 2) % 3] as Side)) continue;
    const left = withoutNeedle(look, a, b);
    if (left === null) continue;
    look.cut++;
    sides = sides.flatMap((s, i) => (i === k ? left : i === next ? [] : [s]));
    k = -1;
  }
}

/** True when two sides of a triangle meet at the blunt end of a needle that must stay: its third side is one of that one's. */
function isBlunt(look: Look, a: Side, b: Side, third: Side): boolean {
  const stays = (one: Side, other: Side): boolean =>
    needleAt(look, one, other) !== null && mustStay(look, one, other);
  return stays(b, third) || stays(third, a);
}

/** The longer side of a needle, and the far end of the other. */
function longAndFoot([u, w]: readonly [Vec3, Vec3], a: Side, b: Side): readonly [Side, number] {
  return dot(u, u) > dot(w, w) ? [a, b.to] : [b, a.from];
}

/** True when the needle between two sides holds the faces beside it apart. */
function mustStay(look: Look, a: Side, b: Side): boolean {
  const tip = look.tips.get(a.to);
  if (tip && tip.lines > 1 && !isClosed(tip)) return true;
  return isBackToBack(look, a.edge, b.edge, look.solid.vertices[a.to] as Vec3);
}

/** True where needles of a spire have one longer edge and one foot: welding has made one point of its cross-section. */
function isClosed({ short, on }: Tip): boolean {
  return short.size > 1 && on.size === 1;
}

/** What is left of two sides when the needle between them is cut off; null where there is none, or it must stay. */
function withoutNeedle(look: Look, a: Side, b: Side): Side[] | null {
  const needle = needleAt(look, a, b);
  if (!needle) return null;
  const [u, w] = needle;
  const tip = look.solid.vertices[a.to] as Vec3;
  const curved = [a, b].find(({ isLine }) => !isLine);
  // The faces beyond a lone curve have their rulings through it.
  if (curved && (!isClosed(look.tips.get(a.to) as Tip) || mustStay(look, a, b))) return null;
  if (mustStay(look, a, b)) {
    const before = cross(unwelded(look, a.edge, tip), unwelded(look, b.edge, tip));
    if (dot(cross(u, w), before) < KEPT * dot(before, before)) look.lost = true;
    return null;
  }
  if (curved) look.bare.set(curved.edge, null);
  if (a.from === b.to) return [];
  const [long, foot] = longAndFoot(needle, a, b);
  const on = look.feet.get(long.edge) ?? [];
  if (!on.includes(foot)) on.push(foot);
  look.feet.set(long.edge, on);
  return [long === a ? { ...a, to: foot } : { ...b, from: foot }];
}

/** Share of its angle that a needle must keep. */
const KEPT = 1 / 2;

/** Cosine of the angle between two faces' normals below which they stand back to back: the thinnest wedge is some 6 degrees. */
const BACK_TO_BACK = -0.995;

/** True when the faces on the far sides of two edges of one face have opposite normals. */
function isBackToBack({ solid, beside }: Look, a: number, b: number, p: Vec3): boolean {
  const [a0, a1, b0, b1] = [beside[2 * a], beside[2 * a + 1], beside[2 * b], beside[2 * b + 1]];
  const own = a0 === b0 || a0 === b1 ? a0 : a1;
  const [n, m] = [a0 === own ? a1 : a0, b0 === own ? b1 : b0].map((f) => {
    const { surface, sense } = solid.faces[f as number] as Face;
    return { normal: normalAt(surface, p), sense };
  }) as [{ normal: Vec3; sense: number }, { normal: Vec3; sense: number }];
  return n.sense * m.sense * dot(n.normal, m.normal) < BACK_TO_BACK;
}

/** A straight edge before anything is welded, from its end at a needle's tip to the other. */
function unwelded({ solid: { vertices, edges } }: Look, e: number, tip: Vec3): Vec3 {
  const { from, to } = edges[e] as Edge;
  const [p, q] = [vertices[from] as Vec3, vertices[to] as Vec3];
  return distance(p, tip) < distance(q, tip) ? sub(q, p) : sub(p, q);
}
