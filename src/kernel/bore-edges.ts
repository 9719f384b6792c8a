/**
 * The exact edges of a bore: round each of its openings, and along its wall.
 *
 * An opening is walked once round the bore, ψ from 0 to 2π, and cut where its wall is split (ψ = 0 and π) and where it
 * crosses the line between two sides. On a flat side an edge is part of an ellipse, on a round one of a saddle whose
 * parameter is ψ (an ellipse where the two radii are equal and the axes meet).
 *
 * @packageDocumentation
 */
import { type Opening, partOf, sideOf, tauOf } from "./bore.js";
import { type BoreStance, borePoint } from "./bore-stance.js";
import type { ConicCurve } from "./curve/conic.js";
import { planeAcrossCylinder } from "./curve/intersect.js";
import { saddleBetween } from "./curve/saddle.js";
import type { Region } from "./region.js";
import { type CurveStretch, conicStretch, sideSurface } from "./side-edge.js";
import { ROUNDING_MM } from "./tolerance.js";
import type { Vec3 } from "./vec.js";

/** A place where an opening is cut into edges. */
export interface OpeningVertex {
  readonly psi: number;
  readonly point: Vec3;
  /** Corner of the loop whose line it lies on; −1 elsewhere. */
  readonly corner: number;
}

/** An edge of an opening, from the vertex of the same number to the next. */
export interface OpeningEdge extends CurveStretch {
  readonly segment: number;
}

/** An opening as edges. */
export interface OpeningOutline {
  readonly vertices: readonly OpeningVertex[];
  readonly edges: readonly OpeningEdge[];
  /** Number of the vertex at ψ = π; the first is at ψ = 0. */
  readonly opposite: number;
}

/** Vertices and edges of an opening, in rising ψ. */
export function openingOutline(section: Region, opening: Opening, stance: BoreStance): OpeningOutline {
  const vertices = cutsOf(opening, stance).map(([psi, corner]): OpeningVertex => {
    return { psi, corner, point: openingPoint(section, opening, stance, psi) };
  });
  const conics: (ConicCurve | null)[] = [];
  const edges = vertices.map((from, k): OpeningEdge => {
    const to = vertices[(k + 1) % vertices.length] as OpeningVertex;
    const t1 = to.psi > from.psi ? to.psi : to.psi + 2 * Math.PI;
    const mid = (from.psi + t1) / 2;
    const part = partOf(opening, stance.h + stance.surface.radius * Math.sin(mid));
    const side = sideOf(section, opening.loop, part.segment);
    const { segment, root } = part;
    const between = (conic: ConicCurve): OpeningEdge => {
      const at = openingPoint(section, opening, stance, mid);
      return { segment, ...conicStretch(conic, from.point, to.point, at) };
    };
    const surface = sideSurface(side);
    if (surface.kind === "plane") {
      conics[segment] ??= planeAcrossCylinder(surface, stance.surface);
      return between(conics[segment] as ConicCurve);
    }
    const curve = saddleBetween(stance.surface, surface, root, mid);
    return curve.kind === "conic" ? between(curve) : { segment, curve, t0: from.psi, t1 };
  });
  return { vertices, edges, opposite: vertices.findIndex((v) => v.psi === Math.PI) };
}

/** ψ of all cuts with the corner they lie on, rising from 0. */
function cutsOf(opening: Opening, { h, surface }: BoreStance): (readonly [number, number])[] {
  const cuts: [number, number][] = [
    [0, -1],
    [Math.PI, -1],
  ];
  for (const { to, corner } of opening.parts) {
    if (corner < 0) continue;
    if (Math.abs(to - h) < ROUNDING_MM) {
      for (const cut of cuts) if (cut[0] === 0 || cut[0] === Math.PI) cut[1] = corner;
      continue;
    }
    const psi = Math.asin((to - h) / surface.radius);
    cuts.push([psi > 0 ? psi : 2 * Math.PI + psi, corner], [Math.PI - psi, corner]);
  }
  return cuts.sort((a, b) => a[0] - b[0]);
}

function openingPoint(section: Region, opening: Opening, stance: BoreStance, psi: number): Vec3 {
  const h = stance.h + stance.surface.radius * Math.sin(psi);
  return borePoint(stance, psi, tauOf(section, opening, stance, h));
}
