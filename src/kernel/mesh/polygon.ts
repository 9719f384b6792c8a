/**
 * Fills a plane polygon with holes by triangles, keeping every vertex.
 *
 * Ear clipping that always takes the best-shaped ear it can find. Unlike common fillers it never drops a vertex that
 * lies on a straight line between its neighbours: those vertices belong to the neighbouring faces too, and dropping
 * one would open the mesh.
 *
 * @packageDocumentation
 */

import { FLAT_TRIANGLE } from "../tolerance.js";
import { bestFilling } from "./polygon-best.js";

/**
 * How much a line between two points should be avoided: 2 when both lie on one curved edge of the solid, 1 when both lie on
 * the same end of it, 0 otherwise. Such a line runs beside the outline, where the neighbouring face's triangles may be; it
 * is drawn only where nothing better fits.
 */
export type Nearness = (a: number, b: number) => 0 | 1 | 2;

/** Points of the plane, by index; loops name their points. */
export interface PlanePoints {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly nearness?: Nearness;
}

/** Twice the signed area of triangle (a, b, c), + counter-clockwise. */
function area2(p: PlanePoints, a: number, b: number, c: number): number {
  const [ax, ay] = [p.x[a] as number, p.y[a] as number];
  return (
    ((p.x[b] as number) - ax) * ((p.y[c] as number) - ay) -
    ((p.x[c] as number) - ax) * ((p.y[b] as number) - ay)
  );
}

function length2(p: PlanePoints, a: number, b: number): number {
  const dx = (p.x[a] as number) - (p.x[b] as number);
  const dy = (p.y[a] as number) - (p.y[b] as number);
  return dx * dx + dy * dy;
}

/** Shape of a triangle: area over the square of its longest side; 0 or less when it is flat or turned over. */
function shape(p: PlanePoints, a: number, b: number, c: number): number {
  const longest = Math.max(length2(p, a, b), length2(p, b, c), length2(p, c, a));
  return longest === 0 ? 0 : area2(p, a, b, c) / longest;
}

/**
 * Triangles of a polygon.
 *
 * @param outer - vertex indices, counter-clockwise
 * @param holes - vertex indices, clockwise
 * @param out - receives three indices per triangle
 * @returns false when the polygon could not be filled (its sides cross)
 */
export function fillPolygon(
  p: PlanePoints,
  outer: readonly number[],
  holes: readonly (readonly number[])[],
  out: number[],
): boolean {
  if (outer.length === 4 && holes.length === 0 && fillFour(p, outer, out)) return true;
  let ring: number[] | null = [...outer];
  const byRight = [...holes].sort((a, b) => rightmost(p, b) - rightmost(p, a));
  for (const [k, hole] of byRight.entries()) {
    ring = bridged(p, ring, hole, byRight.slice(k + 1));
    if (!ring) return false;
  }
  const before = out.length;
  if (clip(p, ring, FLAT_TRIANGLE, out)) return true;
  out.length = before;
  if (fillBest(p, ring, out)) return true;
  // Where a line leaves a bore along it a triangle may have to be that flat.
  return clip(p, ring, 0, out);
}

/** Ears taken greedily can strand a flat rest; then all fillings are compared. */
function fillBest(p: PlanePoints, ring: readonly number[], out: number[]): boolean {
  const at = (i: number): number => ring[i] as number;
  const found = bestFilling(ring.length, (i, k, j) => {
    const q = shape(p, at(i), at(k), at(j));
    const outline = j - i === ring.length - 1;
    return q <= FLAT_TRIANGLE
      ? Number.NEGATIVE_INFINITY
      : q - (outline ? 0 : 4 * (p.nearness?.(at(i), at(j)) ?? 0));
  });
  if (!found) return false;
  for (const [i, k, j] of found) out.push(at(i), at(k), at(j));
  return true;
}

/** A four-sided polygon by the better of its two diagonals; false when neither gives two good triangles. */
function fillFour(p: PlanePoints, [a, b, c, d]: readonly number[], out: number[]): boolean {
  const [va, vb, vc, vd] = [a as number, b as number, c as number, d as number];
  const first = Math.min(shape(p, va, vb, vc), shape(p, va, vc, vd));
  const second = Math.min(shape(p, vb, vc, vd), shape(p, vb, vd, va));
  if (first <= FLAT_TRIANGLE && second <= FLAT_TRIANGLE) return false;
  const worth = (q: number, i: number, j: number): number =>
    q <= FLAT_TRIANGLE ? -1 : 2 - (p.nearness?.(i, j) ?? 0) + q;
  if (worth(first, va, vc) >= worth(second, vb, vd)) out.push(va, vb, vc, va, vc, vd);
  else out.push(vb, vc, vd, vb, vd, va);
  return true;
}

function rightmost(p: PlanePoints, hole: readonly number[]): number {
  return hole.reduce((m, i) => Math.max(m, p.x[i] as number), Number.NEGATIVE_INFINITY);
}

/** The ring with a hole joined to it by the shortest bridge that crosses nothing. */
function bridged(
  p: PlanePoints,
  ring: readonly number[],
  hole: readonly number[],
  others: readonly (readonly number[])[],
): number[] | null {
  const pairs: (readonly [number, number, number])[] = [];
  for (let i = 0; i < ring.length; i++) {
    for (let j = 0; j < hole.length; j++) {
      pairs.push([length2(p, ring[i] as number, hole[j] as number), i, j]);
    }
  }
  pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1] || a[2] - b[2]);
  const walls = [ring, hole, ...others];
  for (const [, i, j] of pairs) {
    const [a, b] = [ring[i] as number, hole[j] as number];
    if (!opensInto(p, ring, i, b) || !opensInto(p, hole, j, a)) continue;
    if (walls.some((w) => crossesAny(p, w, a, b))) continue;
    return [...ring.slice(0, i + 1), ...hole.slice(j), ...hole.slice(0, j + 1), ...ring.slice(i)];
  }
  return null;
}

