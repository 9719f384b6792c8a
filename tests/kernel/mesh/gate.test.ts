/**
 * The mesh gate: meshes known to be bad must fail, each with its own code; meshes known to be good must pass. Second
 * opinions: closed forms for volumes and Euler numbers, and manifold-3d as an independent judge of the good ones.
 */
import modeling from "@jscad/modeling";
import fc from "fast-check";
import manifoldModule from "manifold-3d";
import { beforeAll, describe, expect, it } from "vitest";
import { fromGeom3 } from "../../../src/export/adapters/jscad/index.js";
import { checkMesh, type MeshReport } from "../../../src/kernel/mesh/gate.js";
import type { Mesh } from "../../../src/kernel/mesh/mesh.js";
import { meshVolume } from "../../../src/kernel/mesh/volume.js";
import {
  boxMesh,
  insideOut,
  joinMeshes,
  meshOf,
  moved,
  sphereMesh,
  tetrahedronMesh,
  torusMesh,
  tubeMesh,
} from "../../support/meshes.js";
import { countBadEdges, readStlBinary, weldFacets } from "../../support/read-stl.js";

const codes = (report: MeshReport) => report.diagnostics.map((d) => d.code);
const withTriangles = (mesh: Mesh, change: (t: number[]) => number[]): Mesh => ({
  ...mesh,
  triangles: Uint32Array.from(change([...mesh.triangles])),
});

/** Euler number 2 − 2·genus per shell; volumes by closed form (torus: sum over its own polygons). */
const good: [string, Mesh, { euler: number; components: number; volume: number }][] = [
  ["tetrahedron", tetrahedronMesh(6), { euler: 2, components: 1, volume: 36 }],
  ["box", boxMesh([10, 20, 30]), { euler: 2, components: 1, volume: 6000 }],
  ["box far away", boxMesh([10, 20, 30], [4000, -7000, 3000]), { euler: 2, components: 1, volume: 6000 }],
  [
    "tube",
    tubeMesh(42.4, 3.2, 1000, 64),
    // Regular 64-gons: area (n/2)·r²·sin(2π/n).
    { euler: 0, components: 1, volume: 32 * Math.sin(Math.PI / 32) * (21.2 ** 2 - 18 ** 2) * 1000 },
  ],
  [
    "two boxes apart",
    joinMeshes(boxMesh(), moved(boxMesh(), [50, 0, 0])),
    { euler: 4, components: 2, volume: 12000 },
  ],
  [
    "box with a cavity",
    joinMeshes(boxMesh([30, 30, 30]), insideOut(boxMesh([10, 10, 10], [10, 10, 10]))),
    { euler: 4, components: 2, volume: 26000 },
  ],
  [
    "box in the cavity of a box",
    joinMeshes(
      boxMesh([30, 30, 30]),
      insideOut(boxMesh([10, 10, 10], [10, 10, 10])),
      boxMesh([2, 2, 2], [14, 14, 14]),
    ),
    { euler: 6, components: 3, volume: 26008 },
  ],
];

describe("checkMesh on good meshes", () => {
  it.each(good)("%s", (_, mesh, expected) => {
    const report = checkMesh(mesh, "full");
    expect(codes(report)).toEqual([]);
    expect(report.ok).toBe(true);
    expect(report.euler).toBe(expected.euler);
    expect(report.components).toBe(expected.components);
    expect(Math.abs(report.volume / expected.volume - 1)).toBeLessThan(1e-12);
    expect(Math.abs(meshVolume(mesh) / expected.volume - 1)).toBeLessThan(1e-12);
    expect(report.float32?.collapsedVertices).toBe(0);
    expect(checkMesh(mesh, "edges").ok).toBe(true);
  });

  it("ball and torus: counts, and volumes from below towards the closed forms", () => {
    const ball = checkMesh(sphereMesh(4), "full");
    // 20·4^n triangles; V = 4/3·π·r³ less the chords' part, O(h²).
    expect([ball.ok, ball.triangles, ball.euler]).toEqual([true, 5120, 2]);
    const sphere = (4 / 3) * Math.PI * 40 ** 3;
    expect(ball.volume).toBeLessThan(sphere);
    expect(ball.volume).toBeGreaterThan(0.99 * sphere);
    const ring = checkMesh(torusMesh(50, 12, 96, 48), "full");
    expect([ring.ok, ring.euler]).toEqual([true, 0]);
    expect(ring.volume / (2 * Math.PI ** 2 * 50 * 12 ** 2)).toBeCloseTo(1, 2);
  });

  it("leaves the mesh as it was and says the same twice", () => {
    const mesh = torusMesh();
    const before = structuredClone(mesh);
    expect(checkMesh(mesh, "full")).toEqual(checkMesh(mesh, "full"));
    expect(mesh).toEqual(before);
    expect(structuredClone(checkMesh(mesh, "full"))).toEqual(checkMesh(mesh, "full"));
  });
});

