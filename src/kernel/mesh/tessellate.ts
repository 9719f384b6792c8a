/**
 * From an exact solid to a closed triangle mesh within a chord tolerance.
 *
 * Each edge is sampled once; faces are filled between those points and never add their own. So the mesh closes by
 * construction: what two faces share is the same points.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../diagnostic.js";
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { ALONG_RULING_SLOPE, CHORD_MM, RULING_MM } from "../tolerance.js";
import { dot, sub, type Vec3 } from "../vec.js";
import { cancelFlaps } from "./flaps.js";
import { gridOf } from "./grid.js";
import type { Mesh } from "./mesh.js";
import { fillPolygon } from "./polygon.js";
import { ringStrip } from "./ring.js";
import { sampleEdges } from "./sample.js";
import { fillStrips } from "./strips.js";

/** Options of `tessellate`. */
export interface TessellateOptions {
  /** Greatest distance of the mesh from the exact surface, millimetres, > 0. Default 0.05. */
  readonly chord?: number;
}

/**
 * A closed mesh of a solid.
 *
 * @param solid - from `solidOf` or `solidOfBar`
 * @returns positions in the solid's frame, outward triangles, and for each the index of its face
 * @throws RakewrightError `bad-chord` for a tolerance that is not a positive number; `face-not-filled` when the
 * tolerance is coarser than a wall, so that two sampled edges of one face cross
 *
 * @example
 * ```ts
 * const mesh = tessellate(solid, { chord: 0.05 });
 * ```
 */
export function tessellate(solid: Solid, options: TessellateOptions = {}): Mesh {
  const chord = options.chord ?? CHORD_MM;
  if (!(chord > 0) || !Number.isFinite(chord)) {
    throw new RakewrightError({
      code: "bad-chord",
      message: `The chord tolerance must be a positive number of millimetres; got ${chord}.`,
      hint: "Use 0.05 for looking at, 0.005 for printing.",
    });
  }
  const { positions, chains, edgeOf } = sampleEdges(solid, chord);
  const nearness = nearnessOf(solid, edgeOf);
  const room = flatRoom(positions.length / 3);
  const triangles: number[] = [];
  const faceOf: number[] = [];
  for (const [f, face] of solid.faces.entries()) {
    const loops = face.loops.map((loop) => polyline(loop, chains));
    if (!fillFace(face, loops, positions, chord, nearness, room, triangles)) {
      throw new RakewrightError({
        code: "face-not-filled",
        message: `Face ${f} (${face.provenance.from}) cannot be filled at a chord of ${chord} mm: its sampled edges cross.`,
        hint: "Use a finer chord, below the thinnest wall.",
      });
    }
    while (faceOf.length * 3 < triangles.length) faceOf.push(f);
  }
  cancelFlaps(triangles, faceOf, positions.length / 3);
  return {
    positions: Float64Array.from(positions),
    triangles: Uint32Array.from(triangles),
    faceOf: Uint32Array.from(faceOf),
  };
}

/** How near to the outline a line between two mesh vertices runs (see `PlanePoints.nearness`). */
function nearnessOf(solid: Solid, edgeOf: readonly number[]): (a: number, b: number) => 0 | 1 | 2 {
  const n = solid.vertices.length;
  const curved = new Set<number>();
  for (const e of solid.edges) {
    if (e.curve.kind !== "line") curved.add(Math.min(e.from, e.to) * n + Math.max(e.from, e.to));
  }
  const endOfEdge = new Int8Array(solid.edges.length).fill(-1);
  const endOfVertex = new Int8Array(n).fill(-1);
  for (const face of solid.faces) {
    if (face.provenance.from !== "end") continue;
    for (const use of face.loops.flat()) {
      const edge = solid.edges[use.edge] as Edge;
      endOfEdge[use.edge] = face.provenance.end;
      endOfVertex[edge.from] = face.provenance.end;
      endOfVertex[edge.to] = face.provenance.end;
    }
  }
  const endOf = (v: number): number => (v < n ? endOfVertex[v] : endOfEdge[edgeOf[v] as number]) as number;
  const onOneEdge = (a: number, b: number): boolean => {
    const [ea, eb] = [edgeOf[a] as number, edgeOf[b] as number];
    if (ea >= 0 && eb >= 0) return ea === eb;
    if (ea < 0 && eb < 0) return curved.has(Math.min(a, b) * n + Math.max(a, b));
    const edge = solid.edges[Math.max(ea, eb)] as Edge;
    const corner = ea < 0 ? a : b;
    return corner === edge.from || corner === edge.to;
  };
  return (a, b) => (onOneEdge(a, b) ? 2 : endOf(a) >= 0 && endOf(a) === endOf(b) ? 1 : 0);
}

