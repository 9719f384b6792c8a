/**
 * A face laid flat: its sampled loops in the plane, one after another.
 *
 * Planes are seen from outside. Cylinders are unrolled: x is the angle times the radius, y the height along the axis,
 * mirrored where the material is outside, so that every loop has the material on its left.
 *
 * @packageDocumentation
 */
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { ALONG_RULING_SLOPE } from "../tolerance.js";
import { dot, type Vec3 } from "../vec.js";
import type { EdgeSamples, SideTurns } from "./edge-samples.js";

/** Room for the points of one face; the same room serves all faces of a solid in turn. */
export interface FlatFace {
  /** Vertex of the mesh, by place. A vertex may have several places. */
  readonly vertex: number[];
  /** Millimetres. */
  readonly x: number[];
  readonly y: number[];
  /** Number of the ruling x lies on exactly, or NO_RULING. */
  readonly ruling: number[];
  /** Places in use. */
  size: number;
}

/** What stands for 'between two rulings'. */
export const NO_RULING = -(2 ** 31);

/** Room for a face. Plain arrays that grow: many faces have a handful of points, and a typed array is dear to make. */
export function flatRoom(): FlatFace {
  return { vertex: [], x: [], y: [], ruling: [], size: 0 };
}

/** Adds a place that is another one again. */
export function repeatPlace(flat: FlatFace, i: number): void {
  const at = flat.size++;
  flat.vertex[at] = flat.vertex[i] as number;
  flat.x[at] = flat.x[i] as number;
  flat.y[at] = flat.y[i] as number;
  flat.ruling[at] = flat.ruling[i] as number;
}

/** A sampled solid and how often each of its edges was used so far, going through faces and loops in order. */
export interface Sampled {
  readonly solid: Solid;
  readonly samples: EdgeSamples;
  readonly uses: number[];
}

/**
 * Lays one loop of a plane face behind what is there already.
 */
export function layOnPlane(flat: FlatFace, face: Face, loop: readonly EdgeUse[], sampled: Sampled): void {
  const { solid, samples, uses } = sampled;
  const { origin: o, x: u, y: v } = face.surface.frame;
  const { positions: p, first, same, feet } = samples;
  const begin = flat.size;
  const u0 = dot(o, u);
  const v0 = dot(o, v);
  const add = (i: number): void => {
    const px = p[3 * i] as number;
    const py = p[3 * i + 1] as number;
    const pz = p[3 * i + 2] as number;
    const at = flat.size++;
    flat.vertex[at] = i;
    flat.x[at] = face.sense * (px * u[0] + py * u[1] + pz * u[2] - u0);
    flat.y[at] = px * v[0] + py * v[1] + pz * v[2] - v0;
    flat.ruling[at] = NO_RULING;
  };
  for (const { edge: e, forward } of loop) {
    uses[e] = 1;
    const { from, to } = solid.edges[e] as Edge;
    const start = same[forward ? from : to] as number;
    if (start === same[forward ? to : from]) continue;
    add(start);
    for (const foot of feetAlong(feet, e, forward)) add(same[foot] ?? foot);
    const a = first[e] as number;
    const b = first[e + 1] as number;
    if (forward) for (let i = a; i < b; i++) add(i);
    else for (let i = b - 1; i >= a; i--) add(i);
  }
  if (feet) dropSpikes(flat, begin);
}

const NO_FEET: readonly number[] = [];

/** What an edge goes through, in the order of a use of it. */
function feetAlong(feet: EdgeSamples["feet"], edge: number, forward: boolean): readonly number[] {
  const on = feet?.get(edge) ?? NO_FEET;
  return forward ? on : [...on].reverse();
}

/** Takes out of a loop, the last thing laid, what runs out to a vertex and straight back: needles that are left off. */
function dropSpikes(flat: FlatFace, start: number): void {
  const { vertex, x, y, ruling } = flat;
  for (let i = start; i < flat.size && flat.size - start > 2; ) {
    const n = flat.size - start;
    const at = (k: number): number => start + ((k - start + n) % n);
    if (vertex[at(i - 1)] !== vertex[at(i + 1)]) {
      i++;
      continue;
    }
    const gone = [i, at(i + 1)];
    let w = start;
    for (let k = start; k < flat.size; k++) {
      if (gone.includes(k)) continue;
      for (const list of [vertex, x, y, ruling]) list[w] = list[k] as number;
      w++;
    }
    flat.size = w;
    i = start;
  }
  if (flat.size - start <= 2) flat.size = start;
}

/**
 * Unrolls one loop of a cylinder face behind what is there already.
 *
 * @param about - angle in steps near which the loop is to lie; null for the first loop
 */
