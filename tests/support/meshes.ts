/**
 * Plain meshes for tests, by trigonometry alone: no code of the library makes them.
 *
 * All closed, oriented counter-clockwise seen from outside, millimetres.
 */
import type { Mesh } from "../../src/kernel/mesh/mesh.js";

export function meshOf(points: readonly (readonly number[])[], faces: readonly (readonly number[])[]): Mesh {
  return { positions: Float64Array.from(points.flat()), triangles: Uint32Array.from(faces.flat()) };
}

/** A box with its lowest corner at `at`. */
export function boxMesh(size = [10, 20, 30], at = [0, 0, 0]): Mesh {
  const points = Array.from({ length: 8 }, (_, i) =>
    [0, 1, 2].map((k) => at[k]! + (i & (1 << k) ? size[k]! : 0)),
  );
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return meshOf(
    points,
    quads.flatMap(([a, b, c, d]) => [
      [a!, b!, c!],
      [a!, c!, d!],
    ]),
  );
}

export function tetrahedronMesh(size = 6, at = [0, 0, 0]): Mesh {
  const points = [
    [0, 0, 0],
    [size, 0, 0],
    [0, size, 0],
    [0, 0, size],
  ];
  return meshOf(
    points.map((p) => p.map((x, k) => x + at[k]!)),
    [
      [0, 2, 1],
      [0, 1, 3],
      [0, 3, 2],
      [1, 2, 3],
    ],
  );
}

/** A torus; its exact volume with all points on the torus tends to 2π²Rr². */
export function torusMesh(major = 50, minor = 12, around = 24, across = 12): Mesh {
  return gridMesh(around, across, (i, j) => {
    const [u, v] = [(2 * Math.PI * i) / around, (2 * Math.PI * j) / across];
    const r = major + minor * Math.cos(v);
    return [r * Math.cos(u), r * Math.sin(u), minor * Math.sin(v)];
  });
}

/** A round tube, square-cut: a torus whose section is the rectangle of the wall. */
export function tubeMesh(outer = 42.4, wall = 3.2, long = 1000, sides = 64): Mesh {
  const [ro, ri] = [outer / 2, outer / 2 - wall];
  const section = [
    [ri, 0],
    [ro, 0],
    [ro, long],
    [ri, long],
  ];
  return gridMesh(sides, 4, (i, j) => {
    const [r, z] = section[j] as [number, number];
    const u = (2 * Math.PI * i) / sides;
    return [r * Math.cos(u), r * Math.sin(u), z];
  });
}

/** An icosahedron, each triangle split in four `levels` times, every point at `radiusOf` its direction. */
export function sphereMesh(levels = 2, radiusOf: (index: number) => number = () => 40): Mesh {
  const g = (1 + Math.sqrt(5)) / 2;
  const points: number[][] = [
    [-1, g, 0], [1, g, 0], [-1, -g, 0], [1, -g, 0], [0, -1, g], [0, 1, g],
    [0, -1, -g], [0, 1, -g], [g, 0, -1], [g, 0, 1], [-g, 0, -1], [-g, 0, 1],
  ]; // biome-ignore format: a table
  let faces = [
    [0, 11, 5], [0, 5, 1], [0, 1, 7], [0, 7, 10], [0, 10, 11], [1, 5, 9], [5, 11, 4], [11, 10, 2], [10, 7, 6], [7, 1, 8],
    [3, 9, 4], [3, 4, 2], [3, 2, 6], [3, 6, 8], [3, 8, 9], [4, 9, 5], [2, 4, 11], [6, 2, 10], [8, 6, 7], [9, 8, 1],
  ]; // biome-ignore format: a table
  for (let level = 0; level < levels; level++) {
    const middles = new Map<string, number>();
    const middle = (a: number, b: number) => {
      const key = `${Math.min(a, b)}-${Math.max(a, b)}`;
      if (!middles.has(key))
        middles.set(key, points.push(points[a]!.map((x, k) => (x + points[b]![k]!) / 2)) - 1);
      return middles.get(key)!;
    };
    faces = faces.flatMap(([a, b, c]) => {
      const [ab, bc, ca] = [middle(a!, b!), middle(b!, c!), middle(c!, a!)];
      return [
        [a!, ab, ca],
        [ab, b!, bc],
        [ca, bc, c!],
        [ab, bc, ca],
      ];
    });
  }
  return meshOf(
    points.map((p, i) => p.map((x) => (x * radiusOf(i)) / Math.hypot(...p))),
    faces,
  );
}

/** Several meshes as one, vertices kept apart. */
export function joinMeshes(...meshes: readonly Mesh[]): Mesh {
  let base = 0;
  const triangles = meshes.flatMap((mesh) => {
    const moved = [...mesh.triangles].map((v) => v + base);
    base += mesh.positions.length / 3;
    return moved;
  });
  return {
    positions: Float64Array.from(meshes.flatMap((mesh) => [...mesh.positions])),
    triangles: Uint32Array.from(triangles),
  };
}

export function insideOut(mesh: Mesh): Mesh {
  const triangles = mesh.triangles.slice();
  for (let h = 0; h < triangles.length; h += 3) {
    [triangles[h + 1], triangles[h + 2]] = [triangles[h + 2]!, triangles[h + 1]!];
  }
  return { ...mesh, triangles };
}

export function moved(mesh: Mesh, by: readonly number[]): Mesh {
  return { ...mesh, positions: mesh.positions.map((x, i) => x + by[i % 3]!) };
}

function gridMesh(n: number, m: number, at: (i: number, j: number) => readonly number[]): Mesh {
  const points = Array.from({ length: n * m }, (_, k) => at(Math.floor(k / m), k % m));
  const vertex = (i: number, j: number) => (i % n) * m + (j % m);
  const faces = points.flatMap((_, k) => {
    const [i, j] = [Math.floor(k / m), k % m];
    const [a, b, c, d] = [vertex(i, j), vertex(i + 1, j), vertex(i + 1, j + 1), vertex(i, j + 1)];
    return [
      [a, b, c],
      [a, c, d],
    ];
  });
  return meshOf(points, faces);
}
