/**
 * The exact edge in which one side of a bar meets one sheet of its end.
 *
 * Straight side on a plane: a line. Straight side on a cylinder: an ellipse, or a ruling. Round side on a plane: a circle
 * or an ellipse. Round side on a cylinder: a saddle, or an ellipse where the tubes are equal and meet.
 *
 * @packageDocumentation
 */
import { type ConicCurve, conicFromConjugates, conicParameter } from "./curve/conic.js";
import { type Curve, evaluate } from "./curve/curve.js";
import { lineThrough, planeAcrossCylinder } from "./curve/intersect.js";
import { type SaddleCurve, saddleBetween, saddleHeight, saddleOf } from "./curve/saddle.js";
import { WORLD } from "./frame.js";
import { type ArcSegment, pointOn, type Segment } from "./region.js";
import { cornerHeight, type RoundTerm, type Sheet, sheetHeight } from "./sheet.js";
import { type CylinderSurface, type PlaneSurface, parametersOf, type Surface } from "./surface.js";
import { ALONG_RULING_SLOPE, GRAZING_SHARE, RULING_SAGITTA_MM, SILHOUETTE_RELATIVE } from "./tolerance.js";
import { addScaled, distance, dot, length, sub, type Vec3 } from "./vec.js";

/** A curve with the stretch of it that is used. */
export interface CurveStretch {
  readonly curve: Curve;
  readonly t0: number;
  readonly t1: number;
}

