/**
 * Cuts bores into a shell: openings in the sides, a wall of two half cylinders in each wall, and the checks that they are
 * clear of the ends and of each other.
 *
 * @packageDocumentation
 */

import type { Bore } from "./bar.js";
import { type BoreWall, boreWalls, type Opening } from "./bore.js";
import { evaluate } from "./curve/curve.js";
import { lineThrough } from "./curve/intersect.js";
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import { type CompiledEnd, endAt } from "./end-compile.js";
import type { Region } from "./region.js";
import { addEdge, addVertex, type Shell } from "./shell.js";
import type { EdgeUse } from "./solid.js";
import { LEFT_BESIDE_BORE_MM, ROUNDING_SHARE } from "./tolerance.js";
import { addScaled, distance, dot, sub, type Vec3 } from "./vec.js";

/** Walls of all bores of a section, checked against the ends and each other. */
export function planBores(
  section: Region,
  bores: readonly Bore[],
  low: CompiledEnd,
  high: CompiledEnd,
): { readonly walls: readonly BoreWall[]; readonly diagnostics: readonly Diagnostic[] } {
  const placed: Placed[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const bore of bores) {
    const made = boreWalls(section, bore);
    if ("diagnostic" in made) {
      diagnostics.push(made.diagnostic);
      continue;
    }
    const own = made.walls.map(place);
    const fault =
      firstOf(own, (w) => meetsEnd(w, low, high)) ??
      firstOf(own, (w) => firstOf(placed, (v) => meetsBore(w, v)));
    if (fault) diagnostics.push(fault);
    else placed.push(...own);
  }
  return { walls: placed.map((p) => p.wall), diagnostics };
}

function firstOf<T>(list: readonly T[], f: (x: T) => Diagnostic | null): Diagnostic | null {
  for (const x of list) {
    const found = f(x);
    if (found) return found;
  }
  return null;
}

/** A wall with points round its openings and the stretch of the bore's axis it takes up. */
interface Placed {
  readonly wall: BoreWall;
  readonly points: readonly Vec3[];
  readonly stretch: readonly [Vec3, Vec3];
}

function place(wall: BoreWall): Placed {
  const { frame } = wall.surface;
  const points = [wall.entry, wall.exit].flatMap((opening) =>
    opening.halves.flatMap((h) =>
      Array.from({ length: 12 }, (_, k) => evaluate(h.curve, h.t0 + ((h.t1 - h.t0) * k) / 12)),
    ),
  );
  const along = points.map((p) => dot(sub(p, frame.origin), frame.z));
  const at = (t: number): Vec3 => addScaled(frame.origin, frame.z, t);
  return { wall, points, stretch: [at(Math.min(...along)), at(Math.max(...along))] };
}

function meetsEnd({ wall, points }: Placed, low: CompiledEnd, high: CompiledEnd): Diagnostic | null {
  let left = Number.POSITIVE_INFINITY;
  for (const [u, v, s] of points) left = Math.min(left, endAt(high, u, v).out - s, s + endAt(low, u, v).out);
  if (left > LEFT_BESIDE_BORE_MM) return null;
  return diagnostic({
    code: "bore-meets-end",
    bore: wall.bore,
    message: `Bore ${wall.bore} leaves ${left.toFixed(3)} mm to an end cut; a hole must lie wholly in the side.`,
    hint: "Move the bore away from the end, or cut the end first and leave the hole out.",
    values: { left },
  });
}

function meetsBore(a: Placed, b: Placed): Diagnostic | null {
  if (a.wall.bore === b.wall.bore) return null;
  const left = between(a.stretch, b.stretch) - a.wall.surface.radius - b.wall.surface.radius;
  if (left > LEFT_BESIDE_BORE_MM) return null;
  return diagnostic({
    code: "bore-meets-bore",
    bore: a.wall.bore,
    message: `Bores ${a.wall.bore} and ${b.wall.bore} run into each other or leave only ${left.toFixed(3)} mm between them.`,
    hint: "Move one of the two bores along the bar.",
    values: { left, other: b.wall.bore },
  });
}

/** Least distance of two straight stretches, by the closest points of their lines held to the stretches. */
function between([p0, p1]: readonly [Vec3, Vec3], [q0, q1]: readonly [Vec3, Vec3]): number {
  const [d, e, w] = [sub(p1, p0), sub(q1, q0), sub(p0, q0)];
  const [dd, ee, de, dw, ew] = [dot(d, d), dot(e, e), dot(d, e), dot(d, w), dot(e, w)];
  const hold = (t: number): number => Math.min(1, Math.max(0, t));
  const det = dd * ee - de * de;
  let s = det > ROUNDING_SHARE * dd * ee ? hold((de * ew - ee * dw) / det) : 0;
  const t = hold((de * s + ew) / ee);
  s = hold((de * t - dw) / dd);
  return distance(addScaled(p0, d, s), addScaled(q0, e, t));
}

/** An opening in the shell: its two vertices and two edges. */
interface OpeningEdges {
  readonly vertices: readonly [number, number];
  readonly edges: readonly [number, number];
}

/** Hole loops by `loop:segment` of the side they open on; the bores' own walls go straight into the shell. */
export function cutBores(shell: Shell, walls: readonly BoreWall[]): ReadonlyMap<string, EdgeUse[][]> {
  const holes = new Map<string, EdgeUse[][]>();
  for (const wall of walls) {
    const [entry, exit] = [openingEdges(shell, wall.entry), openingEdges(shell, wall.exit)];
    // Seen from outside the bore's sense runs clockwise where it enters and counter-clockwise where it leaves.
    hole(holes, wall.entry, [
      { edge: entry.edges[0], forward: true },
      { edge: entry.edges[1], forward: true },
    ]);
    hole(holes, wall.exit, [
      { edge: exit.edges[1], forward: false },
      { edge: exit.edges[0], forward: false },
    ]);
    const lines = ([0, 1] as const).map((k) => {
      const [from, to] = [entry.vertices[k], exit.vertices[k]];
      const [p, q] = [shell.vertices[from] as Vec3, shell.vertices[to] as Vec3];
      return addEdge(shell, { curve: lineThrough(p, q), t0: 0, t1: distance(p, q) }, from, to);
    }) as [number, number];
    for (const half of [0, 1] as const) {
      shell.faces.push({
        surface: wall.surface,
        sense: -1,
        loops: [
          [
            { edge: entry.edges[half], forward: false },
            { edge: lines[half], forward: true },
            { edge: exit.edges[half], forward: true },
            { edge: lines[half === 0 ? 1 : 0], forward: false },
          ],
        ],
        provenance: { from: "bore", bore: wall.bore, wall: wall.wall },
      });
    }
  }
  return holes;
}

function hole(holes: Map<string, EdgeUse[][]>, opening: Opening, loop: EdgeUse[]): void {
  const key = `${opening.loop}:${opening.segment}`;
  const list = holes.get(key);
  if (list) list.push(loop);
  else holes.set(key, [loop]);
}

function openingEdges(shell: Shell, opening: Opening): OpeningEdges {
  const [first, second] = opening.halves;
  const a = addVertex(shell, evaluate(first.curve, first.t0));
  const b = addVertex(shell, evaluate(second.curve, second.t0));
  return { vertices: [a, b], edges: [addEdge(shell, first, a, b), addEdge(shell, second, b, a)] };
}
