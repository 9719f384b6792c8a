/**
 * How far meshes are from the true trimmed boundary: no farther than the chord, at any phase, both ways.
 *
 * The truth is a tube along z between a tilted plane and a round header, in closed form: on the fibre through (x, y) the
 * plane is z = x·tan τ, and the header (axis in the y-z plane at α to z, through (e, 0, Z)) begins at
 * z = Z + (y·cos α − √(R² − (x − e)²))/sin α. Nothing of the mesher, the kernel's curves or its surfaces is used.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { toTriangle } from "../../../bench/deviation.mjs";
import { checkMesh } from "../../../src/kernel/mesh/gate.js";
import type { Mesh } from "../../../src/kernel/mesh/mesh.js";
import { tessellate } from "../../../src/kernel/mesh/tessellate.js";
import type { Vec3 } from "../../../src/kernel/vec.js";
import { turned } from "../../support/bar-moves.js";
import { barOf, onRound, plane, RAD, solidFor, tube } from "../../support/bars.js";

interface Cope {
  readonly od: number;
  readonly wall: number;
  readonly header: number;
  readonly angle: number;
  readonly offset: number;
  readonly tilt: number;
  /** The whole bar turned about z: moves the rulings along the edges. */
  readonly phase: number;
  readonly chord: number;
}

const TOP = 400;
/** Rounding: of a mesh 400 mm long, and of the kernel's own snapping. */
const ROUNDING = 2e-6;

function meshOf(c: Cope): Mesh {
  const low = plane([0, 0, 0], [-Math.sin(c.tilt), 0, Math.cos(c.tilt)]);
  const bar = barOf(tube(c.od, c.wall), low, onRound(c.header, TOP, c.angle, c.offset));
  const mesh = tessellate(solidFor(turned(bar, c.phase)), { chord: c.chord });
  const [cos, sin] = [Math.cos(-c.phase), Math.sin(-c.phase)];
  const positions = mesh.positions.slice();
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y] = [positions[i]!, positions[i + 1]!];
    positions[i] = cos * x - sin * y;
    positions[i + 1] = sin * x + cos * y;
  }
  return { ...mesh, positions };
}

const lowAt = (c: Cope, x: number): number => x * Math.tan(c.tilt);
const highAt = (c: Cope, x: number, y: number): number =>
  TOP +
  (y * Math.cos(c.angle * RAD) - Math.sqrt(Math.max(0, (c.header / 2) ** 2 - (x - c.offset) ** 2))) /
    Math.sin(c.angle * RAD);

/** The four edges of the tube, as so many points each. */
function edgesOf(c: Cope, count: number): Vec3[][] {
  return [c.od / 2, c.od / 2 - c.wall].flatMap((r) => {
    const rim = Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count).map(
      (a) => [r * Math.cos(a), r * Math.sin(a)] as const,
    );
    return [
      rim.map(([x, y]): Vec3 => [x, y, lowAt(c, x)]),
      rim.map(([x, y]): Vec3 => [x, y, highAt(c, x, y)]),
    ];
  });
}

const distance = (p: Vec3, q: Vec3): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);

/** Distance from the polyline round one edge, searched near the point's own fibre. */
function fromEdge(edge: readonly Vec3[], p: Vec3): number {
  const at = (k: number): Vec3 => edge[(k + edge.length) % edge.length]!;
  const own = Math.round((Math.atan2(p[1], p[0]) / (2 * Math.PI)) * edge.length);
  const wide = Math.ceil(edge.length / 20);
  let near = own;
  for (let k = own - wide; k <= own + wide; k++) if (distance(at(k), p) < distance(at(near), p)) near = k;
  return Math.min(
    toTriangle(p, at(near - 1), at(near), at(near)),
    toTriangle(p, at(near), at(near + 1), at(near + 1)),
  );
}

/** Distance of a point from the true boundary: to the foot on a face that has it, or to an edge. */
function fromTruth(c: Cope, edges: readonly Vec3[][], p: Vec3): number {
  let best = Number.POSITIVE_INFINITY;
  const try1 = (q: Vec3, inside: boolean): void => {
    if (inside) best = Math.min(best, distance(p, q));
  };
  const [x, y, z] = p;
  const out = Math.hypot(x, y);
  const [outer, inner] = [c.od / 2, c.od / 2 - c.wall];
  const inWall = (q: Vec3): boolean => Math.hypot(q[0], q[1]) <= outer && Math.hypot(q[0], q[1]) >= inner;
  for (const r of [outer, inner]) {
    const q: Vec3 = [(x * r) / out, (y * r) / out, z];
    try1(q, z >= lowAt(c, q[0]) && z <= highAt(c, q[0], q[1]));
  }
  const off = (z - lowAt(c, x)) * Math.cos(c.tilt);
  const onPlane: Vec3 = [x + off * Math.sin(c.tilt), y, z - off * Math.cos(c.tilt)];
  try1(onPlane, inWall(onPlane));
  const [cos, sin] = [Math.cos(c.angle * RAD), Math.sin(c.angle * RAD)];
  const h = x - c.offset;
  const q = y * cos - (z - TOP) * sin;
  const k = c.header / 2 / Math.hypot(h, q) - 1;
  const onHeader: Vec3 = [x + k * h, y + k * q * cos, z - k * q * sin];
  try1(onHeader, inWall(onHeader) && q > 0);
  // Where a face is that near, no edge is worth a search.
  if (best <= 0.5 * c.chord) return best;
  for (const edge of edges) best = Math.min(best, fromEdge(edge, p));
  return best;
}