export function unroll(
  flat: FlatFace,
  face: Face,
  loop: readonly EdgeUse[],
  sampled: Sampled,
  steps: number,
  about: number | null,
): void {
  const { solid, samples, uses } = sampled;
  const { surface, sense } = face;
  if (surface.kind !== "cylinder") return;
  const { origin: o, z } = surface.frame;
  const { positions: p, first, same, feet, turns } = samples;
  const z0 = dot(o, z);
  const width = (2 * Math.PI * surface.radius) / steps;
  const add = (i: number, turn: number): void => {
    const at = flat.size++;
    flat.vertex[at] = i;
    flat.x[at] = sense * turn * width;
    flat.y[at] =
      (p[3 * i] as number) * z[0] + (p[3 * i + 1] as number) * z[1] + (p[3 * i + 2] as number) * z[2] - z0;
    flat.ruling[at] = NO_RULING;
  };
  const sides = loop.map(({ edge }): SideTurns => turns[uses[edge] === 0 ? 0 : 1]);
  for (const { edge } of loop) uses[edge] = 1;
  // A straight edge has no angle of its own: begin with one that has.
  const begin = Math.max(
    0,
    loop.findIndex(({ edge }) => isCurved(solid.edges[edge] as Edge, same)),
  );
  const start = flat.size;
  let last = about;
  for (let k = 0; k < loop.length; k++) {
    const i = (begin + k) % loop.length;
    const { edge: e, forward } = loop[i] as EdgeUse;
    const edge = solid.edges[e] as Edge;
    const from = forward ? edge.from : edge.to;
    const to = forward ? edge.to : edge.from;
    const vertex = same[from] as number;
    if (vertex === same[to]) continue;
    if (edge.curve.kind === "line") {
      add(vertex, last ?? 0);
      for (const foot of feetAlong(feet, e, forward)) add(same[foot] ?? foot, last ?? 0);
      continue;
    }
    const { atEnds, atPoints } = sides[i] as SideTurns;
    let turn = atEnds[forward ? 2 * e : 2 * e + 1] as number;
    const shift = last === null ? 0 : steps * Math.round((last - turn) / steps);
    turn += shift;
    if (vertex !== from) turn = turnNear(turn, face, solid.vertices[vertex] as Vec3, steps);
    add(vertex, turn);
    const a = first[e] as number;
    const b = first[e + 1] as number;
    if (forward) for (let v = a; v < b; v++) add(v, (atPoints[v] as number) + shift);
    else for (let v = b - 1; v >= a; v--) add(v, (atPoints[v] as number) + shift);
    last = (atEnds[forward ? 2 * e + 1 : 2 * e] as number) + shift;
  }
  if (feet) dropSpikes(flat, start);
  putOnRulings(flat, start, width, 2 * samples.near);
}

function isCurved({ curve, from, to }: Edge, same: readonly number[]): boolean {
  return curve.kind !== "line" && same[from] !== same[to];
}

/** The angle in steps of a point, as near as can be to another. */
function turnNear(turn: number, { surface }: Face, p: Vec3, steps: number): number {
  const { origin: o, x, y } = surface.frame;
  const angle = Math.atan2(dot(p, y) - dot(o, y), dot(p, x) - dot(o, x));
  const own = (angle * steps) / (2 * Math.PI);
  return own + steps * Math.round((turn - own) / steps);
}

/**
 * Moves the points of a loop that a ruling goes through onto it. Of two neighbours beside one ruling that do not lie
 * along it only the nearer one is meant: the other crosses a ruling of the face beyond the edge. At a corner both may be:
 * one edge crosses the ruling so near to the corner that the corner is its crossing, the other has a point of its own there.
 */
function putOnRulings(flat: FlatFace, start: number, width: number, within: number): void {
  const { x, y, ruling, size } = flat;
  for (let i = start; i < size; i++) {
    const k = Math.round((x[i] as number) / width);
    const off = Math.abs((x[i] as number) - k * width);
    if (off >= within) continue;
    const before = i === start ? size - 1 : i - 1;
    const after = i + 1 === size ? start : i + 1;
    if (off > 0 && isMeant(i, before, k, off) && !isBeyond(i, after, k)) continue;
    if (off > 0 && isMeant(i, after, k, off) && !isBeyond(i, before, k)) continue;
    ruling[i] = k;
  }
  for (let i = start; i < size; i++) if (ruling[i] !== NO_RULING) x[i] = (ruling[i] as number) * width;

  /** The neighbour n is the one beside ruling k that is meant, not i. */
  function isMeant(i: number, n: number, k: number, off: number): boolean {
    const offNext = Math.abs((x[n] as number) - k * width);
    if (n === i || offNext >= off) return false;
    const across = Math.abs((x[n] as number) - (x[i] as number));
    return across > ALONG_RULING_SLOPE * Math.abs((y[n] as number) - (y[i] as number));
  }

  /** The neighbour n lies across ruling k, with no other point to cross it at than i. */
  function isBeyond(i: number, n: number, k: number): boolean {
    const offNext = (x[n] as number) - k * width;
    return offNext * ((x[i] as number) - k * width) < 0 && Math.abs(offNext) >= within;
  }
}
