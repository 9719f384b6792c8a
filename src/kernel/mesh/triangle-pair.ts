/**
 * Do two triangles of a mesh have more in common than the vertices they share?
 *
 * Every decision is the exact sign of an orientation, so there is no tolerance. Two triangles out of one plane meet where
 * an edge of one meets the other; an edge that lies in the other's plane needs no test of its own, because its two ends
 * are also ends of edges that leave the plane. In one plane the same is asked of their shadows.
 *
 * @packageDocumentation
 */
import { orient2d, orient3d } from "./orient.js";

/** Nothing but shared vertices and edges; a common point beyond them; or two neighbours folded onto each other. */
export type PairRelation = "apart" | "meet" | "folded";

type Triple = readonly [number, number, number];

/**
 * How two different triangles, neither of them degenerate, stand to each other.
 *
 * @param p - positions, x, y, z per vertex
 * @param s - vertex indices of the first triangle
 * @param t - vertex indices of the second
 */
export function relatePair(p: Float64Array, s: Triple, t: Triple): PairRelation {
  const shared = s.filter((v) => t.includes(v));
  if (shared.length >= 2) return relateNeighbours(p, s, t, shared);
  const [a, b, c] = s;
  const sides: Triple = [orient3d(p, a, b, c, t[0]), orient3d(p, a, b, c, t[1]), orient3d(p, a, b, c, t[2])];
  if (sides.every((x) => x > 0) || sides.every((x) => x < 0)) return "apart";
  const flat = sides.every((x) => x === 0);
  const hit = flat ? segmentMeetsFlat(p, shadowAxis(p, s)) : segmentMeets(p);
  if (shared.length === 1) {
    const v = shared[0] as number;
    const [a1, b1] = others(s, v);
    const [a2, b2] = others(t, v);
    return hit(a1, b1, t) || hit(a2, b2, s) ? "meet" : "apart";
  }
  return anyEdgeHits(hit, s, t) || anyEdgeHits(hit, t, s) ? "meet" : "apart";
}

type SegmentTest = (from: number, to: number, triangle: Triple) => boolean;

function anyEdgeHits(hit: SegmentTest, s: Triple, t: Triple): boolean {
  return hit(s[0], s[1], t) || hit(s[1], s[2], t) || hit(s[2], s[0], t);
}

/** Neighbours over an edge overlap only in one plane with both apexes on the same side of it. */
function relateNeighbours(p: Float64Array, s: Triple, t: Triple, shared: readonly number[]): PairRelation {
  const [v, w] = shared as [number, number];
  const a = s.find((x) => x !== v && x !== w);
  const b = t.find((x) => x !== v && x !== w);
  if (a === undefined || b === undefined) return "folded";
  if (orient3d(p, s[0], s[1], s[2], b) !== 0) return "apart";
  const axis = shadowAxis(p, s);
  return orient2d(p, v, w, a, axis) === orient2d(p, v, w, b, axis) ? "folded" : "apart";
}

/** Segment against triangle, the segment not in the triangle's plane. Touching counts. */
function segmentMeets(p: Float64Array): SegmentTest {
  return (from, to, [a, b, c]) => {
    const side = orient3d(p, a, b, c, from) * orient3d(p, a, b, c, to);
    const bothInPlane = side === 0 && orient3d(p, a, b, c, from) === orient3d(p, a, b, c, to);
    if (side > 0 || bothInPlane) return false;
    const turns = [orient3d(p, from, to, a, b), orient3d(p, from, to, b, c), orient3d(p, from, to, c, a)];
    return turns.every((x) => x >= 0) || turns.every((x) => x <= 0);
  };
}

/** Segment against triangle, both in one plane, by their shadows along an axis. Touching counts. */
function segmentMeetsFlat(p: Float64Array, axis: number): SegmentTest {
  return (from, to, [a, b, c]) =>
    insideFlat(p, axis, from, a, b, c) ||
    segmentsCross(p, axis, from, to, a, b) ||
    segmentsCross(p, axis, from, to, b, c) ||
    segmentsCross(p, axis, from, to, c, a);
}

function insideFlat(p: Float64Array, axis: number, q: number, a: number, b: number, c: number): boolean {
  const turns = [orient2d(p, a, b, q, axis), orient2d(p, b, c, q, axis), orient2d(p, c, a, q, axis)];
  return turns.every((x) => x >= 0) || turns.every((x) => x <= 0);
}

function segmentsCross(p: Float64Array, axis: number, a: number, b: number, c: number, d: number): boolean {
  const [abc, abd] = [orient2d(p, a, b, c, axis), orient2d(p, a, b, d, axis)];
  const [cda, cdb] = [orient2d(p, c, d, a, axis), orient2d(p, c, d, b, axis)];
  if (abc === 0 && abd === 0) return spansOverlap(p, axis, a, b, c, d);
  return abc * abd <= 0 && cda * cdb <= 0;
}

/** Collinear segments overlap when their spans do along both remaining coordinates. */
function spansOverlap(p: Float64Array, axis: number, a: number, b: number, c: number, d: number): boolean {
  return [(axis + 1) % 3, (axis + 2) % 3].every((k) => {
    const [pa, pb] = [p[3 * a + k] as number, p[3 * b + k] as number];
    const [pc, pd] = [p[3 * c + k] as number, p[3 * d + k] as number];
    return Math.max(pa, pb) >= Math.min(pc, pd) && Math.max(pc, pd) >= Math.min(pa, pb);
  });
}

/** A coordinate axis along which the triangle's shadow has area; there is one as it is not degenerate. */
function shadowAxis(p: Float64Array, [a, b, c]: Triple): number {
  return [2, 0, 1].find((axis) => orient2d(p, a, b, c, axis) !== 0) ?? 2;
}

function others(t: Triple, v: number): readonly [number, number] {
  return t[0] === v ? [t[1], t[2]] : t[1] === v ? [t[2], t[0]] : [t[0], t[1]];
}
