/**
 * Where does one straight fibre of a branch meet a round header, and at what angle do the two surfaces stand there?
 *
 * Plane trigonometry of two right cylinders. With R the header's radius (plus the root gap), β the angle between the
 * axes, e the offset of the branch's axis and ρ the fibre's radius: across the header y = e + ρ sin φ, above its axis
 * Z = √(R² − y²), along the branch from the point nearest the header's axis s = (Z − ρ cos φ cos β) / sin β.
 * φ round the branch: 180 at the heel (the acute side), 0 at the toe, 90 along d × toe, d along the branch away from the
 * header. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { BRACKET_MM, STATION_MM } from "../kernel/tolerance.js";
import { atan2Degrees, cosDegrees, sinDegrees } from "./degrees.js";

/** How a branch's axis crosses a round header. */
export interface Crossing {
  /** Radius of the header with the root gap added, millimetres. */
  readonly radius: number;
  /** Of the branch's axis from the header's axis along φ = 90, millimetres. */
  readonly offset: number;
  /** Sine and cosine of the angle between the axes. */
  readonly sine: number;
  readonly cosine: number;
}

/**
 * The crossing of a branch with a round header; a root gap is a header that much thicker all round.
 *
 * @param of - `header.od` millimetres; `angle` between the centrelines, degrees, above 0 to 90; `offset` and `gap`
 *   millimetres, default 0
 * @example crossing({ header: { od: 48.3 }, angle: 90 }).radius; // 24.15
 */
export function crossing(of: {
  readonly header: { readonly od: number };
  readonly angle: number;
  readonly offset?: number;
  readonly gap?: number;
}): Crossing {
  return {
    radius: of.header.od / 2 + (of.gap ?? 0),
    offset: of.offset ?? 0,
    sine: sinDegrees(of.angle),
    cosine: cosDegrees(of.angle),
  };
}

const nearZero = (bracket: number): number => (Math.abs(bracket) <= BRACKET_MM ? 0 : bracket);

/**
 * Z of a fibre: how high above the header's axis it lands, square to both the header and φ = 90; null where it misses.
 *
 * R² − y² is taken as (R − y)(R + y), each bracket from its least value, so that nothing cancels at the ears of equal
 * tubes. A fibre beside the header by no more than a station's width touches it.
 *
 * @param rho - radius of the fibre, millimetres, ≥ 0
 * @param phi - degrees
 */
export function fibreHeight(c: Crossing, rho: number, phi: number): number | null {
  const [sin, cos] = [sinDegrees((phi - 90) / 2), cosDegrees((phi - 90) / 2)];
  const near = nearZero(c.radius - c.offset - rho) + 2 * rho * sin * sin;
  const far = nearZero(c.radius + c.offset - rho) + 2 * rho * cos * cos;
  if (Math.min(near, far) < -STATION_MM) return null;
  return Math.sqrt(Math.max(near, 0) * Math.max(far, 0));
}

/**
 * Distance along the branch from the point nearest the header's axis to the header's skin; null where the fibre misses.
 *
 * @param c - the crossing
 * @param rho - radius of the fibre, millimetres, 0 (the axis) to the branch's outside
 * @param phi - angle round the branch, degrees
 * @returns millimetres, positive away from the header
 * @example fibreDistance(crossing({ header: { od: 48.3 }, angle: 90 }), 24.15, 0); // 24.15
 */
export function fibreDistance(c: Crossing, rho: number, phi: number): number | null {
  const height = fibreHeight(c, rho, phi);
  return height === null ? null : (height - rho * cosDegrees(phi) * c.cosine) / c.sine + 0;
}

/**
 * Where a wall cut square to its surface first touches: the greatest distance over its thickness; null where all of it
 * misses.
 *
 * The distance is concave in ρ, so the greatest is at the end nearest to the stationary ρ* = (y* − e) / sin φ with
 * y* / Z* = −cot φ cos β; y* is always on the header.
 *
 * @param inside - radius of the bore, millimetres, 0 for solid bar
 * @param outside - outer radius, millimetres
 * @example wallLanding(crossing({ header: { od: 48.3 }, angle: 90 }), 20.95, 24.15, 90); // 12.01…, the inner edge
 */
export function wallLanding(c: Crossing, inside: number, outside: number, phi: number): number | null {
  const radii = [inside, outside];
  const sin = sinDegrees(phi);
  if (sin !== 0) {
    const slant = cosDegrees(phi) * c.cosine;
    const y = (-Math.sign(sin) * c.radius * slant) / Math.hypot(sin, slant);
    radii.push(Math.min(Math.max((y - c.offset) / sin, inside), outside));
  }
  let landing: number | null = null;
  for (const rho of radii) {
    const s = fibreDistance(c, rho, phi);
    if (s !== null && (landing === null || s > landing)) landing = s;
  }
  return landing;
}

/**
 * Angle through the open air between the branch's skin and the header's at the edge where they meet; null where the
 * fibre misses.
 *
 * cos ψ = −N_header · N_branch, with the sine from their cross product so that it stays exact near 180.
 *
 * @returns degrees, 0 to 180; under about 60 a weld has little access
 * @example edgeDihedral(crossing({ header: { od: 60.3 }, angle: 55 }), 24.15, 180); // 55
 */
export function edgeDihedral(c: Crossing, rho: number, phi: number): number | null {
  const height = fibreHeight(c, rho, phi);
  if (height === null) return null;
  const [sin, cos] = [sinDegrees(phi), cosDegrees(phi)];
  // In the axes along the header, along φ = 90, and square to both.
  const [hy, hz] = [(c.offset + rho * sin) / c.radius, height / c.radius];
  const [bx, by, bz] = [-c.sine * cos, sin, c.cosine * cos];
  const across = Math.hypot(hy * bz - hz * by, hz * bx, -hy * bx);
  return atan2Degrees(across, -(hy * by + hz * bz));
}
