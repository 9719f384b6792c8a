/**
 * Where round a coped branch is the weld hardest to reach?
 *
 * The angle ψ between the skins is least where g = N_header · N_branch is. g is smooth between the places where the
 * branch leaves the header, so each change of sign of g′ from − to + in a sweep of 5° steps is closed by bisection;
 * the ends of every stretch on the header are candidates too. Millimetres and degrees.
 *
 * @packageDocumentation
 */
import { atan2Degrees, cosDegrees, sinDegrees } from "./degrees.js";
import { type Crossing, edgeDihedral, fibreHeight } from "./saddle-fibre.js";

const SWEEP_STEP = 5;
/** Halvings that bring a sweep step below the spacing of doubles at 360. */
const HALVINGS = 50;

/** The least angle between the skins and where it is, degrees. */
export interface LeastDihedral {
  readonly dihedral: number;
  readonly phi: number;
}

/** Sign of dg/dφ; where the branch leaves the header it is infinite, and at an ear of equal tubes g is greatest. */
function slope(c: Crossing, rho: number, phi: number, ear: number): number {
  const height = fibreHeight(c, rho, phi) ?? 0;
  const [sin, cos] = [sinDegrees(phi), cosDegrees(phi)];
  const y = c.offset + rho * sin;
  const plain = cos * (rho * sin + y) - height * sin * c.cosine;
  if (c.cosine === 0) return plain;
  const bend = y * rho * cos * cos * c.cosine;
  if (height === 0) return cos === 0 ? ear : -bend * Infinity;
  return plain - bend / height;
}

/** Sweep angles, with the places where the branch leaves the header among them. */
function sweep(c: Crossing, rho: number): number[] {
  const phis: number[] = [];
  for (let phi = 0; phi <= 360; phi += SWEEP_STEP) phis.push(phi);
  for (const sin of [(c.radius - c.offset) / rho, (-c.radius - c.offset) / rho]) {
    if (Math.abs(sin) >= 1) continue;
    const phi = atan2Degrees(sin, Math.sqrt((1 - sin) * (1 + sin)));
    phis.push((phi + 360) % 360, 180 - phi);
  }
  return phis.sort((a, b) => a - b);
}

function bisect(c: Crossing, rho: number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (slope(c, rho, middle, 0) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Rounding of an angle that two routes reach; nearer ones are equal and the heel is named. Degrees. */
const EQUAL = 360 * Number.EPSILON;

/**
 * The least angle between the skins over the whole outer edge; null when no fibre meets the header.
 *
 * @param c - the crossing
 * @param rho - outer radius of the branch, millimetres
 * @returns degrees; of two equal least places the one nearer the heel (φ = 180), of those the smaller φ
 * @example leastDihedral(crossing({ header: { od: 60.3 }, angle: 55 }), 24.15); // { dihedral: 55, phi: 180 }
 */
export function leastDihedral(c: Crossing, rho: number): LeastDihedral | null {
  const phis = sweep(c, rho);
  const candidates = [...phis];
  for (let i = 1; i < phis.length; i++) {
    const [from, to] = [phis[i - 1] ?? 0, phis[i] ?? 0];
    if (fibreHeight(c, rho, (from + to) / 2) === null) continue;
    if (slope(c, rho, from, -1) < 0 && slope(c, rho, to, 1) > 0) candidates.push(bisect(c, rho, from, to));
  }
  let best: LeastDihedral | null = null;
  for (const phi of candidates) {
    const dihedral = edgeDihedral(c, rho, phi);
    if (dihedral === null) continue;
    const wins =
      best === null ||
      dihedral < best.dihedral - EQUAL ||
      (dihedral <= best.dihedral + EQUAL && nearerHeel(phi, best.phi));
    if (wins) best = { dihedral, phi: phi % 360 };
  }
  return best;
}

function nearerHeel(a: number, b: number): boolean {
  const [da, db] = [Math.abs(a - 180), Math.abs((b % 360) - 180)];
  return da < db;
}
