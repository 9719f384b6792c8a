/**
 * Points along every edge of a solid: each edge is sampled once, and both its faces use the same points.
 *
 * An edge gets a point wherever it crosses a ruling of a face beside it. So each of its chords lies within one strip of
 * both faces and leaves neither surface by more than the tolerance.
 *
 * @packageDocumentation
 */

import { type Curve, derivatives, evaluate } from "../curve/curve.js";
import type { SaddleCurve } from "../curve/saddle.js";
import { falsePosition } from "../false-position.js";
import type { Edge, Face, Solid } from "../solid.js";
import type { CylinderSurface } from "../surface.js";
import { PARALLEL_SINE, ROUNDING_SHARE, RULING_MM } from "../tolerance.js";
import { dot, type Vec3 } from "../vec.js";
import { gridOf } from "./grid.js";

/** All points of a mesh, and for each edge the indices of its points from start to end. */
export interface EdgeSamples {
  readonly positions: number[];
  readonly chains: readonly (readonly number[])[];
  /** For each point the edge it lies inside of; −1 for a vertex of the solid. */
  readonly edgeOf: readonly number[];
}

/** Edges shorter than this (mm) are one point of the mesh: two of their ends on one ruling could not be told apart. */
const WELD_MM = 4 * RULING_MM;

/** Samples all edges of a solid. */
export function sampleEdges(solid: Solid, chord: number): EdgeSamples {
  const positions: number[] = [];
  for (const p of solid.vertices) positions.push(p[0], p[1], p[2]);
  const edgeOf = solid.vertices.map(() => -1);
  const beside = facesBeside(solid);
  const same = weldedVertices(solid);
  const inner = solid.edges.map((edge, e): number[] =>
    edge.curve.kind === "line" ? [] : edgeParameters(edge, beside[e] as Face[], chord),
  );
  for (const e of coarseTwins(solid, inner)) {
    const { t0, t1 } = solid.edges[e] as Edge;
    inner[e] = withQuarters(inner[e] as number[], t0, t1);
  }
  const chains = solid.edges.map((edge, e): number[] => {
    const [from, to] = [same[edge.from] as number, same[edge.to] as number];
    if (from === to) return [from];
    const chain = [from];
    for (const t of inner[e] as number[]) {
      const p = evaluate(edge.curve, t);
      chain.push(positions.length / 3);
      positions.push(p[0], p[1], p[2]);
      edgeOf.push(e);
    }
    chain.push(to);
    return chain;
  });
  return { positions, chains, edgeOf };
}

/**
 * For each vertex the one that stands for it in the mesh: the ends of an edge too short to be seen are one point there.
 * Both faces beside such an edge lose it, so the mesh stays closed.
 */
function weldedVertices(solid: Solid): number[] {
  const short = ({ from, to }: Edge): boolean =>
    near(solid.vertices[from] as Vec3, solid.vertices[to] as Vec3, WELD_MM);
  // An end of a line stays where it is, on the ruling that the line follows.
  const onLine = new Set<number>();
  for (const e of solid.edges) if (e.curve.kind === "line" && !short(e)) onLine.add(e.from).add(e.to);
  const same = solid.vertices.map((_, v) => v);
  const find = (v: number): number => (same[v] === v ? v : find(same[v] as number));
  for (const e of solid.edges) {
    if (!short(e)) continue;
    const [a, b] = [find(e.from), find(e.to)].sort((v, w) => v - w) as [number, number];
    const [gone, kept] = onLine.has(b) && !onLine.has(a) ? [a, b] : [b, a];
    same[gone] = kept;
  }
  return same.map((_, v) => find(v));
}

/** Fewest inner points with which the two sides of a lens are told apart. */
const LENS_POINTS = 3;

/** Curved edges that share both ends with another edge, one of them with next to no inner points: a lens would be flat. */
function coarseTwins(solid: Solid, inner: readonly (readonly number[])[]): number[] {
  const byEnds = new Map<string, number[]>();
  for (const [e, { from, to }] of solid.edges.entries()) {
    const key = `${Math.min(from, to)} ${Math.max(from, to)}`;
    byEnds.set(key, [...(byEnds.get(key) ?? []), e]);
  }
  return [...byEnds.values()]
    .filter((all) => all.length > 1 && all.some((e) => (inner[e] as readonly number[]).length < LENS_POINTS))
    .flat()
    .filter((e) => (solid.edges[e] as Edge).curve.kind !== "line");
}

/** The parameters with the three quarters of the edge added, those left out that fall on one already there. */
function withQuarters(ts: readonly number[], t0: number, t1: number): number[] {
  const more = [1, 2, 3]
    .map((k) => t0 + ((t1 - t0) * k) / 4)
    .filter((t) => ts.every((x) => Math.abs(x - t) > 0.02 * Math.abs(t1 - t0)));
  return [...ts, ...more].sort(t1 > t0 ? (a, b) => a - b : (a, b) => b - a);
}

