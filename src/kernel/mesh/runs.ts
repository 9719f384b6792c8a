/**
 * Runs: the stretches in which a loop of an unrolled face stays between two rulings.
 *
 * A loop changes strips only at points that lie on a ruling. A point where it touches a ruling from one side is a run of its
 * own in the strip beyond, whose triangles must keep it.
 *
 * @packageDocumentation
 */
import { type FlatFace, NO_RULING, repeatPlace } from "./flat-face.js";

/** Stretches of loops that stay in one strip, by the places of their ends; the same room serves all faces in turn. */
export interface Runs {
  count: number;
  readonly first: number[];
  readonly last: number[];
  readonly strip: number[];
  readonly kind: RunKind[];
  /** The runs of one strip after another as linked lists: the first of each strip, and after each run the next; −1 at the end. */
  readonly firstOf: number[];
  readonly next: number[];
}

/** From ruling to ruling; a whole loop, its last place the first again; a single place on a ruling of its neighbour. */
export type RunKind = "open" | "closed" | "touch";

/** Room for the runs of a face. */
export function newRuns(): Runs {
  return { count: 0, first: [], last: [], strip: [], kind: [], firstOf: [], next: [] };
}

function addRun(runs: Runs, kind: RunKind, first: number, last: number, strip: number): void {
  const r = runs.count++;
  runs.first[r] = first;
  runs.last[r] = last;
  runs.strip[r] = strip;
  runs.kind[r] = kind;
}

/** Adds a loop that stays in one strip; it must be the last thing laid. */
export function addClosedRun(flat: FlatFace, start: number, strip: number, runs: Runs): void {
  const { x, size } = flat;
  let leftmost = start;
  for (let i = start; i < size; i++) if ((x[i] as number) < (x[leftmost] as number)) leftmost = i;
  const n = size - start;
  for (let i = start; i <= leftmost; i++) repeatPlace(flat, i);
  addRun(runs, "closed", leftmost, leftmost + n, strip);
}

/**
 * Cuts a loop into runs that stay in one strip; it must be the last thing laid.
 *
 * @param width - of a strip, millimetres
 */
export function splitLoop(flat: FlatFace, start: number, width: number, runs: Runs): void {
  const { ruling, size } = flat;
  const n = size - start;
  const lastStrip = stripOf(flat, size - 1, start, width);
  let before = lastStrip;
  let cut = start;
  for (; cut < size; cut++) {
    const strip = stripOf(flat, cut, cut + 1 < size ? cut + 1 : start, width);
    if (strip !== before) break;
    before = strip;
  }
  if (cut === size) {
    addClosedRun(flat, start, lastStrip, runs);
    return;
  }
  for (let i = start; i <= cut; i++) repeatPlace(flat, i);
  let first = cut;
  let strip = stripOf(flat, cut, cut + 1, width);
  for (let i = cut + 1; i < cut + n; i++) {
    const next = stripOf(flat, i, i + 1, width);
    const on = ruling[i] as number;
    if (next !== strip) {
      addRun(runs, "open", first, i, strip);
      first = i;
      strip = next;
    } else if (on !== NO_RULING) addRun(runs, "touch", i, i, on === strip ? strip - 1 : strip + 1);
  }
  addRun(runs, "open", first, cut + n, strip);
}

function stripOf({ x, y, ruling }: FlatFace, a: number, b: number, width: number): number {
  const on = ruling[a] as number;
  if (on !== NO_RULING && on === ruling[b]) {
    // Along a ruling: upwards has the material on the low side, downwards on the high side.
    return (y[b] as number) > (y[a] as number) ? on - 1 : on;
  }
  return Math.floor(((x[a] as number) + (x[b] as number)) / 2 / width);
}

/** Links the runs by strip. The least strip, and how many there are from it up. */
export function linkByStrip(runs: Runs): { readonly low: number; readonly strips: number } {
  const { count, strip, firstOf, next } = runs;
  let low = Number.MAX_SAFE_INTEGER;
  let high = -low;
  for (let r = 0; r < count; r++) {
    low = Math.min(low, strip[r] as number);
    high = Math.max(high, strip[r] as number);
  }
  const strips = count === 0 ? 0 : high - low + 1;
  for (let s = 0; s < strips; s++) firstOf[s] = -1;
  for (let r = count - 1; r >= 0; r--) {
    const s = (strip[r] as number) - low;
    next[r] = firstOf[s] as number;
    firstOf[s] = r;
  }
  return { low, strips };
}
