/**
 * A = Q R of a tall matrix, with its columns scaled to one and taken longest first, so that the rank shows.
 *
 * Modified Gram-Schmidt, each direction made square to the earlier ones a second time ("twice is enough": Giraud, Langou
 * and Rozložník, 2005), columns pivoted by length (Golub and Van Loan, Matrix Computations, 5.4.2). Solving by Q R keeps
 * the digits that the normal equations Aᵀ A would square away.
 *
 * @packageDocumentation
 */
import { RANK_SHARE } from "../../kernel/tolerance.js";

/** Plain rows of numbers. */
export type Matrix = readonly (readonly number[])[];

/** Σ aᵢ bᵢ over the length of a. */
export function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}

/** √(Σ aᵢ²). */
export function norm(a: readonly number[]): number {
  return Math.sqrt(dot(a, a));
}

/** M v. */
export function times(rows: Matrix, v: readonly number[]): number[] {
  return rows.map((row) => dot(row, v));
}

/** A matrix taken apart; columns of `q`, rows and columns of `r` are in the order the pivots were taken. */
export interface Factor {
  /** Orthonormal columns, one per independent column of the matrix. */
  readonly q: Matrix;
  /** Upper triangular, `rank` rows by all columns in pivot order, of the scaled matrix. */
  readonly r: Matrix;
  /** Which column of the matrix each column of `r` is. */
  readonly order: readonly number[];
  /** Length of each column of the matrix, in its own order; 1 for a column of zeros. */
  readonly scale: readonly number[];
  /** Columns that do not follow from the others. */
  readonly rank: number;
}

/** Takes the part along q out of `column`, in place, and says how much it was. */
function takeOut(q: readonly number[], column: number[]): number {
  const part = dot(q, column);
  for (let i = 0; i < column.length; i++) column[i] = (column[i] as number) - part * (q[i] as number);
  return part;
}

/**
 * Takes a matrix apart.
 *
 * @param rows - the matrix by rows, all equally long
 * @param columns - how many columns it has (a matrix without rows has some too)
 * @returns its factors; a column shorter than RANK_SHARE once the others are taken out counts as none
 * @example factor([[1, 0], [1, 1], [1, 2]], 2).rank; // 2
 */
export function factor(rows: Matrix, columns: number): Factor {
  const raw = Array.from({ length: columns }, (_, j) => rows.map((row) => row[j] as number));
  const scale = raw.map((column) => norm(column) || 1);
  const left = raw.map((column, j) => column.map((v) => v / (scale[j] as number)));
  const order = raw.map((_, j) => j);
  const q: number[][] = [];
  const r: number[][] = [];
  for (let k = 0; k < columns; k++) {
    let [pivot, longest] = [k, -1];
    for (let j = k; j < columns; j++) {
      const length = norm(left[order[j] as number] as number[]);
      if (length > longest) [pivot, longest] = [j, length];
    }
    if (!(longest > RANK_SHARE)) break;
    [order[k], order[pivot]] = [order[pivot] as number, order[k] as number];
    for (const row of r) [row[k], row[pivot]] = [row[pivot] as number, row[k] as number];
    const column = left[order[k] as number] as number[];
    q.forEach((own, i) => {
      const row = r[i] as number[];
      row[k] = (row[k] as number) + takeOut(own, column);
    });
    const length = norm(column);
    const direction = column.map((v) => v / length);
    const row = new Array<number>(columns).fill(0);
    row[k] = length;
    for (let j = k + 1; j < columns; j++) row[j] = takeOut(direction, left[order[j] as number] as number[]);
    q.push(direction);
    r.push(row);
  }
  return { q, r, order, scale, rank: q.length };
}

/** Solves R₁₁ y = b, R₁₁ the square upper triangle of r. */
function backward(r: Matrix, b: readonly number[]): number[] {
  const y = [...b];
  for (let i = b.length - 1; i >= 0; i--) {
    const row = r[i] as readonly number[];
    for (let j = i + 1; j < b.length; j++) y[i] = (y[i] as number) - (row[j] as number) * (y[j] as number);
    y[i] = (y[i] as number) / (row[i] as number);
  }
  return y;
}

/** Values in pivot order put back into the matrix's own columns and scale. */
function unscaled(of: Factor, y: readonly number[]): number[] {
  const out = new Array<number>(of.order.length).fill(0);
  y.forEach((value, k) => {
    const j = of.order[k] as number;
    out[j] = value / (of.scale[j] as number);
  });
  return out;
}

/** Coefficients x of least |A x − b|; columns that follow from others get 0. */
export function solveFactor(of: Factor, b: readonly number[]): number[] {
  const rest = [...b];
  return unscaled(
    of,
    backward(
      of.r,
      of.q.map((own) => takeOut(own, rest)),
    ),
  );
}

/** (Aᵀ A)⁻¹ of a matrix whose columns are all independent. */
export function inverseNormal(of: Factor): number[][] {
  const n = of.rank;
  // Column k of R⁻¹, unscaled: (Aᵀ A)⁻¹ is the sum of their outer products.
  const inverse = Array.from({ length: n }, (_, k) =>
    unscaled(
      of,
      backward(
        of.r,
        Array.from({ length: n }, (_, i) => (i === k ? 1 : 0)),
      ),
    ),
  );
  return Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) =>
      inverse.reduce((sum, own) => sum + (own[i] as number) * (own[j] as number), 0),
    ),
  );
}

/** Directions the columns' coefficients may move in without A x changing, one for each column that follows from others. */
export function nullSpace(of: Factor): number[][] {
  return of.order.slice(of.rank).map((_, extra) => {
    const at = of.rank + extra;
    const y = backward(
      of.r,
      of.r.map((row) => -(row[at] as number)),
    );
    const free = of.order.map((_, k) => (k < of.rank ? (y[k] as number) : k === at ? 1 : 0));
    return unscaled(of, free);
  });
}
