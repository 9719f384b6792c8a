/**
 * Sheets: the smooth parts an end is made of, each as a height over the section.
 *
 * A sheet is s(u, v) = c + a·u + b·v, plus k·√(R² − h²) with h = h₀ + hu·u + hv·v where it lies on a cylinder. Heights
 * are in the bar's own s; the end's outward coordinate is dir·s.
 *
 * @packageDocumentation
 */
import type { ContactSource } from "./end.js";
import { frameFromAxis } from "./frame.js";
import type { ProfilePiece } from "./profile.js";
import type { Surface } from "./surface.js";
import { PARALLEL_SINE, ROUNDING_MM, SILHOUETTE_RELATIVE } from "./tolerance.js";
import { addScaled, anySquareTo, dot, length, negate, scale, type Vec3 } from "./vec.js";

/** The round part of a sheet's height. */
export interface RoundTerm {
  readonly h0: number;
  readonly hu: number;
  readonly hv: number;
  readonly radius: number;
  readonly k: number;
  /** −1: near side of the cylinder seen along the outward direction; +1: far side (a hollow). */
  readonly root: 1 | -1;
}

/** One smooth part of an end. */
export interface Sheet {
  readonly surface: Surface;
  /** +1 when the surface's normal points out of the bar. */
  readonly sense: 1 | -1;
  readonly source: ContactSource;
  readonly c: number;
  readonly a: number;
  readonly b: number;
  readonly round?: RoundTerm;
}

/** s(u, v) of a sheet. */
export function sheetHeight(sheet: Sheet, u: number, v: number): number {
  const base = sheet.c + sheet.a * u + sheet.b * v;
  const r = sheet.round;
  if (!r) return base;
  const h = r.h0 + r.hu * u + r.hv * v;
  return base + r.k * Math.sqrt(Math.max(0, (r.radius - h) * (r.radius + h)));
}

/** True when a point of a sheet's cylinder is on the side of it that the sheet is not. */
export function isOnFarSide(sheet: Sheet, [u, v, s]: Vec3): boolean {
  const r = sheet.round;
  return r !== undefined && (s - sheet.c - sheet.a * u - sheet.b * v) * Math.sign(r.k) < -ROUNDING_MM;
}

/** How fast s of a sheet rises over (u, v) in a direction of the section; not finite on a silhouette. */
export function rise(sheet: Sheet, [u, v]: Vec3, du: number, dv: number): number {
  const r = sheet.round;
  const flat = sheet.a * du + sheet.b * dv;
  if (!r) return flat;
  const h = r.h0 + r.hu * u + r.hv * v;
  return flat - (r.k * h * (r.hu * du + r.hv * dv)) / Math.sqrt((r.radius - h) * (r.radius + h));
}

/**
 * s(u, v) of a sheet at a corner of an end. A fibre within rounding of the silhouette touches it there, and the root is
 * zero: computed from the rounded h it would be off by the root of that rounding, some 10⁻⁷ mm.
 */
export function cornerHeight(sheet: Sheet, u: number, v: number): number {
  const r = sheet.round;
  const silhouette = r && Math.abs(r.radius - Math.abs(r.h0 + r.hu * u + r.hv * v));
  if (silhouette === undefined || silhouette > SILHOUETTE_RELATIVE * (r as RoundTerm).radius)
    return sheetHeight(sheet, u, v);
  return sheet.c + sheet.a * u + sheet.b * v;
}

/** The sheet of a flat cut; null when the plane runs along the bar's axis. */
export function planeSheet(point: Vec3, normal: Vec3, dir: 1 | -1, source: ContactSource): Sheet | null {
  let n = scale(normal, 1 / length(normal));
  if (Math.abs(n[2]) < PARALLEL_SINE) return null;
  if (n[2] * dir < 0) n = negate(n);
  return {
    surface: { kind: "plane", frame: frameFromAxis(point, n, anySquareTo(n)) },
    sense: 1,
    source,
    c: dot(n, point) / n[2],
    a: -n[0] / n[2],
    b: -n[1] / n[2],
  };
}

/** How a header stands to the bar: its axis, a point on it, and the directions across and along. */
export interface HeaderStance {
  readonly point: Vec3;
  readonly axis: Vec3;
  readonly sine: number;
  readonly n: Vec3;
  readonly m: Vec3;
}

/** The sheet of one piece of a header's first-hit profile. */
export function profileSheet(
  piece: ProfilePiece,
  stance: HeaderStance,
  dir: 1 | -1,
  source: ContactSource,
): Sheet {
  const { point: p, axis, sine, n, m } = stance;
  if (piece.kind === "flat") {
    const outward = addScaled(m, n, -piece.slope);
    const at = addScaled(addScaled(p, n, piece.h), m, piece.m);
    return planeSheet(at, outward, dir, source) as Sheet;
  }
  const centre = addScaled(addScaled(p, n, piece.h), m, piece.m);
  const k = dir / sine;
  return {
    surface: { kind: "cylinder", frame: frameFromAxis(centre, axis, negate(m)), radius: piece.radius },
    sense: piece.root === -1 ? -1 : 1,
    source,
    c: k * (piece.m + dot(p, m)),
    a: -k * m[0],
    b: -k * m[1],
    round: {
      h0: -dot(p, n) - piece.h,
      hu: n[0],
      hv: n[1],
      radius: piece.radius,
      k: k * piece.root,
      root: piece.root,
    },
  };
}
