/**
 * Fills a plane ring between two chains that both go once round a common centre, as a strip of triangles.
 *
 * The end of a tube is such a ring. The strip walks both chains by angle and always takes the shorter diagonal.
 *
 * @packageDocumentation
 */
import type { PlanePoints } from "./polygon.js";

/**
 * Fills the ring; false, with nothing added, when the chains do not both turn steadily round one centre.
 *
 * @param outer - counter-clockwise
 * @param inner - clockwise
 */
export function ringStrip(
  p: PlanePoints,
  outer: readonly number[],
  inner: readonly number[],
  out: number[],
): boolean {
  const hole = [...inner].reverse();
  const centre = middle(p, hole);
  if (!turnsRound(p, outer, centre) || !turnsRound(p, hole, centre)) return false;
  const [a0, b0] = nearestPair(p, outer, hole);
  const [n, m] = [outer.length, hole.length];
  const at = (chain: readonly number[], k: number): number => chain[k % chain.length] as number;
  const triangles: number[] = [];
  let [i, j] = [0, 0];
  while (i < n || j < m) {
    const a = at(outer, a0 + i);
    const b = at(hole, b0 + j);
    const [aNext, bNext] = [at(outer, a0 + i + 1), at(hole, b0 + j + 1)];
    const stepOuter = i < n && area2(p, a, aNext, b) > 0;
    const stepHole = j < m && area2(p, a, bNext, b) > 0;
    if (!stepOuter && !stepHole) return false;
    const takeOuter = stepOuter && (!stepHole || length2(p, aNext, b) <= length2(p, a, bNext));
    if (takeOuter) {
      triangles.push(a, aNext, b);
      i++;
    } else {
      triangles.push(a, bNext, b);
      j++;
    }
  }
  out.push(...triangles);
  return true;
}

function middle(p: PlanePoints, ring: readonly number[]): readonly [number, number] {
  let [x, y] = [0, 0];
  for (const v of ring) {
    x += (p.x[v] as number) / ring.length;
    y += (p.y[v] as number) / ring.length;
  }
  return [x, y];
}

/** True when every side of a counter-clockwise ring is seen from the centre in the same sense. */
function turnsRound(p: PlanePoints, ring: readonly number[], c: readonly [number, number]): boolean {
  for (let k = 0; k < ring.length; k++) {
    const [a, b] = [ring[k] as number, ring[(k + 1) % ring.length] as number];
    const turn =
      ((p.x[a] as number) - c[0]) * ((p.y[b] as number) - c[1]) -
      ((p.x[b] as number) - c[0]) * ((p.y[a] as number) - c[1]);
    if (!(turn > 0)) return false;
  }
  return true;
}

function nearestPair(
  p: PlanePoints,
  outer: readonly number[],
  hole: readonly number[],
): readonly [number, number] {
  let best: readonly [number, number] = [0, 0];
  let least = Number.POSITIVE_INFINITY;
  for (let j = 0; j < hole.length; j++) {
    const d = length2(p, outer[0] as number, hole[j] as number);
    if (d < least) {
      least = d;
      best = [0, j];
    }
  }
  return best;
}

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
