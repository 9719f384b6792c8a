/**
 * Vectors in double precision: the only file that touches gl-matrix, and of it its module of three-dimensional vectors.
 *
 * gl-matrix writes by index into whatever `out` it is given, so an ordinary array keeps doubles. Its allocating
 * functions (`create`, `clone`, `fromValues`) make 32-bit floats and its global switch is seen by every library in
 * the page: neither is used here.
 *
 * @packageDocumentation
 */
import * as vec3 from "gl-matrix/esm/vec3.js";

/** A point or direction in space, millimetres or dimensionless. */
export type Vec3 = readonly [number, number, number];
/** A point or direction in a plane. */
export type Vec2 = readonly [number, number];
type Out = [number, number, number];

/** a + b. */
export function add(a: Vec3, b: Vec3): Vec3 {
  return vec3.add([0, 0, 0] as Out, a as Out, b as Out) as Out;
}

/** a − b. */
export function sub(a: Vec3, b: Vec3): Vec3 {
  return vec3.subtract([0, 0, 0] as Out, a as Out, b as Out) as Out;
}

/** a · k. */
export function scale(a: Vec3, k: number): Vec3 {
  return vec3.scale([0, 0, 0] as Out, a as Out, k) as Out;
}

/** a + k·b: the point k along b from a. */
export function addScaled(a: Vec3, b: Vec3, k: number): Vec3 {
  return vec3.scaleAndAdd([0, 0, 0] as Out, a as Out, b as Out, k) as Out;
}

/** Scalar product. */
export function dot(a: Vec3, b: Vec3): number {
  return vec3.dot(a as Out, b as Out);
}

/** Vector product. */
export function cross(a: Vec3, b: Vec3): Vec3 {
  return vec3.cross([0, 0, 0] as Out, a as Out, b as Out) as Out;
}

/** Length. */
export function length(a: Vec3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** Distance between two points. */
export function distance(a: Vec3, b: Vec3): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** True when two points are nearer to each other than `within`. */
export function near(p: Vec3, q: Vec3, within: number): boolean {
  const x = p[0] - q[0];
  const y = p[1] - q[1];
  const z = p[2] - q[2];
  return x * x + y * y + z * z < within * within;
}

/** a scaled to length one; the zero vector stays zero. */
export function normalize(a: Vec3): Vec3 {
  return vec3.normalize([0, 0, 0] as Out, a as Out) as Out;
}

/** a + t·(b − a). */
export function lerp(a: Vec3, b: Vec3, t: number): Vec3 {
  return vec3.lerp([0, 0, 0] as Out, a as Out, b as Out, t) as Out;
}

/** −a. */
export function negate(a: Vec3): Vec3 {
  return [-a[0], -a[1], -a[2]];
}

/** A unit vector square to the unit vector `a`, the same one every time for the same `a`. */
export function anySquareTo(a: Vec3): Vec3 {
  const [x, y, z] = [Math.abs(a[0]), Math.abs(a[1]), Math.abs(a[2])];
  const seed: Vec3 = x <= y && x <= z ? [1, 0, 0] : y <= z ? [0, 1, 0] : [0, 0, 1];
  return normalize(sub(seed, scale(a, dot(seed, a))));
}

/** True when every component is a finite number. */
export function isFiniteVec(a: Vec3): boolean {
  return Number.isFinite(a[0]) && Number.isFinite(a[1]) && Number.isFinite(a[2]);
}
