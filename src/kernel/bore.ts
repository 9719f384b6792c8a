/**
 * Bores: round holes through the walls of a bar, at any angle.
 *
 * The bore's axis crosses the section's outline in pairs, into the material and out of it: each pair is one wall. On
 * every side it crosses, the bore cuts one closed opening: an ellipse on a flat side, a saddle on a round one, each in two
 * halves that meet on the rulings ψ = 0 and ψ = π of the bore. Openings stay clear of the sides' ends, the bar's ends and
 * each other; where they do not, a diagnostic says by how much.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { evaluate } from "./curve/curve.js";
import { planeAcrossCylinder } from "./curve/intersect.js";
import { saddleBetween } from "./curve/saddle.js";
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import { frameFromAxis } from "./frame.js";
import { loopsOf, type Region, type Segment } from "./region.js";
import { type CurveStretch, conicStretch, sideSurface } from "./side-edge.js";
import type { CylinderSurface } from "./surface.js";
import { LEFT_BESIDE_BORE_MM, PARALLEL_SINE } from "./tolerance.js";
import { addScaled, dot, normalize, sub, type Vec3 } from "./vec.js";

/** Where a bore opens on one side of the section. */
export interface Opening {
  readonly loop: number;
  readonly segment: number;
  /** Along the bore's axis from its point, where the axis itself crosses, millimetres. */
  readonly at: number;
  /** From ψ = 0 to π and from π to 2π about the bore's direction. */
  readonly halves: readonly [CurveStretch, CurveStretch];
}

/** One wall that a bore goes through. */
export interface BoreWall {
  readonly bore: string;
  readonly wall: number;
  readonly surface: CylinderSurface;
  readonly entry: Opening;
  readonly exit: Opening;
}

/** Walls of a bore in the order it goes through them, or why it cannot be cut. */
export type BoreResult = { readonly walls: readonly BoreWall[] } | { readonly diagnostic: Diagnostic };

/** The bore's cylinder; ψ is counted from the bar's axis as the bore sees it. */
function cylinderOf(bore: Bore): CylinderSurface | null {
  const z = normalize(bore.direction);
  if (Math.hypot(z[0], z[1]) < PARALLEL_SINE) return null;
  return { kind: "cylinder", frame: frameFromAxis(bore.point, z, [0, 0, 1]), radius: bore.diameter / 2 };
}

interface Crossing {
  readonly loop: number;
  readonly segment: number;
  readonly at: number;
  readonly into: boolean;
}

/** Walls of one bore through a section. */
export function boreWalls(section: Region, bore: Bore): BoreResult {
  if (!(bore.diameter > 0) || !Number.isFinite(bore.diameter)) {
    return refuse(
      bore,
      "bad-bore",
      `expected a diameter above zero, got ${bore.diameter} mm.`,
      "Give the drill's diameter.",
    );
  }
  const surface = cylinderOf(bore);
  if (!surface) {
    return refuse(
      bore,
      "bore-along-axis",
      "runs along the bar and goes through no wall.",
      "Turn the bore across the bar.",
    );
  }
  const found = crossings(section, surface);
  const walls: BoreWall[] = [];
  for (let k = 0; k + 1 < found.length; k += 2) {
    const [a, b] = [found[k] as Crossing, found[k + 1] as Crossing];
    // Pairs that do not go in and out again touch a corner of the outline.
    const paired = a.into && !b.into;
    const [entry, exit] = paired
      ? [opening(section, surface, a), opening(section, surface, b)]
      : [null, null];
    if (!entry || !exit) {
      return refuse(
        bore,
        "bore-leaves-side",
        `of ${bore.diameter.toFixed(3)} mm reaches past the side it is drilled in.`,
        "Drill nearer to the middle of the side, or use a smaller drill.",
      );
    }
    walls.push({ bore: bore.id, wall: walls.length, surface, entry, exit });
    if (bore.through === "first") break;
  }
  return walls.length > 0
    ? { walls }
    : refuse(bore, "bore-misses", "misses the section.", "Move the bore so that its axis crosses the bar.");
}

function refuse(bore: Bore, code: string, what: string, hint: string): { readonly diagnostic: Diagnostic } {
  return { diagnostic: diagnostic({ code, bore: bore.id, message: `Bore ${bore.id} ${what}`, hint }) };
}

