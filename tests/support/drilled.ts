/**
 * What a straight round hole takes out of a bar, by ray casts across the section: no solids, no edges.
 *
 * Every ruling of the hole crosses the section along the same direction, so the volume is ∫ 2√(r² − x²)·way(h₀ + x) dx
 * over the hole's width, over the cosine of its rake; way(h) is the length of material on the line at h. The width is
 * parted where that line passes a corner or a round's edge, which speeds up convergence and changes nothing else.
 */
import type { Bore } from "../../src/kernel/index.js";
import { integrate } from "./gauss-kronrod.js";
import { halfWidth, type Outline, type SectionCase } from "./joint-case.js";
import { crossOutline } from "./ray.js";

type Pair = readonly [number, number];

/** Where the line at h, which runs along (dx, dy), is inside an outline; an empty stretch when it is nowhere. */
function stretchOf(o: Outline, [dx, dy]: Pair, h: number): Pair {
  if (Math.abs(h) >= halfWidth(o, dy, -dx)) return [0, 0];
  // A line along a side is turned by nothing a volume shows.
  const [x, y] = [dx === 0 ? 1e-14 : dx, dy === 0 ? 1e-14 : dy];
  return crossOutline(o, h * dy, -h * dx, x, y) ?? [0, 0];
}

/** Values of h at which an outline has a corner, or a round its start or its silhouette. */
function marksOf(o: Outline, [dx, dy]: Pair): number[] {
  const reach = halfWidth(o, dy, -dx);
  if (o.kind === "round") return [-reach, reach];
  const [a, b] = [o.width / 2, o.depth / 2];
  const [p, q] = [a - o.corner, b - o.corner];
  const at = (x: number, y: number): number => x * dy - y * dx;
  return [-1, 1].flatMap((i) =>
    [-1, 1].flatMap((j) => [
      at(i * a, j * q),
      at(i * p, j * b),
      at(i * p, j * q) - o.corner,
      at(i * p, j * q) + o.corner,
    ]),
  );
}

/** Volume that one bore takes out of a section whose hollow, if any, it goes through in its whole width, mm³. */
export function drilledByRays(section: SectionCase, bore: Bore): number {
  const [dx, dy, dz] = bore.direction;
  const across = Math.hypot(dx, dy);
  const d: Pair = [dx / across, dy / across];
  const r = bore.diameter / 2;
  const h0 = bore.point[0] * d[1] - bore.point[1] * d[0];
  const outlines = [section.outer, ...(section.hole ? [section.hole] : [])];
  const way = (h: number): number => {
    const [enter, leave] = stretchOf(section.outer, d, h);
    if (!section.hole) return leave - enter;
    const [from, to] = stretchOf(section.hole, d, h);
    return from - enter + (bore.through === "both" ? leave - to : 0);
  };
  const marks = outlines.flatMap((o) => marksOf(o, d)).map((m) => m - h0);
  const stops = [-r, ...marks.filter((m) => Math.abs(m) < r).sort((a, b) => a - b), r];
  let sum = 0;
  for (let k = 0; k + 1 < stops.length; k++) {
    const f = (x: number): number => 2 * Math.sqrt(Math.max(0, (r - x) * (r + x))) * way(h0 + x);
    sum += integrate(f, stops[k]!, stops[k + 1]!, 1e-11);
  }
  return (sum * Math.hypot(dx, dy, dz)) / across;
}
