/**
 * The faces that close one end of a bar.
 *
 * Outline intervals and ridges are directed edges that each have one sheet on the left. Walked sheet by sheet they close
 * into loops; counter-clockwise ones bound a face, clockwise ones are its holes.
 *
 * @packageDocumentation
 */

import { derivatives, evaluate } from "./curve/curve.js";
import type { Shell } from "./shell.js";
import type { Edge, EdgeUse } from "./solid.js";
import { BESIDE_END_SHARE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** A directed use of an edge with the sheet on its left, seen down the bar's −s. */
export interface CapUse extends EdgeUse {
  readonly sheet: number;
}

/** One face's loops, the outer one first, material on the left seen down −s. */
export interface CapFace {
  readonly sheet: number;
  readonly loops: readonly (readonly EdgeUse[])[];
}

/** A closed chain with its signed area in the section plane. */
interface Ring {
  readonly uses: readonly CapUse[];
  readonly points: readonly Vec2[];
  readonly area: number;
}

/** Faces from directed uses; null when the uses do not close into loops. */
export function capFaces(shell: Shell, uses: readonly CapUse[], outlineLoops: number): CapFace[] | null {
  const first = uses[0] as CapUse;
  if (outlineLoops > 0 && uses.every((u) => u.sheet === first.sheet)) {
    // One sheet and no ridges: the outline's own loops, in their own order.
    const loops = chain(shell, uses);
    return loops?.length === outlineLoops ? [{ sheet: first.sheet, loops }] : null;
  }
  const chains = chain(shell, uses);
  if (!chains) return null;
  const rings = chains.map((c): Ring => {
    const points = outlineOf(shell, c);
    return { uses: c, points, area: signedArea(points) };
  });
  const outers = rings.filter((r) => r.area > 0);
  const loops = new Map<Ring, EdgeUse[][]>(outers.map((r) => [r, [[...r.uses]]]));
  for (const hole of rings.filter((r) => r.area <= 0)) {
    const sheet = (hole.uses[0] as CapUse).sheet;
    const around = outers
      .filter((o) => (o.uses[0] as CapUse).sheet === sheet && surrounds(o.points, hole.points))
      .sort((a, b) => a.area - b.area)[0];
    if (!around) return null;
    (loops.get(around) as EdgeUse[][]).push([...hole.uses]);
  }
  return outers.map((o) => ({ sheet: (o.uses[0] as CapUse).sheet, loops: loops.get(o) as EdgeUse[][] }));
}

function startOf(e: Edge, use: EdgeUse): number {
  return use.forward ? e.from : e.to;
}

function endOf(e: Edge, use: EdgeUse): number {
  return use.forward ? e.to : e.from;
}

/** Direction in the section plane in which a use leaves its start, or arrives at its end. */
function heading(shell: Shell, use: EdgeUse, atStart: boolean): number {
  const e = shell.edges[use.edge] as Edge;
  const near = use.forward === atStart ? 0 : 1;
  const t = e.t0 + (e.t1 - e.t0) * (near === 0 ? BESIDE_END_SHARE : 1 - BESIDE_END_SHARE);
  const { d1 } = derivatives(e.curve, t);
  const k = (e.t1 > e.t0 ? 1 : -1) * (use.forward ? 1 : -1);
  return Math.atan2(k * d1[1], k * d1[0]);
}

/** Chains of uses of one sheet each, closed; null when one cannot be closed. */
function chain(shell: Shell, uses: readonly CapUse[]): CapUse[][] | null {
  const leaving = new Map<number, CapUse[]>();
  for (const use of uses) {
    const v = startOf(shell.edges[use.edge] as Edge, use);
    const list = leaving.get(v);
    if (list) list.push(use);
    else leaving.set(v, [use]);
  }
  const done = new Set<CapUse>();
  const out: CapUse[][] = [];
  for (const first of uses) {
    if (done.has(first)) continue;
    const loop: CapUse[] = [];
    let use = first;
    for (;;) {
      loop.push(use);
      done.add(use);
      const edge = shell.edges[use.edge] as Edge;
      const v = endOf(edge, use);
      if (v === startOf(shell.edges[first.edge] as Edge, first)) break;
      const next = nextUse(
        shell,
        use,
        (leaving.get(v) ?? []).filter((n) => n.sheet === use.sheet && !done.has(n)),
      );
      if (!next) return null;
      use = next;
    }
    out.push(loop);
  }
  return out;
}

/** Of several ways on, the one that turns most to the left keeps one face on the left. */
function nextUse(shell: Shell, use: CapUse, ways: readonly CapUse[]): CapUse | null {
  if (ways.length <= 1) return ways[0] ?? null;
  const arrive = heading(shell, use, false);
  const turn = (w: CapUse): number => {
    const t = heading(shell, w, true) - arrive;
    return Math.atan2(Math.sin(t), Math.cos(t));
  };
  return [...ways].sort((a, b) => turn(b) - turn(a))[0] as CapUse;
}

function outlineOf(shell: Shell, uses: readonly EdgeUse[]): Vec2[] {
  const out: Vec2[] = [];
  for (const use of uses) {
    const e = shell.edges[use.edge] as Edge;
    const steps = e.curve.kind === "line" ? 1 : 16;
    for (let k = 0; k < steps; k++) {
      const f = use.forward ? k / steps : 1 - k / steps;
      const p = evaluate(e.curve, e.t0 + f * (e.t1 - e.t0));
      out.push([p[0], p[1]]);
    }
  }
  return out;
}

function signedArea(points: readonly Vec2[]): number {
  let sum = 0;
  for (let i = 0; i < points.length; i++) {
    const [a, b] = [points[i] as Vec2, points[(i + 1) % points.length] as Vec2];
    sum += a[0] * b[1] - a[1] * b[0];
  }
  return sum / 2;
}

/** True when a point of `inner` that is not on `outer` lies inside it. */
function surrounds(outer: readonly Vec2[], inner: readonly Vec2[]): boolean {
  const [a, b] = [inner[0] as Vec2, inner[1 % inner.length] as Vec2];
  const p: Vec2 = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  let inside = false;
  for (let i = 0; i < outer.length; i++) {
    const [q, r] = [outer[i] as Vec2, outer[(i + 1) % outer.length] as Vec2];
    if (q[1] > p[1] === r[1] > p[1]) continue;
    if (q[0] + ((p[1] - q[1]) / (r[1] - q[1])) * (r[0] - q[0]) > p[0]) inside = !inside;
  }
  return inside;
}
