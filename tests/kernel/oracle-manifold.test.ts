/**
 * Meshes of solids against manifold-3d, a general mesh-boolean library: it takes a mesh only when it is closed,
 * oriented and 2-manifold, says its genus, and cuts it.
 *
 * Volumes: a mesh that keeps within the chord of its solid everywhere is off by at most area × chord; manifold keeps
 * points in 32-bit floats, which adds area × 2⁻²⁴ × the largest coordinate.
 */
import initManifold, { type ManifoldToplevel } from "manifold-3d";
import { beforeAll, describe, expect, it } from "vitest";
import { type Mesh, massProperties, type Solid, tessellate } from "../../src/kernel/index.js";
import { areaOf, type JointCase, SQUARE } from "../support/joint-case.js";
import { NAMED, nearTangent, TANGENT } from "../support/named-cases.js";
import { randomCase } from "../support/random-cases.js";
import { solidOf } from "../support/solve-case.js";

const START = 99;
const CHORDS = [0.5, 0.05, 0.005] as const;

let kernel: ManifoldToplevel;
beforeAll(async () => {
  kernel = await initManifold();
  kernel.setup();
});

const read = (mesh: Mesh) =>
  new kernel.Manifold(
    new kernel.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(mesh.positions),
      triVerts: Uint32Array.from(mesh.triangles),
    }),
  );

const bound = (solid: Solid, chord: number): number => {
  const reach = solid.vertices.flat().reduce((a, b) => Math.max(a, Math.abs(b)), 0);
  return massProperties(solid).area * (chord + 2 ** -24 * 2 * reach);
};

/** A box that holds everything above a height of 15 mm, where every case that starts square is still a plain prism. */
const above = (reach: number) =>
  kernel.Manifold.cube([2 * reach, 2 * reach, 2 * reach], true).translate([0, 0, 15 + reach]);

function check(c: JointCase): void {
  const solid = solidOf(c);
  const exact = massProperties(solid).volume;
  for (const chord of CHORDS) {
    const piece = read(tessellate(solid, { chord }));
    expect(piece.status()).toBe("NoError");
    expect(piece.genus()).toBe(c.section.hole ? 1 : 0);
    expect(Math.abs(piece.volume() - exact)).toBeLessThan(bound(solid, chord));
    const [low, high] = [piece.subtract(above(1000)), piece.intersect(above(1000))];
    expect([low.status(), high.status()]).toEqual(["NoError", "NoError"]);
    expect(low.volume() + high.volume()).toBeCloseTo(piece.volume(), 1);
    if (c.ends[0] === SQUARE) {
      const { outer, hole } = c.section;
      const prism = 15 * (areaOf(outer) - (hole ? areaOf(hole) : 0));
      expect(Math.abs(low.volume() - prism)).toBeLessThan(bound(solid, chord));
      expect(low.genus()).toBe(hole ? 1 : 0);
    }
    for (const m of [piece, low, high]) m.delete();
  }
}

describe("manifold-3d takes the meshes at chords 0.5, 0.05 and 0.005 mm", () => {
  it.each([...NAMED, ...TANGENT, ...[0.05, 1e-4, 1e-6, 1e-7].map(nearTangent)])("$name", check);

  const random = Array.from({ length: 40 }, (_, i) => randomCase(i, START));
  it.each(random)(`random joint $name (numbers from ${START})`, check);

  it("refuses the same mesh with a triangle left out", () => {
    const mesh = tessellate(solidOf(NAMED[0]!), { chord: 0.5 });
    expect(() => read({ ...mesh, triangles: mesh.triangles.slice(3) })).toThrow("Not manifold");
  });
});
