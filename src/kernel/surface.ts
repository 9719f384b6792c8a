/**
 * The two surfaces of the whole kernel: planes and circular cylinders.
 *
 * Local coordinates of a plane: (x, y) in its frame, normal +z. Of a cylinder: angle φ (dimensionless, radians) from
 * the frame's x towards y, and height z along the frame's z; its normal points away from the axis.
 *
 * @packageDocumentation
 */
import { type Frame, pointToLocal } from "./frame.js";
import { addScaled, normalize, sub, type Vec2, type Vec3 } from "./vec.js";

/** An unbounded plane through the frame's origin, square to its z. */
export interface PlaneSurface {
  readonly kind: "plane";
  readonly frame: Frame;
}

/** An unbounded circular cylinder about the frame's z axis, radius in millimetres. */
export interface CylinderSurface {
  readonly kind: "cylinder";
  readonly frame: Frame;
  readonly radius: number;
}

/** A plane or a cylinder. */
export type Surface = PlaneSurface | CylinderSurface;

/** Signed distance of a point from a surface, positive on the side its normal points to, millimetres. */
export function distanceTo(surface: Surface, p: Vec3): number {
  const q = pointToLocal(surface.frame, p);
  return surface.kind === "plane" ? q[2] : Math.hypot(q[0], q[1]) - surface.radius;
}

/** Unit normal at the point of the surface nearest to `p`. */
export function normalAt(surface: Surface, p: Vec3): Vec3 {
  const { frame } = surface;
  if (surface.kind === "plane") return frame.z;
  const q = pointToLocal(frame, p);
  return normalize(addScaled(sub(p, frame.origin), frame.z, -q[2]));
}

/** Local coordinates of a point on the surface: (x, y) on a plane, (φ, z) on a cylinder with φ in (−π, π]. */
export function parametersOf(surface: Surface, p: Vec3): Vec2 {
  const q = pointToLocal(surface.frame, p);
  return surface.kind === "plane" ? [q[0], q[1]] : [Math.atan2(q[1], q[0]), q[2]];
}
