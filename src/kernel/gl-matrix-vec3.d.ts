/** gl-matrix ships types under its own name alone; this is the part of its module that `vec.ts` calls. */
declare module "gl-matrix/esm/vec3.js" {
  type Triple = [number, number, number];
  export function add(out: Triple, a: Triple, b: Triple): Triple;
  export function subtract(out: Triple, a: Triple, b: Triple): Triple;
  export function scale(out: Triple, a: Triple, k: number): Triple;
  export function scaleAndAdd(out: Triple, a: Triple, b: Triple, k: number): Triple;
  export function dot(a: Triple, b: Triple): number;
  export function cross(out: Triple, a: Triple, b: Triple): Triple;
  export function normalize(out: Triple, a: Triple): Triple;
  export function lerp(out: Triple, a: Triple, b: Triple, t: number): Triple;
}
