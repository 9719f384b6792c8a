/**
 * A stretch of a circle or an ellipse, put so that it can be written: rising parameter, away from where angles jump.
 *
 * On a plane the curve must turn the way the plane's own axes do, since a conic in a plane's parameters always does.
 * A circle is turned until its stretch lies about the angle π; an ellipse can only be turned by half.
 *
 * @packageDocumentation
 */
import { type ConicCurve, isCircle } from "../../kernel/curve/conic.js";
import { addScaled, cross, dot, length, negate, scale, type Vec3 } from "../../kernel/vec.js";

/** A conic with unit axes and the stretch low → high, radians, 0 ≤ low < high. */
export interface PlacedConic {
  readonly circle: boolean;
  readonly centre: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly normal: Vec3;
  readonly a: number;
  readonly b: number;
  readonly low: number;
  readonly high: number;
  /** True when low → high runs from the edge's t1 to its t0. */
  readonly reversed: boolean;
}

const TURN = 2 * Math.PI;

/**
 * Puts a conic.
 *
 * @param about - direction about which it shall turn anticlockwise; null for any
 */
export function placeConic(conic: ConicCurve, t0: number, t1: number, about: Vec3 | null): PlacedConic {
  const { centre, major, minor } = conic;
  const backwards = about !== null && dot(cross(major, minor), about) < 0;
  const turns = backwards ? -1 : 1;
  const [from, to] = [turns * t0, turns * t1];
  const [low, high] = from < to ? [from, to] : [to, from];
  const [a, b] = [length(major), length(minor)];
  const x = scale(major, 1 / a);
  const y = scale(minor, turns / b);
  const base = { centre, normal: cross(x, y), a, b, reversed: from > to };
  const middle = (low + high) / 2;
  if (isCircle(conic)) {
    const turned = addScaled(scale(x, -Math.cos(middle)), y, -Math.sin(middle));
    const half = (high - low) / 2;
    const across = cross(base.normal, turned);
    return { ...base, circle: true, x: turned, y: across, low: Math.PI - half, high: Math.PI + half };
  }
  const atMiddle = middle - TURN * Math.floor(middle / TURN);
  const flip = Math.abs(atMiddle - Math.PI) > Math.PI / 2;
  const shifted = flip ? (atMiddle + Math.PI) % TURN : atMiddle;
  const ends = { low: shifted - middle + low, high: shifted - middle + high };
  return { ...base, circle: false, x: flip ? negate(x) : x, y: flip ? negate(y) : y, ...ends };
}

/** The point at a parameter of the placed conic. */
export function placedAt({ centre, x, y, a, b }: PlacedConic, t: number): Vec3 {
  return addScaled(addScaled(centre, x, a * Math.cos(t)), y, b * Math.sin(t));
}
