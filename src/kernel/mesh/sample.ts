/**
 * Points along every edge of a solid: each edge is sampled once, and both its faces use the same points.
 *
 * An edge gets a point wherever it crosses a ruling of a face beside it. So each of its chords lies within one strip of
 * both faces and leaves neither surface by more than the tolerance.
 *
 * @packageDocumentation
 */

import { evaluate } from "../curve/curve.js";
import type { Edge, Solid } from "../solid.js";
import { PARALLEL_SINE, RULING_MM } from "../tolerance.js";
import type { Vec3 } from "../vec.js";
import { gridOf } from "./grid.js";
import { angleOn, type Crossings, crossRulings, type Track, trackOn } from "./ruling-crossings.js";

/** All points of a mesh: first the solid's vertices, then the inner points of each edge from start to end. */
export interface EdgeSamples {
  readonly positions: readonly number[];
  /** Edge e owns the points first[e] to first[e + 1] − 1. */
  readonly first: readonly number[];
  /** For each vertex of the solid the one that stands for it: the ends of an edge too short to be seen are one point. */
  readonly same: readonly number[];
  /** Steps of a full turn of each face; 0 for planes. */
  readonly steps: readonly number[];
  /**
   * By use of an edge (0 the first by face and loop, 1 the second): the angle about that face's axis in steps, of the
   * edge's start and end at 2e and 2e + 1 of `atEnds`, and of each point. A whole number is a ruling.
   */
  readonly turns: readonly [SideTurns, SideTurns];
}

/** Angles in steps, on one of the two faces of every edge. Without meaning on planes and along straight edges. */
export interface SideTurns {
  readonly atEnds: Float64Array;
  readonly atPoints: readonly number[];
}

/** Edges shorter than this (mm) are one point of the mesh: two of their ends on one ruling could not be told apart. */
const WELD_MM = 4 * RULING_MM;

/** Samples all edges of a solid. */
export function sampleEdges(solid: Solid, chord: number): EdgeSamples {
  const steps = solid.faces.map((face) => gridOf(face.surface, chord));
  const beside = facesBeside(solid);
  const same = weldedVertices(solid);
  const once = sampleAll(solid, steps, beside, same, null);
  const lenses = coarseTwins(solid, once.first);
  return lenses.size === 0 ? once : sampleAll(solid, steps, beside, same, lenses);
}

/** Faces by edge: that of its first use at 2e, of its second at 2e + 1. */
function facesBeside(solid: Solid): Int32Array {
  const out = new Int32Array(2 * solid.edges.length).fill(-1);
  for (let f = 0; f < solid.faces.length; f++) {
    for (const loop of solid.faces[f]?.loops ?? []) {
      for (const { edge } of loop) out[out[2 * edge] === -1 ? 2 * edge : 2 * edge + 1] = f;
    }
  }
  return out;
}

function weldedVertices(solid: Solid): number[] {
  const same = solid.vertices.map((_, v) => v);
  const find = (v: number): number => (same[v] === v ? v : find(same[v] as number));
  for (const { from, to } of solid.edges) {
    if (!near(solid.vertices[from] as Vec3, solid.vertices[to] as Vec3, WELD_MM)) continue;
    const [a, b] = [find(from), find(to)];
    same[Math.max(a, b)] = Math.min(a, b);
  }
  return same.map((_, v) => find(v));
}

/** Fewest inner points with which the two sides of a lens are told apart. */
const LENS_POINTS = 3;

/** Curved edges that share both ends with another edge, one of them with next to no inner points: a lens would be flat. */
function coarseTwins({ vertices, edges }: Solid, first: readonly number[]): ReadonlySet<number> {
  const out = new Set<number>();
  const lastAt = new Int32Array(vertices.length).fill(-1);
  const before = new Int32Array(edges.length);
  const few = (e: number): boolean => (first[e + 1] as number) - (first[e] as number) < LENS_POINTS;
  for (let e = 0; e < edges.length; e++) {
    const { from, to, curve } = edges[e] as Edge;
    const low = Math.min(from, to);
    for (let o = lastAt[low] as number; o >= 0; o = before[o] as number) {
      const other = edges[o] as Edge;
      if (Math.max(other.from, other.to) !== Math.max(from, to) || !(few(e) || few(o))) continue;
      if (curve.kind !== "line") out.add(e);
      if (other.curve.kind !== "line") out.add(o);
    }
    before[e] = lastAt[low] as number;
    lastAt[low] = e;
  }
  return out;
}

