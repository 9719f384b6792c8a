/** Meshes: closed through the full gate, within the chord at any phase, outward, and as large as the exact solid. */
import { describe, expect, it } from "vitest";
import { massProperties } from "../../../src/kernel/mass.js";
import { checkMesh } from "../../../src/kernel/mesh/gate.js";
import type { Mesh } from "../../../src/kernel/mesh/mesh.js";
import { tessellate } from "../../../src/kernel/mesh/tessellate.js";
import type { Solid } from "../../../src/kernel/solid.js";
import { distanceTo, normalAt } from "../../../src/kernel/surface.js";
import { cross, dot, length, normalize, sub, type Vec3 } from "../../../src/kernel/vec.js";
import { turned } from "../../support/bar-moves.js";
import { BARS, barOf, max, onRound, plane, rod, solidFor, square, tube } from "../../support/bars.js";

const corner = (m: Mesh, t: number, k: number): Vec3 => {
  const v = 3 * m.triangles[3 * t + k]!;
  return [m.positions[v]!, m.positions[v + 1]!, m.positions[v + 2]!];
};

/** Farthest distance of each triangle's inside from its face's surface, on a grid of barycentric places. */
function deviation(solid: Solid, mesh: Mesh): number {
  let worst = 0;
  for (let t = 0; t < mesh.triangles.length / 3; t++) {
    const [a, b, c] = [corner(mesh, t, 0), corner(mesh, t, 1), corner(mesh, t, 2)];
    const { surface } = solid.faces[mesh.faceOf![t]!]!;
    for (const [i, j] of [
      [1, 1],
      [2, 0],
      [0, 2],
      [2, 2],
      [3, 1],
      [1, 3],
      [4, 0],
      [0, 0],
    ] as const) {
      const [x, y, z] = [i / 4, j / 4, 1 - (i + j) / 4];
      const p: Vec3 = [
        x * a[0] + y * b[0] + z * c[0],
        x * a[1] + y * b[1] + z * c[1],
        x * a[2] + y * b[2] + z * c[2],
      ];
      worst = Math.max(worst, Math.abs(distanceTo(surface, p)));
    }
  }
  return worst;
}

