/**
 * Places inside a face where the distance from a round mate's axis is stationary, in closed form.
 *
 * On a plane or cylinder the distance from a line is least where the line goes through it, or where the two axes'
 * common perpendicular meets it. Its greatest value is always on the face's edges: the distance from a line is convex
 * along every straight line, and planes and cylinders are made of straight lines. Millimetres, one frame for all.
 *
 * @packageDocumentation
 */
import type { CylinderSurface, PlaneSurface, Surface } from "../kernel/surface.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import { addScaled, dot, length, scale, sub, type Vec3 } from "../kernel/vec.js";

/** Points of a surface that may be nearest to a line; none where the line runs along it. */
export function nearestToLine(surface: Surface, point: Vec3, direction: Vec3): readonly Vec3[] {
  return surface.kind === "plane"
    ? onPlane(surface, point, direction)
    : onCylinder(surface, point, direction);
}

function onPlane({ frame }: PlaneSurface, point: Vec3, direction: Vec3): Vec3[] {
  const across = dot(direction, frame.z);
  if (Math.abs(across) < PARALLEL_SINE) return [];
  return [addScaled(point, direction, dot(sub(frame.origin, point), frame.z) / across)];
}

function onCylinder({ frame, radius }: CylinderSurface, point: Vec3, direction: Vec3): Vec3[] {
  const { origin, z } = frame;
  const flat = (d: Vec3): Vec3 => addScaled(d, z, -dot(d, z));
  const [w, d] = [flat(sub(point, origin)), flat(direction)];
  const dd = dot(d, d);
  if (Math.sqrt(dd) < PARALLEL_SINE) return [];
  // Seen along the cylinder's axis: the line's point nearest to it, and how far the line runs inside from there.
  const t = -dot(w, d) / dd;
  const near = addScaled(point, direction, t);
  const off = flat(sub(near, origin));
  const apart = length(off);
  const foot = sub(near, off);
  const half = Math.sqrt(Math.max(0, (radius - apart) * (radius + apart)) / dd);
  const through = apart < radius ? [addScaled(near, direction, half), addScaled(near, direction, -half)] : [];
  if (apart < PARALLEL_SINE * radius) return through;
  const out = scale(off, radius / apart);
  return [...through, addScaled(foot, out, 1), addScaled(foot, out, -1)];
}
