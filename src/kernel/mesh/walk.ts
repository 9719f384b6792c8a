/**
 * The points of one edge, in its own order: its crossings with rulings, and points between them where it bulges.
 *
 * Of crossings nearer to each other than `within` one point is made, which is on both rulings; those that near to an end
 * are the end. A piece that may stand off its chord by more than there is room for (`bulge.ts`) is cut at a sharp
 * bend, else into equal parts of the parameter, as many as the bound asks for if it falls with their square; the parts are
 * looked at again.
 *
 * @packageDocumentation
 */
import { type Curve, evaluate } from "../curve/curve.js";
import type { Edge, Solid } from "../solid.js";
import { PARALLEL_SINE } from "../tolerance.js";
import { near, type Vec3 } from "../vec.js";
import { type Bulge, bulgeOf } from "./bulge.js";
import { angleOn, type Crossings, type Track } from "./ruling-crossings.js";

/** How an edge turns about the axis of a face beside it, and the angle between that face's rulings. */
export interface SideTrack {
  readonly track: Track;
  readonly step: number;
}

/** Angle in steps at a parameter; 0 where the face beside is a plane. */
export function turnAt(side: SideTrack | null, t: number): number {
  return side ? angleOn(side.track, t) / side.step : 0;
}

/** Receives points, and of each the angle in steps on either side. */
export interface WalkedPoints {
  readonly positions: number[];
  readonly sides: readonly [{ readonly atPoints: number[] }, { readonly atPoints: number[] }];
}

/** Most parts a piece is cut into at once; a bound near a silhouette may ask for any number. */
const MOST_PARTS = 16;

/**
 * Adds the inner points of an edge.
 *
 * @param lists - crossings with the rulings of either side, and other parameters wanted, each in ascending order
 * @param within - see `nearRuling`
 * @param room - greatest distance of the edge from a chord, millimetres
 */
export function walk(
  { curve, t0, t1, from, to }: Edge,
  { vertices }: Solid,
  lists: readonly [Crossings, Crossings, Crossings],
  tracks: readonly [SideTrack | null, SideTrack | null],
  within: number,
  room: number,
  { positions, sides }: WalkedPoints,
): void {
  const d = t1 > t0 ? 1 : -1;
  const least = PARALLEL_SINE * Math.abs(t1 - t0);
  const at: [number, number, number] = [0, 0, 0];
  if (d < 0) for (let l = 0; l < 3; l++) at[l] = (lists[l] as Crossings).count - 1;
  const start = positions.length / 3;
  const bulge = bulgeOf(curve);
  const params: number[] = [];
  const keep = (x: number, q: Vec3, turn0: number, turn1: number): void => {
    positions.push(q[0], q[1], q[2]);
    sides[0].atPoints.push(turn0);
    sides[1].atPoints.push(turn1);
    params.push(x);
  };
  const between = (x: number, q: Vec3): void => keep(x, q, turnAt(tracks[0], x), turnAt(tracks[1], x));
  let t = t0;
  let p = vertices[from] as Vec3;
  for (;;) {
    let list = -1;
    let next = 0;
    for (let l = 0; l < 3; l++) {
      const i = at[l] as number;
      const crossings = lists[l] as Crossings;
      if (i < 0 || i >= crossings.count) continue;
      const x = crossings.t[i] as number;
      if (list >= 0 && d * x >= d * next) continue;
      list = l;
      next = x;
    }
    if (list < 0) break;
    const ruling = (lists[list] as Crossings).ruling[at[list] as number] as number;
    at[list] = (at[list] as number) + d;
    const q = Math.abs(next - t) < least ? p : evaluate(curve, next);
    if (!near(p, q, within)) {
      if (bulge) divide(curve, bulge, room, within, t, p, next, q, between);
      keep(
        next,
        q,
        list === 0 ? ruling : turnAt(tracks[0], next),
        list === 1 ? ruling : turnAt(tracks[1], next),
      );
      t = next;
      p = q;
    } else if (list < 2 && positions.length / 3 > start) {
      sides[list as 0 | 1].atPoints[positions.length / 3 - 1] = ruling;
    }
  }
  const end = vertices[to] as Vec3;
  while (params.length > 0 && near(p, end, within)) {
    positions.length -= 3;
    params.pop();
    for (const { atPoints } of sides) atPoints.pop();
    t = params.length > 0 ? (params[params.length - 1] as number) : t0;
    p = params.length > 0 ? lastOf(positions) : (vertices[from] as Vec3);
  }
  if (bulge) divide(curve, bulge, room, within, t, p, t1, end, between);
}

/** Hands over points between two of an edge until each piece keeps within its room. */
function divide(
  curve: Curve,
  bulge: Bulge,
  room: number,
  within: number,
  t: number,
  p: Vec3,
  u: number,
  q: Vec3,
  out: (x: number, at: Vec3) => void,
): void {
  if (((u - t) * (u - t) * bulge.most) / 8 <= room) return;
  const off = bulge.of(t, u, p, q, room);
  if (off <= room) return;
  const bend = bulge.bendIn(t, u);
  if (bend !== null) {
    const b = evaluate(curve, bend);
    if (!near(p, b, within) && !near(b, q, within)) {
      divide(curve, bulge, room, within, t, p, bend, b, out);
      out(bend, b);
      divide(curve, bulge, room, within, bend, b, u, q, out);
      return;
    }
  }
  const parts = Math.max(2, Math.ceil(Math.min(MOST_PARTS, Math.sqrt(off / room))));
  let x = t;
  let a = p;
  for (let k = 1; k < parts; k++) {
    const next = t + ((u - t) * k) / parts;
    const b = evaluate(curve, next);
    if (near(a, b, within) || near(b, q, within)) continue;
    divide(curve, bulge, room, within, x, a, next, b, out);
    out(next, b);
    x = next;
    a = b;
  }
  if (x !== t) divide(curve, bulge, room, within, x, a, u, q, out);
}

function lastOf(positions: readonly number[]): Vec3 {
  const [x, y, z] = positions.slice(-3);
  return [x as number, y as number, z as number];
}
