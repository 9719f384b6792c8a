/**
 * Which closed shells does a mesh consist of, and is each the right way out?
 *
 * A shell is what can be reached over matched edges. A shell of positive volume bounds material; one of negative volume
 * is the wall of a cavity and must lie inside a positive one. How often the other shells wind round a point of a shell is
 * read from the solid angles of their triangles (A. van Oosterom and J. Strackee, 1983).
 *
 * @packageDocumentation
 */
import { sixTetrahedra } from "./volume.js";

/** The shells of a mesh; arrays are per shell. */
export interface Shells {
  /** Per triangle its shell. */
  readonly shellOf: Uint32Array;
  readonly count: number;
  /** mm³, signed. */
  readonly volumes: Float64Array;
  /** Six numbers per shell: least x, y, z, greatest x, y, z. Empty boxes where there is one shell only. */
  readonly boxes: Float64Array;
  /** A triangle of each shell. */
  readonly sample: Uint32Array;
  /** Shells with no volume, or inside out and not inside another shell's box. */
  readonly wrong: readonly number[];
}

/** A volume below this part of the sum of its absolute terms is rounding: far above the few roundings of one term. */
const VOLUME_NOISE = 2 ** -44;

/** Finds the shells and measures each about a corner of its own. */
export function findShells(positions: Float64Array, triangles: Uint32Array, opposite: Int32Array): Shells {
  const { shellOf, firsts } = floodShells(triangles.length / 3, opposite);
  const count = firsts.length;
  const volumes = new Float64Array(count);
  const sizes = new Float64Array(count);
  const boxes = new Float64Array(6 * count);
  for (let s = 0; s < count; s++)
    boxes.fill(Infinity, 6 * s, 6 * s + 3).fill(-Infinity, 6 * s + 3, 6 * s + 6);
  for (let h = 0; h < triangles.length; h += 3) {
    const s = shellOf[h / 3] as number;
    const six = sixTetrahedra(positions, triangles, h, 3 * (triangles[3 * (firsts[s] as number)] as number));
    volumes[s] = (volumes[s] as number) + six / 6;
    sizes[s] = (sizes[s] as number) + Math.abs(six / 6);
    // One shell alone is compared with no other.
    if (count > 1)
      for (let k = 0; k < 3; k++) widen(boxes, 6 * s, positions, 3 * (triangles[h + k] as number));
  }
  const wrong: number[] = [];
  for (let s = 0; s < count; s++) {
    const volume = volumes[s] as number;
    const none = Math.abs(volume) <= VOLUME_NOISE * (sizes[s] as number);
    if (none || (volume < 0 && !insideSome(s, volumes, boxes))) wrong.push(s);
  }
  return { shellOf, count, volumes, boxes, sample: Uint32Array.from(firsts), wrong };
}

/**
 * Shells that stand where they must not: material inside other material, a cavity outside any. Meaningful only for
 * closed shells that do not touch.
 */
export function overlappingShells(positions: Float64Array, triangles: Uint32Array, shells: Shells): number {
  if (shells.count < 2) return 0;
  const members = trianglesByShell(shells);
  let overlapping = 0;
  for (let s = 0; s < shells.count; s++) {
    const point = middleOf(positions, triangles, 3 * (shells.sample[s] as number));
    let turns = 0;
    for (let o = 0; o < shells.count; o++) {
      if (o === s || !boxHolds(shells.boxes, 6 * o, point)) continue;
      for (const t of members[o] ?? [])
        turns += solidAngle(positions, triangles, 3 * t, point) / (4 * Math.PI);
    }
    if (Math.round(turns) !== ((shells.volumes[s] as number) > 0 ? 0 : 1)) overlapping++;
  }
  return overlapping;
}

function floodShells(count: number, opposite: Int32Array): { shellOf: Uint32Array; firsts: number[] } {
  const shellOf = new Uint32Array(count).fill(0xffffffff);
  const firsts: number[] = [];
  const stack = new Uint32Array(count);
  for (let t = 0; t < count; t++) {
    if (shellOf[t] !== 0xffffffff) continue;
    const shell = firsts.push(t) - 1;
    shellOf[t] = shell;
    stack[0] = t;
    for (let size = 1; size > 0; ) {
      const at = 3 * (stack[--size] as number);
      for (let h = at; h < at + 3; h++) {
        const mate = opposite[h] as number;
        if (mate < 0) continue;
        const next = (mate - (mate % 3)) / 3;
        if (shellOf[next] !== 0xffffffff) continue;
        shellOf[next] = shell;
        stack[size++] = next;
      }
    }
  }
  return { shellOf, firsts };
}

function widen(boxes: Float64Array, box: number, p: Float64Array, at: number): void {
  for (let k = 0; k < 3; k++) {
    const x = p[at + k] as number;
    if (x < (boxes[box + k] as number)) boxes[box + k] = x;
    if (x > (boxes[box + 3 + k] as number)) boxes[box + 3 + k] = x;
  }
}

function insideSome(s: number, volumes: Float64Array, boxes: Float64Array): boolean {
  return volumes.some((volume, o) => {
    if (volume <= 0) return false;
    return [0, 1, 2].every(
      (k) =>
        (boxes[6 * o + k] as number) < (boxes[6 * s + k] as number) &&
        (boxes[6 * o + 3 + k] as number) > (boxes[6 * s + 3 + k] as number),
    );
  });
}

function trianglesByShell(shells: Shells): number[][] {
  const members: number[][] = Array.from({ length: shells.count }, () => []);
  shells.shellOf.forEach((s, t) => {
    members[s]?.push(t);
  });
  return members;
}

type Point = readonly [number, number, number];

function middleOf(p: Float64Array, triangles: Uint32Array, h: number): Point {
  const mean = (k: number) =>
    ((p[3 * (triangles[h] as number) + k] as number) +
      (p[3 * (triangles[h + 1] as number) + k] as number) +
      (p[3 * (triangles[h + 2] as number) + k] as number)) /
    3;
  return [mean(0), mean(1), mean(2)];
}

function boxHolds(boxes: Float64Array, box: number, point: Point): boolean {
  return point.every((x, k) => x >= (boxes[box + k] as number) && x <= (boxes[box + 3 + k] as number));
}

/** Signed solid angle of a triangle seen from a point, steradians (dimensionless). */
function solidAngle(p: Float64Array, triangles: Uint32Array, h: number, [x, y, z]: Point): number {
  const corner = (k: number): Point => {
    const v = 3 * (triangles[h + k] as number);
    return [(p[v] as number) - x, (p[v + 1] as number) - y, (p[v + 2] as number) - z];
  };
  const dot = (u: Point, v: Point) => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  const [a, b, c] = [corner(0), corner(1), corner(2)];
  const [la, lb, lc] = [Math.hypot(...a), Math.hypot(...b), Math.hypot(...c)];
  const volume =
    a[0] * (b[1] * c[2] - b[2] * c[1]) +
    a[1] * (b[2] * c[0] - b[0] * c[2]) +
    a[2] * (b[0] * c[1] - b[1] * c[0]);
  return 2 * Math.atan2(volume, la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb);
}