/** The surface a side sweeps out; its normal points to the right of the segment, out of the material (convex arcs). */
export function sideSurface(segment: Segment): Surface {
  if (segment.kind === "line") {
    const [du, dv] = [segment.to[0] - segment.from[0], segment.to[1] - segment.from[1]];
    const k = 1 / Math.hypot(du, dv);
    return {
      kind: "plane",
      frame: {
        origin: [segment.from[0], segment.from[1], 0],
        x: [du * k, dv * k, 0],
        y: [0, 0, 1],
        z: [dv * k, -du * k, 0],
      },
    };
  }
  return {
    kind: "cylinder",
    frame: { origin: [segment.centre[0], segment.centre[1], 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
    radius: segment.radius,
  };
}

/** +1 when the side surface's normal points out of the material. */
export function sideSense(segment: Segment): 1 | -1 {
  return segment.kind === "line" || segment.sweep > 0 ? 1 : -1;
}

/**
 * The arc of a conic from p to q: the short way, or where the two ways are nearly equal the one through `mid`.
 *
 * No side turns by more than π, so the short way is right; on a short arc the rounding of `mid` is no guide.
 */
export function conicStretch(curve: ConicCurve, p: Vec3, q: Vec3, mid: Vec3): CurveStretch {
  const t0 = conicParameter(curve, p);
  const turn = 2 * Math.PI;
  const forward = (t: number): number => (((t - t0) % turn) + turn) % turn;
  const t1 = forward(conicParameter(curve, q));
  const ahead =
    Math.abs(t1 - Math.PI) > NEARLY_HALF ? t1 < Math.PI : forward(conicParameter(curve, mid)) <= t1;
  return { curve, t0, t1: ahead ? t0 + t1 : t0 + t1 - turn };
}

/** Radians by which two ways round a conic must differ from half a turn to be told apart by length. */
const NEARLY_HALF = 1;

/**
 * s of a sheet at the place `t` of a side: on a round side by the saddle's own formula, which loses no digits where the
 * side touches the header's silhouette, so that vertices lie on their edges.
 */
export function sideHeight(segment: Segment, t: number, sheet: Sheet): number {
  const [u, v] = pointOn(segment, t);
  const { round } = sheet;
  if (segment.kind === "line" || !round) return cornerHeight(sheet, u, v);
  const phi = segment.start + t * segment.sweep;
  const curve = sideSaddle(segment, sheet, round, phi);
  if (curve.kind === "conic") return equalHeight(segment, phi, sheet);
  // Where a side crosses the silhouette the root is zero, whatever its rounding: a break lies there as exactly as a
  // double can say. Where it only touches (a zero bracket) the formula is exact.
  const h = round.h0 + round.hu * u + round.hv * v;
  const half = (phi - curve.phiN) / 2;
  const [sin, cos] = [Math.sin(half), Math.cos(half)];
  const nearA = curve.a0 + 2 * curve.radius * sin * sin < curve.b0 + 2 * curve.radius * cos * cos;
  const crosses = (nearA ? curve.a0 : curve.b0) !== 0;
  const atSilhouette = Math.abs(round.radius - Math.abs(h)) < SILHOUETTE_RELATIVE * round.radius;
  return crosses && atSilhouette ? sheet.c + sheet.a * u + sheet.b * v : saddleHeight(curve, phi);
}

/** The curve of a round side on a round sheet: the sheet's own numbers, read on the side's circle. */
function sideSaddle(
  { centre: [cu, cv], radius: r }: ArcSegment,
  { a, b, c }: Sheet,
  round: RoundTerm,
  phiMid: number,
): SaddleCurve | ConicCurve {
  const { radius } = round;
  // A sheet counts h as seen outwards, a side's saddle as seen along +s.
  const up = round.k * round.root < 0 ? -1 : 1;
  const [hu, hv] = [up * round.hu, up * round.hv];
  const hc = up * round.h0 + hu * cu + hv * cv;
  return saddleOf(
    { ...WORLD, origin: [cu, cv, 0] },
    r,
    {
      phiN: Math.atan2(hv, hu),
      a0: radius - hc - r,
      b0: radius + hc - r,
      s0: c + a * cu + b * cv,
      sa: r * a,
      sb: r * b,
      k: round.k,
    },
    phiMid,
  );
}

/** s at φ where the tubes are equal and meet: √((R − h)(R + h)) = R·|sin(φ − φn)|, the ends of the section's own radius. */
function equalHeight(segment: ArcSegment, phi: number, sheet: Sheet): number {
  const { k, hu, hv } = sheet.round as RoundTerm;
  const [u, v] = [
    segment.centre[0] + segment.radius * Math.cos(phi),
    segment.centre[1] + segment.radius * Math.sin(phi),
  ];
  const base = sheet.c + sheet.a * u + sheet.b * v;
  return base + k * segment.radius * Math.abs(hu * Math.sin(phi) - hv * Math.cos(phi));
}

/** The edge over t0 → t1 of a side, closed by a sheet, between two known vertices. */
export function sideEdge(
  segment: Segment,
  t0: number,
  t1: number,
  sheet: Sheet,
  p: Vec3,
  q: Vec3,
): CurveStretch {
  const line = (): CurveStretch => ({ curve: lineThrough(p, q), t0: 0, t1: distance(p, q) });
  const [mu, mv] = pointOn(segment, (t0 + t1) / 2);
  const mid: Vec3 = [mu, mv, sheetHeight(sheet, mu, mv)];
  if (segment.kind === "line") {
    if (sheet.surface.kind === "plane") return line();
    const { z } = sheet.surface.frame;
    const whole = sub(q, p);
    const along = dot(whole, z);
    const across = length(addScaled(whole, z, -along));
    // A short piece of an edge across the rulings has as small a sagitta, and is an arc all the same.
    const lies = across < ALONG_RULING_SLOPE * Math.abs(along);
    if (lies && across * across < 8 * sheet.surface.radius * RULING_SAGITTA_MM) return line();
    const conic = planeAcrossCylinder(sideSurface(segment) as PlaneSurface, sheet.surface);
    return conic ? conicStretch(conic, p, q, mid) : line();
  }
  if (sheet.surface.kind === "plane") {
    const [cu, cv] = segment.centre;
    const r = segment.radius;
    const conic = conicFromConjugates(
      [cu, cv, sheetHeight(sheet, cu, cv)],
      [r, 0, r * sheet.a],
      [0, r, r * sheet.b],
    );
    return conicStretch(conic, p, q, mid);
  }
  const [a0, a1] = [segment.start + t0 * segment.sweep, segment.start + t1 * segment.sweep];
  const curve = sideSaddle(segment, sheet, sheet.round as RoundTerm, (a0 + a1) / 2);
  const grazes = curve.kind === "saddle" && (isGrazing(curve, a0) || isGrazing(curve, a1));
  if (grazes) return roundHeader(sideSurface(segment) as CylinderSurface, sheet.surface, p, q, mid);
  return curve.kind === "saddle" ? { curve, t0: a0, t1: a1 } : conicStretch(curve, p, q, mid);
}

/**
 * Where a fibre only touches the header, s(φ) runs upright. That takes a negative bracket: with a₀ > 0 the header is the
 * wider one, every fibre crosses it and φ is the good parameter, however near the two are to equal.
 */
function isGrazing(curve: SaddleCurve, phi: number): boolean {
  const half = (phi - curve.phiN) / 2;
  const a = curve.a0 + 2 * curve.radius * Math.sin(half) ** 2;
  const b = curve.b0 + 2 * curve.radius * Math.cos(half) ** 2;
  return (
    (curve.a0 < 0 && a < GRAZING_SHARE * curve.radius) || (curve.b0 < 0 && b < GRAZING_SHARE * curve.radius)
  );
}

/** The same edge with the angle round the header as its parameter, smooth where the branch's fibres graze. */
function roundHeader(
  side: CylinderSurface,
  header: CylinderSurface,
  p: Vec3,
  q: Vec3,
  mid: Vec3,
): CurveStretch {
  const [t0, tm, t1] = [p, mid, q].map((x) => parametersOf(header, x)[0]) as [number, number, number];
  const curves = ([1, -1] as const).map((root) => saddleBetween(header, side, root, tm));
  const miss = (c: Curve): number => distance(evaluate(c, tm), mid);
  const curve = miss(curves[0] as Curve) <= miss(curves[1] as Curve) ? curves[0] : curves[1];
  return { curve: curve as Curve, t0, t1 };
}