const box = boxMesh();
const bad: [string, string, "edges" | "full", Mesh][] = [
  ["empty", "mesh-empty", "edges", meshOf([], [])],
  ["open box", "mesh-open-edge", "edges", withTriangles(box, (t) => t.slice(6))],
  ["flipped triangle", "mesh-open-edge", "edges", withTriangles(box, ([a, b, c, ...t]) => [a!, c!, b!, ...t])],
  ["duplicated triangle", "mesh-duplicate-triangle", "edges", withTriangles(box, (t) => [...t, ...t.slice(0, 3)])],
  ["two facing copies", "mesh-duplicate-triangle", "edges", meshOf([[0, 0, 0], [1, 0, 0], [0, 1, 0]], [[0, 1, 2], [0, 2, 1]])],
  ["two equal corners", "mesh-degenerate-triangle", "edges", withTriangles(box, (t) => [...t, 0, 0, 1])],
  ["corner on the line of its neighbours", "mesh-degenerate-triangle", "edges", flattened()],
  ["inside-out box", "mesh-volume-not-positive", "edges", insideOut(box)],
  ["one of two boxes inside out", "mesh-volume-not-positive", "edges", joinMeshes(boxMesh([90, 90, 90]), moved(insideOut(box), [200, 0, 0]))],
  ["flat shell", "mesh-volume-not-positive", "edges", meshOf([[0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0]], [[0, 1, 2], [0, 2, 3], [0, 3, 1], [1, 3, 2]])],
  ["not a number", "mesh-malformed", "edges", { ...box, positions: box.positions.map((x, i) => (i === 7 ? Number.NaN : x)) }],
  ["too large for a 32-bit float", "mesh-malformed", "edges", { ...box, positions: box.positions.map((x, i) => (i === 7 ? 1e39 : x)) }],
  ["infinite", "mesh-malformed", "edges", { ...box, positions: box.positions.map((x, i) => (i === 7 ? Infinity : x)) }],
  ["index out of range", "mesh-malformed", "edges", withTriangles(box, (t) => [...t.slice(3), 0, 1, 8])],
  ["not in threes", "mesh-malformed", "edges", withTriangles(box, (t) => t.slice(1))],
  ["two tetrahedra through each other", "mesh-self-intersection", "full", joinMeshes(tetrahedronMesh(6), tetrahedronMesh(6, [1, 1, 1]))],
  ["two boxes that touch", "mesh-self-intersection", "full", joinMeshes(box, moved(box, [10, 0, 0]))],
  ["the same box twice", "mesh-self-intersection", "full", joinMeshes(box, box)],
  ["spike through the far wall", "mesh-self-intersection", "full", { ...box, positions: box.positions.map((x, i) => (i === 0 ? 25 : x)) }],
  ["folded neighbours", "mesh-folded-edge", "full", folded()],
  ["box inside a box's material", "mesh-shells-overlap", "full", joinMeshes(boxMesh([90, 90, 90]), moved(box, [20, 20, 20]))],
  ["cavity within another cavity's void", "mesh-shells-overlap", "full", joinMeshes(boxMesh([90, 90, 90]), insideOut(boxMesh([60, 60, 60], [10, 10, 10])), insideOut(boxMesh([10, 10, 10], [20, 20, 20])))],
  ["points that 32-bit floats cannot tell apart", "float32-collapsed-vertex", "full", boxMesh([1e-3, 1e-3, 1e-3], [1e6, 0, 0])],
  ["triangle that 32-bit floats make flat", "float32-degenerate-triangle", "full", nearlyFlat()],
]; // biome-ignore format: a table

