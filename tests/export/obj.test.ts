/** OBJ and MTL: a strict reader that shares no code with the writer. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { NamedMesh } from "../../src/export/named.js";
import { toObj } from "../../src/export/obj.js";
import { CAUTION } from "../../src/kernel/caution.js";
import { boxMesh, moved, sphereMesh, tetrahedronMesh, torusMesh } from "../support/meshes.js";
import { readMtl, readObj } from "../support/read-obj.js";

function written(items: readonly NamedMesh[], options = {}) {
  const result = toObj(items, options);
  if (!result.ok) throw new Error(result.diagnostics[0]?.message);
  return { ...readObj(result.value.obj), colours: readMtl(result.value.mtl), text: result.value };
}

describe("toObj", () => {
  it("keeps every double and every triangle of every piece", () => {
    const meshes = [sphereMesh(2), moved(torusMesh(), [1e4 / 3, 1e-7, 0]), tetrahedronMesh(1 / 3)];
    const { objects } = written(meshes.map((mesh, i) => ({ name: `P${i}`, mesh })));
    expect(objects.map((o) => o.mesh)).toEqual(meshes);
  });

  it("keeps doubles at random", () => {
    const radii = fc.array(fc.double({ min: 20, max: 60, noNaN: true }), { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(radii, (r) => {
        const mesh = sphereMesh(0, (i) => r[i]!);
        expect(written([{ name: "P", mesh }]).objects[0]?.mesh).toEqual(mesh);
      }),
    );
  });

  it("says unit, axes and caution in both files", () => {
    const { comments, text } = written([{ name: "P", mesh: boxMesh() }]);
    for (const part of [comments.join("\n"), text.mtl]) {
      expect(part).toMatch(/millimetres.*Z up/);
      expect(part).toContain(CAUTION);
    }
  });

  it("makes any name one word and no two alike", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: "binary" }), { minLength: 1, maxLength: 6 }), (names) => {
        const read = written(names.map((name) => ({ name, mesh: tetrahedronMesh() }))).objects.map(
          (o) => o.name,
        );
        expect(read.length).toBe(names.length);
        expect(new Set(read.map((n) => n.toLowerCase())).size).toBe(names.length);
        for (const name of read) expect(name).toMatch(/^\S+$/);
      }),
    );
    const named = ["Handlauf äöü", "a b", "a  b", "a\nf 1 2 3", "#", ""];
    expect(written(named.map((name) => ({ name, mesh: boxMesh() }))).objects.map((o) => o.name)).toEqual([
      "Handlauf_äöü",
      "a_b",
      "a_b-2",
      "a_f_1_2_3",
      "piece",
      "piece-2",
    ]);
  });

  it("shares a material between pieces that look alike and splits it otherwise", () => {
    const mesh = boxMesh();
    const { objects, colours, libraries } = written(
      [
        { name: "1", mesh, material: "post", colour: [0.25, 0.5, 1] },
        { name: "2", mesh, material: "post", colour: [0.25, 0.5, 1] },
        { name: "3", mesh, material: "post", colour: [1, 0, 0] },
        { name: "4", mesh },
      ],
      { mtlName: "my stair.mtl" },
    );
    expect(objects.map((o) => o.material)).toEqual(["post", "post", "post-2", "steel"]);
    expect([...colours.keys()]).toEqual(["post", "post-2", "steel"]);
    expect(colours.get("post")).toEqual([0.25, 0.5, 1]);
    expect(colours.get("post-2")).toEqual([1, 0, 0]);
    expect(libraries).toEqual(["my_stair.mtl"]);
  });

  it("refuses open meshes, colours out of range and nothing at all", () => {
    const open = { ...boxMesh(), triangles: boxMesh().triangles.slice(3) };
    expect(toObj([{ name: "P", mesh: open }]).diagnostics[0]?.code).toBe("mesh-open-edge");
    const loud = toObj([{ name: "P", mesh: boxMesh(), colour: [255, 0, Number.NaN] }]);
    expect([loud.ok, loud.diagnostics[0]?.code]).toEqual([false, "colour-out-of-range"]);
    expect(toObj([]).diagnostics[0]?.code).toBe("nothing-to-write");
  });

  it("takes a mesh as far away as it likes, as doubles lose nothing", () => {
    expect(toObj([{ name: "P", mesh: boxMesh([10, 10, 10], [1e6, 0, 0]) }]).ok).toBe(true);
  });
});
