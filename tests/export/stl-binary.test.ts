/**
 * Binary STL: the layout's own numbers (shared/published-stl-size.json), a reader that shares no code with the writer,
 * and normals by a second route.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import published from "../../shared/published-stl-size.json" with { type: "json" };
import { encodeStlBinary, toStlBinary } from "../../src/export/stl-binary.js";
import { checkMesh } from "../../src/kernel/mesh/gate.js";
import type { Mesh } from "../../src/kernel/mesh/mesh.js";
import {
  boxMesh,
  insideOut,
  moved,
  sphereMesh,
  tetrahedronMesh,
  torusMesh,
  tubeMesh,
} from "../support/meshes.js";
import { countBadEdges, readStlBinary, weldFacets } from "../support/read-stl.js";

function written(...meshes: Mesh[]): Uint8Array {
  const result = toStlBinary(meshes.map((mesh, i) => ({ name: `P${i + 1}`, mesh })));
  if (!result.ok) throw new Error(result.diagnostics[0]?.message);
  return result.value;
}

/** Corners of each triangle, rounded: what the file must hold. */
const corners = ({ positions, triangles }: Mesh) =>
  [...triangles].map((v) => [0, 1, 2].map((k) => Math.fround(positions[3 * v + k]!) + 0));

describe("layout", () => {
  it.each(published.entries)(
    "$id: $inputs.triangles triangles are $expected bytes",
    ({ inputs, expected }) => {
      const triangles = new Uint32Array(3 * inputs.triangles).map((_, i) => i % 3);
      const mesh = { positions: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0), triangles };
      expect(encodeStlBinary([{ name: "x", mesh }]).bytes.length).toBe(expected);
    },
  );

  it("says millimetres, a caution, and does not begin with solid", () => {
    const { name } = readStlBinary(written(boxMesh()));
    expect(name).toMatch(/^unit mm; .*measure before you cut *$/);
    expect(name.length).toBe(80);
    const custom = toStlBinary([{ name: "a", mesh: boxMesh() }], { header: "solid one" });
    expect(custom.ok && readStlBinary(custom.value).name.trim()).toBe("unit mm; solid one");
  });
});

describe("what is read back", () => {
  const meshes = {
    box: boxMesh([10.1, 20.2, 30.3]),
    torus: torusMesh(),
    tube: tubeMesh(),
    ball: sphereMesh(3),
  };
  it.each(Object.entries(meshes))("%s: same corners, closed, full gate, volume", (_, mesh) => {
    const { facets } = readStlBinary(written(mesh));
    expect(facets.flatMap((f) => f.corners)).toEqual(corners(mesh));
    const read = weldFacets(facets);
    expect(countBadEdges(read).bad).toBe(0);
    const report = checkMesh(read, "full");
    expect(report.ok).toBe(true);
    expect(Math.abs(report.volume / checkMesh(mesh, "edges").volume - 1)).toBeLessThan(1e-6);
  });

  it("several pieces stand one after another", () => {
    const pieces = [boxMesh(), moved(torusMesh(), [200, 0, 0]), moved(tetrahedronMesh(), [0, 300, 0])];
    const { facets } = readStlBinary(written(...pieces));
    expect(facets.flatMap((f) => f.corners)).toEqual(pieces.flatMap(corners));
  });

  it("has unit normals that are those of the rounded corners", () => {
    for (const { normal, corners: c } of readStlBinary(written(sphereMesh(2))).facets) {
      const [a, b, d] = c as number[][];
      const u = b!.map((x, k) => x - a![k]!);
      const v = d!.map((x, k) => x - a![k]!);
      // The normal is square to both sides and points out: along the corner's own direction on a ball.
      for (const side of [u, v]) {
        const cosine = side.reduce((s, x, k) => s + x * normal[k]!, 0) / Math.hypot(...side);
        expect(Math.abs(cosine)).toBeLessThan(1e-6);
      }
      expect(Math.hypot(...normal)).toBeCloseTo(1, 6);
      expect(a!.reduce((s, x, k) => s + x * normal[k]!, 0)).toBeGreaterThan(0);
    }
  });

  it("random star-shaped bodies come back closed with their corners", () => {
    const radii = fc.array(fc.double({ min: 20, max: 60, noNaN: true }), { minLength: 42, maxLength: 42 });
    const shift = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -5000, max: 5000, noNaN: true })));
    fc.assert(
      fc.property(radii, shift, (r, by) => {
        const mesh = moved(
          sphereMesh(1, (i) => r[i]!),
          by,
        );
        const { facets } = readStlBinary(written(mesh));
        expect(facets.flatMap((f) => f.corners)).toEqual(corners(mesh));
        expect(countBadEdges(weldFacets(facets))).toEqual({ bad: 0, total: 120 });
      }),
    );
  });

  it("writes no negative zero", () => {
    const mesh = { ...boxMesh(), positions: boxMesh().positions.map((x) => (x === 0 ? -0 : x)) };
    expect(written(mesh)).toEqual(written(boxMesh()));
    const tiny = { ...boxMesh(), positions: boxMesh().positions.map((x) => (x === 0 ? -1e-60 : x)) };
    expect(written(tiny)).toEqual(written(boxMesh()));
  });

  it("is the same every time and leaves the mesh alone", () => {
    const mesh = torusMesh();
    const before = structuredClone(mesh);
    expect(written(mesh)).toEqual(written(mesh));
    expect(mesh).toEqual(before);
  });
});

describe("refusals", () => {
  const refused = (mesh: Mesh, options = {}) => {
    const result = toStlBinary(
      [
        { name: "good", mesh: boxMesh() },
        { name: "P7", mesh },
      ],
      options,
    );
    expect(result.ok).toBe(false);
    expect(result.diagnostics[0]?.members).toEqual(["P7"]);
    expect(result.diagnostics[0]?.path).toBe("items[1]");
    return result.diagnostics[0]?.code;
  };

  it("open, inside-out and far meshes, with the piece's name", () => {
    const open = { ...boxMesh(), triangles: boxMesh().triangles.slice(3) };
    expect(refused(open)).toBe("mesh-open-edge");
    expect(refused(insideOut(boxMesh()))).toBe("mesh-volume-not-positive");
    expect(refused(boxMesh([10, 10, 10], [2e5, 0, 0]))).toBe("float32-too-coarse");
    expect(refused(boxMesh([10, 10, 10], [2e4, 0, 0]), { tolerance: 0.001 })).toBe("float32-too-coarse");
  });

  it("an empty file and a header that does not fit", () => {
    expect(toStlBinary([]).diagnostics.map((d) => d.code)).toEqual(["nothing-to-write"]);
    for (const header of ["x".repeat(72), "Geländer", "two\nlines"]) {
      const result = toStlBinary([{ name: "a", mesh: boxMesh() }], { header });
      expect([result.ok, result.diagnostics[0]?.code]).toEqual([false, "stl-header"]);
    }
    expect(toStlBinary([{ name: "a", mesh: boxMesh() }], { header: "x".repeat(71) }).ok).toBe(true);
  });

  it("warns of triangles that rounding made flat", () => {
    const result = toStlBinary([{ name: "a", mesh: boxMesh([1e-5, 10, 10], [1000, 0, 0]) }]);
    expect([result.ok, result.diagnostics[0]?.code, result.diagnostics[0]?.severity]).toEqual([
      true,
      "float32-flat-triangle",
      "warning",
    ]);
    // The eight triangles on the four thin sides; the two faces 10 by 10 keep their area.
    expect(result.diagnostics[0]?.values.flat).toBe(8);
  });
});
