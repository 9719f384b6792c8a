/**
 * How many knots does a curve need, and where, so that its spline keeps the tolerance?
 *
 * Even spans first; then the knots are laid so that every span gets an equal share of what the sixth roots of the misses
 * ask for, until none misses. A miss is measured between the same parameters, not to the nearest point.
 *
 * @packageDocumentation
 */
import { ROUNDING_SHARE, STEP_FIT_MM } from "../../kernel/tolerance.js";
import { type Curved, evenKnots, interpolate, type Spline, splineAt } from "./spline.js";

/** What is fitted: coordinates at a parameter, and the millimetres between two sets of them. */
export interface Track {
  readonly size: number;
  readonly at: Curved;
  readonly miss: (exact: Float64Array, spline: Float64Array) => number;
  /** Its square without a root, but for a few roundings. */
  readonly miss2: (exact: Float64Array, spline: Float64Array) => number;
}

/** Shares of a span at which the miss is measured: it is zero at the knots, and in a first or last span at two places more. */
const LOOKS = [0.12, 0.4, 0.6, 0.85] as const;
const MOST_ROUNDS = 40;
const MOST_SPANS = 4000;
/** Rounds in which all knots are laid anew; after them bad spans are halved, which ends for any curve. */
const ROUNDS_ANEW = 4;
/** Misses aimed at, of the tolerance: laying knots anew is not exact, and half a miss costs an eighth more spans. */
const AIM = 0.5;
/** A span may at most grow by the inverse of this: what it misses now says little about a much longer one. */
const LEAST_NEED = 0.4;
/** A span counts as at most so many in one round. */
const MOST_NEED = 6;

/**
 * The spline, or null where a few thousand spans do not reach the tolerance.
 *
 * @param spans - to begin with
 */
export function fitSpline(t0: number, t1: number, spans: number, track: Track): Spline | null {
  let knots = evenKnots(t0, t1, spans);
  for (let round = 0; round < MOST_ROUNDS && knots.length <= MOST_SPANS; round++) {
    const spline = interpolate(knots, track.size, track.at);
    if (surelyKeeps(spline, track)) return spline;
    const needs = needsOf(spline, track);
    if (needs.every((need) => need <= 1)) return spline;
    knots = round < ROUNDS_ANEW ? laidAnew(knots, needs) : halved(knots, needs);
  }
  return null;
}

/** mm². The tolerance, less than what roundings make of a square. */
const SURE_MM2 = STEP_FIT_MM ** 2 * (1 - ROUNDING_SHARE);

/** True where no miss comes near the tolerance: what most splines need to be asked. */
function surelyKeeps(spline: Spline, { size, at, miss2 }: Track): boolean {
  const { knots } = spline;
  const exact = new Float64Array(size);
  const made = new Float64Array(size);
  for (let span = 0; span < knots.length - 1; span++) {
    const a = knots[span] as number;
    const b = knots[span + 1] as number;
    for (let k = 0; k < LOOKS.length; k++) {
      const t = a + (LOOKS[k] as number) * (b - a);
      at(t, exact);
      splineAt(spline, span, t, made);
      if (!(miss2(exact, made) < SURE_MM2)) return false;
    }
  }
  return true;
}

/** For each span the number of spans that its miss asks for: the sixth root of the miss over the tolerance. */
function needsOf(spline: Spline, track: Track): number[] {
  const { knots } = spline;
  const exact = new Float64Array(track.size);
  const made = new Float64Array(track.size);
  const out: number[] = [];
  for (let span = 0; span < knots.length - 1; span++) {
    const [a, b] = [knots[span] as number, knots[span + 1] as number];
    let worst = 0;
    for (const share of LOOKS) {
      const t = a + share * (b - a);
      track.at(t, exact);
      splineAt(spline, span, t, made);
      const miss = track.miss(exact, made);
      if (!(miss <= worst)) worst = miss;
    }
    out.push(Math.max(LEAST_NEED, Math.min(MOST_NEED, (worst / STEP_FIT_MM) ** (1 / 6))));
  }
  return out;
}

/** As many knots as all needs together ask for, so that every span gets the same share of them. */
function laidAnew(knots: readonly number[], needs: readonly number[]): number[] {
  const whole = needs.reduce((sum, need) => sum + need, 0);
  const spans = Math.ceil(whole * AIM ** (-1 / 6));
  const out = [knots[0] as number];
  let [span, before] = [0, 0];
  for (let k = 1; k < spans; k++) {
    const wanted = (whole * k) / spans;
    while (before + (needs[span] as number) < wanted) before += needs[span++] as number;
    const [a, b] = [knots[span] as number, knots[span + 1] as number];
    out.push(a + ((b - a) * (wanted - before)) / (needs[span] as number));
  }
  out.push(knots[knots.length - 1] as number);
  return out;
}

function halved(knots: readonly number[], needs: readonly number[]): number[] {
  return knots.flatMap((t, i) => ((needs[i] ?? 0) > 1 ? [t, (t + (knots[i + 1] as number)) / 2] : [t]));
}
