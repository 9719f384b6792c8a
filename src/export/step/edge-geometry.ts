/**
 * The geometry of one edge: its curve in space, and the same curve in the parameters of both faces beside it.
 *
 * Lines, circles and ellipses are exact in space. In the parameters a straight edge is a line, a circle about its
 * cylinder too, a conic on its plane a conic; an ellipse on a cylinder and a saddle are splines. All curves of an edge
 * share one parameter, so that a reader needs no repair.
 *
 * @packageDocumentation
 */
import type { ConicCurve } from "../../kernel/curve/conic.js";
import { evaluate } from "../../kernel/curve/curve.js";
import type { LineCurve } from "../../kernel/curve/line.js";
import type { SaddleCurve } from "../../kernel/curve/saddle.js";
import type { Edge } from "../../kernel/solid.js";
import { ROUNDING_MM, ROUNDING_SHARE, STEP_FIT_MM } from "../../kernel/tolerance.js";
import { dot, type Vec3 } from "../../kernel/vec.js";
import { type Chart, chartAt, stretchOf } from "./chart.js";
import { type PlacedConic, placeConic, placedAt } from "./conic-placed.js";
import { fitSpline, type Track } from "./fit.js";
import { integers, real, reals, refs } from "./part21.js";
import type { Sink } from "./sink.js";
import { DEGREE, evenKnots, interpolate, type Spline } from "./spline.js";

/** A face beside an edge: its chart, and the number of its surface in the file. */
export interface Beside {
  readonly chart: Chart;
  readonly id: number;
}

/** What was written: the number of the curve, and whether it runs from the edge's `to` to its `from`. */
export interface Written {
  readonly id: number;
  readonly reversed: boolean;
}

/** Writes an edge's curves; null where a spline cannot keep the tolerance. */
export function writeCurve(sink: Sink, { curve, t0, t1 }: Edge, beside: readonly Beside[]): Written | null {
  switch (curve.kind) {
    case "line":
      return writeLine(sink, curve, t0, t1, beside);
    case "conic":
      return writeConic(sink, curve, t0, t1, beside);
    case "saddle":
      return writeSaddle(sink, curve, t0, t1, beside);
  }
}

function writeLine(sink: Sink, curve: LineCurve, t0: number, t1: number, beside: readonly Beside[]): Written {
  const [low, high] = t0 < t1 ? [t0, t1] : [t1, t0];
  const [p, q] = [evaluate(curve, low), evaluate(curve, high)];
  const vector = sink.put(`VECTOR('',#${sink.direction(curve.direction)},1.)`);
  const space = sink.put(`LINE('',#${sink.point(p)},#${vector})`);
  const pcurves = beside.map((b) => straightPcurve(sink, b, p, q, high - low));
  return { id: surfaceCurve(sink, space, beside, pcurves), reversed: t0 > t1 };
}

/** Parameters of a point in the file's units. */
function inFile(sink: Sink, { chart }: Beside, p: Vec3): readonly [number, number] {
  const uv = new Float64Array(2);
  chartAt(chart, p, uv, 0);
  const [u, v] = uv as unknown as readonly [number, number];
  return [chart.kind === "plane" ? u * sink.scale : u, v * sink.scale];
}

/** The straight pcurve between two points, over a parameter that runs 0 to `long` millimetres. */
function straightPcurve(sink: Sink, b: Beside, p: Vec3, q: Vec3, long: number): number {
  const [from, to] = [inFile(sink, b, p), inFile(sink, b, q)];
  const [du, dv] = [to[0] - from[0], to[1] - from[1]];
  // Along a ruling the angle stays; what rounding makes of it would only be noise in the file.
  const turns = b.chart.kind === "plane" || Math.abs(du) * b.chart.radius > ROUNDING_MM;
  const size = turns ? Math.hypot(du, dv) : Math.abs(dv);
  const along = sink.direction2(turns ? [du / size, dv / size] : [0, Math.sign(dv)]);
  const speed = size / (long * sink.scale);
  const vector = sink.put(
    `VECTOR('',#${along},${Math.abs(speed - 1) < ROUNDING_SHARE ? "1." : real(speed)})`,
  );
  return sink.put(`LINE('',#${sink.point2(from[0], from[1])},#${vector})`);
}

function writeConic(
  sink: Sink,
  curve: ConicCurve,
  t0: number,
  t1: number,
  beside: readonly Beside[],
): Written | null {
  const plane = beside.find(({ chart }) => chart.kind === "plane");
  const conic = placeConic(curve, t0, t1, plane ? plane.chart.frame.z : null);
  const { circle, centre, x, y, normal, a, b } = conic;
  const place = sink.placement({ origin: centre, x, y, z: normal });
  const space = sink.put(
    circle
      ? `CIRCLE('',#${place},${sink.length(a)})`
      : `ELLIPSE('',#${place},${sink.length(a)},${sink.length(b)})`,
  );
  const pcurves = beside.map((at) =>
    at.chart.kind === "plane" ? flatConic(sink, conic, at) : rolledConic(sink, conic, at),
  );
  return { id: surfaceCurve(sink, space, beside, pcurves), reversed: conic.reversed };
}

/** A conic in the parameters of its plane. */
function flatConic(sink: Sink, { circle, centre, x, a, b }: PlacedConic, at: Beside): number {
  const [u, v] = inFile(sink, at, centre);
  const { frame } = at.chart;
  const along = sink.direction2([dot(x, frame.x), dot(x, frame.y)]);
  const place = sink.put(`AXIS2_PLACEMENT_2D('',#${sink.point2(u, v)},#${along})`);
  return sink.put(
    circle
      ? `CIRCLE('',#${place},${sink.length(a)})`
      : `ELLIPSE('',#${place},${sink.length(a)},${sink.length(b)})`,
  );
}