const cornersOf = (mesh: Mesh): (readonly [Vec3, Vec3, Vec3])[] =>
  Array.from({ length: mesh.triangles.length / 3 }, (_, t) => {
    const at = (k: number): Vec3 => {
      const v = 3 * mesh.triangles[3 * t + k]!;
      return [mesh.positions[v]!, mesh.positions[v + 1]!, mesh.positions[v + 2]!];
    };
    return [at(0), at(1), at(2)] as const;
  });

/** Farthest point of the true edges from the mesh. */
function edgesOffMesh(c: Cope, mesh: Mesh, count: number): number {
  const triangles = cornersOf(mesh);
  let worst = 0;
  for (const p of edgesOf(c, count).flat()) {
    let best = Number.POSITIVE_INFINITY;
    for (const [a, b, d] of triangles) {
      if (Math.min(a[2], b[2], d[2]) - p[2] >= best || p[2] - Math.max(a[2], b[2], d[2]) >= best) continue;
      best = Math.min(best, toTriangle(p, a, b, d));
    }
    worst = Math.max(worst, best);
  }
  return worst;
}

/** Farthest of some points of each triangle from the true boundary. */
function meshOffTruth(c: Cope, mesh: Mesh): number {
  const edges = edgesOf(c, 4000);
  const seen = new Set<string>();
  let worst = 0;
  for (const [a, b, d] of cornersOf(mesh)) {
    for (const [i, j] of [
      [0.5, 0.5],
      [0.5, 0],
      [0, 0.5],
      [1 / 3, 1 / 3],
      [0.9, 0.05],
      [0.05, 0.05],
    ] as const) {
      const p = [0, 1, 2].map((k) => i * a[k]! + j * b[k]! + (1 - i - j) * d[k]!) as unknown as Vec3;
      const key = p.map((v) => v.toFixed(9)).join();
      if (seen.has(key)) continue;
      seen.add(key);
      worst = Math.max(worst, fromTruth(c, edges, p));
    }
  }
  return worst;
}

const grid = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1000 }).map((k) => min + ((max - min) * k) / 1000);

const copes: fc.Arbitrary<Cope> = fc
  .record({
    od: grid(20, 60),
    wall: grid(1.5, 4),
    over: fc.oneof(fc.constant(0), fc.constantFrom(1e-9, 1e-6, 1e-3, 0.05), grid(0, 40)),
    angle: grid(20, 90),
    aside: grid(-1, 1),
    tilt: grid(0, 1),
    phase: grid(0, 2),
    chord: fc.constantFrom(0.5, 0.2, 0.05, 0.02),
  })
  .map(({ over, aside, od, ...c }) => ({ ...c, od, header: od + over, offset: (aside * over) / 2 }));

describe("the true boundary", () => {
  it("is within the chord of the mesh, and the mesh of it, at any phase (property)", () => {
    fc.assert(
      fc.property(copes, (c) => {
        const mesh = meshOf(c);
        const report = checkMesh(mesh, "edges");
        expect(report.openEdges).toBe(0);
        expect(report.diagnostics.filter((d) => d.severity === "error")).toEqual([]);
        expect(edgesOffMesh(c, mesh, 240)).toBeLessThanOrEqual(c.chord + ROUNDING);
        expect(meshOffTruth(c, mesh)).toBeLessThanOrEqual(c.chord + ROUNDING);
      }),
      { numRuns: 12, seed: 7, endOnFailure: true },
    );
  });

  it("passes the whole gate on as many more (property)", () => {
    fc.assert(
      fc.property(copes, (c) => {
        expect(checkMesh(meshOf(c), "full").diagnostics.filter((d) => d.severity === "error")).toEqual([]);
      }),
      { numRuns: 20, seed: 8, endOnFailure: true },
    );
  });

  // The flat angle at the toe is where a point can be near both surfaces and far from their curve.
  it.each([0.5, 0.05, 0.005, 0.001])("keeps a chord of %s mm at a toe of 25 degrees", (chord) => {
    const c = { od: 42.4, wall: 3.2, header: 60.3, angle: 25, offset: 3, tilt: 0.9, phase: 0.31, chord };
    const mesh = meshOf(c);
    expect(checkMesh(mesh, "edges").ok).toBe(true);
    expect(edgesOffMesh(c, mesh, chord < 0.01 ? 100 : 600)).toBeLessThanOrEqual(chord + ROUNDING);
  });

  it("can tell a mesh that is not", () => {
    const c = { od: 42.4, wall: 3.2, header: 60.3, angle: 37, offset: 0, tilt: 0, phase: 0, chord: 0.05 };
    const coarse = meshOf({ ...c, chord: 0.2 });
    expect(edgesOffMesh(c, coarse, 240)).toBeGreaterThan(c.chord);
    expect(meshOffTruth(c, coarse)).toBeGreaterThan(c.chord);
  });
});
