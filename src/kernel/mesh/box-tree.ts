/**
 * Which pairs of boxes overlap? A bounding-volume tree walked against itself.
 *
 * Boxes are put in the order of a space-filling curve (G. M. Morton, 1966) by their centres, gathered in leaves of four
 * and joined pairwise into a complete binary tree. Deterministic: the order of visits depends on the boxes alone.
 *
 * @packageDocumentation
 */

const LEAF = 4;
/** Cells per axis of the curve: 2^10, so that code and index share one 53-bit key up to eight million boxes. */
const CELLS = 1024;

/**
 * Visits every pair of overlapping boxes once; touching counts.
 *
 * @param boxes - six numbers per box: least x, y, z, greatest x, y, z
 * @param visit - called with the two box numbers
 */
export function forEachOverlap(boxes: Float64Array, visit: (i: number, j: number) => void): void {
  const count = boxes.length / 6;
  if (count < 2) return;
  const order = curveOrder(boxes, count);
  const leaves = 2 ** Math.ceil(Math.log2(Math.ceil(count / LEAF)));
  const tree = buildTree(boxes, order, leaves);
  const stack = [1, 1];
  while (stack.length > 0) {
    const m = stack.pop() as number;
    const n = stack.pop() as number;
    if (m === n) {
      if (n >= leaves) visitLeaves(boxes, order, n - leaves, n - leaves, visit);
      else stack.push(2 * n, 2 * n, 2 * n + 1, 2 * n + 1, 2 * n, 2 * n + 1);
    } else if (overlap(tree, n, tree, m)) {
      // Both nodes are on the same level: the walk starts at the root twice and goes down on both sides together.
      if (n >= leaves) visitLeaves(boxes, order, n - leaves, m - leaves, visit);
      else stack.push(2 * n, 2 * m, 2 * n, 2 * m + 1, 2 * n + 1, 2 * m, 2 * n + 1, 2 * m + 1);
    }
  }
}

function visitLeaves(
  boxes: Float64Array,
  order: Uint32Array,
  a: number,
  b: number,
  visit: (i: number, j: number) => void,
): void {
  const endA = Math.min(order.length, LEAF * (a + 1));
  const endB = Math.min(order.length, LEAF * (b + 1));
  for (let x = LEAF * a; x < endA; x++) {
    const i = order[x] as number;
    for (let y = a === b ? x + 1 : LEAF * b; y < endB; y++) {
      const j = order[y] as number;
      if (overlap(boxes, i, boxes, j)) visit(i, j);
    }
  }
}

function overlap(s: Float64Array, i: number, t: Float64Array, j: number): boolean {
  const a = 6 * i;
  const b = 6 * j;
  return (
    (s[a] as number) <= (t[b + 3] as number) &&
    (s[a + 3] as number) >= (t[b] as number) &&
    (s[a + 1] as number) <= (t[b + 4] as number) &&
    (s[a + 4] as number) >= (t[b + 1] as number) &&
    (s[a + 2] as number) <= (t[b + 5] as number) &&
    (s[a + 5] as number) >= (t[b + 2] as number)
  );
}

/** Node k has children 2k and 2k+1; the leaves are the last half. Missing leaves are empty boxes. */
function buildTree(boxes: Float64Array, order: Uint32Array, leaves: number): Float64Array {
  const tree = new Float64Array(12 * leaves);
  for (let node = 0; node < 2 * leaves; node++) {
    tree.fill(Infinity, 6 * node, 6 * node + 3);
    tree.fill(-Infinity, 6 * node + 3, 6 * node + 6);
  }
  order.forEach((box, place) => {
    widen(tree, leaves + Math.floor(place / LEAF), boxes, box);
  });
  for (let node = 2 * leaves - 1; node > 1; node--) widen(tree, node >> 1, tree, node);
  return tree;
}

function widen(tree: Float64Array, node: number, from: Float64Array, box: number): void {
  for (let k = 0; k < 3; k++) {
    const low = 6 * node + k;
    tree[low] = Math.min(tree[low] as number, from[6 * box + k] as number);
    tree[low + 3] = Math.max(tree[low + 3] as number, from[6 * box + k + 3] as number);
  }
}

function curveOrder(boxes: Float64Array, count: number): Uint32Array {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k] as number, boxes[6 * i + k] as number);
      high[k] = Math.max(high[k] as number, boxes[6 * i + 3 + k] as number);
    }
  }
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let code = 0;
    for (let k = 0; k < 3; k++) {
      const extent = (high[k] as number) - (low[k] as number);
      const centre = ((boxes[6 * i + k] as number) + (boxes[6 * i + 3 + k] as number)) / 2;
      const cell = extent > 0 ? Math.floor(((centre - (low[k] as number)) / extent) * (CELLS - 1)) : 0;
      code |= spread(cell) << k;
    }
    keys[i] = code * count + i;
  }
  keys.sort();
  return Uint32Array.from(keys, (key) => key % count);
}

/** Ten bits with two zeros put after each. */
function spread(n: number): number {
  let x = n & 0x3ff;
  x = (x | (x << 16)) & 0x030000ff;
  x = (x | (x << 8)) & 0x0300f00f;
  x = (x | (x << 4)) & 0x030c30c3;
  return (x | (x << 2)) & 0x09249249;
}
