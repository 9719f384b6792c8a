/**
 * The adapter against the libraries it adapts to: @jscad/modeling's own validation and measurements, and
 * @jscad/stl-serializer's bytes through the strict reader.
 */
import modeling, { type geometries } from "@jscad/modeling";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { triangulateConvex } from "../../../../src/export/adapters/jscad/convex.js";
import {
  fromGeom3,
  type Geom3Like,
  geom3ToStl,
  toGeom3,
} from "../../../../src/export/adapters/jscad/index.js";
import { checkMesh } from "../../../../src/kernel/mesh/gate.js";
import { boxMesh, sphereMesh, tetrahedronMesh, torusMesh, tubeMesh } from "../../../support/meshes.js";
import { countBadEdges, readStlBinary, weldFacets } from "../../../support/read-stl.js";

const meshes = { box: boxMesh(), tube: tubeMesh(), torus: torusMesh(), ball: sphereMesh(3) };

describe("toGeom3", () => {
  it.each(Object.entries(meshes))("%s: valid and of the same volume for the library", (_, mesh) => {
    const solid: geometries.geom3.Geom3 = toGeom3(mesh);
    expect(modeling.geometries.geom3.isA(solid)).toBe(true);
    expect(() => modeling.geometries.geom3.validate(solid)).not.toThrow();
    const volume = checkMesh(mesh, "edges").volume;
    expect(Math.abs(modeling.measurements.measureVolume(solid) / volume - 1)).toBeLessThan(1e-9);
  });

  it.each(Object.entries(meshes))("%s: the library's serialiser writes a closed file of it", (_, mesh) => {
    const read = weldFacets(readStlBinary(geom3ToStl(toGeom3(mesh))).facets);
    expect(read.triangles.length).toBe(mesh.triangles.length);
    expect(countBadEdges(read).bad).toBe(0);
    expect(checkMesh(read, "edges").ok).toBe(true);
  });
});

describe("fromGeom3", () => {
  it.each(Object.entries(meshes))("%s: comes back point for point", (_, mesh) => {
    const back = fromGeom3(toGeom3(mesh));
    const corners = (m: typeof mesh) => [...m.triangles].map((v) => [...m.positions.slice(3 * v, 3 * v + 3)]);
    expect(corners(back)).toEqual(corners(mesh));
    expect(back.positions.length).toBe(mesh.positions.length);
  });

  it("takes the library's own solids, and its pending transform, without changing them", () => {
    const { primitives, transforms } = modeling;
    const cube: Geom3Like = transforms.translate([7, 8, 9], primitives.cuboid({ size: [1, 2, 3] }));
    const before = structuredClone(cube);
    const report = checkMesh(fromGeom3(cube), "full");
    expect([report.ok, report.triangles, report.euler]).toEqual([true, 12, 2]);
    expect(report.volume).toBeCloseTo(6, 12);
    expect(Math.min(...fromGeom3(cube).positions)).toBe(6.5);
    expect(cube).toEqual(before);
  });

  it("keeps the right side out under a mirror", () => {
    const cube = modeling.transforms.mirrorX(
      modeling.primitives.cuboid({ size: [1, 2, 3], center: [9, 0, 0] }),
    );
    expect(checkMesh(fromGeom3(cube), "full").volume).toBeCloseTo(6, 12);
  });

  it("serialises several solids into one file", () => {
    const bytes = geom3ToStl(toGeom3(tetrahedronMesh()), toGeom3(boxMesh([1, 1, 1], [50, 0, 0])));
    expect(bytes.length).toBe(84 + 50 * 16);
  });
});

describe("triangulateConvex", () => {
  it("uses every corner of a square with points along its sides, all triangles with area", () => {
    const counts = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 4, maxLength: 4 });
    const start = fc.integer({ min: 0, max: 19 });
    fc.assert(
      fc.property(counts, start, (perSide, shift) => {
        const square = [[0, 0], [1, 0], [1, 1], [0, 1]]; // biome-ignore format: a table
        const ring = perSide.flatMap((n, side) => {
          const [a, b] = [square[side]!, square[(side + 1) % 4]!];
          return Array.from({ length: n + 1 }, (_, k) => a.map((x, c) => x + ((b[c]! - x) * k) / (n + 1)));
        });
        const points = ring.map(
          (_, i) => [...ring[(i + shift) % ring.length]!, 5] as [number, number, number],
        );
        const triangles = triangulateConvex(points);
        expect(triangles.length).toBe(points.length - 2);
        expect(new Set(triangles.flat()).size).toBe(points.length);
        const areas = triangles.map(([a, b, c]) => {
          const [p, q, r] = [points[a]!, points[b]!, points[c]!];
          return ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) / 2;
        });
        expect(Math.min(...areas)).toBeGreaterThan(1e-3);
        expect(areas.reduce((sum, x) => sum + x, 0)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("gives nothing for fewer than three corners", () => {
    expect(triangulateConvex([[0, 0, 0], [1, 0, 0]])).toEqual([]); // biome-ignore format: a table
  });
});
