/** Volumes against closed forms, and the divergence theorem's own consequences. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { meshVolume } from "../../../src/kernel/mesh/volume.js";
import {
  boxMesh,
  insideOut,
  joinMeshes,
  meshOf,
  moved,
  sphereMesh,
  tetrahedronMesh,
} from "../../support/meshes.js";

describe("meshVolume", () => {
  it("box a·b·c, tetrahedron a³/6, nothing 0", () => {
    expect(meshVolume(boxMesh([2, 3, 5]))).toBe(30);
    expect(meshVolume(tetrahedronMesh(6))).toBe(36);
    expect(meshVolume(meshOf([], []))).toBe(0);
  });

  it("icosahedron of edge a: 5(3+√5)a³/12", () => {
    // Circumradius of edge a is a·√(10+2√5)/4.
    const edge = (4 * 40) / Math.sqrt(10 + 2 * Math.sqrt(5));
    expect(meshVolume(sphereMesh(0)) / ((5 * (3 + Math.sqrt(5)) * edge ** 3) / 12)).toBeCloseTo(1, 13);
  });

  it("scales with the cube, turns its sign inside out, adds up over pieces, and stays when moved", () => {
    const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    const body = sphereMesh(1, (i) => 30 + (i % 7));
    const volume = meshVolume(body);
    fc.assert(
      fc.property(
        fc.tuple(number, number, number),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (by, k) => {
          expect(meshVolume(moved(body, by)) / volume).toBeCloseTo(1, 9);
          expect(
            meshVolume({ ...body, positions: body.positions.map((x) => k * x) }) / (k ** 3 * volume),
          ).toBeCloseTo(1, 12);
          expect(meshVolume(insideOut(body)) / -volume).toBeCloseTo(1, 12);
          expect(meshVolume(joinMeshes(body, moved(body, by))) / (2 * volume)).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});
