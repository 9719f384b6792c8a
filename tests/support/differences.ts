/**
 * Derivatives of a curve by central differences, twice extrapolated (Richardson): the second route for P′ and P″.
 */
import type { Vec3 } from "../../src/kernel/vec.js";

type Curve = (t: number) => Vec3;

const mix = (a: Vec3, b: Vec3, ka: number, kb: number): Vec3 => [
  ka * a[0] + kb * b[0],
  ka * a[1] + kb * b[1],
  ka * a[2] + kb * b[2],
];

const first = (f: Curve, t: number, h: number): Vec3 => mix(f(t + h), f(t - h), 0.5 / h, -0.5 / h);
const second = (f: Curve, t: number, h: number): Vec3 =>
  mix(mix(f(t + h), f(t - h), 1, 1), f(t), 1 / (h * h), -2 / (h * h));

/** P′ and P″ at t; `h` about a hundredth of the distance to the nearest place where the curve is not smooth. */
export function differencesOf(f: Curve, t: number, h = 1e-3): { readonly d1: Vec3; readonly d2: Vec3 } {
  return {
    d1: mix(first(f, t, h / 2), first(f, t, h), 4 / 3, -1 / 3),
    d2: mix(second(f, t, h / 2), second(f, t, h), 4 / 3, -1 / 3),
  };
}
