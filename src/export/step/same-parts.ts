/**
 * Which solids are one part: the same vertices, edges and faces in their own frames, to a millionth of a millimetre.
 *
 * A solid is told by how it hangs together, its vertices and the middles of its edges. What has been written is looked up
 * by a coarse key first, so that thousands of different posts cost a look each and not a look at each other; the solids
 * themselves are not kept.
 *
 * @packageDocumentation
 */
import { evaluate } from "../../kernel/curve/curve.js";
import type { Solid } from "../../kernel/solid.js";
import { SAME_PART_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";

/** mm. Cells of the key: means of coordinates that agree fall into one cell or into two neighbours. */
const CELL_MM = 4 * SAME_PART_MM;

interface Known<T> {
  readonly points: Float64Array;
  readonly part: T;
}

/** Parts by what they look like. */
export class SameParts<T> {
  private readonly cells = new Map<string, Known<T>[]>();
  private readonly seen = new WeakMap<Solid, Map<string, T>>();

  /**
   * The part that a solid is one of, made by `make` when it is the first.
   *
   * @param apart - solids with different texts here are different parts: name, colour, material
   */
  find(solid: Solid, apart: string, make: () => T): T {
    const known = this.seen.get(solid)?.get(apart);
    if (known !== undefined) return known;
    const points = pointsOf(solid);
    const [cell, rest] = [cellOf(points), `${apart}|${topologyOf(solid)}`];
    const part = this.lookUp(cell, rest, points) ?? this.add(`${cell}|${rest}`, points, make());
    const own = this.seen.get(solid) ?? new Map<string, T>();
    this.seen.set(solid, own.set(apart, part));
    return part;
  }

  private lookUp(cell: number, rest: string, points: Float64Array): T | undefined {
    for (const near of [cell, cell - 1, cell + 1]) {
      for (const known of this.cells.get(`${near}|${rest}`) ?? []) {
        if (agree(known.points, points)) return known.part;
      }
    }
    return undefined;
  }

  private add(key: string, points: Float64Array, part: T): T {
    const list = this.cells.get(key);
    if (list) list.push({ points, part });
    else this.cells.set(key, [{ points, part }]);
    return part;
  }
}

function pointsOf({ vertices, edges }: Solid): Float64Array {
  const out = new Float64Array(3 * (vertices.length + edges.length));
  let i = 0;
  const keep = (p: Vec3): void => {
    out.set(p, i);
    i += 3;
  };
  for (const v of vertices) keep(v);
  for (const { curve, t0, t1 } of edges) keep(evaluate(curve, (t0 + t1) / 2));
  return out;
}

function cellOf(points: Float64Array): number {
  let sum = 0;
  for (const x of points) sum += x;
  return Math.round(sum / points.length / CELL_MM);
}

/** Counts and a sum (FNV-1a) over everything that is no length: two of these that are equal hang together alike. */
function topologyOf({ vertices, edges, faces }: Solid): string {
  let sum = 0x811c9dc5;
  const mix = (n: number): void => {
    sum = Math.imul(sum ^ n, 0x01000193);
  };
  for (const { curve, from, to } of edges) {
    mix(curve.kind.length);
    mix(from);
    mix(to);
  }
  for (const { surface, sense, loops } of faces) {
    mix(surface.kind.length * sense);
    for (const loop of loops) {
      mix(loop.length);
      for (const { edge, forward } of loop) mix(forward ? edge : ~edge);
    }
  }
  return `${vertices.length}/${edges.length}/${faces.length}/${sum}`;
}

function agree(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) {
    if (!(Math.abs((a[i] as number) - (b[i] as number)) <= SAME_PART_MM)) return false;
  }
  return a.length === b.length;
}