function sampleAll(
  solid: Solid,
  steps: readonly number[],
  beside: Int32Array,
  same: readonly number[],
  quartered: ReadonlySet<number> | null,
): EdgeSamples {
  const { vertices, edges, faces } = solid;
  const positions: number[] = [];
  const sides = [0, 1].map(() => ({
    atEnds: new Float64Array(2 * edges.length),
    atPoints: vertices.map(() => 0),
  })) as [EndsAndPoints, EndsAndPoints];
  const first: number[] = [];
  for (const p of vertices) positions.push(p[0], p[1], p[2]);
  const lists = [newCrossings(), newCrossings(), newCrossings()] as const;
  for (let e = 0; e < edges.length; e++) {
    first.push(positions.length / 3);
    const edge = edges[e] as Edge;
    const { curve, t0, t1 } = edge;
    if (curve.kind === "line" || same[edge.from] === same[edge.to]) continue;
    const tracks: (Track | null)[] = [null, null];
    const [lo, hi] = t0 < t1 ? [t0, t1] : [t1, t0];
    for (const s of [0, 1] as const) {
      const f = beside[2 * e + s] as number;
      const surface = faces[f]?.surface;
      lists[s].t.length = 0;
      if (surface?.kind !== "cylinder") continue;
      const track = trackOn(curve, surface);
      const step = (2 * Math.PI) / (steps[f] as number);
      tracks[s] = track;
      sides[s].atEnds[2 * e] = angleOn(track, t0) / step;
      sides[s].atEnds[2 * e + 1] = angleOn(track, t1) / step;
      crossRulings(track, step, lo, hi, lists[s]);
    }
    if (quartered?.has(e)) addQuarters(lists[2].t, lo, hi, lists);
    walk(edge, solid, lists, tracks, (s) => (2 * Math.PI) / (steps[beside[2 * e + s] as number] as number), {
      positions,
      sides,
    });
    lists[2].t.length = 0;
  }
  first.push(positions.length / 3);
  return { positions, first, same, steps, turns: sides };
}

interface EndsAndPoints extends SideTurns {
  readonly atPoints: number[];
}

function newCrossings(): Crossings {
  return { t: [], ruling: [] };
}

/** The three quarters of an edge, those left out that fall on a crossing. */
function addQuarters(out: number[], lo: number, hi: number, lists: readonly Crossings[]): void {
  for (const k of [1, 2, 3]) {
    const t = lo + ((hi - lo) * k) / 4;
    const free = lists.every((l) => l.t.every((x) => Math.abs(x - t) > 0.02 * (hi - lo)));
    if (free) out.push(t);
  }
}

/**
 * Adds the points of one edge in its own order. Of crossings nearer to each other than RULING_MM one point is made, which
 * is on both rulings; those that near to an end are the end.
 */
function walk(
  { curve, t0, t1, from, to }: Edge,
  { vertices }: Solid,
  lists: readonly [Crossings, Crossings, Crossings],
  tracks: readonly (Track | null)[],
  step: (side: 0 | 1) => number,
  out: { readonly positions: number[]; readonly sides: readonly [EndsAndPoints, EndsAndPoints] },
): void {
  const { positions, sides } = out;
  const forward = t1 > t0;
  const least = PARALLEL_SINE * Math.abs(t1 - t0);
  const at = lists.map((l) => (forward ? 0 : l.t.length - 1));
  const start = positions.length / 3;
  let [t, p] = [t0, vertices[from] as Vec3];
  for (;;) {
    let s = -1;
    let next = 0;
    for (let l = 0; l < 3; l++) {
      const x = lists[l]?.t[at[l] as number];
      if (x !== undefined && (s < 0 || (forward ? x < next : x > next))) [s, next] = [l, x];
    }
    if (s < 0) break;
    const ruling = lists[s]?.ruling[at[s] as number] as number;
    at[s] = (at[s] as number) + (forward ? 1 : -1);
    let apart = Math.abs(next - t) >= least;
    if (apart) {
      const q = evaluate(curve, next);
      apart = !near(p, q, RULING_MM);
      if (apart) [t, p] = [next, q];
    }
    if (apart) {
      positions.push(p[0], p[1], p[2]);
      for (const k of [0, 1] as const) {
        const track = tracks[k];
        sides[k].atPoints.push(k === s ? ruling : track ? angleOn(track, next) / step(k) : 0);
      }
    } else if (s < 2 && positions.length / 3 > start) {
      sides[s as 0 | 1].atPoints[positions.length / 3 - 1] = ruling;
    }
  }
  while (positions.length / 3 > start && near(lastOf(positions), vertices[to] as Vec3, RULING_MM)) {
    positions.length -= 3;
    for (const { atPoints } of sides) atPoints.pop();
  }
}

function lastOf(positions: readonly number[]): Vec3 {
  const [x, y, z] = positions.slice(-3);
  return [x as number, y as number, z as number];
}

function near(p: Vec3, q: Vec3, within: number): boolean {
  const [x, y, z] = [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  return x * x + y * y + z * z < within * within;
}
