/**
 * Least and greatest value of a function along the exact edges of a solid.
 *
 * Between stations the sign of the slope along the edge (gradient times the curve's own derivative) is followed, and each
 * place where it changes is closed in on by false position; the ends of the edge count as well. A function that does not
 * vary beyond rounding between two stations has nothing to close in on.
 *
 * @packageDocumentation
 */
import { derivatives } from "./curve/curve.js";
import { falsePosition } from "./false-position.js";
import type { Edge } from "./solid.js";
import { ROUNDING_MM, ROUNDING_SHARE } from "./tolerance.js";
import { dot, type Vec3 } from "./vec.js";

/** A value at a point and how it changes there. */
export interface FieldValue {
  readonly value: number;
  readonly gradient: Vec3;
}

/** A function of a point in space, smooth but for kinks. */
export type Field = (p: Vec3) => FieldValue;

/** A value and where it is taken. */
export interface At {
  readonly value: number;
  readonly at: Vec3;
}

/** The two extremes of a function. */
export interface Extremes {
  readonly least: At;
  readonly greatest: At;
}

/** Intervals an edge is divided into. Edges are at most half a turn; two extremes nearer than this share of one are not told apart. */
const STATIONS = 16;

/** Least and greatest of a field along edges; null without edges. */
export function extremesAlong(edges: readonly Edge[], field: Field): Extremes | null {
  let found: Extremes | null = null;
  for (const edge of edges) found = extremesOn(edge, field, found);
  return found;
}

/** Extremes with one more value taken into account. */
export function including(found: Extremes | null, value: number, at: Vec3): Extremes {
  const here = { value, at };
  if (!found) return { least: here, greatest: here };
  return {
    least: value < found.least.value ? here : found.least,
    greatest: value > found.greatest.value ? here : found.greatest,
  };
}

function extremesOn({ curve, t0, t1 }: Edge, field: Field, before: Extremes | null): Extremes {
  const probe = (t: number): { readonly value: number; readonly slope: number; readonly p: Vec3 } => {
    const { p, d1 } = derivatives(curve, t);
    const { value, gradient } = field(p);
    return { value, slope: dot(gradient, d1), p };
  };
  let [last, lastT] = [probe(t0), t0];
  let found = including(before, last.value, last.p);
  for (let k = 1; k <= STATIONS; k++) {
    const t = t0 + ((t1 - t0) * k) / STATIONS;
    const here = probe(t);
    found = including(found, here.value, here.p);
    const most = Math.max(Math.abs(last.slope), Math.abs(here.slope));
    if (last.slope * here.slope < 0 && most * Math.abs(t - lastT) > ROUNDING_MM) {
      const root = falsePosition(
        (x) => probe(x).slope,
        lastT,
        t,
        last.slope,
        here.slope,
        ROUNDING_SHARE * most,
      );
      const between = probe(root);
      found = including(found, between.value, between.p);
    }
    [last, lastT] = [here, t];
  }
  return found as Extremes;
}
