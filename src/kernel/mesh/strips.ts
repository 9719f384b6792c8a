/**
 * Fills a face of a cylinder strip by strip between rulings.
 *
 * Every ruling the face spans cuts its unrolled loops only at points they already have, so strips need no new points and
 * neighbours cannot disagree. Within a strip any triangle stays within the chord tolerance. A strip is filled as a column;
 * where that finds no order, its outline is put together and filled as a polygon.
 *
 * @packageDocumentation
 */
import { addChain, type Chains, fillColumn, newChains } from "./column.js";
import type { FlatFace } from "./flat-face.js";
import type { Nearness } from "./polygon.js";
import type { Runs } from "./runs.js";
import { fillStripPolygons } from "./strip-polygons.js";

/**
 * Triangles of a face whose loops were cut into runs; the runs are taken away.
 *
 * @param nearness - see `PlanePoints`, by vertices of the mesh
 * @returns false when the face cannot be filled
 */
export function fillStrips(flat: FlatFace, runs: Runs, nearness: Nearness, out: number[]): boolean {
  const { strip } = runs;
  const chains = newChains();
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const s of strip) {
    if (s < low) low = s;
    if (s > high) high = s;
  }
  const latest = new Int32Array(strip.length === 0 ? 0 : high - low + 1).fill(-1);
  const next = new Int32Array(strip.length);
  for (let r = strip.length - 1; r >= 0; r--) {
    const s = (strip[r] as number) - low;
    next[r] = latest[s] as number;
    latest[s] = r;
  }
  let filled = true;
  for (let s = 0; s < latest.length && filled; s++) {
    let ordered = true;
    for (let r = latest[s] as number; r >= 0; r = next[r] as number) {
      ordered = addChains(flat, runs, r, chains) && ordered;
    }
    if (fillColumn(flat, chains, low + s, ordered, out)) continue;
    const own: number[] = [];
    for (let r = latest[s] as number; r >= 0; r = next[r] as number) own.push(r);
    filled = fillStripPolygons(flat, runs, own, low + s, nearness, out);
  }
  for (const list of [runs.first, runs.last, runs.strip, runs.kind]) list.length = 0;
  return filled;
}

/** Turns a run into chains: as it is, or cut at its tip. False when it ends anywhere but on the strip's rulings. */
function addChains(
  { x, ruling }: FlatFace,
  { first, last, strip, kind }: Runs,
  r: number,
  chains: Chains,
): boolean {
  const [a, b, side] = [first[r] as number, last[r] as number, strip[r] as number];
  if (kind[r] === "touch") {
    addChain(chains, false, a, a);
    addChain(chains, true, a, a);
    return true;
  }
  const toRight = ruling[b] === side + 1;
  const fromLeft = ruling[a] === side;
  if (kind[r] === "open") {
    if (!(toRight || ruling[b] === side) || !(fromLeft || ruling[a] === side + 1)) return false;
    if (toRight && fromLeft) {
      addChain(chains, true, a, b);
      return true;
    }
    if (!toRight && !fromLeft) {
      addChain(chains, false, b, a);
      return true;
    }
  }
  // Out and back to one side: a closed run goes out from its leftmost place.
  const back = kind[r] === "closed" || fromLeft;
  let tip = a;
  for (let i = a + 1; i <= b; i++) {
    if (back ? (x[i] as number) > (x[tip] as number) : (x[i] as number) < (x[tip] as number)) tip = i;
  }
  addChain(chains, true, back ? a : tip, back ? tip : b);
  addChain(chains, false, back ? b : tip, back ? tip : a);
  return true;
}
