/** Placing a mesh moves every coordinate as its frame says. */
import { expect, it } from "vitest";
import { frameFromAxis } from "../../../src/kernel/frame.js";
import { placeMesh } from "../../../src/kernel/mesh/mesh.js";
import { tetrahedronMesh } from "../../support/meshes.js";

it("placeMesh turns a tetrahedron and carries it along, triangles unchanged", () => {
  const mesh = tetrahedronMesh(6);
  // z along X, x along Y, so y along Z: (x, y, z) goes to (z, x, y), and then by (100, 200, 300).
  const placed = placeMesh(mesh, frameFromAxis([100, 200, 300], [1, 0, 0], [0, 1, 0]));
  const points = Array.from({ length: 4 }, (_, v) => [...mesh.positions.slice(3 * v, 3 * v + 3)]);
  const expected = points.flatMap(([x, y, z]) => [100 + z!, 200 + x!, 300 + y!]);
  expect([...placed.positions]).toEqual(expected);
  expect(placed.triangles).toBe(mesh.triangles);
});
