/**
 * Points along every edge of a solid: each edge is sampled once, and both its faces use the same points.
 *
 * An edge gets a point wherever it crosses a ruling of a face beside it. So each of its chords lies within one strip of
 * both faces and leaves neither surface by more than the tolerance. Where two surfaces meet at a flat angle the edge itself
 * may still stand off such a chord by more; there it gets points between (`walk.ts`).
 *
 * @packageDocumentation
 */

import type { Edge, Face, Solid } from "../solid.js";
import { distance, type Vec3 } from "../vec.js";
import { weldedVertices } from "../welded-vertices.js";
import type { EdgeSamples, SideTurns } from "./edge-samples.js";
import { addGrounded, finsOf } from "./fins.js";
import { gridOf, nearRuling } from "./grid.js";
import { needlesOf } from "./needles.js";
import { type Crossings, crossRulings, trackOn } from "./ruling-crossings.js";
import { type SideTrack, turnAt, walk } from "./walk.js";

export type { EdgeSamples } from "./edge-samples.js";

/** Edges shorter than so many `nearRuling` are one point of the mesh: two of their ends on one ruling could not be told apart. */
const WELD = 4;
/** Steps in which points may come nearer to each other where that keeps a needle apart. */
const NEARER = 8;

/**
 * Samples all edges of a solid.
 *
 * @param finer - for edges that are to keep a finer chord, how many times finer by edge; rulings stay where they are
 */
export function sampleEdges(
  solid: Solid,
  chord: number,
  finer: ReadonlyMap<number, number> = new Map(),
): EdgeSamples {
  const steps = solid.faces.map((face) => gridOf(face.surface, chord));
  const beside = facesBeside(solid);
  const thin = WELD * nearRuling(chord);
  let within = nearRuling(chord);
  let same = weldedVertices(solid, thin);
  let needles = needlesOf(solid, same, beside, thin);
  while (needles.lost) {
    within /= NEARER;
    same = weldedVertices(solid, WELD * within);
    needles = needlesOf(solid, same, beside, thin);
  }
  const feet = needles.cut > 0 ? needles.feet : null;
  const wanted: Wanted = { chord, within, finer, feet };
  const once = sampleAll(solid, steps, beside, same, wanted, NONE, needles.bare);
  const { arches, fallen } = finsOf(solid, once, beside, thin);
  const lenses = coarseTwins(solid, once.first, arches);
  if (arches.size + lenses.size === 0) return once;
  const standing = same.map((v) => {
    const foot = fallen.get(v);
    return foot === undefined ? v : (same[foot] as number);
  });
  return sampleAll(solid, steps, beside, standing, wanted, lenses, new Map([...needles.bare, ...arches]));
}

const NONE: ReadonlySet<number> = new Set();

/** Faces by edge: that of its first use at 2e, of its second at 2e + 1. */
function facesBeside(solid: Solid): number[] {
  const out = new Array<number>(2 * solid.edges.length).fill(-1);
  for (let f = 0; f < solid.faces.length; f++) {
    for (const loop of solid.faces[f]?.loops ?? []) {
      for (const { edge } of loop) out[out[2 * edge] === -1 ? 2 * edge : 2 * edge + 1] = f;
    }
  }
  return out;
}

/** Fewest inner points with which the two sides of a lens are told apart. */
const LENS_POINTS = 3;

