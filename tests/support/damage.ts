/**
 * Good solids damaged in one place, for the rules that must notice.
 */
import type { Diagnostic } from "../../src/kernel/diagnostic.js";
import type { Edge, Face, Solid } from "../../src/kernel/solid.js";

export const withEdge = (s: Solid, i: number, change: (e: Edge) => Edge): Solid => ({
  ...s,
  edges: s.edges.map((e, k) => (k === i ? change(e) : e)),
});

export const withFace = (s: Solid, i: number, change: (f: Face) => Face): Solid => ({
  ...s,
  faces: s.faces.map((f, k) => (k === i ? change(f) : f)),
});

/** A vertex moved along z. */
export const withVertex = (s: Solid, i: number, by: number): Solid => ({
  ...s,
  vertices: s.vertices.map((p, k) => (k === i ? ([p[0], p[1], p[2] + by] as const) : p)),
});

/** Every face looks the other way. */
export const insideOutSolid = (s: Solid): Solid => ({
  ...s,
  faces: s.faces.map((f) => ({
    ...f,
    sense: f.sense === 1 ? -1 : 1,
    loops: f.loops.map((l) => [...l].reverse().map((u) => ({ edge: u.edge, forward: !u.forward }))),
  })),
});

export const codesOf = (found: readonly Diagnostic[]): string[] => [...new Set(found.map((d) => d.code))];
