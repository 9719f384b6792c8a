/**
 * From an exact solid to a closed triangle mesh within a chord tolerance.
 *
 * Each edge is sampled once; faces are filled between those points and never add their own. So the mesh closes by
 * construction: what two faces share is the same points.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../diagnostic.js";
import type { Edge, Face, Solid } from "../solid.js";
import { CHORD_MM } from "../tolerance.js";
import { flapsOf } from "./flaps.js";
import { type FlatFace, flatRoom, layOnPlane, type Sampled, unroll } from "./flat-face.js";
import type { Mesh } from "./mesh.js";
import type { Nearness } from "./polygon.js";
import { ringStrip } from "./ring.js";
import { addClosedRun, newRuns, type Runs, splitLoop } from "./runs.js";
import { type EdgeSamples, sampleEdges } from "./sample.js";
import { fillStrips } from "./strips.js";

/** Options of `tessellate`. */
export interface TessellateOptions {
  /**
   * Greatest distance of facets from their exact surface and of edges from their exact curve, millimetres, > 0. Default 0.05.
   * A fin thin enough for both its sides to be one polygon at this chord is left off.
   */
  readonly chord?: number;
}

/**
 * A closed mesh of a solid.
 *
 * @param solid - from `solidOf` or `solidOfBar`
 * @returns positions in the solid's frame, outward triangles, and for each the index of its face
 * @throws RakewrightError `bad-chord` for a tolerance that is not a positive number; `face-not-filled` when the
 * tolerance is so much coarser than a wall that two edges of one face cross even where they are sampled 256 times finer
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
  // Where a wall is thinner than the chord its two edges may cross each other; sampled finer they do not.
  const finer = new Map<number, number>();
  for (let attempt = 0; ; attempt++) {
    const samples = sampleEdges(solid, chord, finer);
    const made = fillAll(solid, samples);
    if (typeof made !== "number") return made;
    const face = solid.faces[made] as Face;
    if (attempt === ATTEMPTS) {
      throw new RakewrightError({
        code: "face-not-filled",
        message: `Face ${made} (${face.provenance.from}) cannot be filled at a chord of ${chord} mm: its sampled edges cross.`,
        hint: "Use a finer chord, below the thinnest wall.",
      });
    }
    for (const { edge } of face.loops.flat()) finer.set(edge, FINER ** (attempt + 1));
  }
}

/** How often the edges of faces that cannot be filled are sampled finer, and how many times finer each time. */
const ATTEMPTS = 4;
const FINER = 4;

/** The mesh between sampled edges; the number of a face that cannot be filled. */
function fillAll(solid: Solid, samples: EdgeSamples): Mesh | number {
  const sampled: Sampled = { solid, samples, uses: solid.edges.map(() => 0) };
  const room: Room = {
    flat: flatRoom(),
    runs: newRuns(),
    nearness: nearnessOf(sampled),
  };
  const filled: number[] = [];
  const ends: number[] = [];
  for (let f = 0; f < solid.faces.length; f++) {
    if (!fillFace(solid.faces[f] as Face, samples.steps[f] as number, sampled, room, filled)) return f;
    ends.push(filled.length / 3);
  }
  const positions = new Float64Array(samples.positions);
  const triangles = new Uint32Array(filled);
  const faceOf = new Uint32Array(triangles.length / 3);
  for (let f = 1; f < ends.length; f++) faceOf.fill(f, ends[f - 1], ends[f]);
  const gone = flapsOf(triangles, positions.length / 3);
  if (!gone) return { positions, triangles, faceOf };
  return {
    positions,
    triangles: triangles.filter((_, i) => gone[Math.floor(i / 3)] === 0),
    faceOf: faceOf.filter((_, t) => gone[t] === 0),
  };
}

/** What the faces of one solid share while they are filled. */
interface Room {
  readonly flat: FlatFace;
  readonly runs: Runs;
  readonly nearness: Nearness;
}

function fillFace(face: Face, steps: number, sampled: Sampled, room: Room, out: number[]): boolean {
  const { flat, runs, nearness } = room;
  const { surface, loops } = face;
  flat.size = 0;
  runs.count = 0;
  if (surface.kind === "plane") {
    if (loops.length === 2 && fillRing(face, sampled, flat, out)) return true;
    for (const loop of loops) {
      const start = flat.size;
      layOnPlane(flat, face, loop, sampled);
      // A loop that is all needle has no points left.
      if (flat.size === start) continue;
      addClosedRun(flat, start, 0, runs);
    }
  } else {
    const width = (2 * Math.PI * surface.radius) / steps;
    let middle: number | null = null;
    for (const loop of loops) {
      const start = flat.size;
      unroll(flat, face, loop, sampled, steps, middle);
      if (flat.size === start) continue;
      middle ??= (face.sense * middleOf(flat)) / width;
      splitLoop(flat, start, width, runs);
    }
  }
  return fillStrips(flat, runs, nearness, out);
}

/** Half way between least and greatest x. */
function middleOf({ x, size }: FlatFace): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < size; i++) {
    low = Math.min(low, x[i] as number);
    high = Math.max(high, x[i] as number);
  }
  return (low + high) / 2;
}

/** Fills the end of a tube; false when its two outlines do not go round one centre. */
function fillRing(face: Face, sampled: Sampled, flat: FlatFace, out: number[]): boolean {
  const rings = face.loops.map((loop): number[] => {
    const places: number[] = [];
    let i = flat.size;
    layOnPlane(flat, face, loop, sampled);
    while (i < flat.size) places.push(i++);
    return places;
  });
  const filled: number[] = [];
  const done = ringStrip(flat, rings[0] as number[], rings[1] as number[], filled);
  flat.size = 0;
  for (const i of filled) out.push(flat.vertex[i] as number);
  return done;
}

/** How near to the outline a line between two mesh vertices runs (see `Nearness`); its tables are made when first asked for. */
function nearnessOf(sampled: Sampled): Nearness {
  let made: Nearness | null = null;
  return (a, b) => {
    made ??= makeNearness(sampled);
    return made(a, b);
  };
}

function makeNearness({ solid, samples: { first, positions } }: Sampled): Nearness {
  const n = solid.vertices.length;
  const edgeOf = new Int32Array(positions.length / 3).fill(-1);
  for (let e = 0; e < solid.edges.length; e++) edgeOf.fill(e, first[e], first[e + 1]);
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
