/**
 * Is every edge of a mesh used exactly once in each direction, and which triangles are neighbours?
 *
 * A half-edge is one side of a triangle, number 3t + k for the side from corner k of triangle t. In a good mesh each finds
 * its opposite among the few that wait at its lower vertex (`pairedEdges`). In any other, half-edges are gathered by their
 * lower vertex and sorted by the higher, so that all uses of one edge lie side by side and can be counted.
 *
 * @packageDocumentation
 */
import { collinear, orient2d } from "./orient.js";

/** What the edges say. Counts; vertex and triangle numbers are those of the mesh. */
export interface EdgeSurvey {
  /** Per half-edge the one it is matched with, or −1. */
  readonly opposite: Int32Array;
  /** Different edges, whatever their use. */
  readonly edges: number;
  /** Edges not used exactly once in each direction. */
  readonly openEdges: number;
  /** The two vertices of the first of them. */
  readonly firstOpen?: readonly [number, number];
  /** Triangles on the same three vertices as another one, whichever way round. */
  readonly duplicateTriangles: number;
  readonly firstDuplicate?: number;
}

/** Surveys the edges of triangles whose indices are in range. */
export function surveyEdges(vertices: number, triangles: Uint32Array): EdgeSurvey {
  return pairedEdges(vertices, triangles) ?? countedEdges(vertices, triangles);
}

/** The survey of a mesh with every edge used once in each direction and no two triangles on the same corners; else null. */
function pairedEdges(vertices: number, triangles: Uint32Array): EdgeSurvey | null {
  const count = triangles.length;
  const opposite = new Int32Array(count).fill(-1);
  // Of each edge the half-edge that came first, as linked lists by the lower vertex, with the higher beside it.
  const first = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(count);
  const highs = new Uint32Array(count);
  let edges = 0;
  for (let h = 0; h < count; h++) {
    const k = h % 3;
    const from = triangles[h] as number;
    const to = triangles[k === 2 ? h - 2 : h + 1] as number;
    if (from === to) return null;
    const low = Math.min(from, to);
    const high = Math.max(from, to);
    let g = first[low] as number;
    while (g >= 0 && highs[g] !== high) g = next[g] as number;
    if (g < 0) {
      next[h] = first[low] as number;
      highs[h] = high;
      first[low] = h;
      edges++;
      continue;
    }
    if ((opposite[g] as number) >= 0 || triangles[g] === from) return null;
    if (apexOf(triangles, g) === apexOf(triangles, h)) return null;
    opposite[g] = h;
    opposite[h] = g;
  }
  return 2 * edges === count ? { opposite, edges, openEdges: 0, duplicateTriangles: 0 } : null;
}

/** The survey of any triangles. */
function countedEdges(vertices: number, triangles: Uint32Array): EdgeSurvey {
  const { keys, start } = sortedHalfEdges(vertices, triangles);
  const opposite = new Int32Array(triangles.length).fill(-1);
  const found = { edges: 0, openEdges: 0, duplicateTriangles: 0 };
  let firstOpen: readonly [number, number] | undefined;
  let firstDuplicate: number | undefined;
  const count = triangles.length;
  for (let low = 0; low < vertices; low++) {
    const end = start[low + 1] as number;
    let j = start[low] as number;
    while (j < end) {
      const i = j;
      const high = highOf(keys, i, count);
      const past = (high + 1) * count;
      while (j < end && (keys[j] as number) < past) j++;
      found.edges++;
      if (j - i > 1) {
        const twin = duplicateAt(keys, i, j, high, triangles);
        found.duplicateTriangles += twin;
        if (twin > 0) firstDuplicate ??= firstDuplicateAt(keys, i, j, high, triangles);
      }
      const a = (keys[i] as number) - high * count;
      const b = j - i === 2 ? (keys[i + 1] as number) - high * count : a;
      if (low !== high && a !== b && triangles[a] !== triangles[b]) {
        opposite[a] = b;
        opposite[b] = a;
      } else {
        found.openEdges++;
        firstOpen ??= [low, high];
      }
    }
  }
  return {
    opposite,
    ...found,
    ...(firstOpen && { firstOpen }),
    ...(firstDuplicate !== undefined && { firstDuplicate }),
  };
}

/** Triangles with two equal corners or with three corners exactly on one line, and the least height of all others. */
export function surveyShapes(
  positions: Float64Array,
  triangles: Uint32Array,
  minAltitude: number,
): { readonly degenerate: number; readonly first?: number; readonly leastAltitude: number } {
  let degenerate = 0;
  let first: number | undefined;
  let leastAltitude = Infinity;
  for (let h = 0; h < triangles.length; h += 3) {
    const a = triangles[h] as number;
    const b = triangles[h + 1] as number;
    const c = triangles[h + 2] as number;
    const flat = a === b || b === c || c === a || isFlat(positions, a, b, c);
    const altitude = flat ? 0 : altitudeOf(positions, a, b, c);
    if (flat || altitude < minAltitude) {
      degenerate++;
      first ??= h / 3;
    } else leastAltitude = Math.min(leastAltitude, altitude);
  }
  return { degenerate, leastAltitude, ...(first !== undefined && { first }) };
}

/** Vertices at which more than one closed fan of triangles meets: the surface is pinched there to a point. */
export function pinchedVertices(vertices: number, triangles: Uint32Array, opposite: Int32Array): number {
  const fans = new Uint8Array(vertices);
  const seen = new Uint8Array(triangles.length);
  let pinched = 0;
  for (let h = 0; h < triangles.length; h++) {
    if (seen[h]) continue;
    for (let g = h; g >= 0 && !seen[g]; g = opposite[g - (g % 3) + ((g + 2) % 3)] as number) seen[g] = 1;
    const v = triangles[h] as number;
    if (fans[v] === 1) pinched++;
    fans[v] = Math.min(2, (fans[v] as number) + 1);
  }
  return pinched;
}

