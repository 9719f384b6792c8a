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
import type { LineCurve } from "./curve/line.js";
import { saddleParameter } from "./curve/saddle.js";
import { type ParameterRange, saddleRange } from "./curve/saddle-range.js";
import type { BoundaryInterval } from "./end-boundary.js";
import { type CompiledEnd, endAt, sheetOfHit, splitBetween } from "./end-compile.js";
import { nearestOnLoops } from "./nearest-side.js";
import type { Region } from "./region.js";
import { regionContains } from "./region-contains.js";
import { reachOf } from "./region-extent.js";
import { type Candidate, candidates } from "./ridge-candidates.js";
import { isOnFarSide, rise, type Sheet, sheetHeight } from "./sheet.js";
import { type Look, looksAt, signChanges } from "./takeover.js";
import {
  BESIDE_STRETCH_SHARE,
  INSIDE_MM,
  LEAST_RISE,
  MOMENT_MM,
  ON_SURFACE_MM,
  OTHER_CROSSING_MM,
  ROUNDING_MM,
  TOUCH_ROUNDING_MM,
} from "./tolerance.js";
import { cross, distance, dot, normalize, sub, type Vec2, type Vec3 } from "./vec.js";

/** A vertex of the outline, with the sheets before and after it. */
export interface OutlineVertex {
  readonly index: number;
  readonly point: Vec3;
  readonly sheets: readonly [number, number];
  /** True where an arc touches a break of a header: the ridge there goes through this vertex. */
  readonly touches: boolean;
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

/** A place inside the section where something changes: where `measure` is zero. */
interface Change {
  readonly t: number;
  readonly point: Vec3;
  readonly measure: (p: Vec3) => number;
}

/**
 * mm. Where a candidate only touches what changes there, the place is known to the root of a rounding: a few 10⁻⁶ mm for
 * headers some metres away. So near to an event it is that event, when there is nothing left to change there either.
 */
const TOUCH_MM = 10 * ON_SURFACE_MM;

function isSame(event: Event, change: Change): boolean {
  const apart = distance(event.point, change.point);
  return (
    apart < ON_SURFACE_MM || (apart < TOUCH_MM && Math.abs(change.measure(event.point)) < TOUCH_ROUNDING_MM)
  );
}

/** mm from a candidate within which a vertex of the outline lies on it. */
function nearEnough(
  { point, sheets: [before, after] }: OutlineVertex,
  c: Candidate,
  inner: readonly Change[],
): number {
  if (before === after) return ROUNDING_MM;
  if ((before === c.i && after === c.j) || (before === c.j && after === c.i)) return TOUCH_MM;
  // Where three sheets meet just inside the section, a ridge of another pair passes the vertex and ends there.
  const passes = inner.some(
    (x) => distance(x.point, point) < 50 * ON_SURFACE_MM && distance(x.point, point) > ON_SURFACE_MM,
  );
  return passes ? ROUNDING_MM : ON_SURFACE_MM;
}

/** What is known of an end when its ridges are looked for. */
interface Known {
  readonly end: CompiledEnd;
  readonly section: Region;
  readonly intervals: readonly BoundaryInterval[];
  readonly outline: readonly OutlineVertex[];
}

/** All ridges of an end with its outline's intervals; `outline` are the vertices between these. */
export function ridgesOf(
  end: CompiledEnd,
  section: Region,
  intervals: readonly BoundaryInterval[],
  outline: readonly OutlineVertex[],
): Ridge[] {
  const known = { end, section, intervals, outline };
  return candidates(end, reachOf(section.outer)).flatMap((c) => ridgesAlong(known, c));
}

function ridgesAlong(known: Known, c: Candidate): Ridge[] {
  const { end, section, outline } = known;
  const range = rangeOf(c.curve, section);
  if (!range) return [];
  const { from: lo, to: hi, closed } = range;
  // A saddle that ends goes on as another one.
  const ends = closed
    ? []
    : [lo, hi].map((t): Change => ({ t, point: evaluate(c.curve, t), measure: () => 0 }));
  const isOver = ({ point }: Change): boolean => regionContains(section, [point[0], point[1]]);
  const inner = changes(end, section, c, lo, hi).filter(isOver);
  const events: Event[] = [];
  const touching = outline.filter((v) => v.touches);
  for (const v of outline) {
    // A corner beside such a place is on the ridge but for a rounding; it goes through the place itself.
    const same = v.sheets[0] === v.sheets[1] && !v.touches;
    if (same && touching.some((x) => distance(x.point, v.point) < MOMENT_MM)) continue;
    const t = parameterOn(c.curve, v.point, range);
    const off = distance(evaluate(c.curve, t), v.point);
    if (off <= nearEnough(v, c, inner)) events.push({ t, vertex: v.index, point: v.point });
  }
  for (const e of [...inner, ...ends]) {
    const same = events.filter((x) => isSame(x, e));
    if (same.length === 0 && isOver(e)) events.push({ ...e, vertex: -1 });
    // Where a curve crosses itself it begins and ends: one place, two parameters.
    else if (!closed && same.length > 0 && same.every((x) => Math.abs(x.t - e.t) > Math.PI))
      events.push({ ...(same[0] as Event), t: e.t });
  }
  if (events.length === 0) return closed ? closedRidge(known, c) : [];
  events.sort((a, b) => a.t - b.t);
  const stretches: { a: Event; b: Event; t1: number; sides: readonly [number, number] | null }[] = [];
  const count = closed ? events.length : events.length - 1;
  for (let k = 0; k < count; k++) {
    const a = events[k] as Event;
    const b = events[(k + 1) % events.length] as Event;
    const t1 = k + 1 < events.length ? b.t : b.t + (hi - lo);
    const off = Math.min(INSIDE_MM, distance(a.point, b.point) * BESIDE_STRETCH_SHARE);
    const sides = (share: number): readonly [number, number] | null =>
      sidesAt(known, c, a.t + share * (t1 - a.t), off || INSIDE_MM);
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
function closedRidge(known: Known, c: Candidate): Ridge[] {
  const sides = sidesAt(known, c, 0.1, INSIDE_MM);
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
  { end, section, intervals }: Known,
  c: Candidate,
  t: number,
  off: number,
): readonly [number, number] | null {
  const { p, d1 } = derivatives(c.curve, t);
  const k = 1 / Math.hypot(d1[0], d1[1]);
  const toLeft: Vec2 = [-d1[1] * k, d1[0] * k];
  const onLeft: Vec2 = [p[0] + toLeft[0] * off, p[1] + toLeft[1] * off];
  const onRight: Vec2 = [p[0] - toLeft[0] * off, p[1] - toLeft[1] * off];
  const left = sheetTowards(end, c, p, toLeft) ?? endAt(end, ...onLeft).sheet;
  const right = sheetTowards(end, c, p, [-toLeft[0], -toLeft[1]]) ?? endAt(end, ...onRight).sheet;
  const pair = (left === c.i && right === c.j) || (left === c.j && right === c.i);
  if (!pair) return null;
  // Beside a side of the section it is a ridge only where that side is closed by the sheet between the two.
  const [inLeft, inRight] = [onLeft, onRight].map((q) => regionContains(section, q));
  if (!inLeft || !inRight) {
    const here: Vec2 = [p[0], p[1]];
    if (!inLeft && !inRight && !regionContains(section, here)) return null;
    const beside = sheetBeside(section, intervals, here);
    if ((!inLeft && beside !== left) || (!inRight && beside !== right)) return null;
  }
  // The other crossing of the same two surfaces lies above or below what closes the bar.
  return Math.abs(end.dir * endAt(end, p[0], p[1]).out - p[2]) < OTHER_CROSSING_MM ? [left, right] : null;
}

/**
 * The sheet that closes the bar just beside a point of a candidate. There the candidate's two sheets are equally far, and the
 * way they rise tells them apart, however near everything else is; undefined where it does not. Of a header's own two sheets
 * each is met on one side of their break only, and the break is on the near side, however upright the skin runs there.
 */
function sheetTowards(end: CompiledEnd, c: Candidate, p: Vec3, [du, dv]: Vec2): number | undefined {
  const { i, j, isBreak } = c;
  if (splitBetween(end, i, j)) return undefined;
  if (!isBreak && [i, j].some((k) => isOnFarSide(end.sheets[k] as Sheet, p))) return -1;
  const [a, b] = [i, j].map((k) => rise(end.sheets[k] as Sheet, p, du, dv)) as [number, number];
  if (!isBreak && !(Math.abs(a - b) > LEAST_RISE)) return undefined;
  const steeper = isBreak ? 0 : Math.sign(a - b);
  const met = end.hits.map((hit) => {
    const across = Math.sign(hit.hu * du + hit.hv * dv);
    return sheetOfHit(hit, hit.h0 + hit.hu * p[0] + hit.hv * p[1] + across * ROUNDING_MM);
  });
  const ties = (k: number): boolean =>
    k !== i && k !== j && Math.abs(sheetHeight(end.sheets[k] as Sheet, p[0], p[1]) - p[2]) < 2 * ROUNDING_MM;
  if (end.sheets.some((_, k) => ties(k))) return undefined;
  const height = (k: number): number => {
    if (k !== i && k !== j) return sheetHeight(end.sheets[k] as Sheet, p[0], p[1]);
    return p[2] + (k === i ? steeper : -steeper) * ROUNDING_MM;
  };
  return endAt(end, p[0], p[1], { met, height }).sheet;
}

/** The sheet that closes the side nearest to a place. */
function sheetBeside(section: Region, intervals: readonly BoundaryInterval[], p: Vec2): number {
  const { loop, segment, t } = nearestOnLoops(section, p);
  return intervals.find((i) => i.loop === loop && i.segment === segment && t <= i.t1)?.sheet ?? -1;
}

const SAMPLES = 96;

/** Places where a third sheet reaches the candidate, or where it crosses a break of a header. */
function changes(end: CompiledEnd, section: Region, c: Candidate, lo: number, hi: number): Change[] {
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
  const looks = (at: (t: number) => number): Look[] =>
    near ? near.map((t) => ({ t, value: at(t) })) : looksAt(at, lo, hi, SAMPLES);
  // A skin runs upright at its silhouette: beside it, it may be reached and left again between two looks.
  const upright = end.sheets.flatMap(({ round }, k) => {
    if (round === undefined || k === c.i || k === c.j) return [];
    const inside = (t: number): number => {
      const [u, v] = evaluate(curve, t);
      return round.radius - Math.abs(round.h0 + round.hu * u + round.hv * v);
    };
    return signChanges(inside, looks(inside));
  });
  return measures.flatMap((measure) => {
    const at = (t: number): number => measure(evaluate(curve, t));
    const all = [...looks(at), ...upright.map((t) => ({ t, value: at(t) }))];
    if (upright.length > 0) all.sort((a, b) => a.t - b.t);
    return signChanges(at, all).map((t) => ({ t, point: evaluate(curve, t), measure }));
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