function facesBeside(solid: Solid): Face[][] {
  const out: Face[][] = solid.edges.map(() => []);
  for (const face of solid.faces) {
    for (const loop of face.loops) for (const use of loop) (out[use.edge] as Face[]).push(face);
  }
  return out;
}

/** Inner parameters of an edge, from t0 to t1. */
function edgeParameters(edge: Edge, faces: readonly Face[], chord: number): number[] {
  const { curve, t0, t1 } = edge;
  const ts: number[] = [];
  for (const { surface } of faces) {
    if (surface.kind === "cylinder") crossings(curve, t0, t1, surface, gridOf(surface, chord), ts);
  }
  ts.sort(t1 > t0 ? (a, b) => a - b : (a, b) => b - a);
  const out: number[] = [];
  const span = Math.abs(t1 - t0);
  let [t, p] = [t0, evaluate(curve, t0)];
  for (const next of [...ts, t1]) {
    const last = next === t1;
    if (!last && Math.abs(next - t) < PARALLEL_SINE * span) continue;
    const q = evaluate(curve, next);
    if (!last && near(p, q)) continue;
    if (!last) out.push(next);
    [t, p] = [next, q];
  }
  // The last crossing may coincide with the end point.
  const end = evaluate(curve, t1);
  while (out.length > 0 && near(evaluate(curve, out[out.length - 1] as number), end)) out.pop();
  return out;
}

function near(p: Vec3, q: Vec3, within = RULING_MM): boolean {
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) < within;
}

/** Adds every t strictly between t0 and t1 where the curve crosses a ruling of the cylinder. */
function crossings(
  c: Curve,
  t0: number,
  t1: number,
  cylinder: CylinderSurface,
  steps: number,
  out: number[],
): void {
  const step = (2 * Math.PI) / steps;
  if (c.kind === "saddle" && isBranch(c, cylinder)) {
    // On its own branch the parameter is the angle.
    const [lo, hi] = t0 < t1 ? [t0, t1] : [t1, t0];
    for (let g = Math.floor(lo / step) + 1; g * step < hi; g++) out.push(g * step);
    return;
  }
  const { origin: o, x, y } = cylinder.frame;
  const ox = dot(o, x);
  const oy = dot(o, y);
  const angle = (t: number): number => {
    const p = evaluate(c, t);
    return Math.atan2(dot(p, y) - oy, dot(p, x) - ox) / step;
  };
  /** Sign of how fast the angle grows with t. */
  const growth = (t: number): number => {
    const { p, d1 } = derivatives(c, t);
    return (dot(p, x) - ox) * dot(d1, y) - (dot(p, y) - oy) * dot(d1, x);
  };
  // Coarse walk with steps below a quarter turn of either parameter, cut again where the angle turns back, so that a
  // curve that only just reaches over a ruling crosses it twice. The angle is followed across ±π.
  const cells = Math.max(8, Math.ceil(Math.abs(t1 - t0) / 0.2));
  let a = angle(t0);
  let ta = t0;
  const walkTo = (tb: number): void => {
    let b = angle(tb);
    b += steps * Math.round((a - b) / steps);
    // Half-open cells, so that a ruling at a cell's border is found once.
    for (let g = Math.floor(a) + 1; g <= b; g++) out.push(cross(angle, ta, tb, a, b, g, steps));
    for (let g = Math.ceil(a) - 1; g >= b; g--) out.push(cross(angle, ta, tb, a, b, g, steps));
    [a, ta] = [b, tb];
  };
  let before = growth(t0);
  for (let k = 1; k <= cells; k++) {
    const tb = k === cells ? t1 : t0 + ((t1 - t0) * k) / cells;
    const after = growth(tb);
    if (before * after < 0)
      walkTo(falsePosition(growth, ta, tb, before, after, ROUNDING_SHARE * Math.abs(before)));
    walkTo(tb);
    before = after;
  }
}

/** True when the cylinder is the one whose angle the saddle's parameter is. */
function isBranch(c: SaddleCurve, { frame, radius }: CylinderSurface): boolean {
  const same = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
  return c.radius === radius && same(c.origin, frame.origin) && same(c.axis, frame.z) && same(c.x, frame.x);
}

/** The t in [ta, tb] where the angle, in steps, is g; a and b are the angles there, followed across ±π. */
function cross(
  angle: (t: number) => number,
  ta: number,
  tb: number,
  a: number,
  b: number,
  g: number,
  steps: number,
): number {
  const off = (t: number): number => {
    const f = angle(t) - g;
    return f - steps * Math.round(f / steps);
  };
  return falsePosition(off, ta, tb, a - g, b - g, ROUNDING_SHARE);
}
