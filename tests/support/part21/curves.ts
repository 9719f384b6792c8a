/** Curves and surfaces of a file at a parameter, as ISO 10303-42 defines them; B-splines by de Boor's triangle. */
import type { Graph } from "./graph.js";

/** A curve at a parameter; two coordinates or three. */
export type At = (t: number) => number[];

const plus = (a: readonly number[], b: readonly number[], k: number): number[] =>
  a.map((x, i) => x + k * b[i]!);
const unit = (a: readonly number[]): number[] => a.map((x) => x / Math.hypot(...a));
const cross = (a: readonly number[], b: readonly number[]): number[] => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];
const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((s, x, i) => s + x * b[i]!, 0);

/** Origin and axes of a placement: z is the axis, x the reference direction made square to it. */
export interface Place {
  readonly o: number[];
  readonly x: number[];
  readonly y: number[];
  readonly z: number[];
}

/** A placement, in space or in a plane. */
export function placeOf(g: Graph, id: number): Place {
  const o = g.numbers(g.ref(id, 1), 1);
  if (g.is(id, "AXIS2_PLACEMENT_2D")) {
    const x = unit(g.numbers(g.ref(id, 2), 1));
    return { o, x, y: [-x[1]!, x[0]!], z: [] };
  }
  const z = unit(g.numbers(g.ref(id, 2), 1));
  const hint = g.numbers(g.ref(id, 3), 1);
  const x = unit(plus(hint, z, -dot(hint, z)));
  return { o, x, y: cross(z, x), z };
}

/** A curve of the file. */
export interface CurveAt {
  readonly at: At;
  /** The first derivative. */
  readonly slope: At;
  /** Parameters at which a spline is pieced together, its ends included. */
  readonly knots?: readonly number[];
}

/** The curve of an instance. */
export function curveOf(g: Graph, id: number): CurveAt {
  switch (g.type(id)) {
    case "LINE": {
      const o = g.numbers(g.ref(id, 1), 1);
      const vector = g.ref(id, 2);
      const [along, size] = [unit(g.numbers(g.ref(vector, 1), 1)), g.number(vector, 2)];
      return { at: (t) => plus(o, along, t * size), slope: () => along.map((x) => x * size) };
    }
    case "CIRCLE":
    case "ELLIPSE": {
      const { o, x, y } = placeOf(g, g.ref(id, 1));
      const a = g.number(id, 2);
      const b = g.is(id, "CIRCLE") ? a : g.number(id, 3);
      const zero = o.map(() => 0);
      return {
        at: (t) => plus(plus(o, x, a * Math.cos(t)), y, b * Math.sin(t)),
        slope: (t) => plus(plus(zero, x, -a * Math.sin(t)), y, b * Math.cos(t)),
      };
    }
    case "B_SPLINE_CURVE_WITH_KNOTS":
      return splineOf(g, id);
    default:
      throw new Error(`#${id}: no curve is known as ${g.type(id)}`);
  }
}

function splineOf(g: Graph, id: number): CurveAt {
  const degree = g.number(id, 1);
  const points = g.refs(id, 2).map((p) => g.numbers(p, 1));
  const [times, distinct] = [g.numbers(id, 6), g.numbers(id, 7)];
  const knots = distinct.flatMap((k, i) => Array<number>(times[i]!).fill(k));
  if (times.length !== distinct.length || knots.length !== points.length + degree + 1)
    throw new Error(`#${id}: ${knots.length} knots for ${points.length} points of degree ${degree}`);
  if (distinct.some((k, i) => i > 0 && !(k > distinct[i - 1]!))) throw new Error(`#${id}: knots do not rise`);
  // The derivative is a spline of one degree less over the differences of the points.
  const steps = points.slice(1).map((p, i) => {
    const k = degree / (knots[i + degree + 1]! - knots[i + 1]!);
    return plus(p, points[i]!, -1).map((x) => x * k);
  });
  return {
    at: (t) => deBoor(knots, points, degree, t),
    slope: (t) => deBoor(knots.slice(1, -1), steps, degree - 1, t),
    knots: distinct,
  };
}

function deBoor(knots: readonly number[], points: readonly number[][], degree: number, t: number): number[] {
  let k = degree;
  while (k < points.length - 1 && t >= knots[k + 1]!) k++;
  const d = Array.from({ length: degree + 1 }, (_, j) => [...points[k - degree + j]!]);
  for (let r = 1; r <= degree; r++) {
    for (let j = degree; j >= r; j--) {
      const low = knots[j + k - degree]!;
      const share = (t - low) / (knots[j + 1 + k - r]! - low);
      const [to, from] = [d[j]!, d[j - 1]!];
      for (let i = 0; i < to.length; i++) to[i] = (1 - share) * from[i]! + share * to[i]!;
    }
  }
  return d[degree]!;
}

/** A surface of the file: its points, the signed distance from it, and its kind. */
export interface SurfaceAt {
  readonly at: (u: number, v: number) => number[];
  readonly away: (p: readonly number[]) => number;
  readonly normal: (p: readonly number[]) => number[];
  readonly radius: number | null;
  readonly place: Place;
}

/** A plane or a cylinder. */
export function surfaceOf(g: Graph, id: number): SurfaceAt {
  const place = placeOf(g, g.ref(id, 1));
  const { o, x, y, z } = place;
  if (g.is(id, "PLANE")) {
    return {
      place,
      radius: null,
      at: (u, v) => plus(plus(o, x, u), y, v),
      away: (p) => dot(plus(p, o, -1), z),
      normal: () => z,
    };
  }
  const radius = g.number(id, 2);
  const out = (p: readonly number[]): number[] => {
    const w = plus(p, o, -1);
    return plus(w, z, -dot(w, z));
  };
  return {
    place,
    radius,
    at: (u, v) => plus(plus(plus(o, x, radius * Math.cos(u)), y, radius * Math.sin(u)), z, v),
    away: (p) => Math.hypot(...out(p)) - radius,
    normal: (p) => unit(out(p)),
  };
}

/** Parameter of a point on a line, circle or ellipse, from `from` on for the round ones. */
export function parameterOf(g: Graph, id: number, p: readonly number[], from: number): number {
  if (g.is(id, "LINE")) {
    const o = g.numbers(g.ref(id, 1), 1);
    const vector = g.ref(id, 2);
    return dot(plus(p, o, -1), unit(g.numbers(g.ref(vector, 1), 1))) / g.number(vector, 2);
  }
  const { o, x, y } = placeOf(g, g.ref(id, 1));
  const w = plus(p, o, -1);
  const a = g.number(id, 2);
  const b = g.is(id, "CIRCLE") ? a : g.number(id, 3);
  const t = Math.atan2(dot(w, y) / b, dot(w, x) / a);
  const turn = 2 * Math.PI;
  return t + turn * Math.ceil((from - t) / turn);
}
