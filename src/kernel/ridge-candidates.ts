/**
 * The curves in which the sheets of an end may meet inside the section: every ridge is a stretch of one of them.
 *
 * Sheets of one header meet in the rulings at its breaks. Of two contacts every pair of surfaces meets in a curve that is
 * known exactly: a line, an ellipse, a saddle; mitred headers meet in the miter plane.
 *
 * @packageDocumentation
 */
import type { ConicCurve } from "./curve/conic.js";
import type { Curve } from "./curve/curve.js";
import {
  equalCylindersMeet,
  parallelCylindersMeet,
  planeAcrossCylinder,
  planeAlongCylinder,
  planesMeet,
} from "./curve/intersect.js";
import { nearRulings } from "./curve/near-ruling.js";
import { saddlesBetween } from "./curve/saddle-range.js";
import { type CompiledEnd, type Split, splitBetween } from "./end-compile.js";
import { frameFromAxis } from "./frame.js";
import { cornerHeight, type Sheet } from "./sheet.js";
import type { CylinderSurface, Surface } from "./surface.js";
import { PARALLEL_SINE, TOUCH_ROUNDING_MM } from "./tolerance.js";
import { anySquareTo, cross, length, normalize } from "./vec.js";

/** A curve on which sheets `i` and `j` may meet. */
export interface Candidate {
  readonly curve: Curve;
  readonly i: number;
  readonly j: number;
  /** True for a break of one header's own near side: `i` and `j` are its sheets on the two sides of it. */
  readonly isBreak: boolean;
  /** Other conics in which the same two surfaces meet: equal cylinders cross in two ellipses that cross each other. */
  readonly mates: readonly ConicCurve[];
}

/** Every candidate of an end over a section that reaches as far as `r` mm. */
export function candidates(end: CompiledEnd, r: number): Candidate[] {
  const out: Candidate[] = [];
  const hitOf = new Map<number, number>();
  for (const [k, hit] of end.hits.entries()) {
    for (const s of hit.sheets) hitOf.set(s, k);
    for (let b = 1; b + 1 < hit.breaks.length; b++) {
      const [i, j] = [hit.sheets[b - 1] as number, hit.sheets[b] as number];
      // Beside its silhouette the height of a round sheet is less certain than that of the flat it runs into.
      const sheet = end.sheets[(end.sheets[i] as Sheet).round ? j : i] as Sheet;
      const across = (hit.breaks[b] as number) - hit.h0;
      const [u, v] = [hit.hu * across, hit.hv * across];
      const direction = normalize([-hit.hv, hit.hu, -hit.hv * sheet.a + hit.hu * sheet.b]);
      out.push({
        i,
        j,
        isBreak: true,
        mates: [],
        curve: { kind: "line", origin: [u, v, cornerHeight(sheet, u, v)], direction },
      });
    }
  }
  if (end.root.kind === "hit" || end.root.kind === "leaf") return out;
  for (let i = 0; i < end.sheets.length; i++) {
    for (let j = i + 1; j < end.sheets.length; j++) {
      if (hitOf.has(i) && hitOf.get(i) === hitOf.get(j)) continue;
      const split = splitBetween(end, i, j);
      const [a, b] = [end.sheets[i] as Sheet, end.sheets[j] as Sheet];
      const curves = split ? miterCurves(split, a, r) : meetingSurfaces(a.surface, b.surface, r);
      const conics = split ? [] : curves.filter((c) => c.kind === "conic");
      for (const curve of curves)
        out.push({ i, j, isBreak: false, curve, mates: conics.filter((c) => c !== curve) });
    }
  }
  return out;
}

/** Mitred skins meet on the miter plane, where neither can be told from the other: the first is cut by the plane itself. */
function miterCurves(split: Split, first: Sheet, r: number): readonly Curve[] {
  const frame = frameFromAxis(split.point, split.normal, anySquareTo(split.normal));
  return meetingSurfaces({ kind: "plane", frame }, first.surface, r);
}

/** How far along a header's axis, both ways from its frame's origin, its skin is over a section that reaches as far as r. */
function halfOver({ frame: { origin, z }, radius }: CylinderSurface, r: number): number {
  return (r + Math.hypot(origin[0], origin[1]) + radius) / Math.hypot(z[0], z[1]);
}

function meetingSurfaces(a: Surface, b: Surface, r: number): readonly Curve[] {
  if (a.kind === "plane" && b.kind === "plane") {
    const line = planesMeet(a, b);
    return line ? [line] : [];
  }
  if (a.kind === "cylinder" && b.kind === "cylinder") {
    if (length(cross(a.frame.z, b.frame.z)) < PARALLEL_SINE) return parallelCylindersMeet(a, b);
    const lines = nearRulings(a, b, halfOver(a, r));
    if (lines) return lines;
    const conics = equalCylindersMeet(a, b, TOUCH_ROUNDING_MM);
    if (conics.length > 0) return conics;
    return saddlesBetween(a, b);
  }
  const [plane, cylinder] = a.kind === "plane" ? [a, b] : [b, a];
  if (plane.kind !== "plane" || cylinder.kind !== "cylinder") return [];
  const lines = nearRulings(cylinder, plane, halfOver(cylinder, r));
  if (lines) return lines;
  const conic = planeAcrossCylinder(plane, cylinder);
  return conic ? [conic] : planeAlongCylinder(plane, cylinder);
}