/** Sixth-order constant of the splines: the miss over the sixth power of a span, for a sine of amplitude one; a test holds it. */
const SINE_MISS = 1.1e-4;

/** Spans over which the spline of a sine keeps the tolerance. */
function spansFor(amplitude: number, range: number): number {
  return Math.ceil(range / (STEP_FIT_MM / (SINE_MISS * amplitude)) ** (1 / 6));
}

/** A conic in the parameters of a cylinder: the angle runs with the parameter, the height is a sine of it. */
function rolledConic(sink: Sink, conic: PlacedConic, at: Beside): number {
  const { x, y, a, b, low, high } = conic;
  const { z } = at.chart.frame;
  const rise = Math.hypot(a * dot(x, z), b * dot(y, z));
  if (rise <= ROUNDING_MM) {
    const [p, q] = [inFile(sink, at, placedAt(conic, low)), inFile(sink, at, placedAt(conic, high))];
    const sign = q[0] > p[0] ? 1 : -1;
    const middle = (p[0] + q[0]) / 2 - (sign * (low + high)) / 2;
    const vector = sink.put(`VECTOR('',#${sink.direction2([sign, 0])},1.)`);
    return sink.put(`LINE('',#${sink.point2(middle, (p[1] + q[1]) / 2)},#${vector})`);
  }
  const knots = evenKnots(low, high, spansFor(rise, high - low));
  const spline = interpolate(knots, 2, (t, out) => chartAt(at.chart, placedAt(conic, t), out, 0));
  return writeSpline(sink, spline, 0, at.chart);
}

/** Sines of so many radii ask for about as many spans as a saddle on a tube of that radius: most are right at once. */
const AMPLITUDE = 4;

function writeSaddle(
  sink: Sink,
  curve: SaddleCurve,
  t0: number,
  t1: number,
  beside: readonly Beside[],
): Written | null {
  const [low, high] = t0 < t1 ? [t0, t1] : [t1, t0];
  const spline = fitSpline(low, high, spansFor(AMPLITUDE * curve.radius, high - low), trackOf(curve, beside));
  if (spline === null) return null;
  const space = writeSpline(sink, spline, 0, null);
  const pcurves = beside.map(({ chart }, i) => writeSpline(sink, spline, 3 + 2 * i, chart));
  return { id: surfaceCurve(sink, space, beside, pcurves), reversed: t0 > t1 };
}

/** A curve in space and on both surfaces at once: three coordinates and two for each. */
function trackOf(curve: SaddleCurve, beside: readonly Beside[]): Track {
  return {
    size: 3 + 2 * beside.length,
    at: (t, out) => {
      const p = evaluate(curve, t);
      out[0] = p[0];
      out[1] = p[1];
      out[2] = p[2];
      for (let i = 0; i < beside.length; i++) chartAt((beside[i] as Beside).chart, p, out, 3 + 2 * i);
    },
    miss: (exact, made) => {
      const off = (i: number): number => (exact[i] as number) - (made[i] as number);
      let worst = Math.hypot(off(0), off(1), off(2));
      for (let i = 0; i < beside.length; i++) {
        const miss = Math.hypot(off(3 + 2 * i) * stretchOf((beside[i] as Beside).chart), off(4 + 2 * i));
        if (!(miss <= worst)) worst = miss;
      }
      return worst;
    },
    miss2: (exact, made) => {
      const off = (i: number): number => (exact[i] as number) - (made[i] as number);
      let worst = off(0) * off(0) + off(1) * off(1) + off(2) * off(2);
      for (let i = 0; i < beside.length; i++) {
        const round = off(3 + 2 * i) * stretchOf((beside[i] as Beside).chart);
        const miss2 = round * round + off(4 + 2 * i) * off(4 + 2 * i);
        if (!(miss2 <= worst)) worst = miss2;
      }
      return worst;
    },
  };
}

/** Writes three coordinates of a spline from `first` on, or the two of a chart. */
function writeSpline(
  sink: Sink,
  { knots, points, size }: Spline,
  first: number,
  chart: Chart | null,
): number {
  const { scale } = sink;
  const ids: number[] = [];
  for (let i = first; i < points.length; i += size) {
    const [u, v] = [points[i] as number, points[i + 1] as number];
    if (chart) ids.push(sink.point2(chart.kind === "plane" ? u * scale : u, v * scale));
    else ids.push(sink.point([u, v, points[i + 2] as number]));
  }
  const times = knots.map((_, i) => (i === 0 || i === knots.length - 1 ? DEGREE + 1 : 1));
  return sink.put(
    `B_SPLINE_CURVE_WITH_KNOTS('',${DEGREE},${refs(ids)},.UNSPECIFIED.,.F.,.F.,${integers(times)},${reals(knots)},.UNSPECIFIED.)`,
  );
}

function surfaceCurve(
  sink: Sink,
  space: number,
  beside: readonly Beside[],
  pcurves: readonly number[],
): number {
  const ids = pcurves.map((curve, i) => {
    const representation = sink.put(`DEFINITIONAL_REPRESENTATION('',(#${curve}),#${sink.flat})`);
    return sink.put(`PCURVE('',#${beside[i]?.id},#${representation})`);
  });
  return sink.put(`SURFACE_CURVE('',#${space},${refs(ids)},.CURVE_3D.)`);
}
