/** Triangles that lie back to back: a tetrahedron with a flap on one of its edges is the tetrahedron. */
import { describe, expect, it } from "vitest";
import { flapsOf } from "../../../src/kernel/mesh/flaps.js";
import { checkMesh } from "../../../src/kernel/mesh/gate.js";
import { tetrahedronMesh } from "../../support/meshes.js";

const plain = tetrahedronMesh();

describe("flapsOf", () => {
  it("finds a flap, however its corners are counted; what is left is the closed mesh", () => {
    // A fifth point beside edge 0-1; the flap is one triangle on it, seen from both sides.
    const positions = Float64Array.from([...plain.positions, 1, 1, -1]);
    for (const back of [
      [0, 4, 1],
      [4, 1, 0],
      [1, 0, 4],
    ]) {
      const triangles = Uint32Array.from([1, 4, 0, ...plain.triangles, ...back]);
      expect(checkMesh({ positions, triangles }, "edges").ok).toBe(false);
      const gone = [...(flapsOf(triangles, 5) ?? [])];
      expect(gone).toEqual([1, 0, 0, 0, 0, 1]);
      const left = triangles.filter((_, i) => gone[Math.floor(i / 3)] === 0);
      expect(checkMesh({ positions: plain.positions, triangles: left }, "edges").ok).toBe(true);
    }
  });

  it("leaves a mesh without flaps, and two triangles that face the same way, as they are", () => {
    expect(flapsOf(Uint32Array.from([...plain.triangles, 0, 2, 1]), 4)).toBe(null);
  });
});
