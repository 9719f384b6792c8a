/** Triangles that lie back to back: a tetrahedron with a flap on one of its edges is the tetrahedron. */
import { describe, expect, it } from "vitest";
import { cancelFlaps } from "../../../src/kernel/mesh/flaps.js";
import { checkMesh } from "../../../src/kernel/mesh/gate.js";
import { tetrahedronMesh } from "../../support/meshes.js";

const plain = tetrahedronMesh();

describe("cancelFlaps", () => {
  it("takes out a flap, however its corners are counted, and leaves a closed mesh", () => {
    // A fifth point beside edge 0-1; the flap is one triangle on it, seen from both sides.
    const positions = Float64Array.from([...plain.positions, 1, 1, -1]);
    for (const back of [
      [0, 4, 1],
      [4, 1, 0],
      [1, 0, 4],
    ]) {
      const triangles = [1, 4, 0, ...plain.triangles, ...back];
      const faceOf = Uint32Array.from([9, 0, 1, 2, 3, 8]);
      const flapped = { positions, triangles: Uint32Array.from(triangles) };
      expect(checkMesh(flapped, "edges").ok).toBe(false);
      const kept = cancelFlaps(triangles, faceOf, 5);
      expect(triangles).toEqual([...plain.triangles]);
      expect([...faceOf.slice(0, kept)]).toEqual([0, 1, 2, 3]);
    }
  });

  it("leaves a mesh without flaps, and two triangles that face the same way, as they are", () => {
    const triangles = [...plain.triangles, 0, 2, 1];
    const faceOf = Uint32Array.from([0, 1, 2, 3, 4]);
    expect(cancelFlaps(triangles, faceOf, 4)).toBe(5);
    expect(triangles).toEqual([...plain.triangles, 0, 2, 1]);
  });
});
