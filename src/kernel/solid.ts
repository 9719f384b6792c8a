/**
 * Boundary representation of one solid: vertices, edges with exact curves, faces on planes and cylinders.
 *
 * Every edge is used exactly twice, in opposite directions. Seen from outside, a face's outer loop runs
 * counter-clockwise and its holes clockwise. Faces and edges know where they came from (`Provenance`).
 *
 * @packageDocumentation
 */
import type { Curve } from "./curve/curve.js";
import type { Surface } from "./surface.js";
import type { Vec3 } from "./vec.js";

/** Where a face or an edge came from: a side of the section, an end cut, a bore's wall, or a relief plane. */
export type Provenance =
  | { readonly from: "side"; readonly loop: number; readonly segment: number; readonly label: string }
  | { readonly from: "end"; readonly end: 0 | 1; readonly joint: string; readonly onto: string }
  | { readonly from: "bore"; readonly bore: string; readonly wall: number }
  | { readonly from: "relief"; readonly end: 0 | 1; readonly joint: string };

/** An edge: the stretch t0 → t1 of an exact curve between two vertices. t0 may exceed t1. */
export interface Edge {
  readonly curve: Curve;
  readonly t0: number;
  readonly t1: number;
  /** Index of the vertex at t0. */
  readonly from: number;
  /** Index of the vertex at t1. */
  readonly to: number;
}

/** One use of an edge by a loop, along (t0 → t1) or against it. */
export interface EdgeUse {
  readonly edge: number;
  readonly forward: boolean;
}

/** A face: part of a surface bounded by closed loops of edges, the outer one first. */
export interface Face {
  readonly surface: Surface;
  /** +1 when the surface's normal points out of the material, −1 when it points in. */
  readonly sense: 1 | -1;
  readonly loops: readonly (readonly EdgeUse[])[];
  readonly provenance: Provenance;
}

/** A closed solid in its own frame, millimetres. */
export interface Solid {
  readonly vertices: readonly Vec3[];
  readonly edges: readonly Edge[];
  readonly faces: readonly Face[];
}
