/**
 * How a bore stands to the bar it is in: all that its closed forms need.
 *
 * Seen along the bar, a bore is a strip of the section: its axis runs along the unit vector e, h is the distance across
 * it (to the right of e), τ the distance along it. The angle ψ round the bore is counted from the bar's axis as the bore
 * sees it, towards +h. Every ruling of the bore runs along e, so at the place (h, τ)
 *
 *   h(ψ) = h₀ + r·sin ψ,   s(ψ, τ) = s₀ + τ·tan ρ + (r / cos ρ)·cos ψ
 *
 * with ρ the bore's rake: 0 for a bore square to the bar.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { frameFromAxis } from "./frame.js";
import type { CylinderSurface } from "./surface.js";
import { PARALLEL_SINE } from "./tolerance.js";
import { addScaled, normalize, type Vec2, type Vec3 } from "./vec.js";

/** A bore in the frame of its bar, millimetres. */
export interface BoreStance {
  /** Frame: origin where the axis passes τ = 0, z along the bore, x at ψ = 0, y across (+h). */
  readonly surface: CylinderSurface;
  /** e: unit, along the bore in the section's plane. */
  readonly along: Vec2;
  readonly h: number;
  readonly s: number;
  /** tan ρ. */
  readonly rise: number;
  /** r / cos ρ: how far the bore reaches along the bar from its own axis. */
  readonly reach: number;
}

/** The stance of a bore; null when it runs along the bar. */
export function stanceOf(bore: Bore): BoreStance | null {
  const z = normalize(bore.direction);
  const across = Math.hypot(z[0], z[1]);
  if (!(across >= PARALLEL_SINE)) return null;
  const along: Vec2 = [z[0] / across, z[1] / across];
  const radius = bore.diameter / 2;
  const tau = bore.point[0] * along[0] + bore.point[1] * along[1];
  const origin = addScaled(bore.point, z, -tau / across);
  return {
    surface: { kind: "cylinder", frame: frameFromAxis(origin, z, [0, 0, 1]), radius },
    along,
    h: acrossBore(along, bore.point[0], bore.point[1]),
    s: origin[2],
    rise: z[2] / across,
    reach: radius / across,
  };
}

/** h of a place of the section: to the right of the bore. */
export function acrossBore(along: Vec2, u: number, v: number): number {
  return u * along[1] - v * along[0];
}

/** τ of a place of the section. */
export function alongBore(along: Vec2, u: number, v: number): number {
  return u * along[0] + v * along[1];
}

/** The point of the bore's surface at ψ whose τ is given. */
export function borePoint(stance: BoreStance, psi: number, tau: number): Vec3 {
  const { along, h, s, rise, reach, surface } = stance;
  const across = h + surface.radius * Math.sin(psi);
  return placeOf(along, across, tau, s + tau * rise + reach * Math.cos(psi));
}

/** The point of the bore's axis whose τ is given. */
export function axisPoint({ along, h, s, rise }: BoreStance, tau: number): Vec3 {
  return placeOf(along, h, tau, s + tau * rise);
}

function placeOf([eu, ev]: Vec2, h: number, tau: number, s: number): Vec3 {
  return [h * ev + tau * eu, tau * ev - h * eu, s];
}
