/**
 * Fills a simple ring by the best of all its triangulations: the slow, sure way for rings that ear clipping gets stuck in.
 *
 * Dynamic programming over chords (the classic O(n³) scheme for polygon triangulation, Klincsek 1980): the best filling
 * of the part between vertices i and j joins the best fillings of its two parts over every k between. Triangles must all
 * run counter-clockwise; a filling of a simple ring by such triangles covers it exactly once.
 *
 * @packageDocumentation
 */

/** Rings longer than this are not tried: 300³/6 is some millions of steps. */
const LONGEST = 300;

/**
 * Triangles of the best filling, as places in the ring; null when there is none.
 *
 * @param n - number of places in the ring
 * @param worth - of the triangle at places (i, k, j), i < k < j, whose side i–j is the chord; −∞ where it may not be used
 */
export function bestFilling(
  n: number,
  worth: (i: number, k: number, j: number) => number,
): (readonly [number, number, number])[] | null {
  if (n > LONGEST) return null;
  const score = new Float64Array(n * n);
  const apex = new Int32Array(n * n).fill(-1);
  for (let span = 2; span < n; span++) {
    for (let i = 0; i + span < n; i++) {
      const j = i + span;
      let best = Number.NEGATIVE_INFINITY;
      for (let k = i + 1; k < j; k++) {
        const parts = (score[i * n + k] as number) + (score[k * n + j] as number);
        if (!(parts > best)) continue;
        const s = parts + worth(i, k, j);
        if (s > best) {
          best = s;
          apex[i * n + j] = k;
        }
      }
      score[i * n + j] = best;
    }
  }
  if (score[n - 1] === Number.NEGATIVE_INFINITY) return null;
  const out: (readonly [number, number, number])[] = [];
  const open: (readonly [number, number])[] = [[0, n - 1]];
  for (let next = open.pop(); next; next = open.pop()) {
    const [i, j] = next;
    if (j - i < 2) continue;
    const k = apex[i * n + j] as number;
    out.push([i, k, j]);
    open.push([k, j], [i, k]);
  }
  return out;
}
