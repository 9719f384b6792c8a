/**
 * Ridges: where, inside the section, one sheet of an end meets another.
 *
 * For every pair of sheets the exact curve in which their surfaces meet is known (a ruling, a line, an ellipse, a saddle).
 * It is cut at every place where something could change (outline, third sheet, break of a header); a stretch is a ridge
 * when the two sheets are what closes the bar on its two sides.
 *
 * @packageDocumentation
 */
import { type ConicCurve, conicParameter } from "./curve/conic.js";
import { type Curve, derivatives, evaluate } from "./curve/curve.js";
import {
  equalCylindersMeet,
  parallelCylindersMeet,
  planeAcrossCylinder,
  planeAlongCylinder,
  planesMeet,
} from "./curve/intersect.js";
import type { LineCurve } from "./curve/line.js";
import { saddleParameter } from "./curve/saddle.js";
import { type ParameterRange, saddleRange, saddlesBetween } from "./curve/saddle-range.js";
import { type CompiledEnd, endAt, type Split, splitBetween } from "./end-compile.js";
import { frameFromAxis } from "./frame.js";
import type { Region } from "./region.js";
import { regionContains } from "./region-contains.js";
import { reachOf } from "./region-extent.js";
import { cornerHeight, type Sheet, sheetHeight } from "./sheet.js";
import type { Surface } from "./surface.js";
import { looksAt, signChanges } from "./takeover.js";
import {
  BESIDE_STRETCH_SHARE,
  INSIDE_MM,
  ON_SURFACE_MM,
  OTHER_CROSSING_MM,
  PARALLEL_SINE,
  ROUNDING_MM,
  STATION_MM,
} from "./tolerance.js";
import { anySquareTo, cross, distance, dot, length, normalize, sub, type Vec3 } from "./vec.js";

/** A vertex of the outline, with the sheets before and after it. */
export interface OutlineVertex {
  readonly index: number;
  readonly point: Vec3;
  readonly sheets: readonly [number, number];
}

/** A ridge between two vertices; `left` and `right` are the sheets on its sides, seen down the bar's −s. */
export interface Ridge {
  readonly curve: Curve;
  readonly t0: number;
  readonly t1: number;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Outline vertex at the ends, −1 inside the section. */
  readonly fromVertex: number;
  readonly toVertex: number;
  readonly left: number;
  readonly right: number;
}

interface Candidate {
  readonly curve: Curve;
  readonly i: number;
  readonly j: number;
  /** Other conics in which the same two surfaces meet: equal cylinders cross in two ellipses that cross each other. */
  readonly mates: readonly ConicCurve[];
}

function candidates(end: CompiledEnd): Candidate[] {
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
      const curves = split ? miterCurves(split, a) : meetingSurfaces(a.surface, b.surface);
      const conics = split ? [] : curves.filter((c) => c.kind === "conic");
      for (const curve of curves) out.push({ i, j, curve, mates: conics.filter((c) => c !== curve) });
    }
  }
  return out;
}

/** Mitred skins meet on the miter plane, where neither can be told from the other: the first is cut by the plane itself. */
function miterCurves(split: Split, first: Sheet): readonly Curve[] {
  const frame = frameFromAxis(split.point, split.normal, anySquareTo(split.normal));
  return meetingSurfaces({ kind: "plane", frame }, first.surface);
}

function meetingSurfaces(a: Surface, b: Surface): readonly Curve[] {
  if (a.kind === "plane" && b.kind === "plane") {
    const line = planesMeet(a, b);
    return line ? [line] : [];
  }
  if (a.kind === "cylinder" && b.kind === "cylinder") {
    if (length(cross(a.frame.z, b.frame.z)) < PARALLEL_SINE) return parallelCylindersMeet(a, b);
    const conics = equalCylindersMeet(a, b, STATION_MM);
    if (conics.length > 0) return conics;
    return saddlesBetween(a, b);
  }
  const [plane, cylinder] = a.kind === "plane" ? [a, b] : [b, a];
  if (plane.kind !== "plane" || cylinder.kind !== "cylinder") return [];
  const conic = planeAcrossCylinder(plane, cylinder);
  return conic ? [conic] : planeAlongCylinder(plane, cylinder);
}

function parameterOn(curve: Curve, p: Vec3, { from, to }: ParameterRange): number {
  if (curve.kind === "line") return dot(sub(p, curve.origin), curve.direction);
  const t = curve.kind === "conic" ? conicParameter(curve, p) : saddleParameter(curve, p);
  // The turn of t nearest to the middle of the range, and no farther out than its ends.
  const near = t + 2 * Math.PI * Math.round(((from + to) / 2 - t) / (2 * Math.PI));
  return Math.min(to, Math.max(from, near));
}

