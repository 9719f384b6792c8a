/**
 * Where, along the section's outline, one sheet of an end takes over from another.
 *
 * Each side of the outline is cut at the header's breaks (closed form), at kinks of equal tubes (closed form), and
 * where two contacts are equally far (root finding); each interval carries the sheet that closes the bar there.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, endAt } from "./end-compile.js";
import { loopsOf, pointOn, type Region, type Segment, segmentLength, tangentOn } from "./region.js";
import { cornerHeight, type Sheet } from "./sheet.js";
import { extremesOf } from "./station.js";
import {
  BESIDE_CORNER_SHARE,
  BRACKET_MM,
  CORNER_MM,
  CORNER_SHARE,
  INSIDE_MM,
  ROUNDING_MM,
  STATION_MM,
} from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** A stretch of one side of the outline, closed by one sheet. */
export interface BoundaryInterval {
  readonly loop: number;
  readonly segment: number;
  readonly t0: number;
  readonly t1: number;
  readonly sheet: number;
}

/** Samples per side when looking for the place where two contacts are equally far. */
const SAMPLES = 32;
/** The same as a fraction of a side. */
function cornerShare(segment: Segment): number {
  return Math.min(0.25, Math.max(CORNER_SHARE, CORNER_MM / segmentLength(segment)));
}

/** The point at `t`, moved into the material (which lies on the left of a segment). */
export function insidePoint(segment: Segment, t: number): Vec2 {
  const [u, v] = pointOn(segment, t);
  const [du, dv] = tangentOn(segment, t);
  const k = INSIDE_MM / Math.hypot(du, dv);
  return [u - dv * k, v + du * k];
}

/** Values of t where h(t) on a segment takes the value `h`. */
function crossings(segment: Segment, hu: number, hv: number, h0: number, h: number): number[] {
  if (segment.kind === "line") {
    const a = h0 + hu * segment.from[0] + hv * segment.from[1];
    const b = h0 + hu * segment.to[0] + hv * segment.to[1];
    if (Math.abs(b - a) < INSIDE_MM) return [];
    return [(h - a) / (b - a)];
  }
  const hc = h0 + hu * segment.centre[0] + hv * segment.centre[1];
  const inside = segment.radius - Math.abs(h - hc);
  // A touching break is a station: rounding must not lose it, nor move it by the root of a rounding.
  if (inside < -BRACKET_MM) return [];
  const turn = inside < BRACKET_MM ? (h < hc ? Math.PI : 0) : Math.acos((h - hc) / segment.radius);
  const phi = Math.atan2(hv, hu);
  const out: number[] = [];
  for (const angle of [phi + turn, phi - turn]) {
    for (let k = -2; k <= 2; k++) out.push((angle + 2 * Math.PI * k - segment.start) / segment.sweep);
  }
  return out;
}

function difference(end: CompiledEnd, i: number, j: number, segment: Segment, t: number): number {
  const [u, v] = pointOn(segment, t);
  return cornerHeight(end.sheets[i] as Sheet, u, v) - cornerHeight(end.sheets[j] as Sheet, u, v);
}

/** The t in [a, b] where two sheets are equally far, by bisection to the last bit. */
function meet(end: CompiledEnd, i: number, j: number, segment: Segment, a: number, b: number): number {
  let [lo, hi] = [a, b];
  const sign = Math.sign(difference(end, i, j, segment, lo));
  if (sign === 0) return lo;
  for (let k = 0; k < 200 && hi - lo > 0; k++) {
    const mid = (lo + hi) / 2;
    if (mid === lo || mid === hi) break;
    if (Math.sign(difference(end, i, j, segment, mid)) === sign) lo = mid;
    else hi = mid;
  }
  return (lo + hi) / 2;
}

function ties(end: CompiledEnd, i: number, j: number, segment: Segment, t: number): boolean {
  return Math.abs(difference(end, i, j, segment, t)) < STATION_MM;
}

function labelAt(end: CompiledEnd, segment: Segment, t: number): number {
  const [u, v] = insidePoint(segment, t);
  return endAt(end, u, v).sheet;
}

