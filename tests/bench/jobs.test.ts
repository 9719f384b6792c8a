/**
 * The bench makes what it says it makes, and its judge of meshes can tell a good one from a bad one. No time is measured.
 */
import { describe, expect, it } from "vitest";
import { deviation, toTriangle } from "../../bench/deviation.mjs";
import { CHORD, J1, J2, type Job, POST, posts, segmentsOf, turned } from "../../bench/jobs.mjs";
import { openEdges } from "../../bench/open-edges.mjs";
import { build, buildRows, type Library, rowsOf } from "../../bench/ours.mjs";
import { distanceFrom, truthOf } from "../../bench/truth.mjs";
import * as joints from "../../src/joints/index.js";
import * as kernel from "../../src/kernel/index.js";
import * as members from "../../src/members/index.js";

const lib: Library = { ...kernel, ...members, ...joints };

/** Complete elliptic integrals K and E of modulus k by the arithmetic-geometric mean (Abramowitz & Stegun 17.6). */
function elliptic(k: number): readonly [number, number] {
  let [a, b, c, sum, weight] = [1, Math.sqrt(1 - k * k), k, 0, 0.5];
  while (Math.abs(c) > 1e-16) {
    sum += weight * c * c;
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    weight *= 2;
  }
  const K = Math.PI / (2 * a);
  return [K, K * (1 - sum)];
}

/** What two cylinders of radii a ≤ b that cross squarely have in common (Steinmetz solid, unequal radii; from memory). */
function common(a: number, b: number): number {
  if (a === b) return (16 / 3) * a ** 3;
  const [K, E] = elliptic(a / b);
  return (8 / 3) * b * ((a * a + b * b) * E - (b * b - a * a) * K);
}

function placed(job: Job): kernel.Mesh {
  const { piece, mesh } = build(lib, job);
  return kernel.placeMesh(mesh, piece.frame);
}

const moved = (mesh: kernel.Mesh, dx: number): kernel.Mesh => ({
  ...mesh,
  positions: mesh.positions.map((x, k) => (k % 3 === 0 ? x + dx : x)),
});

describe("the jobs", () => {
  it("J1 has the volume of a tube less half of what it has in common with its header", () => {
    const [outer, inner] = [21.2, 18];
    const volume =
      1000 * Math.PI * (outer ** 2 - inner ** 2) - (common(outer, outer) - common(inner, outer)) / 2;
    const made = kernel.massProperties(build(lib, J1).solid).volume;
    expect(Math.abs(made / volume - 1)).toBeLessThan(1e-12);
  });

  it("polygons keep the chord, and with a quarter's sides fewer would not", () => {
    const off = (radius: number, sides: number) => radius * (1 - Math.cos(Math.PI / sides));
    for (const radius of [3, 18, 21.2, 24.15, 30.15]) {
      const sides = segmentsOf(radius);
      expect(off(radius, sides)).toBeLessThanOrEqual(CHORD);
      expect(off(radius, sides - 4)).toBeGreaterThan(CHORD);
    }
  });

  it("posts in rows are solved, all of them, no two alike", () => {
    const jobs = posts(42);
    const solved = joints.solveJoints(rowsOf(lib, jobs));
    expect(solved.diagnostics).toEqual([]);
    expect(solved.pieces).toHaveLength(42 + 2);
    const made = solved.pieces.filter((p) => !p.id.startsWith("R"));
    expect(new Set(made.map((p) => p.identity)).size).toBe(42);
    expect(made.every((p) => p.bores.length === 10 && p.cuts[1].kind === "cope")).toBe(true);
    const kept: number[] = [];
    const total = buildRows(lib, jobs.slice(0, 3), (mesh) => kept.push(mesh.triangles.length / 3));
    expect(total).toBe(kept.reduce((a, b) => a + b, 0));
    expect(kept).toHaveLength(3);
  });
});

describe("the truth about a job", () => {
  it("has the distance to a face, to an edge and to the saddle", () => {
    const truth = truthOf(J1);
    expect(distanceFrom(truth, [22.2, 0, 500])).toBeCloseTo(1, 12);
    expect(distanceFrom(truth, [0, 17, 500])).toBeCloseTo(1, 12);
    // Below the outer corner of the foot: 3 out and 4 down.
    expect(distanceFrom(truth, [24.2, 0, -4])).toBeCloseTo(5, 9);
    // The saddle of equal tubes is two ellipses in planes at 45°; its lowest point is at z = 1000 − 21.2.
    expect(distanceFrom(truth, [21.2, 0, 978.8])).toBeCloseTo(0, 12);
    expect(distanceFrom(truth, [21.2, 0, 979.8])).toBeCloseTo(1, 9);
  });

  it("has bores and their openings where solidOf has its edges", () => {
    const truth = truthOf(POST);
    const { piece, solid } = build(lib, POST);
    for (const edge of solid.edges) {
      if (edge.curve.kind === "line") continue;
      for (const part of [0, 0.3, 0.7]) {
        const p = kernel.evaluate(edge.curve, edge.t0 + part * (edge.t1 - edge.t0));
        expect(distanceFrom(truth, kernel.pointToParent(piece.frame, p))).toBeLessThan(1e-8);
      }
    }
    expect(truth.curves).toHaveLength(2 * (2 + 2 * POST.bores.length));
  });
});

describe("the judge of meshes", () => {
  it.each([J1, J2, turned(J1, 3), POST])(
    "finds $name within the chord of its surfaces, and closed",
    (job) => {
      const mesh = placed(job);
      expect(deviation(job, mesh).surface).toBeLessThanOrEqual(CHORD);
      expect(openEdges({ ...mesh })).toBe(0);
    },
  );

  it("sees a mesh that is moved", () => {
    const { surface, boundary } = deviation(J2, moved(placed(J2), 0.4));
    expect(surface).toBeGreaterThan(0.3);
    expect(boundary).toBeGreaterThanOrEqual(surface - 1e-9);
  });

  it("sees an end that is left out, by the true saddle", () => {
    const mesh = placed(J1);
    const low = mesh.triangles.filter((_, k, all) => {
      const h = k - (k % 3);
      return [0, 1, 2].every((n) => (mesh.positions[3 * (all[h + n] as number) + 2] as number) < 1);
    });
    expect(deviation(J1, { ...mesh, triangles: low }).boundary).toBeGreaterThan(900);
  });

  it("counts the edges of a hole, in indices and in a soup", () => {
    const mesh = placed(J1);
    const holed = { ...mesh, triangles: mesh.triangles.slice(3) };
    expect(openEdges(holed)).toBe(3);
    const soup = (m: kernel.Mesh) => ({
      positions: Float64Array.from([...m.triangles].flatMap((v) => [...m.positions.slice(3 * v, 3 * v + 3)])),
      triangles: null,
    });
    expect([openEdges(soup(mesh)), openEdges(soup(holed))]).toEqual([0, 3]);
  });

  it("measures to a triangle's inside, side and corner", () => {
    const [a, b, c] = [[0, 0, 0] as const, [4, 0, 0] as const, [0, 4, 0] as const];
    expect(toTriangle([1, 1, 2], a, b, c)).toBeCloseTo(2, 12);
    expect(toTriangle([2, -3, 4], a, b, c)).toBeCloseTo(5, 12);
    expect(toTriangle([-3, -4, 12], a, b, c)).toBeCloseTo(13, 12);
  });
});