/** Parameters a candidate is looked at between; null where there is nothing to look at. */
function rangeOf(curve: Curve, section: Region): ParameterRange | null {
  if (curve.kind === "saddle") return saddleRange(curve);
  return curve.kind === "line" ? reach(curve, section) : { from: -Math.PI, to: Math.PI, closed: true };
}

/** Parameters between which a line can be over the section. */
function reach(line: LineCurve, section: Region): ParameterRange {
  const r = reachOf(section.outer);
  const [u, v] = line.direction;
  const d2 = u * u + v * v;
  const middle = -(line.origin[0] * u + line.origin[1] * v) / d2;
  const half = (r + 1) / Math.sqrt(d2);
  return { from: middle - half, to: middle + half, closed: false };
}

interface Event {
  readonly t: number;
  readonly vertex: number;
  readonly point: Vec3;
}

/**
 * mm. Events this near are one. Where a candidate only touches a break its place is known to the root of a rounding: a
 * few 10⁻⁶ mm for headers some metres away.
 */
const SAME_EVENT_MM = 10 * ON_SURFACE_MM;

/** All ridges of an end. `outline` are the vertices of its boundary where the sheet changes. */
export function ridgesOf(end: CompiledEnd, section: Region, outline: readonly OutlineVertex[]): Ridge[] {
  return candidates(end).flatMap((c) => ridgesAlong(end, section, outline, c));
}

function ridgesAlong(
  end: CompiledEnd,
  section: Region,
  outline: readonly OutlineVertex[],
  c: Candidate,
): Ridge[] {
  const range = rangeOf(c.curve, section);
  if (!range) return [];
  const { from: lo, to: hi, closed } = range;
  const events: Event[] = [];
  for (const v of outline) {
    const t = parameterOn(c.curve, v.point, range);
    const changes = v.sheets[0] !== v.sheets[1];
    if (distance(evaluate(c.curve, t), v.point) > (changes ? SAME_EVENT_MM : ROUNDING_MM)) continue;
    events.push({ t, vertex: v.index, point: v.point });
  }
  // A saddle that ends goes on as another one.
  for (const t of [...changes(end, section, c, lo, hi), ...(closed ? [] : [lo, hi])]) {
    const point = evaluate(c.curve, t);
    if (events.some((e) => distance(e.point, point) < SAME_EVENT_MM)) continue;
    if (regionContains(section, [point[0], point[1]])) events.push({ t, vertex: -1, point });
  }
  if (events.length === 0) return closed ? closedRidge(end, section, c) : [];
  events.sort((a, b) => a.t - b.t);
  const stretches: { a: Event; b: Event; t1: number; sides: readonly [number, number] | null }[] = [];
  const count = closed ? events.length : events.length - 1;
  for (let k = 0; k < count; k++) {
    const a = events[k] as Event;
    const b = events[(k + 1) % events.length] as Event;
    const t1 = k + 1 < events.length ? b.t : b.t + (hi - lo);
    const off = Math.min(INSIDE_MM, distance(a.point, b.point) * BESIDE_STRETCH_SHARE);
    const sides = (share: number): readonly [number, number] | null =>
      sidesAt(end, section, c, a.t + share * (t1 - a.t), off || INSIDE_MM);
    // In the middle a ridge may pass a bore nearer than labels are read.
    stretches.push({ a, b, t1, sides: sides(0.5) ?? sides(0.3) });
  }
  return joined(c, stretches, closed);
}

type Stretch = { a: Event; b: Event; t1: number; sides: readonly [number, number] | null };

/** Neighbouring stretches that go on across an event inside the section are one ridge. */
function joined(c: Candidate, stretches: readonly Stretch[], closed: boolean): Ridge[] {
  const out: Ridge[] = [];
  // A closed curve may start anywhere; best where a ridge does.
  const first = closed
    ? Math.max(
        0,
        stretches.findIndex((s) => s.sides === null || s.a.vertex >= 0),
      )
    : 0;
  let goesOn = false;
  for (let k = 0; k < stretches.length; k++) {
    const s = stretches[(first + k) % stretches.length] as Stretch;
    const last = out[out.length - 1];
    if (!s.sides) {
      goesOn = false;
      continue;
    }
    if (goesOn && last && s.a.vertex < 0 && last.left === s.sides[0] && last.right === s.sides[1]) {
      out[out.length - 1] = { ...last, t1: last.t1 + (s.t1 - s.a.t), to: s.b.point, toVertex: s.b.vertex };
      continue;
    }
    goesOn = true;
    out.push({
      curve: c.curve,
      t0: s.a.t,
      t1: s.t1,
      from: s.a.point,
      to: s.b.point,
      fromVertex: s.a.vertex,
      toVertex: s.b.vertex,
      left: s.sides[0],
      right: s.sides[1],
    });
  }
  return out;
}