describe("checkMesh on bad meshes", () => {
  it.each(bad)("%s: %s", (_, code, level, mesh) => {
    const report = checkMesh(mesh, level, { name: "Post P3" });
    expect(report.ok).toBe(false);
    expect(codes(report)).toContain(code);
    const found = report.diagnostics.find((d) => d.code === code)!;
    expect(found.message).toMatch(/^Post P3: .*(expected)/);
    expect(found.hint.length).toBeGreaterThan(10);
  });

  it("finds at level edges nothing that only level full looks for", () => {
    for (const [, , level, mesh] of bad) expect(checkMesh(mesh, "edges").ok).toBe(level === "full");
  });

  it("counts what it finds", () => {
    expect(
      checkMesh(
        withTriangles(box, (t) => t.slice(6)),
        "edges",
      ).openEdges,
    ).toBe(4);
    expect(
      checkMesh(
        withTriangles(box, (t) => [...t, ...t.slice(0, 6)]),
        "edges",
      ).duplicateTriangles,
    ).toBe(2);
    expect(
      checkMesh(
        withTriangles(box, (t) => [...t, 1, 1, 2, 3, 3, 3]),
        "edges",
      ).degenerateTriangles,
    ).toBe(2);
    // The triangle that lies outside the lid covers both its neighbours in the lid.
    expect(checkMesh(folded(), "full").foldedEdges).toBe(2);
  });

  it("names a place on the finding", () => {
    const [open] = checkMesh(
      withTriangles(boxMesh([1, 1, 1], [7, 7, 7]), (t) => t.slice(6)),
      "edges",
    ).diagnostics;
    // The face left out is the one at z = 7; every open edge lies on it.
    expect(open?.point?.[2]).toBe(7);
  });

  it("fails when any one triangle is left out, doubled or turned", () => {
    const mesh = torusMesh(50, 12, 8, 6);
    const count = mesh.triangles.length / 3;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: count - 1 }),
        fc.constantFrom("drop", "double", "turn"),
        (t, how) => {
          const corners = [...mesh.triangles.slice(3 * t, 3 * t + 3)];
          const broken = withTriangles(mesh, (all) => {
            if (how === "double") return [...all, ...corners];
            all.splice(3 * t, 3, ...(how === "turn" ? [corners[0]!, corners[2]!, corners[1]!] : []));
            return all;
          });
          const report = checkMesh(broken, "edges");
          expect(report.ok).toBe(false);
          expect(report.openEdges).toBe(3);
          expect(report.openEdges).toBe(countBadEdges(broken).bad);
        },
      ),
    );
  });
});

describe("options", () => {
  it("minAltitude refuses slivers", () => {
    const thin = boxMesh([10, 10, 0.001]);
    expect(checkMesh(thin, "edges").ok).toBe(true);
    expect(codes(checkMesh(thin, "edges", { minAltitude: 0.002 }))).toEqual(["mesh-degenerate-triangle"]);
    // Height over the diagonal of a side 10 by 0.001.
    expect(checkMesh(thin, "edges").leastAltitude).toBeCloseTo(0.01 / Math.hypot(10, 0.001), 12);
  });

  it("shellContacts allow passes over touching pieces but not over a fault within one", () => {
    const touching = joinMeshes(box, moved(box, [10, 0, 0]));
    expect(checkMesh(touching, "full", { shellContacts: "allow" }).ok).toBe(true);
    const spike = { ...box, positions: box.positions.map((x, i) => (i === 0 ? 25 : x)) };
    const report = checkMesh(joinMeshes(spike, moved(box, [500, 0, 0])), "full", { shellContacts: "allow" });
    expect(codes(report)).toContain("mesh-self-intersection");
  });
});

describe("what meets", () => {
  it("is named: the first pair of triangles, and a corner of it", () => {
    const pair = joinMeshes(tetrahedronMesh(6), tetrahedronMesh(6, [1, 1, 1]));
    const found = checkMesh(pair, "full").diagnostics.find((d) => d.code === "mesh-self-intersection")!;
    const [, one, other] = /the first are (\d+) and (\d+)/.exec(found.message)!;
    // One triangle of each tetrahedron, in their order.
    expect([Number(one) < 4, Number(other) >= 4 && Number(other) < 8]).toEqual([true, true]);
    expect(found.point).toHaveLength(3);
  });
});

describe("pinched vertices", () => {
  it("are a warning: two tetrahedra on one common vertex", () => {
    const pinched = meshOf(
      [[0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 6], [-6, 0, 0], [0, -6, 0], [0, 0, -6]],
      [[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3], [0, 4, 5], [0, 6, 4], [0, 5, 6], [4, 6, 5]],
    ); // biome-ignore format: a table
    const report = checkMesh(pinched, "full");
    expect([report.ok, report.pinchedVertices, report.components]).toEqual([true, 1, 2]);
    expect(codes(report)).toEqual(["mesh-pinched-vertex"]);
    expect(report.diagnostics[0]?.severity).toBe("warning");
  });
});

