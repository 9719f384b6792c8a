/**
 * The curves in which two surfaces of the kernel meet, other than saddles.
 *
 * @packageDocumentation
 */
import type { CylinderSurface, PlaneSurface } from "../surface.js";
import { PARALLEL_SINE } from "../tolerance.js";
import { addScaled, cross, distance, dot, length, normalize, scale, sub, type Vec3 } from "../vec.js";
import { type ConicCurve, conicFromConjugates } from "./conic.js";
import type { LineCurve } from "./line.js";

/** The straight line from one point to another; the parameter runs from 0 to their distance. */
export function lineThrough(p: Vec3, q: Vec3): LineCurve {
  return { kind: "line", origin: p, direction: normalize(sub(q, p)) };
}

/** The circle or ellipse in which a plane cuts a cylinder; null when the plane is parallel to the axis. */
export function planeAcrossCylinder(plane: PlaneSurface, cylinder: CylinderSurface): ConicCurve | null {
  const { frame, radius } = cylinder;
  const n = plane.frame.z;
  const an = dot(frame.z, n);
  if (Math.abs(an) < PARALLEL_SINE) return null;
  const centre = addScaled(frame.origin, frame.z, dot(sub(plane.frame.origin, frame.origin), n) / an);
  const slide = (e: Vec3): Vec3 => scale(addScaled(e, frame.z, -dot(e, n) / an), radius);
  return conicFromConjugates(centre, slide(frame.x), slide(frame.y));
}

/** The rulings (0 or 2) in which a plane parallel to a cylinder's axis meets it. */
export function planeAlongCylinder(plane: PlaneSurface, cylinder: CylinderSurface): readonly LineCurve[] {
  const { frame, radius } = cylinder;
  const n = plane.frame.z;
  const d = dot(sub(plane.frame.origin, frame.origin), n);
  const across2 = radius * radius - d * d;
  if (across2 < 0) return [];
  const side = normalize(cross(frame.z, n));
  const foot = addScaled(frame.origin, n, d);
  return [1, -1].map((k) => ({
    kind: "line",
    origin: addScaled(foot, side, k * Math.sqrt(across2)),
    direction: frame.z,
  }));
}

/** The line in which two planes meet; null when they are parallel. */
export function planesMeet(a: PlaneSurface, b: PlaneSurface): LineCurve | null {
  const [na, nb] = [a.frame.z, b.frame.z];
  const along = cross(na, nb);
  const sine = length(along);
  if (sine < PARALLEL_SINE) return null;
  const da = dot(na, a.frame.origin);
  const db = dot(nb, b.frame.origin);
  const p = addScaled(scale(cross(nb, along), da), cross(along, na), db);
  return { kind: "line", origin: scale(p, 1 / (sine * sine)), direction: scale(along, 1 / sine) };
}

/** The rulings (0 or 2) in which two cylinders with parallel axes meet; one cylinder in itself meets nowhere. */
export function parallelCylindersMeet(a: CylinderSurface, b: CylinderSurface): readonly LineCurve[] {
  const { origin, z } = a.frame;
  const w = sub(b.frame.origin, origin);
  const across = addScaled(w, z, -dot(w, z));
  const apart = length(across);
  // From the axis of the first to the plane of the two rulings, and from there to either.
  const reach = (apart + ((a.radius - b.radius) * (a.radius + b.radius)) / apart) / 2;
  const half2 = (a.radius - reach) * (a.radius + reach);
  if (!(half2 > 0)) return [];
  const foot = addScaled(origin, across, reach / apart);
  const side = scale(cross(z, across), 1 / apart);
  return [1, -1].map((k) => ({
    kind: "line",
    origin: addScaled(foot, side, k * Math.sqrt(half2)),
    direction: z,
  }));
}

/**
 * The two ellipses in which equal cylinders with meeting axes cut each other, by the planes that halve the angles
 * between the axes; empty when the radii differ or the axes miss by more than `tolerance` millimetres.
 */
export function equalCylindersMeet(
  a: CylinderSurface,
  b: CylinderSurface,
  tolerance: number,
): readonly ConicCurve[] {
  if (Math.abs(a.radius - b.radius) > tolerance) return [];
  const [za, zb] = [a.frame.z, b.frame.z];
  const n = cross(za, zb);
  const sine2 = dot(n, n);
  if (sine2 < PARALLEL_SINE ** 2) return [];
  const w = sub(b.frame.origin, a.frame.origin);
  const onA = addScaled(a.frame.origin, za, dot(cross(w, zb), n) / sine2);
  const onB = addScaled(b.frame.origin, zb, dot(cross(w, za), n) / sine2);
  if (distance(onA, onB) > tolerance) return [];
  const out: ConicCurve[] = [];
  for (const k of [1, -1]) {
    const normal = normalize(addScaled(za, zb, k));
    const plane: PlaneSurface = {
      kind: "plane",
      frame: { origin: onA, x: normal, y: normal, z: normal },
    };
    const conic = planeAcrossCylinder(plane, a);
    if (conic) out.push(conic);
  }
  return out;
}
