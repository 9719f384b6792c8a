/**
 * Meshes to and from the `geom3` of @jscad/modeling, an exchange type of many programs.
 *
 * A geom3 is a list of flat convex polygons, each with its own corners, and a transform still to be applied. Going there
 * each triangle becomes a polygon; coming back polygons are cut into triangles and equal corners welded, exactly. The
 * library's booleans are not used: a mesh made by them may have open edges, which `checkMesh` reports.
 *
 * The library is CommonJS whose names Node cannot see, hence its default import; its types stay out of the exports.
 *
 * @packageDocumentation
 */
import modeling from "@jscad/modeling";
import serializer from "@jscad/stl-serializer";
import type { Mesh } from "../../../kernel/mesh/mesh.js";
import { triangulateConvex } from "./convex.js";

type Point = [number, number, number];

/** Sixteen numbers, column by column. */
// biome-ignore format: four columns of four
export type Geom3Transform = [
  number, number, number, number,
  number, number, number, number,
  number, number, number, number,
  number, number, number, number,
];

/** What a geom3 is made of, by structure: interchangeable with the library's own type, without naming it. */
export interface Geom3Like {
  polygons: { vertices: Point[] }[];
  transforms: Geom3Transform;
}

/**
 * A mesh as a geom3, one polygon per triangle, coordinates unchanged.
 *
 * @param mesh - indices in range, millimetres
 * @example
 * ```ts
 * const solid = toGeom3(mesh);
 * modeling.measurements.measureVolume(solid); // mm³
 * ```
 */
export function toGeom3({ positions, triangles }: Mesh): Geom3Like {
  const point = (v: number): Point => [
    positions[3 * v] as number,
    positions[3 * v + 1] as number,
    positions[3 * v + 2] as number,
  ];
  const polygons: { vertices: Point[] }[] = [];
  for (let h = 0; h < triangles.length; h += 3) {
    const corners = [0, 1, 2].map((k) => point(triangles[h + k] as number));
    polygons.push(modeling.geometries.poly3.create(corners));
  }
  return modeling.geometries.geom3.create(polygons);
}

/**
 * A geom3 as a mesh: its transform applied, its polygons cut into triangles, corners with exactly equal coordinates
 * welded. Nothing is repaired or judged; pass the result to `checkMesh`.
 *
 * @param geom3 - flat convex polygons, counter-clockwise seen from outside; not changed
 */
export function fromGeom3(geom3: Geom3Like): Mesh {
  const { geom3: geometry } = modeling.geometries;
  // The library applies a pending transform by writing to the object, so it is given a copy.
  const polygons = geometry.toPolygons(geometry.clone(geom3));
  const places = new Map<string, number>();
  const positions: number[] = [];
  const triangles: number[] = [];
  const weld = ([x, y, z]: Point): number => {
    const key = `${x},${y},${z}`;
    const place = places.get(key) ?? places.size;
    if (place === places.size) {
      places.set(key, place);
      positions.push(x + 0, y + 0, z + 0);
    }
    return place;
  };
  for (const { vertices } of polygons) {
    const corners = vertices.map(weld);
    for (const [a, b, c] of triangulateConvex(vertices)) {
      triangles.push(corners[a] as number, corners[b] as number, corners[c] as number);
    }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/**
 * A binary STL file written by @jscad/stl-serializer, for programs built round it. It snaps points to its own grid
 * first and checks nothing; `toStlBinary` does neither and checks.
 *
 * @param solids - at least one
 */
export function geom3ToStl(...solids: readonly Geom3Like[]): Uint8Array {
  const parts = serializer.serialize({ binary: true }, ...solids).map((part) => {
    return typeof part === "string" ? new TextEncoder().encode(part) : new Uint8Array(part);
  });
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let offset = 0;
  for (const part of parts) {
    bytes.set(part, offset);
    offset += part.length;
  }
  return bytes;
}