/** Keys `high · halfEdges + halfEdge`, gathered by the lower vertex and sorted within it. */
function sortedHalfEdges(
  vertices: number,
  triangles: Uint32Array,
): { keys: Float64Array; start: Uint32Array } {
  const count = triangles.length;
  const start = new Uint32Array(vertices + 2);
  for (let h = 0; h < count; h++) {
    const low = Math.min(triangles[h] as number, endOf(triangles, h));
    start[low + 2] = (start[low + 2] as number) + 1;
  }
  for (let v = 2; v < vertices + 2; v++) start[v] = (start[v] as number) + (start[v - 1] as number);
  const keys = new Float64Array(count);
  for (let h = 0; h < count; h++) {
    const from = triangles[h] as number;
    const to = endOf(triangles, h);
    const low = Math.min(from, to);
    const place = start[low + 1] as number;
    keys[place] = Math.max(from, to) * count + h;
    start[low + 1] = place + 1;
  }
  for (let v = 0; v < vertices; v++) sortRange(keys, start[v] as number, start[v + 1] as number);
  return { keys, start };
}

/** Insertion sort for the few edges of an ordinary vertex; the engine's own sort for the hub of a fan. */
function sortRange(keys: Float64Array, from: number, to: number): void {
  if (to - from > 24) {
    keys.subarray(from, to).sort();
    return;
  }
  for (let i = from + 1; i < to; i++) {
    const key = keys[i] as number;
    let j = i - 1;
    for (; j >= from && (keys[j] as number) > key; j--) keys[j + 1] = keys[j] as number;
    keys[j + 1] = key;
  }
}

/** Uses of one edge whose apexes are equal belong to twins; counted at the edge that lies across the highest corner. */
function duplicateAt(
  keys: Float64Array,
  from: number,
  to: number,
  high: number,
  triangles: Uint32Array,
): number {
  let count = 0;
  for (let j = from + 1; j < to; j++) if (isTwin(keys, from, j, high, triangles)) count++;
  return count;
}

/** Triangle of the first of them. */
function firstDuplicateAt(
  keys: Float64Array,
  from: number,
  to: number,
  high: number,
  triangles: Uint32Array,
): number {
  let j = from + 1;
  while (j < to - 1 && !isTwin(keys, from, j, high, triangles)) j++;
  return Math.floor(((keys[j] as number) - high * triangles.length) / 3);
}

/** True when use j of an edge has its apex beyond `high`, and one before it in the list has the same. */
function isTwin(keys: Float64Array, from: number, j: number, high: number, triangles: Uint32Array): boolean {
  const base = high * triangles.length;
  const apex = apexOf(triangles, (keys[j] as number) - base);
  if (apex <= high) return false;
  for (let i = from; i < j; i++) if (apexOf(triangles, (keys[i] as number) - base) === apex) return true;
  return false;
}

function highOf(keys: Float64Array, i: number, count: number): number {
  return Math.floor((keys[i] as number) / count);
}

function endOf(triangles: Uint32Array, h: number): number {
  return triangles[h % 3 === 2 ? h - 2 : h + 1] as number;
}

function apexOf(triangles: Uint32Array, h: number): number {
  return triangles[h % 3 === 0 ? h + 2 : h - 1] as number;
}

/** True exactly when three corners lie on one line; asked first along the axis from which the triangle looks largest. */
function isFlat(p: Float64Array, a: number, b: number, c: number): boolean {
  const ax = p[3 * a] as number;
  const ay = p[3 * a + 1] as number;
  const az = p[3 * a + 2] as number;
  const ux = (p[3 * b] as number) - ax;
  const uy = (p[3 * b + 1] as number) - ay;
  const uz = (p[3 * b + 2] as number) - az;
  const vx = (p[3 * c] as number) - ax;
  const vy = (p[3 * c + 1] as number) - ay;
  const vz = (p[3 * c + 2] as number) - az;
  const x = Math.abs(uy * vz - uz * vy);
  const y = Math.abs(ux * vz - uz * vx);
  const z = Math.abs(ux * vy - uy * vx);
  const axis = x > y ? (x > z ? 0 : 2) : y > z ? 1 : 2;
  return orient2d(p, a, b, c, axis) === 0 && collinear(p, a, b, c);
}

/** Height over the longest side, millimetres. */
function altitudeOf(p: Float64Array, a: number, b: number, c: number): number {
  const ax = p[3 * a] as number;
  const ay = p[3 * a + 1] as number;
  const az = p[3 * a + 2] as number;
  const ux = (p[3 * b] as number) - ax;
  const uy = (p[3 * b + 1] as number) - ay;
  const uz = (p[3 * b + 2] as number) - az;
  const vx = (p[3 * c] as number) - ax;
  const vy = (p[3 * c + 1] as number) - ay;
  const vz = (p[3 * c + 2] as number) - az;
  const x = uy * vz - uz * vy;
  const y = uz * vx - ux * vz;
  const z = ux * vy - uy * vx;
  const w2 = (vx - ux) ** 2 + (vy - uy) ** 2 + (vz - uz) ** 2;
  const longest2 = Math.max(ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz, w2);
  return Math.sqrt((x * x + y * y + z * z) / longest2);
}
