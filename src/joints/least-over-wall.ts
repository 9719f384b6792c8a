/**
 * Where does a wall cut square through first land on what the end is shaped to?
 *
 * Along the way through the wall, from a place of the outline straight inwards, each sheet is a line minus or plus a root
 * of a square: its only stationary place is known in closed form. The nearest contact is at one of those, where the way
 * crosses a break of a header, or at a face of the wall. Where the farther of two contacts closes the bar, or a miter
 * parts them, contacts take over from each other at other places too; these are searched. Millimetres, the bar's own
 * outward coordinate.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, type EndNode, outAt } from "../kernel/end-compile.js";
import { closeIn } from "../kernel/outline.js";
import type { OutlinePlace } from "./wall.js";

/** Equal parts of the wall between which a search looks. */
const DEPTHS = 6;

/** The nearest contact over the wall behind a place of the outline; +∞ where all of the wall misses. */
export function leastOverWall(end: CompiledEnd, place: OutlinePlace, wall: number): number {
  return isNearest(end.root) ? leastOfNearest(end, place, wall) : leastBySearch(end, place, wall);
}

/** True when the nearest of all contacts closes the bar. */
function isNearest(node: EndNode): boolean {
  return node.kind === "leaf" || node.kind === "hit" || (node.kind === "min" && node.of.every(isNearest));
}

function leastOfNearest(end: CompiledEnd, place: OutlinePlace, wall: number): number {
  const { u, v, iu, iv } = place;
  let least = Math.min(outAt(end, u, v), outAt(end, u + wall * iu, v + wall * iv));
  const look = (d: number): void => {
    if (d > 0 && d < wall) least = Math.min(least, outAt(end, u + d * iu, v + d * iv));
  };
  for (const { h0, hu, hv, breaks } of end.hits) {
    const across = hu * iu + hv * iv;
    const h = h0 + hu * u + hv * v;
    for (const b of breaks) look((b - h) / across);
  }
  for (const { round, a, b } of end.sheets) {
    if (!round) continue;
    const across = round.hu * iu + round.hv * iv;
    // out′ = slope − k·across·h / √(R² − h²) = 0.
    const slope = a * iu + b * iv;
    const [sin, cos] = [slope, round.k * across];
    const h = (round.radius * sin * Math.sign(cos)) / Math.sqrt(sin * sin + cos * cos);
    look((h - (round.h0 + round.hu * u + round.hv * v)) / across);
  }
  return least;
}

function leastBySearch(end: CompiledEnd, { u, v, iu, iv }: OutlinePlace, wall: number): number {
  const nearer = (d: number): number => -outAt(end, u + d * iu, v + d * iv);
  let [depth, best] = [0, nearer(0)];
  for (let k = 1; k <= DEPTHS; k++) {
    const d = (wall * k) / DEPTHS;
    const x = nearer(d);
    if (x > best) [depth, best] = [d, x];
  }
  const step = wall / DEPTHS;
  const [, closest] = closeIn(nearer, depth - step, depth + step, depth, best, wall);
  return -closest;
}
