/**
 * ASCII STL: a strict line reader, the binary form as a second route, and the shortest-decimal rule by trying every
 * shorter decimal.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { float32Text, toStlAscii } from "../../src/export/stl-ascii.js";
import { toStlBinary } from "../../src/export/stl-binary.js";
import { boxMesh, moved, sphereMesh, torusMesh } from "../support/meshes.js";
import { readStlAscii, readStlBinary } from "../support/read-stl.js";

describe("toStlAscii", () => {
  const items = [
    { name: "Post 1 «é»", mesh: sphereMesh(2) },
    { name: "post 1", mesh: moved(torusMesh(), [200, 1e-7, 0.1]) },
    { name: "", mesh: boxMesh([0.1, 0.2, 0.3], [-300, 0, 0]) },
  ];

  it("has one solid per piece with an ASCII name and the unit", () => {
    const result = toStlAscii(items);
    expect(result.ok && readStlAscii(result.value).map((s) => s.name)).toEqual([
      "Post_1 unit_mm",
      "post_1-2 unit_mm",
      "piece unit_mm",
    ]);
  });

  it("carries exactly what the binary form does", () => {
    const [text, bytes] = [toStlAscii(items), toStlBinary(items)];
    if (!text.ok || !bytes.ok) throw new Error("refused");
    const read = readStlAscii(text.value).flatMap((s) => s.facets);
    expect(read).toEqual(readStlBinary(bytes.value).facets);
  });

  it("refuses what the gate refuses, and an empty file", () => {
    const open = { ...boxMesh(), triangles: boxMesh().triangles.slice(3) };
    expect(toStlAscii([{ name: "a", mesh: open }]).diagnostics[0]?.code).toBe("mesh-open-edge");
    expect(toStlAscii([{ name: "a", mesh: boxMesh([1, 1, 1], [2e5, 0, 0]) }]).diagnostics[0]?.code).toBe(
      "float32-too-coarse",
    );
    expect(toStlAscii([]).diagnostics[0]?.code).toBe("nothing-to-write");
  });
});

describe("float32Text", () => {
  it.each([
    [0.1, "0.1"],
    [-0, "0"],
    [16777216, "16777216"],
    [1 / 3, "0.33333334"],
    [1e-7, "1e-7"],
  ])("%d is %s", (x, text) => {
    expect(float32Text(x)).toBe(text);
  });

  it("reads back as the same float, and no decimal with a digit less does", () => {
    fc.assert(
      fc.property(fc.float({ noNaN: true, noDefaultInfinity: true }), (x) => {
        const text = float32Text(x);
        expect(Math.fround(Number(text))).toBe(x + 0);
        const digits = (text.split("e")[0] ?? "").replace(/[-.]/g, "").replace(/^0+|0+$/g, "").length;
        // Below 2^-126 a float has fewer digits than six, and the promise is only that it reads back.
        if (digits > 1 && Math.abs(x) >= 2 ** -126)
          expect(Math.fround(Number(x.toPrecision(digits - 1)))).not.toBe(x);
      }),
    );
  });
});
