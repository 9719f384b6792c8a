/**
 * Which vertices of a solid are one point to somebody who cannot see edges below some length? Asked by meshes and by files.
 *
 * @packageDocumentation
 */
import type { Edge, Solid } from "./solid.js";
import { near, type Vec3 } from "./vec.js";

/** For each vertex the one that stands for it when edges whose ends are nearer than `within` are one point. */
export function weldedVertices(solid: Solid, within: number): number[] {
  const short = ({ from, to }: Edge): boolean =>
    near(solid.vertices[from] as Vec3, solid.vertices[to] as Vec3, within);
  const same = solid.vertices.map((_, v) => v);
  if (!solid.edges.some(short)) return same;
  // An end of a line stays where it is, on the ruling that the line follows.
  const onLine = new Set<number>();
  for (const e of solid.edges) if (e.curve.kind === "line" && !short(e)) onLine.add(e.from).add(e.to);
  const find = (v: number): number => (same[v] === v ? v : find(same[v] as number));
  for (const e of solid.edges) {
    if (!short(e)) continue;
    const [a, b] = [find(e.from), find(e.to)].sort((v, w) => v - w) as [number, number];
    const [gone, kept] = onLine.has(b) && !onLine.has(a) ? [a, b] : [b, a];
    same[gone] = kept;
  }
  return same.map((_, v) => find(v));
}
