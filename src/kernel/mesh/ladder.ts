/**
 * Triangles between two chains that run side by side, like rungs of a ladder.
 *
 * The ladder always takes the shorter of the next two rungs that leaves a triangle the right way round. When all
 * triangles between two chains are, they cover what lies between exactly once, however the chains wind: the boundary is
 * simple, and no triangle is turned over.
 *
 * @packageDocumentation
 */
import { FLAT_TRIANGLE } from "../tolerance.js";
import type { FlatFace } from "./flat-face.js";

/**
 * Fills between two chains of places; false when it gets stuck, with triangles of its own left at the end of `out`.
 *
 * @param floor - first place of the chain that has the material on its left; it runs over p more places, upwards in number
 * @param ceiling - first place of the other chain, beside `floor`; it runs over q more places, downwards in number
 * @param out - receives three vertices of the mesh per triangle
 */
export function fillLadder(
  flat: FlatFace,
  floor: number,
  p: number,
  ceiling: number,
  q: number,
  out: number[],
): boolean {
  const { vertex } = flat;
  const i1 = floor + p;
  const j1 = ceiling - q;
  let i = floor;
  let j = ceiling;
  let iEnd = i1;
  let jEnd = j1;
  if (vertex[i] === vertex[j] && p + q > 0) {
    if (p === 0 || q === 0) return false;
    if (!isTriangle(flat, i, i + 1, j - 1)) return false;
    out.push(vertex[i] as number, vertex[++i] as number, vertex[--j] as number);
  }
  const closed = vertex[i1] === vertex[j1] && (i < i1 || j > j1);
  if (closed) {
    if (i === i1 || j === j1) return false;
    iEnd--;
    jEnd++;
  }
  while (i < iEnd || j > jEnd) {
    const up = i < iEnd && isTriangle(flat, i, i + 1, j);
    const down = j > jEnd && isTriangle(flat, i, j - 1, j);
    if (!up && !down) return false;
    if (up && (!down || length2(flat, i + 1, j) <= length2(flat, i, j - 1))) {
      out.push(vertex[i] as number, vertex[i + 1] as number, vertex[j] as number);
      i++;
    } else {
      out.push(vertex[i] as number, vertex[j - 1] as number, vertex[j] as number);
      j--;
    }
  }
  if (!closed) return true;
  if (!isTriangle(flat, i, i1, j)) return false;
  out.push(vertex[i] as number, vertex[i1] as number, vertex[j] as number);
  return true;
}

/** True when a → b → c turns left by more than rounding. */
export function isTriangle({ x, y }: FlatFace, a: number, b: number, c: number): boolean {
  const ax = x[a] as number;
  const ay = y[a] as number;
  const ux = (x[b] as number) - ax;
  const uy = (y[b] as number) - ay;
  const vx = (x[c] as number) - ax;
  const vy = (y[c] as number) - ay;
  const wx = vx - ux;
  const wy = vy - uy;
  const longest = Math.max(ux * ux + uy * uy, vx * vx + vy * vy, wx * wx + wy * wy);
  return ux * vy - uy * vx > FLAT_TRIANGLE * longest;
}

function length2({ x, y }: FlatFace, a: number, b: number): number {
  const dx = (x[a] as number) - (x[b] as number);
  const dy = (y[a] as number) - (y[b] as number);
  return dx * dx + dy * dy;
}
