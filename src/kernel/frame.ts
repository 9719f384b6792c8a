/**
 * Right-handed orthonormal frames: where a member, a cut or a surface stands.
 *
 * A frame maps local coordinates to its parent: P = origin + x·X + y·Y + z·Z. Solids are computed in their own frame
 * and placed by one, so moving a whole guard changes no solid.
 *
 * @packageDocumentation
 */
import { add, addScaled, cross, dot, normalize, sub, type Vec3 } from "./vec.js";

/** A right-handed orthonormal frame, origin in millimetres. */
export interface Frame {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
}

/** The frame of the parent itself. */
export const WORLD: Frame = { origin: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/**
 * A frame with `z` along an axis and `x` as near as can be to a wanted direction.
 *
 * @param origin - origin, millimetres
 * @param z - direction of the axis, any length above zero
 * @param xHint - wanted x direction; must not be parallel to `z`
 */
export function frameFromAxis(origin: Vec3, z: Vec3, xHint: Vec3): Frame {
  const zu = normalize(z);
  const x = normalize(addScaled(xHint, zu, -dot(xHint, zu)));
  return { origin, x, y: cross(zu, x), z: zu };
}

/** A local point in the parent's coordinates. */
export function pointToParent(f: Frame, p: Vec3): Vec3 {
  return add(f.origin, directionToParent(f, p));
}

/** A local direction in the parent's coordinates. */
export function directionToParent(f: Frame, d: Vec3): Vec3 {
  return [
    f.x[0] * d[0] + f.y[0] * d[1] + f.z[0] * d[2],
    f.x[1] * d[0] + f.y[1] * d[1] + f.z[1] * d[2],
    f.x[2] * d[0] + f.y[2] * d[1] + f.z[2] * d[2],
  ];
}

/** A parent's point in local coordinates. */
export function pointToLocal(f: Frame, p: Vec3): Vec3 {
  return directionToLocal(f, sub(p, f.origin));
}

/** A parent's direction in local coordinates. */
export function directionToLocal(f: Frame, d: Vec3): Vec3 {
  return [dot(f.x, d), dot(f.y, d), dot(f.z, d)];
}

/** The frame `inner`, given in `outer`'s coordinates, in the coordinates of `outer`'s parent. */
export function composeFrames(outer: Frame, inner: Frame): Frame {
  return {
    origin: pointToParent(outer, inner.origin),
    x: directionToParent(outer, inner.x),
    y: directionToParent(outer, inner.y),
    z: directionToParent(outer, inner.z),
  };
}

/** The frame `f`, given in the parent's coordinates, in the local coordinates of `base`. */
export function frameInLocal(base: Frame, f: Frame): Frame {
  return {
    origin: pointToLocal(base, f.origin),
    x: directionToLocal(base, f.x),
    y: directionToLocal(base, f.y),
    z: directionToLocal(base, f.z),
  };
}