function polyline(loop: readonly EdgeUse[], chains: readonly (readonly number[])[]): number[] {
  const out: number[] = [];
  for (const use of loop) {
    const chain = chains[use.edge] as readonly number[];
    if (use.forward) for (let k = 0; k + 1 < chain.length; k++) out.push(chain[k] as number);
    else for (let k = chain.length - 1; k > 0; k--) out.push(chain[k] as number);
  }
  return out;
}

function pointAt(positions: readonly number[], v: number): Vec3 {
  return [positions[3 * v] as number, positions[3 * v + 1] as number, positions[3 * v + 2] as number];
}

/** Coordinates of the face being filled, by mesh vertex: one set of arrays for all faces. */
interface FlatRoom {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly ruling: Int32Array;
}

const NO_RULING = -(2 ** 31);

function flatRoom(vertices: number): FlatRoom {
  return { x: new Float64Array(vertices), y: new Float64Array(vertices), ruling: new Int32Array(vertices) };
}

/**
 * Moves the points of a loop that a ruling goes through onto it. Of two neighbours beside one ruling that do not lie
 * along it only the nearer one is meant: the other crosses a ruling of the face beyond the edge.
 */
function putOnRulings(
  loop: readonly number[],
  x: Float64Array,
  y: Float64Array,
  step: number,
  ruling: Int32Array,
): void {
  const off = (v: number): number => Math.abs((x[v] as number) - Math.round((x[v] as number) / step) * step);
  const isOn = (v: number, k: number): boolean =>
    off(v) < 2 * RULING_MM && Math.round((x[v] as number) / step) === k;
  const on = loop.map((v, i): number | null => {
    const k = Math.round((x[v] as number) / step);
    if (!isOn(v, k)) return null;
    for (const n of [loop[(i + loop.length - 1) % loop.length], loop[(i + 1) % loop.length]] as number[]) {
      const across = Math.abs((x[n] as number) - (x[v] as number));
      const beside =
        n !== v && isOn(n, k) && across > ALONG_RULING_SLOPE * Math.abs((y[n] as number) - (y[v] as number));
      if (beside && off(n) < off(v)) return null;
    }
    return k;
  });
  for (const [i, v] of loop.entries()) {
    const k = on[i];
    if (k === null || k === undefined) continue;
    x[v] = k * step;
    ruling[v] = k;
  }
}

function fillFace(
  face: Face,
  loops: readonly (readonly number[])[],
  positions: readonly number[],
  chord: number,
  nearness: (a: number, b: number) => 0 | 1 | 2,
  room: FlatRoom,
  out: number[],
): boolean {
  const { surface, sense } = face;
  const { frame } = surface;
  const { x, y, ruling } = room;
  if (surface.kind === "plane") {
    for (const loop of loops) {
      for (const v of loop) {
        const w = sub(pointAt(positions, v), frame.origin);
        x[v] = sense * dot(w, frame.x);
        y[v] = dot(w, frame.y);
      }
    }
    const points = { x, y, nearness };
    if (loops.length === 2 && ringStrip(points, loops[0] as number[], loops[1] as number[], out)) return true;
    return fillPolygon(points, loops[0] as number[], loops.slice(1), out);
  }
  const steps = gridOf(surface, chord);
  const r = surface.radius;
  const step = (2 * Math.PI * r) / steps;
  // Angles are counted from the outer loop's first point, so that a face never straddles the cut of atan2.
  let reference: number | null = null;
  for (const loop of loops) {
    let last: number | null = reference;
    for (const v of loop) {
      ruling[v] = NO_RULING;
      const w = sub(pointAt(positions, v), frame.origin);
      let angle = Math.atan2(dot(w, frame.y), dot(w, frame.x));
      if (last !== null) angle += 2 * Math.PI * Math.round((last - angle) / (2 * Math.PI));
      last = angle;
      reference ??= angle;
      x[v] = sense * angle * r;
      y[v] = dot(w, frame.z);
    }
    putOnRulings(loop, x, y, step, ruling);
  }
  const points = { x, y, nearness };
  return fillStrips(
    { points, loops, step, ruling: (v) => (ruling[v] === NO_RULING ? null : (ruling[v] as number)) },
    out,
  );
}