describe("tessellate", () => {
  describe.each(Object.entries(BARS))("%s", (_, bar) => {
    it.each([
      [0.5, 0],
      [0.05, 0.37],
      [0.02, 1.9],
    ])("at a chord of %s mm, turned by %s", (chord, angle) => {
      const solid = solidFor(turned(bar, angle));
      const mesh = tessellate(solid, { chord });
      const report = checkMesh(mesh, "full");
      expect(report.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
      expect(report.components).toBe(1);
      expect(report.euler).toBe(bar.section.holes.length > 0 ? 0 : 2);
      expect(deviation(solid, mesh)).toBeLessThanOrEqual(chord + 2e-6);
      const { volume, area } = massProperties(solid);
      expect(Math.abs(report.volume - volume)).toBeLessThan(area * chord);
    });
  });

  it("runs every triangle counter-clockwise about its face's outward normal", () => {
    for (const bar of Object.values(BARS)) {
      const solid = solidFor(bar);
      const mesh = tessellate(solid, { chord: 0.02 });
      for (let t = 0; t < mesh.triangles.length / 3; t++) {
        const [a, b, c] = [corner(mesh, t, 0), corner(mesh, t, 1), corner(mesh, t, 2)];
        const n = cross(sub(b, a), sub(c, a));
        // A needle's own normal is mostly rounding.
        if (length(n) < 1e-3) continue;
        const face = solid.faces[mesh.faceOf![t]!]!;
        const middle: Vec3 = [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
        expect(face.sense * dot(normalize(n), normalAt(face.surface, middle))).toBeGreaterThan(0.5);
      }
    }
  });

  it("comes nearer as the chord shrinks: the volume's error falls in proportion", () => {
    const solid = solidFor(BARS["raked on a wider tube"]!);
    const exact = massProperties(solid).volume;
    const errors = [0.2, 0.02, 0.002].map((chord) =>
      Math.abs(checkMesh(tessellate(solid, { chord }), "edges").volume - exact),
    );
    expect(errors[1]! / errors[0]!).toBeLessThan(0.2);
    expect(errors[2]! / errors[1]!).toBeLessThan(0.2);
  });

  // Equal tubes whose planes differ by 3e-6 rad: an edge of 1e-4 mm is one point at 0.05 mm, and must not be at 1e-4 mm.
  it("keeps chords so fine that short edges count", () => {
    const end = onRound(33.7, 700, 45);
    const { origin, x, y, z } = end.skin.frame;
    const about = (p: Vec3): Vec3 => [p[0] - 3e-6 * p[1], p[1] + 3e-6 * p[0], p[2]];
    const frame = { origin, x: about(x), y: about(y), z: about(z) };
    const solid = solidFor(barOf(rod(33.7), square(), { ...end, skin: { ...end.skin, frame } }));
    expect(deviation(solid, tessellate(solid, { chord: 1e-4 }))).toBeLessThanOrEqual(1e-4);
  });

  // A square-cut tube: 2n quads on the walls, two rings of 2n; sagitta r(1 − cos(π/n)) (closed form).
  it("spends no more triangles on a plain tube than its rulings need", () => {
    const mesh = tessellate(solidFor(barOf(rod(48), square(), square(500))), { chord: 0.05 });
    const n = 4 * Math.ceil(Math.PI / Math.acos(1 - 0.05 / 24) / 4);
    expect(mesh.triangles).toHaveLength(3 * (2 * n + 2 * (n - 2)));
  });

  it("does the same twice, to the byte", () => {
    const solid = solidFor(BARS.crest!);
    expect(tessellate(solid)).toEqual(tessellate(solid, { chord: 0.05 }));
  });

  it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses a chord of %s", (chord) => {
    expect(() => tessellate(solidFor(BARS.crest!), { chord })).toThrow(/bad-chord.*got/);
  });

  it("says what to do when the chord is coarser than the wall", () => {
    const thin = solidFor(barOf(tube(60, 0.1), square(), square(50)));
    expect(checkMesh(tessellate(thin, { chord: 0.05 }), "edges").ok).toBe(true);
    // Its two edges cross at a chord of 5 mm; they are sampled finer until they do not, the rulings are not.
    const finer = tessellate(turnedBore(0.3), { chord: 5 });
    expect(checkMesh(finer, "edges").openEdges).toBe(0);
    expect(() => tessellate(turnedBore(0.002), { chord: 5 })).toThrow(/face-not-filled.*finer chord/);
  });

  // Beyond y = 21.199 the steep cut is the farther one: a fin 0.41 mm wide, 0.001 mm thick and 10 mm high on a cut at 200.
  it("leaves off a fin whose arch keeps to one strip, and keeps one that a ruling runs through", () => {
    const steep = plane([0, 21.199, 200], [0, -1, 1e-4]);
    const bar = barOf(rod(42.4), square(), max(square(200), steep));
    const top = (angle: number): number => {
      const solid = solidFor(turned(bar, angle));
      const mesh = tessellate(solid, { chord: 0.05 });
      const report = checkMesh(mesh, "full");
      expect(report.diagnostics.filter((d) => d.severity === "error").map((d) => d.message)).toEqual([]);
      expect(report.volume).toBeGreaterThan(massProperties(solid).volume * 0.99);
      return Math.max(
        ...mesh.positions.filter((_, i) => mesh.triangles.includes(Math.floor(i / 3)) && i % 3 === 2),
      );
    };
    expect(top(0.06)).toBeCloseTo(200, 6);
    expect(top(0)).toBeCloseTo(210, 3);
  });
});

/** A thin wall whose bore starts elsewhere than its outside: chords of a coarse mesh cross there. */
function turnedBore(wall: number): Solid {
  const section = tube(60, wall);
  const hole = section.holes[0]!.map((s) => (s.kind === "arc" ? { ...s, start: s.start + 0.4 } : s));
  return solidFor(barOf({ ...section, holes: [hole] }, square(), square(50)));
}