/** True when the direction from ring[i] to `b` lies inside the material at that corner (material on the left). */
function opensInto(p: PlanePoints, ring: readonly number[], i: number, b: number): boolean {
  const n = ring.length;
  const [before, at, after] = [
    ring[(i + n - 1) % n] as number,
    ring[i] as number,
    ring[(i + 1) % n] as number,
  ];
  const convex = area2(p, before, at, after) > 0;
  const leftOfNext = area2(p, at, after, b) > 0;
  const leftOfBefore = area2(p, before, at, b) > 0;
  return convex ? leftOfNext && leftOfBefore : leftOfNext || leftOfBefore;
}

function crossesAny(p: PlanePoints, ring: readonly number[], a: number, b: number): boolean {
  for (let k = 0; k < ring.length; k++) {
    const [c, d] = [ring[k] as number, ring[(k + 1) % ring.length] as number];
    if (c === a || c === b || d === a || d === b) continue;
    const [s1, s2] = [area2(p, a, b, c), area2(p, a, b, d)];
    const [s3, s4] = [area2(p, c, d, a), area2(p, c, d, b)];
    if (s1 * s2 <= 0 && s3 * s4 <= 0) return true;
  }
  return false;
}

/** Clips ears off a simple ring; false when it gets stuck, or when the shape of what is left at last is no more than `least`. */
function clip(p: PlanePoints, start: readonly number[], least: number, out: number[]): boolean {
  const n = start.length;
  const next = Int32Array.from({ length: n }, (_, i) => (i + 1) % n);
  const prev = Int32Array.from({ length: n }, (_, i) => (i + n - 1) % n);
  const vertex = (i: number): number => start[i] as number;
  const quality = new Float64Array(n);
  const judge = (i: number): void => {
    quality[i] = earQuality(p, start, next, prev, i);
  };
  for (let i = 0; i < n; i++) judge(i);
  let left = n;
  let at = 0;
  while (left > 3) {
    let best = -1;
    for (let k = 0, i = at; k < left; k++, i = next[i] as number) {
      if (best < 0 || (quality[i] as number) > (quality[best] as number)) best = i;
    }
    if ((quality[best] as number) < 0) return false;
    const [b, a] = [prev[best] as number, next[best] as number];
    out.push(vertex(b), vertex(best), vertex(a));
    next[b] = a;
    prev[a] = b;
    left--;
    at = b;
    judge(b);
    judge(a);
    // Removing a corner can free ears it blocked.
    for (let k = 0, i = at; k < left; k++, i = next[i] as number) if (quality[i] === BLOCKED) judge(i);
  }
  const [b, a] = [prev[at] as number, next[at] as number];
  if (shape(p, vertex(b), vertex(at), vertex(a)) <= least) return false;
  out.push(vertex(b), vertex(at), vertex(a));
  return true;
}

const BLOCKED = -2;

/** Worth of the ear at i: its shape, plus 2 less the nearness of the line it leaves; negative when it is no ear. */
function earQuality(
  p: PlanePoints,
  start: readonly number[],
  next: Int32Array,
  prev: Int32Array,
  i: number,
): number {
  const [b, a] = [prev[i] as number, next[i] as number];
  const [vb, vi, va] = [start[b] as number, start[i] as number, start[a] as number];
  const q = shape(p, vb, vi, va);
  if (q <= FLAT_TRIANGLE) return -1;
  let rest = Number.POSITIVE_INFINITY;
  for (let k = next[a] as number; k !== b; k = next[k] as number) {
    const v = start[k] as number;
    if (v === vb || v === vi || v === va) {
      // A bridge visits a point twice; its second visit blocks the ear when it opens into it.
      if (v === vi) continue;
      const [kp, kn] = [start[prev[k] as number] as number, start[next[k] as number] as number];
      if (inside(p, vb, vi, va, kp) || inside(p, vb, vi, va, kn)) return BLOCKED;
      continue;
    }
    if (insideOrOn(p, vb, vi, va, v)) return BLOCKED;
    rest = Math.min(rest, Math.abs(area2(p, vb, va, v)));
  }
  // Leaving a remainder that is flat against the cut would strand it.
  if (rest === 0 && remainderIsFlat(p, start, next, a, b)) return BLOCKED;
  return 2 - (p.nearness?.(vb, va) ?? 0) + q;
}

function remainderIsFlat(
  p: PlanePoints,
  start: readonly number[],
  next: Int32Array,
  a: number,
  b: number,
): boolean {
  const [va, vb] = [start[a] as number, start[b] as number];
  for (let k = next[a] as number; k !== b; k = next[k] as number) {
    if (Math.abs(area2(p, vb, va, start[k] as number)) > FLAT_TRIANGLE * length2(p, va, vb)) return false;
  }
  return true;
}

function inside(p: PlanePoints, a: number, b: number, c: number, v: number): boolean {
  return area2(p, a, b, v) > 0 && area2(p, b, c, v) > 0 && area2(p, c, a, v) > 0;
}

function insideOrOn(p: PlanePoints, a: number, b: number, c: number, v: number): boolean {
  return area2(p, a, b, v) >= 0 && area2(p, b, c, v) >= 0 && area2(p, c, a, v) >= 0;
}
