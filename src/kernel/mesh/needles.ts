/**
 * What becomes of faces that end in a needle too thin for the mesh?
 *
 * Where a ridge runs almost along a side of the section, the face between the two ends in a needle: two straight edges that
 * come together in its tip. What is thinner than an edge may be short would be turned over by welding, or by the rounding
 * of a file. It is left off: the foot, the end of its shorter edge, becomes a point of the longer one, and beyond it the
 * two edges are one. Where the faces beside the needle stand back to back, as on a thin fin, or are needles with the same
 * tip, as on a spire, it holds them apart and must stay.
 *
 * @packageDocumentation
 */
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { normalAt } from "../surface.js";
import { cross, distance, dot, length, sub, type Vec3 } from "../vec.js";

/** Needles of a solid. */
export interface Needles {
  /** Straight edges that get vertices of the solid as points of their own, in order from the edge's start. */
  readonly feet: ReadonlyMap<number, readonly number[]>;
  /** How many needles are left off. */
  readonly cut: number;
  /** True when one that must stay has lost half its angle by welding. */
  readonly lost: boolean;
}

/** What is left of an edge in a loop: of a straight one, from where the last needle was cut off to where the next was. */
interface Side {
  readonly edge: number;
  readonly isLine: boolean;
  readonly from: number;
  readonly to: number;
}

/** What is known while the loops of a solid are followed, and what was found. */
interface Look {
  readonly solid: Solid;
  readonly same: readonly number[];
  readonly beside: readonly number[];
  readonly within: number;
  /** How many needles end in each vertex. */
  readonly tips: number[];
  readonly feet: Map<number, number[]>;
  cut: number;
  lost: boolean;
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
  const tips = solid.vertices.map(() => 0);
  const look: Look = { solid, same, beside, within, tips, feet: new Map(), cut: 0, lost: false };
  const all = solid.faces.flatMap(({ loops }) => loops.map((loop) => sidesOf(look, loop)));
  for (const sides of all) {
    for (const [k, a] of sides.entries()) {
      if (needleAt(look, a, sides[(k + 1) % sides.length] as Side)) tips[a.to] = (tips[a.to] as number) + 1;
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

function sidesOf({ solid, same }: Look, loop: readonly EdgeUse[]): Side[] {
  const sides = loop.map(({ edge: e, forward }): Side => {
    const { curve, from, to } = solid.edges[e] as Edge;
    const [a, b] = [same[from] as number, same[to] as number];
    return { edge: e, isLine: curve.kind === "line", from: forward ? a : b, to: forward ? b : a };
  });
  return sides.filter(({ from, to }) => from !== to);
}

/** The needle between two sides: both from its tip to their far ends; null where there is none. */
function needleAt({ solid, within }: Look, a: Side, b: Side): readonly [Vec3, Vec3] | null {
  if (!a.isLine || !b.isLine || a.edge === b.edge) return null;
  const [far, tip, end] = [a.from, a.to, b.to].map((v) => solid.vertices[v]) as [Vec3, Vec3, Vec3];
  const [u, w] = [sub(far, tip), sub(end, tip)];
  const [short, long] = [length(u), length(w)].sort((x, y) => x - y) as [number, number];
  // An edge no longer than a needle is thick is the blunt end of one.
  if (short < within || dot(u, w) <= 0) return null;
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

/** True when the needle between two sides holds the faces beside it apart. */
function mustStay(look: Look, a: Side, b: Side): boolean {
  const tip = look.solid.vertices[a.to] as Vec3;
  return (look.tips[a.to] as number) > 1 || isBackToBack(look, a.edge, b.edge, tip);
}

/** What is left of two sides when the needle between them is cut off; null where there is none, or it must stay. */
function withoutNeedle(look: Look, a: Side, b: Side): Side[] | null {
  const needle = needleAt(look, a, b);
  if (!needle) return null;
  const [u, w] = needle;
  const tip = look.solid.vertices[a.to] as Vec3;
  if (mustStay(look, a, b)) {
    const before = cross(unwelded(look, a.edge, tip), unwelded(look, b.edge, tip));
    if (dot(cross(u, w), before) < KEPT * dot(before, before)) look.lost = true;
    return null;
  }
  if (a.from === b.to) return [];
  const aIsLong = dot(u, u) > dot(w, w);
  const [long, foot] = aIsLong ? [a, b.to] : [b, a.from];
  const on = look.feet.get(long.edge) ?? [];
  if (!on.includes(foot)) on.push(foot);
  look.feet.set(long.edge, on);
  return [aIsLong ? { ...a, to: foot } : { ...b, from: foot }];
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