/** Splits [a, b] where the label changes between samples. */
function refine(end: CompiledEnd, segment: Segment, a: number, b: number, out: number[]): void {
  let previous = a;
  let label = labelAt(end, segment, a + (b - a) * BESIDE_CORNER_SHARE);
  for (let k = 1; k <= SAMPLES; k++) {
    const t = k === SAMPLES ? b - (b - a) * BESIDE_CORNER_SHARE : a + ((b - a) * k) / SAMPLES;
    const next = labelAt(end, segment, t);
    if (next !== label && next >= 0 && label >= 0) {
      // Contacts that tie at a corner or a kink change there, not a rounding error beside it.
      const from = label;
      const near = [...(previous === a ? [a] : []), ...(k === SAMPLES ? [b] : [])];
      const tie = near.find((x) => ties(end, from, next, segment, x));
      out.push(tie ?? meet(end, label, next, segment, previous, t));
    }
    label = next;
    previous = k === SAMPLES ? b : t;
  }
}

/** All intervals of the outline, loop by loop in walking order. */
export function boundaryOf(end: CompiledEnd, section: Region): BoundaryInterval[] {
  const several = end.sheets.length > 1;
  const out: BoundaryInterval[] = [];
  for (const [loop, segments] of loopsOf(section).entries()) {
    for (const [segment, s] of segments.entries()) {
      const kinks = several || end.hits.length > 0 ? kinksOn(end, s) : [];
      if (!several && kinks.length === 0) {
        out.push({ loop, segment, t0: 0, t1: 1, sheet: 0 });
        continue;
      }
      const marks = [0, 1, ...kinks];
      for (const hit of end.hits) {
        for (const h of hit.breaks) marks.push(...crossings(s, hit.hu, hit.hv, hit.h0, h));
      }
      const corner = cornerShare(s);
      let ts = clean(marks, corner);
      if (several && end.root.kind !== "hit") {
        const more: number[] = [];
        for (let i = 0; i + 1 < ts.length; i++) refine(end, s, ts[i] as number, ts[i + 1] as number, more);
        ts = clean([...ts, ...more], corner);
      }
      const start = out.length;
      for (let i = 0; i + 1 < ts.length; i++) {
        const [t0, t1] = [ts[i] as number, ts[i + 1] as number];
        const sheet = labelAt(end, s, (t0 + t1) / 2);
        const last = out[out.length - 1];
        const kink = kinks.some((t) => Math.abs(t - t0) < corner);
        if (out.length > start && last && last.sheet === sheet && !kink)
          out[out.length - 1] = { ...last, t1 };
        else out.push({ loop, segment, t0, t1, sheet });
      }
    }
  }
  return out;
}

/** Places inside an arc where it touches the silhouette of a round sheet: the saddle has a kink there. */
function kinksOn(end: CompiledEnd, segment: Segment): number[] {
  if (segment.kind !== "arc") return [];
  const corner = cornerShare(segment);
  const out: number[] = [];
  for (const { round } of end.sheets) {
    if (!round) continue;
    for (const t of extremesOf(segment, round.hu, round.hv)) {
      const [u, v] = pointOn(segment, t);
      const h = round.h0 + round.hu * u + round.hv * v;
      if (Math.abs(Math.abs(h) - round.radius) < ROUNDING_MM && t > corner && t < 1 - corner) out.push(t);
    }
  }
  return out;
}

function clean(marks: number[], corner: number): number[] {
  const sorted = marks.map((t) =>
    t < corner ? (t > -corner ? 0 : -1) : t > 1 - corner ? (t < 1 + corner ? 1 : 2) : t,
  );
  sorted.sort((a, b) => a - b);
  const out: number[] = [];
  for (const t of sorted) {
    if (t < 0 || t > 1) continue;
    if (out.length === 0 || t - (out[out.length - 1] as number) > corner) out.push(t);
  }
  if (out[out.length - 1] !== 1) out[out.length - 1] = 1;
  return out;
}
