/**
 * Which parameters make the sum of squared residuals least? Gauss-Newton, damped where a full step would not help.
 *
 * Each round linearises the residuals by their exact derivatives and solves by Q R; the damping is Levenberg's and
 * Marquardt's with Nielsen's rule for its size (Madsen, Nielsen and Tingleff, Methods for non-linear least squares problems,
 * 2004, 3.2), in units of each column's greatest length so far (Moré, 1978). It ends when a full step moves no fitted value,
 * and goes on by full steps while these still shrink.
 *
 * @packageDocumentation
 */
import { SETTLED_SHARE } from "../../kernel/tolerance.js";
import { dot, type Factor, factor, type Matrix, norm, solveFactor, times } from "./factor.js";

/** One residual: observed less computed, divided by its standard uncertainty, and the computed value's derivatives. */
export interface ResidualRow {
  /** (observed − computed) / σ. */
  readonly residual: number;
  /** ∂ computed / ∂ parameter, divided by σ, one per parameter. */
  readonly gradient: readonly number[];
}

/** All residuals at some parameters; always as many, in the same order. */
export type ResidualFunction = (parameters: readonly number[]) => readonly ResidualRow[];

/** What `leastSquares` found. */
export interface LeastSquares {
  readonly parameters: readonly number[];
  /** Weighted residuals, observed less computed. */
  readonly residuals: readonly number[];
  /** The weighted design matrix at the parameters. */
  readonly design: Matrix;
  /** Its factors: rank, covariance and what is not determined follow from them. */
  readonly factor: Factor;
  /** Σ residual². */
  readonly chi2: number;
  /** Residuals less independent parameters: 0 means that nothing is checked. */
  readonly dof: number;
  /** Whether it stopped moving. */
  readonly settled: boolean;
  /** How many times the residuals were linearised. */
  readonly rounds: number;
}

const MOST_ROUNDS = 1000;
const MOST_POLISH = 200;

interface State {
  readonly at: readonly number[];
  readonly residuals: readonly number[];
  readonly design: Matrix;
  readonly chi2: number;
}

function stateAt(model: ResidualFunction, at: readonly number[]): State {
  const rows = model(at);
  const residuals = rows.map((row) => row.residual);
  return { at, residuals, design: rows.map((row) => row.gradient), chi2: dot(residuals, residuals) };
}

const finite = (of: State): boolean =>
  Number.isFinite(of.chi2) && of.design.every((row) => row.every(Number.isFinite));

const plus = (a: readonly number[], b: readonly number[]): number[] => a.map((v, i) => v + (b[i] as number));

/** The full Gauss-Newton step, and how far it moves the fitted values. */
function fullStep(state: State, columns: number): { step: number[]; moves: number } {
  const step = solveFactor(factor(state.design, columns), state.residuals);
  return { step, moves: norm(times(state.design, step)) };
}

/** The step of least |J s − r|² + λ |D s|². */
function dampedStep(state: State, lambda: number, units: readonly number[]): number[] {
  const extra = units.map((unit, j) => units.map((_, i) => (i === j ? Math.sqrt(lambda) * unit : 0)));
  const rows = [...state.design, ...extra];
  return solveFactor(factor(rows, units.length), [...state.residuals, ...units.map(() => 0)]);
}

/** Full steps for as long as they shrink: the last digits. */
function polish(model: ResidualFunction, from: State, first: ReturnType<typeof fullStep>): State {
  let [state, full] = [from, first];
  for (let round = 0; round < MOST_POLISH && full.moves > 0; round++) {
    const next = stateAt(model, plus(state.at, full.step));
    if (!finite(next)) break;
    const further = fullStep(next, state.at.length);
    if (!(further.moves < full.moves)) break;
    [state, full] = [next, further];
  }
  return state;
}

/**
 * Parameters of least squares.
 *
 * @param model - residuals and derivatives at given parameters
 * @param start - where to begin; finite numbers at which the residuals are finite
 * @returns parameters, residuals, factors; `settled` is false when it did not stop moving in 1000 rounds or could not go on.
 *   A start too far off may end on a slope that only flattens: that is not settled either, never a wrong answer said to be right
 * @example
 * ```ts
 * const line = [[0, 1], [1, 3], [2, 5]];
 * leastSquares(([a = 0, b = 0]) => line.map(([x = 0, y = 0]) => ({ residual: y - a - b * x, gradient: [1, x] })), [0, 0])
 *   .parameters; // [1, 2]
 * ```
 */
export function leastSquares(model: ResidualFunction, start: readonly number[]): LeastSquares {
  let state = stateAt(model, start);
  let [lambda, grow, settled, rounds] = [1e-3, 2, false, 0];
  const n = start.length;
  let units = new Array<number>(n).fill(0);
  while (!settled && finite(state) && rounds < MOST_ROUNDS) {
    rounds++;
    const full = fullStep(state, n);
    if (full.moves <= SETTLED_SHARE * Math.max(1, Math.sqrt(state.chi2))) {
      state = polish(model, state, full);
      settled = true;
      break;
    }
    const { design } = state;
    units = units.map((unit, j) => Math.max(unit, norm(design.map((row) => row[j] as number))));
    const scaled = units.map((unit) => unit || 1);
    const step = dampedStep(state, lambda, scaled);
    const next = stateAt(model, plus(state.at, step));
    const fitted = times(design, step);
    const damped = norm(step.map((v, j) => v * (scaled[j] as number)));
    const foreseen = dot(fitted, fitted) + 2 * lambda * damped * damped;
    const gain = (state.chi2 - next.chi2) / foreseen;
    if (finite(next) && gain > 0) {
      state = next;
      lambda *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      grow = 2;
    } else {
      lambda *= grow;
      grow *= 2;
      if (!Number.isFinite(lambda)) break;
    }
  }
  const last = factor(state.design, n);
  return {
    parameters: state.at,
    residuals: state.residuals,
    design: state.design,
    factor: last,
    chi2: state.chi2,
    dof: state.residuals.length - last.rank,
    settled,
    rounds,
  };
}
