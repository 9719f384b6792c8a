/**
 * Collects the vertices and edges of a solid while it is built.
 *
 * @packageDocumentation
 */
import type { CurveStretch } from "./side-edge.js";
import type { Edge, Face, Solid } from "./solid.js";
import type { Vec3 } from "./vec.js";

/** A solid under construction. */
export interface Shell {
  readonly vertices: Vec3[];
  readonly edges: Edge[];
  readonly faces: Face[];
}

/** An empty shell. */
export function newShell(): Shell {
  return { vertices: [], edges: [], faces: [] };
}

/** Adds a vertex and returns its index. */
export function addVertex(shell: Shell, p: Vec3): number {
  return shell.vertices.push(p) - 1;
}

/** Adds an edge between two vertices and returns its index. */
export function addEdge(shell: Shell, stretch: CurveStretch, from: number, to: number): number {
  return shell.edges.push({ curve: stretch.curve, t0: stretch.t0, t1: stretch.t1, from, to }) - 1;
}

/** The finished solid. */
export function solidFrom(shell: Shell): Solid {
  return { vertices: shell.vertices, edges: shell.edges, faces: shell.faces };
}
