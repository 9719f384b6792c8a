/**
 * Does one straight piece run through the material of another, and how deep?
 *
 * Two prisms that cross overlap only where their reaches along the common perpendicular do; that is asked first. Then
 * fibres just inside each outline are followed through the other's section, walls and hollow told apart, and between its
 * two cuts; the fibres that reach farthest towards the other are among them, so that no crossing of two whole bars slips
 * between. What overlaps by no more than the nodes' tolerance touches. Millimetres, layout.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, endAt } from "../kernel/end-compile.js";
import { directionToLocal, type Frame, pointToLocal, pointToParent } from "../kernel/frame.js";
import { extentAlong, farthestAlong } from "../kernel/region-extent.js";
import { stretchesInside } from "../kernel/region-line.js";
import { NODE_MM, PARALLEL_SINE } from "../kernel/tolerance.js";
import { addScaled, cross, dot, length, scale, sub, type Vec2, type Vec3 } from "../kernel/vec.js";
import type { Section } from "../members/section.js";
import { outlinePlace } from "./wall.js";

/** A piece as it is cut, before it is one. */
export interface CutBar {
  readonly frame: Frame;
  readonly section: Section;
  readonly ends: readonly [CompiledEnd, CompiledEnd];
}

/** Where two pieces overlap, and by how much across both. */
export interface RunThrough {
  readonly point: Vec3;
  readonly depth: number;
}

/** Fibres a side of two that cross square; the more alike two run, the longer a thin wall stays between two fibres. */
const FIBRES = 8;
const LEAST_SINE = 1 / 32;
const PLACES = 9;

/** Null when the two have no common material beyond the tolerance. */
export function runThrough(a: CutBar, b: CutBar): RunThrough | null {
  const n = across(a.frame, b.frame);
  const apart = dot(sub(b.frame.origin, a.frame.origin), n);
  const back = scale(n, -1);
  const depth = Math.min(reach(a, n) + reach(b, back) - apart, reach(b, n) + reach(a, back) + apart);
  if (depth <= NODE_MM) return null;
  const point = meets(a, b, n) ?? meets(b, a, n);
  return point ? { point, depth } : null;
}

/** Unit direction square to both axes; of two that run alike, from one axis to the other. */
function across(a: Frame, b: Frame): Vec3 {
  const square = cross(a.z, b.z);
  const sine = length(square);
  if (sine > PARALLEL_SINE) return scale(square, 1 / sine);
  const w = sub(b.origin, a.origin);
  const beside = addScaled(w, a.z, -dot(w, a.z));
  const size = length(beside);
  return size > NODE_MM ? scale(beside, 1 / size) : a.x;
}

function reach({ frame, section }: CutBar, n: Vec3): number {
  return extentAlong(section.region.outer, inSection(frame, n)).greatest;
}

function inSection({ x, y }: Frame, n: Vec3): Vec2 {
  const [u, v] = [dot(n, x), dot(n, y)];
  const size = Math.hypot(u, v);
  return [u / size, v / size];
}

/** The middle of a fibre of `a` in the material of `b`, if there is one. */
function meets(a: CutBar, b: CutBar, n: Vec3): Vec3 | null {
  const d = directionToLocal(b.frame, a.frame.z);
  const count = FIBRES / Math.max(LEAST_SINE, Math.hypot(d[0], d[1]));
  for (const [u, v] of placesIn(a, n, Math.ceil(count))) {
    const [s0, s1] = [-endAt(a.ends[0], u, v).out, endAt(a.ends[1], u, v).out];
    if (!(s1 - s0 > NODE_MM) || !Number.isFinite(s1 - s0)) continue;
    const p = pointToLocal(b.frame, pointToParent(a.frame, [u, v, 0]));
    for (const [t0, t1] of stretchesInside(b.section.region, [p[0], p[1]], [d[0], d[1]], s0, s1)) {
      if (t1 - t0 <= NODE_MM) continue;
      for (let k = 0; k < PLACES; k++) {
        const t = t0 + ((k + 0.5) / PLACES) * (t1 - t0);
        if (within(b.ends, addScaled(p, d, t))) return pointToParent(b.frame, addScaled(p, d, t));
      }
    }
  }
  return null;
}

/** True when a point is between the two cuts of a bar by more than the tolerance. */
function within([low, high]: CutBar["ends"], [u, v, s]: Vec3): boolean {
  return endAt(low, u, v).out + s > NODE_MM && endAt(high, u, v).out - s > NODE_MM;
}

/** Places of a section just inside its outline, those that reach farthest across first. */
function placesIn({ frame, section }: CutBar, n: Vec3, count: number): Vec2[] {
  const { outer } = section.region;
  const direction = inSection(frame, n);
  const out = [1, -1].map((sign): Vec2 => {
    const [du, dv] = [sign * direction[0], sign * direction[1]];
    const [u, v] = farthestAlong(outer, [du, dv]);
    return [u - NODE_MM * du, v - NODE_MM * dv];
  });
  for (const segment of outer) {
    for (let k = 0; k < count; k++) {
      const { u, v, iu, iv } = outlinePlace(segment, (k + 0.5) / count);
      out.push([u + NODE_MM * iu, v + NODE_MM * iv]);
    }
  }
  return out;
}
