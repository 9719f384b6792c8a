/**
 * Which quintic spline runs through a curve's exact points, parameter for parameter?
 *
 * Simple inner knots (four times continuously differentiable), interpolation at the knots and at two more places in the
 * first and in the last span, so that no derivative of the curve is asked for. The collocation matrix of B-splines is
 * totally positive and banded: elimination without pivots is stable (de Boor and Pinkus 1977).
 * Basis functions by the recurrence of Cox and de Boor.
 *
 * @packageDocumentation
 */

/** Degree of every spline written: read by every program, and far fewer numbers than cubics need for the same error. */
export const DEGREE = 5;
const ORDER = DEGREE + 1;
const BAND = 2 * DEGREE + 1;

/** A spline in as many dimensions as the curve had. */
export interface Spline {
  /** Distinct knots, rising; the ends count six times, inner ones once. */
  readonly knots: readonly number[];
  /** The knots with the first and the last as often as they count. */
  readonly counted: Float64Array;
  /** Control points, one after the other, `size` numbers each. */
  readonly points: Float64Array;
  readonly size: number;
}

/** Writes a curve's `size` coordinates at a parameter into `out`. */
export type Curved = (t: number, out: Float64Array) => void;

/** Where in the first span, and mirrored in the last, the curve is asked besides its knots. */
const EXTRA = [0.3, 0.9] as const;
/** The same where there is one span only. */
const ALONE = [0.1, 0.36, 0.64, 0.9] as const;

/** Knots at equal distances. */
export function evenKnots(t0: number, t1: number, spans: number): number[] {
  return Array.from({ length: spans + 1 }, (_, i) => (i === spans ? t1 : t0 + ((t1 - t0) * i) / spans));
}

function sitesOf(knots: readonly number[]): Float64Array {
  const n = knots.length - 1;
  const out = new Float64Array(n + DEGREE);
  const at = (span: number, share: number): number =>
    (knots[span] as number) + share * ((knots[span + 1] as number) - (knots[span] as number));
  let i = 0;
  out[i++] = knots[0] as number;
  if (n === 1) for (const share of ALONE) out[i++] = at(0, share);
  else for (const share of EXTRA) out[i++] = at(0, share);
  for (let k = 1; k < n; k++) out[i++] = knots[k] as number;
  if (n > 1) for (let e = EXTRA.length - 1; e >= 0; e--) out[i++] = at(n - 1, 1 - (EXTRA[e] as number));
  out[i] = knots[n] as number;
  return out;
}

/** Knots with both ends six times: knot i of the spans stands at i + DEGREE. */
function countedOf(knots: readonly number[]): Float64Array {
  const last = knots.length - 1;
  const out = new Float64Array(knots.length + 2 * DEGREE);
  for (let i = 0; i < out.length; i++) out[i] = knots[Math.max(0, Math.min(i - DEGREE, last))] as number;
  return out;
}

/** The spline through a curve over the given knots. */
export function interpolate(knots: readonly number[], size: number, curve: Curved): Spline {
  const sites = sitesOf(knots);
  const counted = countedOf(knots);
  const rows = sites.length;
  const matrix = new Float64Array(rows * BAND);
  const points = new Float64Array(rows * size);
  const basis = new Float64Array(ORDER);
  const value = new Float64Array(size);
  let span = 0;
  for (let r = 0; r < rows; r++) {
    const t = sites[r] as number;
    while (span < knots.length - 2 && t >= (knots[span + 1] as number)) span++;
    basisAt(counted, span, t, basis);
    for (let j = 0; j < ORDER; j++) {
      const offset = span + j - r + DEGREE;
      if (offset >= 0 && offset < BAND) matrix[r * BAND + offset] = basis[j] as number;
    }
    curve(t, value);
    for (let d = 0; d < size; d++) points[r * size + d] = value[d] as number;
  }
  solveBanded(matrix, points, rows, size);
  return { knots, counted, points, size };
}

/** Elimination within the band; the right-hand side becomes the solution. */
function solveBanded(a: Float64Array, b: Float64Array, rows: number, size: number): void {
  for (let k = 0; k < rows; k++) {
    const pivot = a[k * BAND + DEGREE] as number;
    const last = Math.min(rows - 1, k + DEGREE);
    for (let r = k + 1; r <= last; r++) {
      const at = r * BAND + DEGREE + k - r;
      const factor = (a[at] as number) / pivot;
      if (factor === 0) continue;
      for (let c = 1; c <= DEGREE && k + c < rows; c++)
        a[at + c] = (a[at + c] as number) - factor * (a[k * BAND + DEGREE + c] as number);
      for (let d = 0; d < size; d++)
        b[r * size + d] = (b[r * size + d] as number) - factor * (b[k * size + d] as number);
    }
  }
  for (let k = rows - 1; k >= 0; k--) {
    const pivot = a[k * BAND + DEGREE] as number;
    const last = Math.min(DEGREE, rows - 1 - k);
    for (let d = 0; d < size; d++) {
      let sum = b[k * size + d] as number;
      for (let c = 1; c <= last; c++)
        sum -= (a[k * BAND + DEGREE + c] as number) * (b[(k + c) * size + d] as number);
      b[k * size + d] = sum / pivot;
    }
  }
}

const left = new Float64Array(ORDER);
const right = new Float64Array(ORDER);

/** The six basis functions that are not zero on a span. */
function basisAt(counted: Float64Array, span: number, t: number, out: Float64Array): void {
  const at = span + DEGREE;
  out[0] = 1;
  for (let j = 1; j < ORDER; j++) {
    left[j] = t - (counted[at + 1 - j] as number);
    right[j] = (counted[at + j] as number) - t;
    let saved = 0;
    for (let r = 0; r < j; r++) {
      const part = (out[r] as number) / ((right[r + 1] as number) + (left[j - r] as number));
      out[r] = saved + (right[r + 1] as number) * part;
      saved = (left[j - r] as number) * part;
    }
    out[j] = saved;
  }
}

const weights = new Float64Array(ORDER);

/** The spline at a parameter inside a span (0 the first), into `out`. */
export function splineAt(spline: Spline, span: number, t: number, out: Float64Array): void {
  const { counted, points, size } = spline;
  basisAt(counted, span, t, weights);
  for (let d = 0; d < size; d++) {
    let sum = 0;
    for (let j = 0; j < ORDER; j++) sum += (weights[j] as number) * (points[(span + j) * size + d] as number);
    out[d] = sum;
  }
}