describe("against independent libraries", () => {
  let manifold: Awaited<ReturnType<typeof manifoldModule>>;
  beforeAll(async () => {
    manifold = await manifoldModule();
    manifold.setup();
  });

  const judged = [...good.slice(0, 5), ["ball", sphereMesh(3)], ["torus", torusMesh()]] as [string, Mesh][];
  it.each(judged)("manifold-3d takes the %s and finds the same volume", (_, mesh) => {
    const solid = new manifold.Manifold(
      new manifold.Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(mesh.positions),
        triVerts: mesh.triangles.slice(),
      }),
    );
    expect(solid.status()).toBe("NoError");
    const report = checkMesh(mesh, "full");
    expect(report.ok).toBe(true);
    // It keeps 32-bit points: 2^-24 relative per coordinate, against sizes up to 400 times smaller than the distance.
    expect(Math.abs(solid.volume() / report.volume - 1)).toBeLessThan(1e-4);
    // Its genus is that of a single shell: χ = 2 − 2g.
    expect(2 - 2 * solid.genus()).toBe(report.euler);
    solid.delete();
  });

  it("the plain tube of @jscad/modeling fails, as the library's own validation says", () => {
    const { booleans, geometries, primitives } = modeling;
    const cylinder = (radius: number) => primitives.cylinder({ radius, height: 1000, segments: 64 });
    const tube = booleans.subtract(cylinder(21.2), cylinder(18));
    expect(() => geometries.geom3.validate(tube)).toThrow(/manifold/);
    const report = checkMesh(fromGeom3(tube), "edges");
    expect(report.ok).toBe(false);
    expect(report.openEdges).toBeGreaterThan(0);
  });

  it("the same tube as its own serialiser writes it fails after reading", async () => {
    const { geom3ToStl } = await import("../../../src/export/adapters/jscad/index.js");
    const { booleans, primitives } = modeling;
    const cylinder = (radius: number) => primitives.cylinder({ radius, height: 1000, segments: 64 });
    const bytes = geom3ToStl(booleans.subtract(cylinder(21.2), cylinder(18)));
    // The file's header is 80 letters A.
    const mesh = weldFacets(readStlBinary(bytes).facets);
    const report = checkMesh(mesh, "edges");
    expect(report.openEdges).toBe(countBadEdges(mesh).bad);
    expect(report.openEdges).toBeGreaterThan(0);
    expect(report.ok).toBe(false);
  });
});

describe("edges", () => {
  // Two tetrahedra over one edge: its four uses come in any order, twice each way. By hand: 11 edges, one of them open.
  it("are counted the same in whatever order the triangles come (property)", () => {
    const points = [[0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 6], [0, -6, 0], [0, 0, -6]]; // biome-ignore format: a table
    const faces = [[0, 2, 1], [0, 1, 3], [0, 3, 2], [1, 2, 3], [0, 4, 1], [0, 1, 5], [0, 5, 4], [1, 4, 5]]; // biome-ignore format: a table
    fc.assert(
      fc.property(
        fc.shuffledSubarray(faces, { minLength: 8 }),
        fc.array(fc.nat(2), { minLength: 8, maxLength: 8 }),
        (order, turns) => {
          const turned = order.map((f, i) => [0, 1, 2].map((k) => f[(k + turns[i]!) % 3]!));
          const report = checkMesh(meshOf(points, turned), "edges");
          expect([report.edges, report.openEdges, report.duplicateTriangles]).toEqual([11, 1, 0]);
        },
      ),
      { numRuns: 200, seed: 3 },
    );
  });
});

/** A tetrahedron with a side split by a point exactly on the line: closed, but one triangle is flat. */
function flattened(): Mesh {
  return meshOf(
    [[0, 0, 0], [6, 0, 0], [0, 6, 0], [0, 0, 6], [3, 0, 0]],
    [[0, 2, 1], [0, 4, 3], [4, 1, 3], [0, 1, 4], [0, 3, 2], [1, 2, 3]],
  ); // biome-ignore format: a table
}

/** A box whose lid is split by a point pulled over the lid's edge: neighbours in one plane on the same side. */
function folded(): Mesh {
  const lidPoint = [12, 10, 30];
  const mesh = boxMesh();
  const lid = [4, 5, 7, 6];
  const rest = [...mesh.triangles].slice(0, 6).concat([...mesh.triangles].slice(12));
  const fan = lid.flatMap((v, i) => [v, lid[(i + 1) % 4]!, 8]);
  return {
    positions: Float64Array.of(...mesh.positions, ...lidPoint),
    triangles: Uint32Array.from([...rest, ...fan]),
  };
}

/** A tetrahedron with a point a hair beside a long side, half way: 32-bit floats put it on the side. */
function nearlyFlat(): Mesh {
  const mesh = flattened();
  const positions = mesh.positions.map((x) => x);
  positions[3 * 4 + 1] = -1e-12;
  return { ...mesh, positions: positions.map((x, i) => (i % 3 === 1 ? x + 1 : x)) };
}
