/**
 * Orientation signs against exact integer arithmetic (BigInt), on grids of single bits round degenerate places and at
 * random. Every finite double is an integer times 2^-1074, so scaled BigInts are exact.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { difference, minus, plus, signOf, times } from "../../../src/kernel/mesh/expansion.js";
import { collinear, orient2d, orient3d } from "../../../src/kernel/mesh/orient.js";

/** The double times 2^1074, exactly. */
function exact(x: number): bigint {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  const bits = view.getBigUint64(0);
  const exponent = Number((bits >> 52n) & 0x7ffn);
  const fraction = bits & ((1n << 52n) - 1n);
  const magnitude = exponent === 0 ? fraction : (fraction | (1n << 52n)) << BigInt(exponent - 1);
  return x < 0 ? -magnitude : magnitude;
}

const sign = (x: bigint) => (x > 0n ? 1 : x < 0n ? -1 : 0);

function sign3d(p: ArrayLike<number>): number {
  const d = (i: number, k: number) => exact(p[3 * i + k]!) - exact(p[9 + k]!);
  return sign(
    d(0, 0) * (d(1, 1) * d(2, 2) - d(1, 2) * d(2, 1)) -
      d(0, 1) * (d(1, 0) * d(2, 2) - d(1, 2) * d(2, 0)) +
      d(0, 2) * (d(1, 0) * d(2, 1) - d(1, 1) * d(2, 0)),
  );
}

function sign2d(p: ArrayLike<number>, axis: number): number {
  const [u, v] = [(axis + 1) % 3, (axis + 2) % 3];
  const d = (i: number, k: number) => exact(p[3 * i + k]!) - exact(p[6 + k]!);
  return sign(d(0, u) * d(1, v) - d(0, v) * d(1, u));
}

const coordinate = fc.oneof(
  fc.double({ min: -1e4, max: 1e4, noNaN: true }).map((x) => (Math.abs(x) < 1e-30 ? 0 : x)),
  fc.integer({ min: -4, max: 4 }),
  fc.integer({ min: -8, max: 8 }).map((n) => 12.1 + n * 2 ** -49),
);

describe("orient3d", () => {
  it("follows the stated convention: below a counter-clockwise triangle is positive", () => {
    const p = Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0.2, 0.2, -1);
    expect(orient3d(p, 0, 1, 2, 3)).toBe(1);
    p[11] = 1;
    expect(orient3d(p, 0, 1, 2, 3)).toBe(-1);
    p[11] = 0;
    expect(orient3d(p, 0, 1, 2, 3)).toBe(0);
  });

  it("has the exact sign on a grid of single bits round the plane x + y + z = 1.5", () => {
    const bit = 2 ** -53;
    const signs = new Set<number>();
    for (let i = -12; i <= 12; i++) {
      for (let j = -12; j <= 12; j++) {
        const p = Float64Array.of(
          12,
          12,
          -22.5,
          24,
          -12.3,
          -10.2,
          0.1,
          0.2,
          1.2,
          0.5 + i * bit,
          0.5 + j * bit,
          0.5,
        );
        const expected = sign3d(p);
        expect(orient3d(p, 0, 1, 2, 3)).toBe(expected);
        signs.add(expected);
      }
    }
    expect(signs.has(1) && signs.has(-1)).toBe(true);
  });

  it("has the exact sign at random", () => {
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 12, maxLength: 12 }), (values) => {
        const p = Float64Array.from(values);
        expect(orient3d(p, 0, 1, 2, 3)).toBe(sign3d(p));
      }),
      { numRuns: 2000 },
    );
  });
});

describe("orient2d", () => {
  it("has the exact sign on a grid of single bits along the diagonal, along every axis", () => {
    const bit = 2 ** -53;
    for (let i = 0; i < 32; i++) {
      for (let j = 0; j < 32; j++) {
        const [u, v] = [0.5 + i * bit, 0.5 + j * bit];
        for (const axis of [0, 1, 2]) {
          const p = new Float64Array(9);
          [u, 12, 24].forEach((x, n) => {
            p[3 * n + ((axis + 1) % 3)] = x;
            p[3 * n + ((axis + 2) % 3)] = n === 0 ? v : x;
          });
          expect(orient2d(p, 0, 1, 2, axis)).toBe(Math.sign(j - i));
          expect(orient2d(p, 0, 1, 2, axis)).toBe(sign2d(p, axis));
        }
      }
    }
  });

  it("has the exact sign at random", () => {
    const points = fc.array(coordinate, { minLength: 9, maxLength: 9 });
    fc.assert(
      fc.property(points, fc.integer({ min: 0, max: 2 }), (values, axis) => {
        const p = Float64Array.from(values);
        expect(orient2d(p, 0, 1, 2, axis)).toBe(sign2d(p, axis));
      }),
      { numRuns: 2000 },
    );
  });
});

describe("collinear", () => {
  it("tells a point on the line from one a single bit beside it", () => {
    const p = Float64Array.of(0, 0, 0, 3, 6, 9, 1, 2, 3);
    expect(collinear(p, 0, 1, 2)).toBe(true);
    p[8] = 3 + 2 ** -51;
    expect(collinear(p, 0, 1, 2)).toBe(false);
  });
});

describe("expansions", () => {
  const value = (e: readonly number[]) => e.reduce((sum, x) => sum + exact(x), 0n);
  const number = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((x) => (Math.abs(x) < 1e-60 ? 0 : x));

  it("add, subtract and multiply without losing a bit", () => {
    fc.assert(
      fc.property(number, number, number, number, (a, b, c, d) => {
        const [e, f] = [difference(a, b), difference(c, d)];
        expect(value(e)).toBe(exact(a) - exact(b));
        expect(value(plus(e, f))).toBe(value(e) + value(f));
        expect(value(minus(e, f))).toBe(value(e) - value(f));
        expect(value(times(e, f)) << 1074n).toBe(value(e) * value(f));
        expect(signOf(times(e, f))).toBe(sign(value(e) * value(f)));
      }),
    );
  });
});
