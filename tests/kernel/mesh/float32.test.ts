/**
 * What 32-bit floats do to a mesh. Spacings: IEEE 754 binary32 has 24 significant bits, so the spacing in [2^e, 2^(e+1))
 * is 2^(e−23); the second route is the next bit pattern.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { float32Check, float32Spacing, roundToFloat32 } from "../../../src/kernel/mesh/float32.js";
import { boxMesh, joinMeshes, moved } from "../../support/meshes.js";

/** The next 32-bit float above, by counting its bit pattern up. */
function next(x: number): number {
  const bits = new Uint32Array(Float32Array.of(x).buffer);
  bits[0]!++;
  return new Float32Array(bits.buffer)[0]!;
}

describe("float32Spacing", () => {
  it.each([
    [1, 2 ** -23],
    [1000, 2 ** -14],
    [131071, 2 ** -7],
    [131072, 2 ** -6],
    [-131072, 2 ** -6],
    [0, 2 ** -149],
    [1e39, Infinity],
    [Number.NaN, Infinity],
  ])("at %d is %d", (x, spacing) => {
    expect(float32Spacing(x)).toBe(spacing);
  });

  it("is the step to the next bit pattern", () => {
    fc.assert(
      fc.property(fc.float({ min: 0, max: Math.fround(1e30), noNaN: true }), (x) => {
        expect(float32Spacing(Math.abs(x))).toBe(next(Math.abs(x)) - Math.abs(x));
      }),
    );
  });
});

describe("float32Check", () => {
  it("lets pass up to a quarter of the tolerance and refuses beyond", () => {
    // 0.05/4 = 0.0125 mm lies between 2^-7 and 2^-6, which change at 131072 mm.
    expect(float32Check(boxMesh([10, 10, 10], [131061, 0, 0]), 0.05)).toEqual({
      ok: true,
      spacing: 2 ** -7,
      diagnostics: [],
    });
    const far = float32Check(boxMesh([10, 10, 10], [-131072, 0, 0]), 0.05, "Piece P1");
    expect([far.ok, far.spacing]).toEqual([false, 2 ** -6]);
    expect(far.diagnostics[0]?.code).toBe("float32-too-coarse");
    expect(far.diagnostics[0]?.message).toMatch(/^Piece P1 reaches 131072 mm/);
    expect(far.diagnostics[0]?.hint).toMatch(/piece's own frame/);
  });

  it("refuses exactly above a quarter", () => {
    const at = boxMesh([1, 1, 1], [1500, 0, 0]);
    expect(float32Check(at, 4 * 2 ** -13).ok).toBe(true);
    expect(float32Check(at, 4 * 2 ** -13 - 1e-12).ok).toBe(false);
  });
});

describe("roundToFloat32", () => {
  it("rounds as Math.fround does and drops unused vertices", () => {
    const mesh = boxMesh([0.1, 0.2, 0.3], [7.7, -1 / 3, 1e-5]);
    const spare = { ...mesh, positions: Float64Array.of(...mesh.positions, 9, 9, 9) };
    const { mesh: rounded, collapsed } = roundToFloat32(spare);
    expect(collapsed).toBe(0);
    expect(rounded.positions.length).toBe(24);
    expect([...rounded.positions].sort()).toEqual([...mesh.positions].map(Math.fround).sort());
  });

  it("welds within a body and not between bodies", () => {
    const small = boxMesh([1e-3, 10, 10], [1e6, 0, 0]);
    expect(roundToFloat32(small).collapsed).toBe(4);
    const touching = joinMeshes(boxMesh(), moved(boxMesh(), [10, 0, 0]));
    expect(roundToFloat32(touching).collapsed).toBe(0);
  });
});
