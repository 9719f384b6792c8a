/**
 * Fills a column: what lies between two rulings, or a whole face that has none.
 *
 * The boundary inside a column falls into chains from left to right. A floor has the material above it, a ceiling below it.
 * From bottom to top they alternate, and each floor makes a cell with the ceiling over it, a ladder between two chains. A
 * hole that ends inside the column ends in a tip; between the tips and the column's side a fan is left over.
 *
 * @packageDocumentation
 */
import type { FlatFace } from "./flat-face.js";
import { fillLadder, isTriangle } from "./ladder.js";

/** Chains of one column, by the places of their left and right ends; the same room serves all columns in turn. */
export interface Chains {
  count: number;
  readonly left: number[];
  readonly right: number[];
  /** A floor's places go up in number from left to right, a ceiling's down. */
  readonly isFloor: boolean[];
  /** Chains from bottom to top. */
  readonly order: number[];
}

/** Room for the chains of a column. */
export function newChains(): Chains {
  return { count: 0, left: [], right: [], isFloor: [], order: [] };
}

/** Adds a chain from left to right. */
export function addChain(chains: Chains, isFloor: boolean, left: number, right: number): void {
  const c = chains.count++;
  chains.left[c] = left;
  chains.right[c] = right;
  chains.isFloor[c] = isFloor;
}

/**
 * Fills the column between its chains.
 *
 * @param side - number of the ruling at the left; the next one is at the right
 * @param out - receives three vertices of the mesh per triangle
 * @returns false, with nothing added, when the chains are no such pile or a triangle would be turned over
 */
export function fillColumn(flat: FlatFace, chains: Chains, side: number, out: number[]): boolean {
  const before = out.length;
  const sorted = bottomUp(flat, chains, side);
  if (fillCells(flat, chains, sorted, side, out)) return true;
  out.length = before;
  return false;
}

function fillCells(flat: FlatFace, chains: Chains, sorted: number, side: number, out: number[]): boolean {
  const { left, right, order } = chains;
  if (sorted % 2 !== 0) return false;
  const simple = sorted === 2;
  const onLeft: number[] = [];
  const onRight: number[] = [];
  for (let k = 0; k < sorted; k += 2) {
    const f = order[k] as number;
    const c = order[k + 1] as number;
    const f0 = left[f] as number;
    const f1 = right[f] as number;
    const c0 = left[c] as number;
    const c1 = right[c] as number;
    if (!fillLadder(flat, f0, f1 - f0, c0, c0 - c1, out)) return false;
    // One cell alone leaves nothing beside it.
    if (simple) return true;
    if (!addLink(flat, onLeft, f0, c0, side, 1, out)) return false;
    if (!addLink(flat, onRight, f1, c1, side + 1, -1, out)) return false;
  }
  return onLeft.length + onRight.length === 0;
}

/** Puts the chains in order, floor and ceiling by turns. Their number, an odd one where they do not take turns. */
function bottomUp(flat: FlatFace, chains: Chains, side: number): number {
  const { count, left, right, isFloor, order } = chains;
  for (let c = 0; c < count; c++) {
    let k = c;
    while (k > 0 && heightOver(flat, chains, c, order[k - 1] as number, side) < 0) {
      order[k] = order[k - 1] as number;
      k--;
    }
    order[k] = c;
  }
  let n = 0;
  for (let k = 0; k < count; k++) {
    const c = order[k] as number;
    // A single place beside the column with no material round it: the face ends at that ruling.
    if (n % 2 === 0 && !isFloor[c] && left[c] === right[c]) {
      k++;
      continue;
    }
    if (isFloor[c] !== (n % 2 === 0)) return 1;
    order[n++] = c;
  }
  return n;
}

/** Positive where chain a runs above chain b, negative where below, 0 when they cannot be told apart. */
function heightOver(flat: FlatFace, { left, right }: Chains, a: number, b: number, side: number): number {
  const { x, y, ruling } = flat;
  const a0 = left[a] as number;
  const a1 = right[a] as number;
  const b0 = left[b] as number;
  const b1 = right[b] as number;
  if (ruling[a1] === side + 1 && ruling[b1] === side + 1) {
    const over = (y[a1] as number) - (y[b1] as number);
    if (over !== 0) return over;
  }
  if (ruling[a0] === side && ruling[b0] === side) {
    const over = (y[a0] as number) - (y[b0] as number);
    if (over !== 0) return over;
  }
  const from = Math.max(x[a0] as number, x[b0] as number);
  const to = Math.min(x[a1] as number, x[b1] as number);
  if (from < to) return heightAt(flat, a0, a1, (from + to) / 2) - heightAt(flat, b0, b1, (from + to) / 2);
  return (y[a0] as number) + (y[a1] as number) - (y[b0] as number) - (y[b1] as number);
}

/** Height of the chain between two places where it first reaches x. */
function heightAt({ x, y }: FlatFace, left: number, right: number, at: number): number {
  const d = left < right ? 1 : -1;
  for (let i = left; i !== right; i += d) {
    const p = x[i] as number;
    const q = x[i + d] as number;
    if (p <= at && at <= q && p < q) {
      return (y[i] as number) + ((at - p) / (q - p)) * ((y[i + d] as number) - (y[i] as number));
    }
  }
  return y[left] as number;
}

/**
 * Adds the side of a cell to the polygon between the tips and the column's side, which is filled once it is closed: at a
 * place on the side, or where it comes back to where it began.
 *
 * @param links - places so far, bottom up
 * @param turn - 1 at the left, −1 at the right
 */
function addLink(
  flat: FlatFace,
  links: number[],
  floor: number,
  ceiling: number,
  side: number,
  turn: 1 | -1,
  out: number[],
): boolean {
  const { vertex, ruling } = flat;
  const back = vertex[ceiling] === vertex[links[0] ?? floor];
  const ends = back || ruling[ceiling] === side;
  if (links.length === 0) {
    // Nothing lies beside a single link along the side, or of no length.
    if (ends) return true;
    links.push(floor);
  } else if (vertex[links[links.length - 1] as number] !== vertex[floor]) return false;
  if (!back) links.push(ceiling);
  if (!ends) return true;
  const filled = fillFan(flat, links, turn, out);
  links.length = 0;
  return filled;
}

/** Fills a polygon whose corners, but for the side from the last to the first, go steadily up. */
function fillFan(flat: FlatFace, corners: readonly number[], turn: 1 | -1, out: number[]): boolean {
  const { vertex } = flat;
  const open: number[] = [];
  for (const c of corners) {
    while (open.length > 1) {
      const a = open[open.length - 2] as number;
      const b = open[open.length - 1] as number;
      if (turn > 0 ? !isTriangle(flat, a, b, c) : !isTriangle(flat, c, b, a)) break;
      if (turn > 0) out.push(vertex[a] as number, vertex[b] as number, vertex[c] as number);
      else out.push(vertex[c] as number, vertex[b] as number, vertex[a] as number);
      open.pop();
    }
    open.push(c);
  }
  return open.length <= 2;
}
