/**
 * An indexed triangle mesh in doubles.
 *
 * Triangles run counter-clockwise seen from outside. `faceOf` says which face of the solid each triangle belongs to,
 * so that writers can group by face. Typed arrays are never shared for writing.
 *
 * @packageDocumentation
 */
import { type Frame, pointToParent } from "../frame.js";

/** Positions (x, y, z per vertex, millimetres) and triangles (three vertex indices each). */
export interface Mesh {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** For each triangle the index of the solid's face it lies on; absent on meshes that came from elsewhere. */
  readonly faceOf?: Uint32Array;
}

/** The same mesh with its points moved from a local frame to the frame's parent. */
export function placeMesh(mesh: Mesh, frame: Frame): Mesh {
  const positions = new Float64Array(mesh.positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    const p = pointToParent(frame, [
      mesh.positions[i] as number,
      mesh.positions[i + 1] as number,
      mesh.positions[i + 2] as number,
    ]);
    positions[i] = p[0];
    positions[i + 1] = p[1];
    positions[i + 2] = p[2];
  }
  return { ...mesh, positions };
}
