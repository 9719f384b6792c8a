import type { Vec3 } from "../src/kernel/index.js";
import type { Job } from "./jobs.mjs";

/** Triangles by vertex number, or null for a soup: three points a triangle. */
export interface AnyMesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array | null;
}

export function deviation(job: Job, mesh: AnyMesh): { readonly surface: number; readonly boundary: number };
export function toTriangle(p: Vec3, a: Vec3, b: Vec3, c: Vec3): number;