/** Curved edges that share both ends with another edge, one of them with next to no inner points: a lens would be flat. */
function coarseTwins(
  { vertices, edges }: Solid,
  first: readonly number[],
  bare: ReadonlyMap<number, number | null>,
): ReadonlySet<number> {
  const out = new Set<number>();
  const lastAt = new Array<number>(vertices.length).fill(-1);
  const before: number[] = [];
  const few = (e: number): boolean => (first[e + 1] as number) - (first[e] as number) < LENS_POINTS;
  for (let e = 0; e < edges.length; e++) {
    const { from, to, curve } = edges[e] as Edge;
    const low = Math.min(from, to);
    for (let o = lastAt[low] as number; o >= 0; o = before[o] as number) {
      const other = edges[o] as Edge;
      if (Math.max(other.from, other.to) !== Math.max(from, to) || !(few(e) || few(o))) continue;
      if (bare.has(e) || bare.has(o)) continue;
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
  beside: readonly number[],
  same: readonly number[],
  { chord, within, finer, feet }: Wanted,
  quartered: ReadonlySet<number>,
  bare: ReadonlyMap<number, number | null>,
): EdgeSamples {
  const through = new Map(feet);
  const { vertices, edges, faces } = solid;
  const positions: number[] = [];
  const newSide = (): EndsAndPoints => ({ atEnds: [], atPoints: vertices.map(() => 0) });
  const sides: readonly [EndsAndPoints, EndsAndPoints] = [newSide(), newSide()];
  const first: number[] = [];
  for (const p of vertices) positions.push(p[0], p[1], p[2]);
  const lists = [newCrossings(), newCrossings(), newCrossings()] as const;
  for (let e = 0; e < edges.length; e++) {
    first.push(positions.length / 3);
    for (const { atEnds } of sides) atEnds.push(0, 0);
    const edge = edges[e] as Edge;
    const { curve, t0, t1 } = edge;
    if (curve.kind === "line" || same[edge.from] === same[edge.to]) continue;
    const tracks: [SideTrack | null, SideTrack | null] = [null, null];
    const lo = Math.min(t0, t1);
    const hi = Math.max(t0, t1);
    for (const s of [0, 1] as const) {
      const f = beside[2 * e + s] as number;
      const surface = faces[f]?.surface;
      lists[s].count = 0;
      if (surface?.kind !== "cylinder") continue;
      const side = { track: trackOn(curve, surface), step: (2 * Math.PI) / (steps[f] as number) };
      tracks[s] = side;
      sides[s].atEnds[2 * e] = turnAt(side, t0);
      sides[s].atEnds[2 * e + 1] = turnAt(side, t1);
      crossRulings(side.track, side.step, lo, hi, lists[s]);
    }
    lists[2].count = 0;
    if (quartered.has(e)) addQuarters(lists, lo, hi);
    const ground = bare.get(e);
    if (ground === null) continue;
    if (ground !== undefined) {
      const s = lists[0].count > 0 ? 0 : 1;
      const { surface } = faces[beside[2 * e + s] as number] as Face;
      if (surface.kind !== "cylinder") continue;
      addGrounded(solid, edge, edges[ground] as Edge, surface, lists[s], within, (p, ruling) => {
        positions.push(p[0], p[1], p[2]);
        sides[s].atPoints.push(ruling);
        sides[(1 - s) as 0 | 1].atPoints.push(0);
      });
      const points = Array.from(
        { length: positions.length / 3 - (first[e] as number) },
        (_, k) => (first[e] as number) + k,
      );
      const along = (edges[ground] as Edge).from === edge.from;
      through.set(ground, along ? points : points.reverse());
      continue;
    }
    const off = (v: number): number => distance(vertices[v] as Vec3, vertices[same[v] as number] as Vec3);
    // A chord that ends in the point that stands for its vertex is off by so much more.
    const own = chord / (finer.get(e) ?? 1);
    const room = Math.max(own / 2, own - Math.max(off(edge.from), off(edge.to)));
    walk(edge, solid, lists, tracks, within, room, { positions, sides });
  }
  first.push(positions.length / 3);
  return {
    positions,
    first,
    same,
    feet: through.size > 0 || feet ? through : null,
    steps,
    near: within,
    turns: sides,
  };
}

/** How finely edges are sampled: see `sampleEdges` and `nearRuling`. */
interface Wanted {
  readonly chord: number;
  readonly within: number;
  readonly finer: ReadonlyMap<number, number>;
  readonly feet: EdgeSamples["feet"];
}

interface EndsAndPoints extends SideTurns {
  readonly atEnds: number[];
  readonly atPoints: number[];
}

function newCrossings(): Crossings {
  return { count: 0, t: [], ruling: [] };
}

/** The three quarters of an edge, those left out that fall on a crossing. */
function addQuarters(lists: readonly [Crossings, Crossings, Crossings], lo: number, hi: number): void {
  const [, , out] = lists;
  for (const k of [1, 2, 3]) {
    const t = lo + ((hi - lo) * k) / 4;
    const taken = lists.some((l) => l.t.slice(0, l.count).some((x) => Math.abs(x - t) <= 0.02 * (hi - lo)));
    if (!taken) out.t[out.count++] = t;
  }
}
