/**
 * Exact volumes against Open CASCADE Technology (npm replicad-opencascadejs), a B-rep kernel that shares nothing with
 * this one: prisms, boolean cuts, its own integration.
 *
 * OCCT intersects to 1e-7 mm; where surfaces nearly touch that is some 1e-8 of the volume. Where the two differ in the
 * last digits oracle-quadrature.test.ts decides.
 */
import { beforeAll, describe, expect, it } from "vitest";
import { COPLANAR, header, NAMED, nearTangent, TANGENT } from "../support/named-cases.js";
import { loadOcct, type Occt } from "../support/occt.js";
import { randomCase } from "../support/random-cases.js";
import { exactVolume, relative } from "../support/solve-case.js";

const START = 20240;
const WITHIN = 1e-7;

let occt: Occt;
beforeAll(async () => {
  occt = await loadOcct();
});

describe("volumes agree with OCCT within 1e-7 relative", () => {
  it.each([...NAMED, ...TANGENT, ...COPLANAR])("$name", (c) => {
    expect(relative(exactVolume(c), occt.volume(c))).toBeLessThan(WITHIN);
  });

  it.each([0.05, 1e-4, 1e-6, 1e-7].map(nearTangent))("$name", (c) => {
    expect(relative(exactVolume(c), occt.volume(c))).toBeLessThan(WITHIN);
  });

  const random = Array.from({ length: 60 }, (_, i) => randomCase(i, START));
  it.each(random)(`random joint $name (numbers from ${START})`, (c) => {
    expect(relative(exactVolume(c), occt.volume(c))).toBeLessThan(WITHIN);
  });

  it("sees a header moved by 0.01 mm", () => {
    const [c] = NAMED;
    const moved = {
      ...c!,
      ends: [
        c!.ends[0],
        { kind: "hit" as const, header: header({ kind: "round", radius: 24.15 }, 90, { at: 120.01 }) },
      ] as const,
    };
    expect(relative(exactVolume(c!), occt.volume(moved))).toBeGreaterThan(10 * WITHIN);
  });
});
