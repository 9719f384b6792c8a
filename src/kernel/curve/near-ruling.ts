/**
 * Where a plane or a cylinder that is all but parallel to a cylinder meets it: lines, as long as nobody can tell.
 *
 * Their true curve is an ellipse or a saddle kilometres long, of which a section sees a moment, and its rounding is that of
 * kilometres. Across the cylinder the other surface is seen as a line or a circle; the two points in which that meets the
 * circle are taken at both ends of the stretch that matters. A stretch between them that bends too much is no line.
 *
 * @packageDocumentation
 */
import type { CylinderSurface, Surface } from "../surface.js";
import { NEARLY_PARALLEL_SINE, RULING_SAGITTA_MM } from "../tolerance.js";
import { addScaled, cross, distance, dot, length, scale, sub, type Vec3 } from "../vec.js";
import { lineThrough } from "./intersect.js";
import type { LineCurve } from "./line.js";

/** The two points in which the surfaces meet, square across the cylinder at `z` along its axis; null where they do not. */
function pointsAcross(cylinder: CylinderSurface, other: Surface, z: number): readonly [Vec3, Vec3] | null {
  const { frame, radius } = cylinder;
  const centre = addScaled(frame.origin, frame.z, z);
  const w = sub(other.frame.origin, centre);
  let out: Vec3;
  let reach: number;
  if (other.kind === "plane") {
    const n = other.frame.z;
    const across = addScaled(n, frame.z, -dot(n, frame.z));
    const k = length(across);
    out = scale(across, 1 / k);
    reach = dot(w, n) / k;
  } else {
    const axis = other.frame.z;
    const apart = addScaled(w, axis, -dot(w, frame.z) / dot(axis, frame.z));
    const k = length(apart);
    out = scale(apart, 1 / k);
    reach = (k + ((radius - other.radius) * (radius + other.radius)) / k) / 2;
  }
  const half2 = (radius - reach) * (radius + reach);
  if (!(half2 > 0)) return null;
  const foot = addScaled(centre, out, reach);
  const side = scale(cross(frame.z, out), Math.sqrt(half2));
  return [addScaled(foot, side, 1), addScaled(foot, side, -1)];
}

/**
 * The two lines in which a cylinder meets a surface that is all but parallel to it.
 *
 * @param half - how far along the cylinder's axis, both ways from its frame's origin, the lines are wanted, millimetres
 * @returns null where the surfaces stand at an angle, touch or bend: then the true curve is to be used
 */
export function nearRulings(
  cylinder: CylinderSurface,
  other: Surface,
  half: number,
): readonly LineCurve[] | null {
  const cosine = dot(cylinder.frame.z, other.frame.z);
  const off = other.kind === "plane" ? Math.abs(cosine) : length(cross(cylinder.frame.z, other.frame.z));
  if (off > NEARLY_PARALLEL_SINE) return null;
  const [low, middle, high] = [-half, 0, half].map((z) => pointsAcross(cylinder, other, z));
  if (!low || !middle || !high) return null;
  const bends = ([0, 1] as const).some(
    (k) => distance(scale(addScaled(low[k], high[k], 1), 0.5), middle[k]) > RULING_SAGITTA_MM,
  );
  return bends ? null : [lineThrough(low[0], high[0]), lineThrough(low[1], high[1])];
}
