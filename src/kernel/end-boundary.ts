/**
 * Where, along the section's outline, one sheet of an end takes over from another.
 *
 * Each side of the outline is cut at the header's breaks (closed form), at kinks of equal tubes (closed form), and
 * where two contacts are equally far (root finding); each interval carries the sheet that closes the bar there.
 *
 * @packageDocumentation
 */
import { type CompiledEnd, endAt, sheetOfHit, sideOfSplit, splitBetween } from "./end-compile.js";
import { crossedBetween, meetingPlanes } from "./meeting-plane.js";
import { loopsOf, pointOn, type Region, type Segment, segmentLength, tangentOn } from "./region.js";
import { type Sheet, sheetHeight } from "./sheet.js";
import { sideHeight } from "./side-edge.js";
import { extremesOf } from "./station.js";
import { distanceTo } from "./surface.js";
import { bisect, type Look, looksAt, signChanges } from "./takeover.js";
import {
  BESIDE_CORNER_SHARE,
  BESIDE_STRETCH_SHARE,
  BRACKET_MM,
  CORNER_MM,
  CORNER_SHARE,
  INSIDE_MM,
  MOMENT_MM,
  ROUNDING_MM,
  STATION_MM,
  TIE_ROUNDING_MM,
} from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** A stretch of one side of the outline, closed by one sheet. */
export interface BoundaryInterval {
  readonly loop: number;
  readonly segment: number;
  readonly t0: number;
  readonly t1: number;
  readonly sheet: number;
  /** True when it begins where an arc touches a break of a header. */
  readonly touches: boolean;
}

/** Samples per side when looking for the place where two contacts are equally far. */
const SAMPLES = 32;
/** The same as a fraction of a side. */
function cornerShare(segment: Segment): number {
  return Math.min(0.25, Math.max(CORNER_SHARE, CORNER_MM / segmentLength(segment)));
}

/** The point at `t`, moved into the material (which lies on the left of a segment) by `off` mm. */
export function insidePoint(segment: Segment, t: number, off: number = INSIDE_MM): Vec2 {
  const [u, v] = pointOn(segment, t);
  const [du, dv] = tangentOn(segment, t);
  const k = off / Math.sqrt(du * du + dv * dv);
  return [u - dv * k, v + du * k];
}

