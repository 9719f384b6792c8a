/**
 * Fills a face of a cylinder strip by strip between rulings.
 *
 * The face is unrolled: x across (angle times radius, turned so that outside is up), z along the axis. Every ruling it
 * spans cuts it only at points its edges already have, so strips need no new points and neighbours cannot disagree. Within
 * a strip any triangle stays within the chord tolerance.
 *
 * @packageDocumentation
 */
import { fillPolygon, type PlanePoints } from "./polygon.js";

/** A face unrolled: coordinates by mesh vertex, loops of mesh vertices with the material on the left. */
export interface Unrolled {
  readonly points: PlanePoints;
  readonly loops: readonly (readonly number[])[];
  /** Width of a strip, millimetres of x. */
  readonly step: number;
  /** Number of the ruling a vertex lies on, or null between rulings. */
  readonly ruling: (vertex: number) => number | null;
}

interface Run {
  readonly vertices: number[];
  readonly closed: boolean;
}

/** Triangles of an unrolled face; false when it cannot be filled. */
export function fillStrips(face: Unrolled, out: number[]): boolean {
  const strips = new Map<number, Run[]>();
  const add = (strip: number, run: Run): void => {
    const list = strips.get(strip);
    if (list) list.push(run);
    else strips.set(strip, [run]);
  };
  for (const loop of face.loops) splitLoop(face, loop, add);
  const onRuling = verticesByRuling(face);
  for (const strip of [...strips.keys()].sort((a, b) => a - b)) {
    if (!fillStrip(face, strip, strips.get(strip) as Run[], onRuling, out)) return false;
  }
  return true;
}

function stripOf(face: Unrolled, a: number, b: number): number {
  const { points, ruling, step } = face;
  const [ra, rb] = [ruling(a), ruling(b)];
  if (ra !== null && ra === rb) {
    // Along a ruling: upwards has the material on the low side, downwards on the high side.
    return (points.y[b] as number) > (points.y[a] as number) ? ra - 1 : ra;
  }
  return Math.floor(((points.x[a] as number) + (points.x[b] as number)) / 2 / step);
}

/** Cuts a loop into runs that stay in one strip. */
function splitLoop(face: Unrolled, loop: readonly number[], add: (strip: number, run: Run) => void): void {
  const n = loop.length;
  const strips = loop.map((v, k) => stripOf(face, v, loop[(k + 1) % n] as number));
  const first = strips.findIndex((s, k) => s !== strips[(k + n - 1) % n]);
  if (first < 0) {
    add(strips[0] as number, { vertices: [...loop], closed: true });
    return;
  }
  let run: number[] = [];
  for (let k = 0; k < n; k++) {
    const i = (first + k) % n;
    const strip = strips[i] as number;
    if (run.length === 0) run.push(loop[i] as number);
    run.push(loop[(i + 1) % n] as number);
    if (strips[(i + 1) % n] !== strip || k === n - 1) {
      add(strip, { vertices: run, closed: false });
      run = [];
    }
  }
}

function verticesByRuling(face: Unrolled): Map<number, number[]> {
  const out = new Map<number, number[]>();
  for (const loop of face.loops) {
    for (const v of loop) {
      const r = face.ruling(v);
      if (r === null) continue;
      const list = out.get(r);
      if (list) list.push(v);
      else out.set(r, [v]);
    }
  }
  for (const list of out.values())
    list.sort((a, b) => (face.points.y[a] as number) - (face.points.y[b] as number));
  return out;
}

/** Joins the runs of a strip along its two rulings into polygons and fills them. */
function fillStrip(
  face: Unrolled,
  strip: number,
  runs: readonly Run[],
  onRuling: ReadonlyMap<number, readonly number[]>,
  out: number[],
): boolean {
  const { points, ruling } = face;
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
      ring.push(end, ...between(points, onRuling.get(side) ?? [], end, next.vertices[0] as number));
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