/** A ridge that closes on itself inside the section, as two halves; none when the curve is no ridge. */
function closedRidge(end: CompiledEnd, section: Region, c: Candidate): Ridge[] {
  const sides = sidesAt(end, section, c, 0.1, INSIDE_MM);
  if (!sides) return [];
  const [p, q] = [evaluate(c.curve, 0), evaluate(c.curve, Math.PI)];
  const half = (t0: number, from: Vec3, to: Vec3): Ridge => ({
    curve: c.curve,
    t0,
    t1: t0 + Math.PI,
    from,
    to,
    fromVertex: -1,
    toVertex: -1,
    left: sides[0],
    right: sides[1],
  });
  return [half(0, p, q), half(Math.PI, q, p)];
}

/** Sheets on the left and right of a candidate, `off` mm beside it at t, when they are the pair the candidate belongs to. */
function sidesAt(
  end: CompiledEnd,
  section: Region,
  c: Candidate,
  t: number,
  off: number,
): readonly [number, number] | null {
  const { p, d1 } = derivatives(c.curve, t);
  const k = off / Math.hypot(d1[0], d1[1]);
  const onLeft = [p[0] - d1[1] * k, p[1] + d1[0] * k] as const;
  const onRight = [p[0] + d1[1] * k, p[1] - d1[0] * k] as const;
  // Along a side of the section there is material on one side only: no ridge, whichever way the rounding falls.
  if (!regionContains(section, onLeft) || !regionContains(section, onRight)) return null;
  const left = endAt(end, ...onLeft).sheet;
  const right = endAt(end, ...onRight).sheet;
  const pair = (left === c.i && right === c.j) || (left === c.j && right === c.i);
  if (!pair) return null;
  // The other crossing of the same two surfaces lies above or below what closes the bar.
  return Math.abs(end.dir * endAt(end, p[0], p[1]).out - p[2]) < OTHER_CROSSING_MM ? [left, right] : null;
}

const SAMPLES = 96;

/** Parameters where a third sheet reaches the candidate, or where it crosses a break of a header. */
function changes(end: CompiledEnd, section: Region, c: Candidate, lo: number, hi: number): number[] {
  const measures: ((p: Vec3) => number)[] = [];
  // Breaks first: where a third sheet only touches, its own place is known to the root of a rounding.
  for (const hit of end.hits) {
    for (const h of hit.breaks) measures.push((p) => hit.h0 + hit.hu * p[0] + hit.hv * p[1] - h);
  }
  for (const [k, sheet] of end.sheets.entries()) {
    if (k === c.i || k === c.j) continue;
    measures.push((p) => sheetHeight(sheet, p[0], p[1]) - p[2]);
  }
  for (const { centre, major, minor } of c.mates) {
    const normal = normalize(cross(major, minor));
    measures.push((p) => dot(sub(p, centre), normal));
  }
  const { curve } = c;
  const near = curve.kind === "conic" ? parametersOver(curve, section) : null;
  return measures.flatMap((f) => {
    const at = (t: number): number => f(evaluate(curve, t));
    return signChanges(at, near ? near.map((t) => ({ t, value: at(t) })) : looksAt(at, lo, hi, SAMPLES));
  });
}

/** Looks from one side of the section to the other. */
const LOOKS_ACROSS = 8;

/** Parameters of a conic where it is over the section, near to each other; a long ellipse is over it for a moment only. */
function parametersOver(c: ConicCurve, section: Region): number[] {
  const r = reachOf(section.outer);
  const speed = Math.hypot(c.major[0], c.major[1], c.minor[0], c.minor[1]);
  const out: number[] = [];
  const cover = (a: number, b: number): void => {
    const [u, v] = evaluate(c, (a + b) / 2);
    const span = (speed * (b - a)) / 2;
    if (Math.hypot(u, v) - span > r) return;
    const mid = (a + b) / 2;
    if (span > r / LOOKS_ACROSS && mid > a && mid < b) {
      cover(a, mid);
      cover(mid, b);
    } else {
      if (out[out.length - 1] !== a) out.push(a);
      out.push(b);
    }
  };
  for (let k = 0; k < SAMPLES; k++) {
    cover(-Math.PI + (2 * Math.PI * k) / SAMPLES, -Math.PI + (2 * Math.PI * (k + 1)) / SAMPLES);
  }
  return out;
}
