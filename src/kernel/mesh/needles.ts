/**
 * Which faces end in a needle too thin for the mesh to have?
 *
 * Where a ridge runs almost along a side of the section, the face between the two ends in a needle: two straight edges that
 * come together in its tip. What is thinner than an edge may be short would be turned over by welding, or by the rounding
 * of a file. It is left off: the foot, the end of its shorter edge, becomes a point of the longer one, and beyond it the
 * two edges are one.
 *
 * @packageDocumentation
 */
import type { Edge, EdgeUse, Solid } from "../solid.js";
import { cross, dot, length, sub, type Vec3 } from "../vec.js";

/** What is left of an edge in a loop: of a straight one, from where the last needle was cut off to where the next was. */
interface Side {
  readonly edge: number;
  readonly isLine: boolean;
  readonly from: number;
  readonly to: number;
}

/**
 * Straight edges that get vertices of the solid as points of their own, in order from the edge's start; null when there is
 * no needle.
 *
 * @param same - see `EdgeSamples`
 * @param within - needles whose foot is nearer to their other side are left off, millimetres
 */
export function needleFeet(
  solid: Solid,
  same: readonly number[],
  within: number,
): ReadonlyMap<number, readonly number[]> | null {
  const feet = new Map<number, number[]>();
  let any = false;
  for (const { loops } of solid.faces) {
    for (const loop of loops) any = cutNeedles(solid, same, within, loop, feet) || any;
  }
  if (!any) return null;
  for (const [e, on] of feet) {
    const { from, to } = solid.edges[e] as Edge;
    const [start, end] = [from, to].map((v) => solid.vertices[same[v] as number]) as [Vec3, Vec3];
    const along = (v: number): number => dot(sub(solid.vertices[v] as Vec3, start), sub(end, start));
    on.sort((a, b) => along(a) - along(b));
  }
  return feet;
}

function cutNeedles(
  solid: Solid,
  same: readonly number[],
  within: number,
  loop: readonly EdgeUse[],
  feet: Map<number, number[]>,
): boolean {
  let any = false;
  let sides = loop.map(({ edge: e, forward }): Side => {
    const { curve, from, to } = solid.edges[e] as Edge;
    const [a, b] = [same[from] as number, same[to] as number];
    return { edge: e, isLine: curve.kind === "line", from: forward ? a : b, to: forward ? b : a };
  });
  sides = sides.filter(({ from, to }) => from !== to);
  for (let k = 0; k < sides.length && sides.length > 2; k++) {
    const next = (k + 1) % sides.length;
    const left = cut(solid, within, sides[k] as Side, sides[next] as Side, feet);
    if (left === null) continue;
    sides = sides.flatMap((s, i) => (i === k ? left : i === next ? [] : [s]));
    any = true;
    k = -1;
  }
  return any;
}

/** What is left of two sides when the needle between them is cut off; null where there is none. */
function cut(
  { vertices }: Solid,
  within: number,
  a: Side,
  b: Side,
  feet: Map<number, number[]>,
): Side[] | null {
  if (!a.isLine || !b.isLine || a.edge === b.edge) return null;
  if (a.from === b.to) return [];
  const [far, tip, end] = [a.from, a.to, b.to].map((v) => vertices[v]) as [Vec3, Vec3, Vec3];
  const [u, w] = [sub(far, tip), sub(end, tip)];
  const [long, short] = dot(u, u) > dot(w, w) ? [a, b] : [b, a];
  const apart = length(cross(u, w)) / length(long === a ? u : w);
  if (dot(u, w) <= 0 || apart >= within) return null;
  const foot = short === b ? b.to : a.from;
  const on = feet.get(long.edge) ?? [];
  if (!on.includes(foot)) on.push(foot);
  feet.set(long.edge, on);
  return [long === a ? { ...a, to: foot } : { ...b, from: foot }];
}
