/**
 * Do pieces fit? Written from the sections alone: distances to outlines, and rays through triangles. Shares no code with
 * the solver beyond the pieces it is asked about.
 */
import { type Contact, type Piece, solidOf } from "../../src/joints/index.js";
import {
  evaluate,
  type Mesh,
  pointToLocal,
  pointToParent,
  tessellate,
  type Vec3,
} from "../../src/kernel/index.js";
import type { Section } from "../../src/members/index.js";

function roundedRect(u: number, v: number, width: number, depth: number, radius: number): number {
  const [x, y] = [Math.abs(u) - (width / 2 - radius), Math.abs(v) - (depth / 2 - radius)];
  return Math.hypot(Math.max(x, 0), Math.max(y, 0)) + Math.min(Math.max(x, y), 0) - radius;
}

/** Distance from a section's outside, + outside it. */
export function skinDistance({ shape }: Section, u: number, v: number): number {
  switch (shape.kind) {
    case "round-tube":
    case "round-bar":
      return Math.hypot(u, v) - shape.od / 2;
    case "rect-tube":
      return roundedRect(u, v, shape.width, shape.depth, shape.outerRadius);
    case "rect-bar":
      return roundedRect(u, v, shape.width, shape.depth, shape.edgeRadius);
    default:
      throw new Error("no distance for a custom section");
  }
}

/** Distance from a section's material, − inside it. */
export function materialDistance(section: Section, u: number, v: number): number {
  const { shape } = section;
  const outside = skinDistance(section, u, v);
  if (shape.kind === "round-tube") return Math.max(outside, shape.od / 2 - shape.wall - Math.hypot(u, v));
  if (shape.kind !== "rect-tube") return outside;
  const [w, d] = [shape.width - 2 * shape.wall, shape.depth - 2 * shape.wall];
  return Math.max(outside, -roundedRect(u, v, w, d, shape.innerRadius));
}

/** Points along the edges of one end of a piece, in the layout, with whether the face they are on is round. */
export function endPoints(
  piece: Piece,
  end: 0 | 1,
  onto: string,
): { readonly p: Vec3; readonly round: boolean }[] {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(`${piece.id} has no solid`);
  const { faces, edges } = made.value;
  const out: { p: Vec3; round: boolean }[] = [];
  for (const face of faces) {
    const from = face.provenance;
    if (from.from !== "end" || from.end !== end || from.onto !== onto) continue;
    for (const use of face.loops.flat()) {
      const edge = edges[use.edge]!;
      for (let k = 0; k <= 10; k++) {
        const q = evaluate(edge.curve, edge.t0 + ((edge.t1 - edge.t0) * k) / 10);
        out.push({ p: pointToParent(piece.frame, q), round: face.surface.kind === "cylinder" });
      }
    }
  }
  return out;
}

/** Least and greatest distance of a contact's cut from the mate's skin, and of what lies on flat shoulders beside it. */
export function contactRange(piece: Piece, mate: Piece, contact: Contact) {
  let [least, greatest, count] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  let shoulder = Number.POSITIVE_INFINITY;
  const roundMate = mate.section.shape.kind.startsWith("round");
  for (const { p, round } of endPoints(piece, contact.end, contact.onto)) {
    const [u, v] = pointToLocal(mate.frame, p);
    const d = skinDistance(mate.section, u, v);
    if (roundMate && !round) {
      shoulder = Math.min(shoulder, d);
      continue;
    }
    count++;
    least = Math.min(least, d);
    greatest = Math.max(greatest, d);
  }
  return { least, greatest, count, shoulder };
}

export interface Placed {
  readonly piece: Piece;
  readonly mesh: Mesh;
  /** Its vertices and places on the sides of its triangles, in the layout. */
  readonly points: readonly Vec3[];
  readonly low: Vec3;
  readonly high: Vec3;
}

/** Places on a side of a triangle near its start, and its middle: long strips have points near their ends too. */
function along(a: Vec3, b: Vec3): Vec3[] {
  const size = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
  return [1, 3, 8, 20, size / 2]
    .filter((s) => s <= size)
    .map((s): Vec3 => {
      const t = s / size;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
    });
}

export function placed(piece: Piece): Placed {
  const made = solidOf(piece);
  if (!made.ok) throw new Error(`${piece.id} has no solid`);
  const mesh = tessellate(made.value);
  const at = (i: number): Vec3 => [
    mesh.positions[3 * i]!,
    mesh.positions[3 * i + 1]!,
    mesh.positions[3 * i + 2]!,
  ];
  const local: Vec3[] = Array.from({ length: mesh.positions.length / 3 }, (_, i) => at(i));
  for (let t = 0; t < mesh.triangles.length; t += 3) {
    const corners = [0, 1, 2].map((k) => at(mesh.triangles[t + k]!)) as [Vec3, Vec3, Vec3];
    for (const k of [0, 1, 2]) local.push(...along(corners[k]!, corners[(k + 1) % 3]!));
  }
  const points = local.map((p) => pointToParent(piece.frame, p));
  const bound = (f: (...x: number[]) => number): Vec3 =>
    [0, 1, 2].map((i) => points.reduce((m, p) => f(m, p[i]!), points[0]![i]!)) as unknown as Vec3;
  return { piece, mesh, points, low: bound(Math.min), high: bound(Math.max) };
}

/** Times a line along a piece's axis through (u, v) crosses its mesh above s. */
function crossingsAbove({ mesh }: Placed, u: number, v: number, s: number): number {
  let count = 0;
  const { positions: p, triangles } = mesh;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t]! * 3, triangles[t + 1]! * 3, triangles[t + 2]! * 3];
    const side = (i: number, j: number): number =>
      (p[j]! - p[i]!) * (v - p[i + 1]!) - (p[j + 1]! - p[i + 1]!) * (u - p[i]!);
    const [x, y, z] = [side(b, c), side(c, a), side(a, b)];
    if (!(x > 0 === y > 0 && y > 0 === z > 0)) continue;
    const sum = x + y + z;
    if (sum !== 0 && (x * p[a + 2]! + y * p[b + 2]! + z * p[c + 2]!) / sum > s) count++;
  }
  return count;
}

/** How many points of one piece lie deeper than `deep` in another's material, away from its ends by as much. */
export function pointsInside(one: Placed, other: Placed, deep: number): number {
  for (let i = 0; i < 3; i++) if (one.high[i]! < other.low[i]! || one.low[i]! > other.high[i]!) return 0;
  let count = 0;
  for (const p of one.points) {
    const [u, v, s] = pointToLocal(other.piece.frame, p);
    if (materialDistance(other.piece.section, u, v) > -deep) continue;
    if (crossingsAbove(other, u, v, s + deep) % 2 === 1 && crossingsAbove(other, u, v, s - deep) % 2 === 1)
      count++;
  }
  return count;
}