/** Where the bore's axis crosses the outline, along the bore. */
function crossings(section: Region, { frame }: CylinderSurface): Crossing[] {
  const [pu, pv] = frame.origin;
  const [du, dv] = frame.z;
  const out: Crossing[] = [];
  const add = (loop: number, segment: number, at: number, nu: number, nv: number): void => {
    out.push({ loop, segment, at, into: du * nu + dv * nv < 0 });
  };
  for (const [l, loop] of loopsOf(section).entries()) {
    for (const [k, s] of loop.entries()) {
      if (s.kind === "line") {
        const [eu, ev] = [s.to[0] - s.from[0], s.to[1] - s.from[1]];
        const det = du * ev - dv * eu;
        if (Math.abs(det) < PARALLEL_SINE * Math.hypot(eu, ev)) continue;
        const [wu, wv] = [s.from[0] - pu, s.from[1] - pv];
        const t = (wu * dv - wv * du) / det;
        if (t >= 0 && t < 1) add(l, k, (wu * ev - wv * eu) / det, ev, -eu);
        continue;
      }
      const [wu, wv] = [pu - s.centre[0], pv - s.centre[1]];
      const [a, b, c] = [du * du + dv * dv, wu * du + wv * dv, wu * wu + wv * wv - s.radius ** 2];
      const root = b * b - a * c;
      if (root <= 0) continue;
      for (const sign of [-1, 1]) {
        const at = (-b + sign * Math.sqrt(root)) / a;
        const [nu, nv] = [wu + at * du, wv + at * dv];
        const side = s.sweep > 0 ? 1 : -1;
        const part = fraction(s, nu, nv);
        if (part >= 0 && part < 1) add(l, k, at, side * nu, side * nv);
      }
    }
  }
  return out.sort((a, b) => a.at - b.at);
}

/** How far round an arc (0 to 1) the direction (u, v) from its centre lies; above 1 when it is past the arc. */
function fraction(arc: Segment & { kind: "arc" }, u: number, v: number): number {
  const turn = 2 * Math.PI;
  const from = (Math.atan2(v, u) - arc.start) * Math.sign(arc.sweep);
  return (((from % turn) + turn) % turn) / Math.abs(arc.sweep);
}

/** Points round an opening that must lie on its side. */
const ROUND = 24;

/** The opening on one side; null when it reaches past the side or the side is too narrow for it. */
function opening(section: Region, bore: CylinderSurface, c: Crossing): Opening | null {
  const side = (loopsOf(section)[c.loop] as readonly Segment[])[c.segment] as Segment;
  const surface = sideSurface(side);
  const halves = ([0, 1] as const).map((h): CurveStretch | null => {
    const [t0, t1] = [h * Math.PI, (h + 1) * Math.PI];
    if (surface.kind === "plane") {
      const conic = planeAcrossCylinder(surface, bore);
      const at = (psi: number): Vec3 => onPlane(bore, psi, surface.frame.origin, surface.frame.z);
      return conic && conicStretch(conic, at(t0), at(t1), at((t0 + t1) / 2));
    }
    // Going towards the side's axis the bore meets its near half, going away its far half.
    const w = sub(addScaled(bore.frame.origin, bore.frame.z, c.at), surface.frame.origin);
    const towards = w[0] * bore.frame.z[0] + w[1] * bore.frame.z[1] < 0;
    const curve = saddleBetween(bore, surface, towards ? -1 : 1, (t0 + t1) / 2);
    return curve.kind === "saddle" && curve.a0 > 0 && curve.b0 > 0 ? { curve, t0, t1 } : null;
  });
  const [first, second] = halves;
  if (!first || !second) return null;
  for (const half of [first, second]) {
    for (let k = 0; k < ROUND; k++) {
      const p = evaluate(half.curve, half.t0 + ((half.t1 - half.t0) * k) / ROUND);
      if (!isOnSide(side, p)) return null;
    }
  }
  return { loop: c.loop, segment: c.segment, at: c.at, halves: [first, second] };
}

/** Where the bore's ruling ψ meets a plane. */
function onPlane(bore: CylinderSurface, psi: number, origin: Vec3, normal: Vec3): Vec3 {
  const { frame, radius } = bore;
  const p = addScaled(
    addScaled(frame.origin, frame.x, radius * Math.cos(psi)),
    frame.y,
    radius * Math.sin(psi),
  );
  return addScaled(p, frame.z, dot(sub(origin, p), normal) / dot(frame.z, normal));
}

function isOnSide(side: Segment, p: Vec3): boolean {
  if (side.kind === "line") {
    const [eu, ev] = [side.to[0] - side.from[0], side.to[1] - side.from[1]];
    const size = Math.hypot(eu, ev);
    const t = ((p[0] - side.from[0]) * eu + (p[1] - side.from[1]) * ev) / size;
    return t > LEFT_BESIDE_BORE_MM && t < size - LEFT_BESIDE_BORE_MM;
  }
  const left = LEFT_BESIDE_BORE_MM / (side.radius * Math.abs(side.sweep));
  const part = fraction(side, p[0] - side.centre[0], p[1] - side.centre[1]);
  return part > left && part < 1 - left;
}