/** Values of t where h(t) on a segment takes the value `h`. */
export function crossings(segment: Segment, hu: number, hv: number, h0: number, h: number): number[] {
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

/** How far two sheets are from taking over from each other: by their heights, or from the miter plane that parts them. */
function difference(end: CompiledEnd, i: number, j: number, segment: Segment, t: number): number {
  const height = sideHeight(segment, t, end.sheets[i] as Sheet);
  const split = splitBetween(end, i, j);
  return split
    ? sideOfSplit(split, ...pointOn(segment, t), height)
    : height - sideHeight(segment, t, end.sheets[j] as Sheet);
}

/**
 * The sheet of each header that is met between two marks of a side, −1 where it is missed. Where a break runs along the
 * side, the one just inside counts.
 */
function metBetween(end: CompiledEnd, segment: Segment, a: number, b: number): number[] {
  const off = Math.min(INSIDE_MM, (b - a) * segmentLength(segment) * BESIDE_STRETCH_SHARE);
  const t = (a + b) / 2;
  return end.hits.map((hit) => {
    const at = ([u, v]: Vec2): number => hit.h0 + hit.hu * u + hit.hv * v;
    const [h, within] = [at(pointOn(segment, t)), at(insidePoint(segment, t, off))];
    const [on, inside] = [sheetOfHit(hit, h), sheetOfHit(hit, within)];
    if (on === inside || on < 0 || inside < 0) return inside;
    const line = hit.breaks.find((x) => h < x !== within < x) as number;
    const far = Math.max(...[a, t, b].map((x) => Math.abs(at(pointOn(segment, x)) - line)));
    return far < INSIDE_MM ? inside : on;
  });
}

/**
 * The sheet that closes the bar along a stretch of a side, read at its middle. Where two contacts are equally far all along
 * the side, the one just inside counts.
 */
function labelOf(end: CompiledEnd, segment: Segment, t0: number, t1: number, met: readonly number[]): number {
  if (end.root.kind === "hit") return met[0] as number;
  const t = (t0 + t1) / 2;
  const off = Math.min(INSIDE_MM, (t1 - t0) * segmentLength(segment) * BESIDE_STRETCH_SHARE);
  const [u, v] = insidePoint(segment, t, off);
  const sheetOf = (sheet: number): Sheet => end.sheets[sheet] as Sheet;
  const inside = endAt(end, u, v, { met, height: (sheet) => sheetHeight(sheetOf(sheet), u, v) }).sheet;
  const on = endAt(end, ...pointOn(segment, t), {
    met,
    height: (sheet) => sideHeight(segment, t, sheetOf(sheet)),
  }).sheet;
  if (on === inside || on < 0 || inside < 0) return inside;
  // Beside a silhouette a ridge leaves the side along it: a point inside may be across the ridge already.
  return Math.abs(difference(end, on, inside, segment, t)) > ROUNDING_MM ? on : inside;
}

/** Sheets that can close the bar where of each header one is met: these, and every plane. */
function sheetsMet(end: CompiledEnd, met: readonly number[]): number[] {
  const out = new Set(end.sheets.keys());
  for (const [k, hit] of end.hits.entries()) {
    for (const sheet of hit.sheets) if (sheet !== met[k]) out.delete(sheet);
  }
  return [...out];
}

/** A take-over of two sheets, on the plane in which equal headers meet where they are equally far there as well. */
function onPlane(end: CompiledEnd, i: number, j: number, segment: Segment, t: number): number {
  if (splitBetween(end, i, j)) return t;
  const [a, b] = [end.sheets[i] as Sheet, end.sheets[j] as Sheet];
  const planes = meetingPlanes(a.surface, b.surface);
  const reach = MOMENT_MM / segmentLength(segment);
  const places = planes.flatMap((away) => {
    const at = (x: number): number => away([...pointOn(segment, x), sideHeight(segment, x, a)]);
    const place = crossedBetween(at, t - reach, t + reach);
    const ties = place !== null && Math.abs(difference(end, i, j, segment, place)) < ROUNDING_MM;
    return ties ? [place] : [];
  });
  return places.sort((x, y) => Math.abs(x - t) - Math.abs(y - t))[0] ?? t;
}

/** Places between two marks where two contacts are equally far. */
function takeovers(
  end: CompiledEnd,
  segment: Segment,
  a: number,
  b: number,
  met: readonly number[],
): number[] {
  const sheets = sheetsMet(end, met);
  const station = STATION_MM / segmentLength(segment);
  const out: number[] = [];
  for (const [k, i] of sheets.entries()) {
    for (const j of sheets.slice(k + 1)) {
      const f = (t: number): number => difference(end, i, j, segment, t);
      // Contacts that tie at a mark change there, not a rounding error beside it.
      const near = (t: number, beside: number): Look => {
        const [here, there] = [
          { t, value: f(t) },
          { t: beside, value: f(beside) },
        ];
        if (Math.abs(here.value) >= STATION_MM || here.value < 0 === there.value < 0) return here;
        const tie = Math.abs(here.value) < TIE_ROUNDING_MM || Math.abs(bisect(f, here, beside) - t) < station;
        return tie ? there : here;
      };
      const share = (b - a) * BESIDE_CORNER_SHARE;
      const found = signChanges(f, looksAt(f, a, b, SAMPLES, near(a, a + share), near(b, b - share)));
      out.push(...found.map((t) => onPlane(end, i, j, segment, t)));
    }
  }
  return out;
}

/** A stretch between marks; `kink` when it begins where an edge has to, whatever closes the bar before it. */
interface Stretch extends BoundaryInterval {
  readonly kink: boolean;
}

/** All intervals of the outline, loop by loop in walking order. */
export function boundaryOf(end: CompiledEnd, section: Region): BoundaryInterval[] {
  return loopsOf(section).flatMap((segments, loop) => {
    const all = segments.flatMap((s, segment) => stretchesOf(end, s, loop, segment));
    return merged(end.sheets.length > 1 ? withoutNothings(end, segments, all) : all);
  });
}

function stretchesOf(end: CompiledEnd, s: Segment, loop: number, segment: number): Stretch[] {
  const several = end.sheets.length > 1;
  const touches = touchesOn(end, s);
  const kinks =
    several || end.hits.length > 0 ? [...kinksOn(end, s), ...touches, ...handoversOn(end, s)] : [];
  if (!several && kinks.length === 0)
    return [{ loop, segment, t0: 0, t1: 1, sheet: 0, touches: false, kink: true }];
  const marks = [...kinks];
  const silhouettes: number[] = [];
  for (const hit of end.hits) {
    for (const [k, h] of hit.breaks.entries()) {
      const at = crossings(s, hit.hu, hit.hv, hit.h0, h);
      marks.push(...at);
      if (k === 0 || k === hit.breaks.length - 1) silhouettes.push(...at);
    }
  }
  const corner = cornerShare(s);
  const near = (t: number, all: readonly number[]): boolean => all.some((x) => Math.abs(x - t) < corner);
  const ts = clean(marks, corner);
  const between = ts.slice(1).map((b, k) => {
    const met = metBetween(end, s, ts[k] as number, b);
    const more = several && end.root.kind !== "hit" ? takeovers(end, s, ts[k] as number, b, met) : [];
    return { met, more };
  });
  // Nothing begins at a silhouette itself where another contact takes over just before it: there the take-over is the place.
  const changes = between.flatMap(({ more }) => more);
  const places = ts.map((t) =>
    t > 0 && t < 1 && near(t, silhouettes) && !near(t, kinks)
      ? (changes.find((x) => Math.abs(x - t) < corner) ?? t)
      : t,
  );
  const out: Stretch[] = [];
  for (const [k, { met, more }] of between.entries()) {
    const stretches = clean(more, corner, places[k] as number, places[k + 1] as number);
    for (let i = 0; i + 1 < stretches.length; i++) {
      const [t0, t1] = [stretches[i] as number, stretches[i + 1] as number];
      const sheet = labelOf(end, s, t0, t1, met);
      out.push({
        loop,
        segment,
        t0,
        t1,
        sheet,
        touches: near(t0, touches),
        kink: t0 === 0 || near(t0, kinks),
      });
    }
  }
  return out;
}

/** Neighbours that one sheet closes as one interval, but for kinks. */
function merged(stretches: readonly Stretch[]): BoundaryInterval[] {
  const out: BoundaryInterval[] = [];
  for (const { kink, ...interval } of stretches) {
    const last = out[out.length - 1];
    if (last && last.sheet === interval.sheet && !kink) out[out.length - 1] = { ...last, t1: interval.t1 };
    else out.push(interval);
  }
  return out;
}

/**
 * A contact that for a moment comes before the one on both its sides, and lies where that one does, is left out: beside a
 * silhouette that all of them touch they change places within a rounding of each other. The shortest moment goes first.
 */
function withoutNothings(end: CompiledEnd, segments: readonly Segment[], all: readonly Stretch[]): Stretch[] {
  const sheetOf = (k: number): number => (all.at(k % all.length) as Stretch).sheet;
  const long = ({ segment, t0, t1 }: Stretch): number =>
    (t1 - t0) * segmentLength(segments[segment] as Segment);
  let [shortest, least, around] = [[] as number[], MOMENT_MM as number, -1];
  for (let from = 0; from < all.length; from++) {
    const [own, before] = [sheetOf(from), sheetOf(from - 1)];
    if (own === before || own < 0 || before < 0 || isOneHeader(end, own, before)) continue;
    const run: number[] = [];
    while (run.length < all.length && sheetOf(from + run.length) === own)
      run.push((from + run.length) % all.length);
    const length = run.reduce((sum, k) => sum + long(all[k] as Stretch), 0);
    if (length >= least || sheetOf(from + run.length) !== before) continue;
    if (run.every((k) => isNothing(end, segments, all[k] as Stretch, before)))
      [shortest, least, around] = [run, length, before];
  }
  if (around < 0) return [...all];
  const without = all.map((s, k) => (shortest.includes(k) ? { ...s, sheet: around } : s));
  return withoutNothings(end, segments, without);
}

/** True for two sheets of one header: what parts them is a break, known in closed form, and its ridge is a line that is there. */
function isOneHeader({ hits }: CompiledEnd, a: number, b: number): boolean {
  return hits.some(({ sheets }) => sheets.includes(a) && sheets.includes(b));
}

function isNothing(end: CompiledEnd, segments: readonly Segment[], i: Stretch, around: number): boolean {
  const [s, t] = [segments[i.segment] as Segment, (i.t0 + i.t1) / 2];
  const at = sideHeight(s, t, end.sheets[around] as Sheet);
  // On both: past a header's silhouette its height is a number, not a place.
  return [i.sheet, around].every((k) => {
    const { surface } = end.sheets[k] as Sheet;
    return Math.abs(distanceTo(surface, [...pointOn(s, t), at])) < ROUNDING_MM;
  });
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

/** Places inside an arc where it touches an inner break of a header from one side: the ridge goes through the same point. */
function touchesOn(end: CompiledEnd, segment: Segment): number[] {
  if (segment.kind !== "arc") return [];
  const corner = cornerShare(segment);
  const out: number[] = [];
  for (const { hu, hv, h0, breaks } of end.hits) {
    const hc = h0 + hu * segment.centre[0] + hv * segment.centre[1];
    for (let i = 1; i + 1 < breaks.length; i++) {
      const h = breaks[i] as number;
      if (Math.abs(segment.radius - Math.abs(h - hc)) >= BRACKET_MM) continue;
      out.push(...crossings(segment, hu, hv, h0, h).filter((t) => t > corner && t < 1 - corner));
    }
  }
  return out;
}

/**
 * Places on an arc that runs past the side of a round header, where its edge changes from the arc's own angle to the
 * header's: the one stops beside the silhouette, the other where the arc turns back (see `saddleRange`).
 */
function handoversOn(end: CompiledEnd, segment: Segment): number[] {
  if (segment.kind !== "arc") return [];
  const corner = cornerShare(segment);
  const out: number[] = [];
  for (const { breaks, sheets, h0 } of end.hits) {
    for (const side of [-1, 1] as const) {
      const { round } = end.sheets[(side < 0 ? sheets[0] : sheets.at(-1)) as number] as Sheet;
      if (!round) continue;
      const [r, R] = [segment.radius, round.radius];
      const silhouette = (side < 0 ? breaks[0] : breaks.at(-1)) as number;
      if (Math.abs(h0 - round.h0 + side * R - silhouette) > STATION_MM) continue;
      const e = round.h0 + round.hu * segment.centre[0] + round.hv * segment.centre[1];
      const past = side * e + r - R;
      if (past < STATION_MM || side * e + R < r || side * e > R + r || side * e <= 0) continue;
      const h = ((R - r) * (R + r) + e * e) / (2 * e);
      out.push(
        ...crossings(segment, round.hu, round.hv, round.h0, h).filter((t) => t > corner && t < 1 - corner),
      );
    }
  }
  return out;
}

/** Marks of a stretch of a side in rising order, those within a corner's breadth of each other or of its ends as one. */
function clean(marks: readonly number[], corner: number, from = 0, to = 1): number[] {
  const out = [from];
  for (const t of [...marks].sort((a, b) => a - b)) {
    if (t - (out[out.length - 1] as number) > corner && t < to - corner) out.push(t);
  }
  out.push(to);
  return out;
}
