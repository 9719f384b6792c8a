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
import { linkByStrip, type Runs } from "./runs.js";
import { fillStripPolygons } from "./strip-polygons.js";

/**
 * Triangles of a face whose loops were cut into runs.
 *
 * @param nearness - see `PlanePoints`, by vertices of the mesh
 * @returns false when the face cannot be filled
 */
export function fillStrips(flat: FlatFace, runs: Runs, nearness: Nearness, out: number[]): boolean {
  const { firstOf, next } = runs;
  const { low, strips } = linkByStrip(runs);
  const chains = newChains();
  for (let s = 0; s < strips; s++) {
    let ordered = true;
    chains.count = 0;
    for (let r = firstOf[s] as number; r >= 0; r = next[r] as number) {
      ordered = addChains(flat, runs, r, chains) && ordered;
    }
    if (ordered && fillColumn(flat, chains, low + s, out)) continue;
    if (!fillStripPolygons(flat, runs, low + s, firstOf[s] as number, nearness, out)) return false;
  }
  return true;
}

/** Turns a run into chains: as it is, or cut at its tip. False when it ends anywhere but on the strip's rulings. */
function addChains(
  { x, ruling }: FlatFace,
  { first, last, strip, kind }: Runs,
  r: number,
  chains: Chains,
): boolean {
  const a = first[r] as number;
  const b = last[r] as number;
  const side = strip[r] as number;
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
