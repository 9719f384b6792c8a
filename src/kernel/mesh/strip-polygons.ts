/**
 * Fills a strip between two rulings as polygons: the way for strips in which no order of floors and ceilings is found.
 *
 * Runs of the loops are joined along the two rulings into outlines with holes.
 *
 * @packageDocumentation
 */
import { type FlatFace, NO_RULING } from "./flat-face.js";
import { fillPolygon, type Nearness, type PlanePoints } from "./polygon.js";
import type { Runs } from "./runs.js";

interface Run {
  readonly vertices: number[];
  readonly closed: boolean;
}

/** The points of one strip, numbered anew so that each vertex of the mesh is there once. */
interface StripPoints extends PlanePoints {
  readonly vertex: number[];
  readonly x: number[];
  readonly y: number[];
  readonly ruling: number[];
}

/**
 * Triangles of one strip; false when it cannot be filled.
 *
 * @param start - the first of this strip's runs
 * @param nearness - see `Nearness`, by vertices of the mesh
 * @param out - receives three vertices of the mesh per triangle
 */
export function fillStripPolygons(
  flat: FlatFace,
  all: Runs,
  strip: number,
  start: number,
  nearness: Nearness,
  out: number[],
): boolean {
  const vertex: number[] = [];
  const points: StripPoints = {
    vertex,
    x: [],
    y: [],
    ruling: [],
    nearness: (a, b) => nearness(vertex[a] as number, vertex[b] as number),
  };
  const known = new Map<number, number>();
  const pointAt = (place: number): number => {
    const v = flat.vertex[place] as number;
    let i = known.get(v);
    if (i === undefined) {
      i = vertex.push(v) - 1;
      known.set(v, i);
      points.x.push(flat.x[place] as number);
      points.y.push(flat.y[place] as number);
      points.ruling.push(flat.ruling[place] as number);
    }
    return i;
  };
  const runs: Run[] = [];
  for (let r = start; r >= 0; r = all.next[r] as number) {
    const [first, last] = [all.first[r] as number, all.last[r] as number];
    const closed = all.kind[r] === "closed";
    const vertices: number[] = [];
    for (let i = first; i <= (closed ? last - 1 : last); i++) vertices.push(pointAt(i));
    if (all.kind[r] !== "touch") runs.push({ vertices, closed });
  }
  const filled: number[] = [];
  if (!fillRuns(points, strip, runs, filled)) return false;
  for (const i of filled) out.push(vertex[i] as number);
  return true;
}

/** The points on a ruling, upwards. */
function pointsOn({ y, ruling }: StripPoints, side: number): number[] {
  const on: number[] = [];
  for (let i = 0; i < ruling.length; i++) if (ruling[i] === side) on.push(i);
  return on.sort((a, b) => (y[a] as number) - (y[b] as number));
}

/** Joins the runs of a strip along its two rulings into polygons and fills them. */
function fillRuns(points: StripPoints, strip: number, runs: readonly Run[], out: number[]): boolean {
  const ruling = (v: number): number | null => {
    const on = points.ruling[v] as number;
    return on === NO_RULING ? null : on;
  };
  const z = (v: number): number => points.y[v] as number;
  const polygons: number[][] = [];
  const holes: number[][] = [];
  for (const r of runs) {
    if (r.closed) (ringArea(points, r.vertices) > 0 ? polygons : holes).push([...r.vertices]);
  }
  const open = runs.filter((r) => !r.closed);
  const used = new Set<Run>();
  for (const start of open) {
    if (used.has(start)) continue;
    const ring: number[] = [];
    let run = start;
    for (;;) {
      used.add(run);
      ring.push(...run.vertices.slice(0, -1));
      const end = run.vertices[run.vertices.length - 1] as number;
      const side = ruling(end);
      if (side === null || (side !== strip && side !== strip + 1)) return false;
      const up = side === strip + 1;
      let next: Run | null = null;
      for (const other of open) {
        const v = other.vertices[0] as number;
        if (ruling(v) !== side || (used.has(other) && other !== start)) continue;
        if (v !== end && (up ? z(v) < z(end) : z(v) > z(end))) continue;
        const better =
          next === null || (up ? z(v) < z(next.vertices[0] as number) : z(v) > z(next.vertices[0] as number));
        if (better) next = other;
      }
      if (!next) return false;
      ring.push(end, ...between(points, pointsOn(points, side), end, next.vertices[0] as number));
      if (next === start) break;
      run = next;
    }
    polygons.push(...apartAtPinches(withoutRepeats(ring)));
  }
  for (const polygon of polygons) {
    if (polygon.length < 3) continue;
    const own = polygons.length === 1 ? holes : holes.filter((h) => holds(points, polygon, h[0] as number));
    if (polygon.length === 3 && own.length === 0) out.push(...polygon);
    else if (!fillPolygon(points, polygon, own, out)) return false;
  }
  return true;
}

/** Vertices on a ruling strictly between two of its vertices, in walking order. */
function between(points: PlanePoints, sorted: readonly number[], a: number, b: number): number[] {
  if (a === b) return [];
  const [za, zb] = [points.y[a] as number, points.y[b] as number];
  const [lo, hi] = za < zb ? [za, zb] : [zb, za];
  const inner = sorted.filter((v, k) => {
    const z = points.y[v] as number;
    return z > lo && z < hi && v !== a && v !== b && sorted[k - 1] !== v;
  });
  return za < zb ? inner : inner.reverse();
}

function withoutRepeats(ring: readonly number[]): number[] {
  const out = ring.filter((v, k) => v !== ring[(k + 1) % ring.length]);
  return out;
}

/** A ring that comes through one vertex twice, where an edge only touches a ruling, as the rings on both sides of it. */
function apartAtPinches(ring: readonly number[]): number[][] {
  const out: number[][] = [];
  const open: number[] = [];
  for (const v of ring) {
    const before = open.indexOf(v);
    if (before >= 0) out.push(open.splice(before));
    open.push(v);
  }
  return [...out, open];
}

function ringArea(p: PlanePoints, ring: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < ring.length; k++) {
    const [a, b] = [ring[k] as number, ring[(k + 1) % ring.length] as number];
    sum += (p.x[a] as number) * (p.y[b] as number) - (p.x[b] as number) * (p.y[a] as number);
  }
  return sum;
}

function holds(p: PlanePoints, ring: readonly number[], v: number): boolean {
  const [x, y] = [p.x[v] as number, p.y[v] as number];
  let inside = false;
  for (let k = 0; k < ring.length; k++) {
    const [a, b] = [ring[k] as number, ring[(k + 1) % ring.length] as number];
    const [ay, by] = [p.y[a] as number, p.y[b] as number];
    if (ay > y === by > y) continue;
    const [ax, bx] = [p.x[a] as number, p.x[b] as number];
    if (ax + ((y - ay) / (by - ay)) * (bx - ax) > x) inside = !inside;
  }
  return inside;
}
