/**
 * The faces of one side of a bar: its border, with the openings of bores taken out.
 *
 * An opening inside the side is a hole; one that crosses a line of the border is a bay in it; one that crosses both lines
 * parts the side into two faces. Openings are clear of each other, so every vertex is left by one edge: loops are found by
 * following them.
 *
 * @packageDocumentation
 */
import { alongBore } from "./bore-stance.js";
import { lineThrough } from "./curve/intersect.js";
import type { SideCuts } from "./cut-bores.js";
import { addEdge, type Shell } from "./shell.js";
import type { Edge, EdgeUse } from "./solid.js";
import { distance, type Vec3 } from "./vec.js";

/** Loops of each face of a side, the outer one first. `border` is what the bores leave of the side's own border. */
export function sideFaces(shell: Shell, border: readonly EdgeUse[], cuts: SideCuts): EdgeUse[][][] {
  if (cuts.uses.length === 0) return [[[...border]]];
  const next = new Map<number, EdgeUse>();
  for (const use of [...border, ...cuts.uses]) next.set(startOf(shell, use), use);
  const loopsFrom = (uses: readonly EdgeUse[]): EdgeUse[][] => {
    const loops: EdgeUse[][] = [];
    for (const first of uses) {
      const loop: EdgeUse[] = [];
      let at = startOf(shell, first);
      for (let use = next.get(at); use; use = next.get(at)) {
        next.delete(at);
        loop.push(use);
        at = endOf(shell, use);
      }
      if (loop.length > 0) loops.push(loop);
    }
    return loops;
  };
  // Every face reaches the border; what is left when those loops are gone are holes.
  const outer = loopsFrom(border);
  const holes = loopsFrom(cuts.uses);
  if (outer.length === 1) return [[...outer, ...holes]];
  const level = (loop: readonly EdgeUse[]): number => {
    const [u, v, s] = shell.vertices[startOf(shell, loop[0] as EdgeUse)] as Vec3;
    return cuts.across.filter((x) => x.s + alongBore(x.along, u, v) * x.rise < s).length;
  };
  const levels = holes.map(level);
  return outer.map((loop) => {
    const own = level(loop);
    return [loop, ...holes.filter((_, k) => levels[k] === own)];
  });
}

/**
 * The edges of the line that starts a side, upwards, less what openings take out of it.
 *
 * @param onLine - vertices of openings on the line, in any order
 */
export function lineEdges(shell: Shell, low: number, high: number, onLine: readonly number[]): EdgeUse[] {
  const at = (v: number): Vec3 => shell.vertices[v] as Vec3;
  const stops = [low, ...[...onLine].sort((a, b) => at(a)[2] - at(b)[2]), high];
  const out: EdgeUse[] = [];
  for (let k = 0; k + 1 < stops.length; k += 2) {
    const [from, to] = [stops[k] as number, stops[k + 1] as number];
    const curve = lineThrough(at(from), at(to));
    const edge = addEdge(shell, { curve, t0: 0, t1: distance(at(from), at(to)) }, from, to);
    out.push({ edge, forward: true });
  }
  return out;
}

function startOf(shell: Shell, { edge, forward }: EdgeUse): number {
  const { from, to } = shell.edges[edge] as Edge;
  return forward ? from : to;
}

function endOf(shell: Shell, { edge, forward }: EdgeUse): number {
  return startOf(shell, { edge, forward: !forward });
}
