/**
 * What becomes of a mesh in a file that keeps 32-bit floats?
 *
 * Coordinates move to the nearest multiple of a spacing that grows with their distance from the origin (IEEE 754
 * binary32: 24 significant bits). Near the origin nothing is lost; a hundred metres away the spacing is 0.008 mm.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Mesh } from "./mesh.js";

/** A rounding may use up this part of the mesh's own tolerance: half of it is the error, the rest is room. */
const SHARE_OF_TOLERANCE = 1 / 4;

/** Spacing of 32-bit floats at a number: the step to the next one of greater magnitude. Not finite: Infinity. */
export function float32Spacing(x: number): number {
  const bits = new Uint32Array(Float32Array.of(x).buffer)[0] as number;
  const exponent = (bits >>> 23) & 0xff;
  if (exponent === 0xff) return Infinity;
  return 2 ** (Math.max(exponent, 1) - 150);
}

/**
 * Whether a mesh may be written in 32-bit floats: their spacing at its largest coordinate must not exceed a quarter of
 * the tolerance.
 *
 * @param mesh - finite positions, millimetres
 * @param tolerance - the chord tolerance the mesh was made to, millimetres, above zero
 * @param name - of the piece, for the message
 * @returns the spacing in millimetres, and `float32-too-coarse` when it is too wide
 * @example
 * ```ts
 * float32Check(postMesh, 0.05).ok; // true for a post in its own frame
 * ```
 */
export function float32Check(
  mesh: Mesh,
  tolerance: number,
  name = "The mesh",
): { readonly ok: boolean; readonly spacing: number; readonly diagnostics: readonly Diagnostic[] } {
  let largest = 0;
  const { positions } = mesh;
  for (let i = 0; i < positions.length; i++) largest = Math.max(largest, Math.abs(positions[i] as number));
  const spacing = float32Spacing(largest);
  const limit = SHARE_OF_TOLERANCE * tolerance;
  if (spacing <= limit) return { ok: true, spacing, diagnostics: [] };
  const finding = diagnostic({
    code: "float32-too-coarse",
    message:
      `${name} reaches ${largest} mm from the origin, where 32-bit floats are ${spacing} mm apart; ` +
      `a mesh made to ${tolerance} mm needs ${limit} mm or finer.`,
    hint: "Write one file per piece, each in the piece's own frame, or a format that keeps doubles (OBJ).",
    values: { largest, spacing, tolerance, limit },
  });
  return { ok: false, spacing, diagnostics: [finding] };
}

/**
 * The mesh as a reader of a 32-bit file sees it: rounded, and within each body welded where points are equal. A body is
 * what hangs together over vertices; points of different bodies are kept apart, so that pieces which touch stay pieces.
 *
 * @param mesh - indices in range; vertices that no triangle uses are dropped
 * @returns the mesh, and how many of the points in use fell onto another point of their body
 */
export function roundToFloat32(mesh: Mesh): { readonly mesh: Mesh; readonly collapsed: number } {
  const rounded = Float32Array.from(mesh.positions);
  const bodyOf = findBodies(mesh);
  const newIndex = new Int32Array(bodyOf.length).fill(-1);
  const places = new Map<string, number>();
  const positions: number[] = [];
  let used = 0;
  const triangles = mesh.triangles.map((v) => {
    const known = newIndex[v] as number;
    if (known >= 0) return known;
    used++;
    const [x, y, z] = [rounded[3 * v] as number, rounded[3 * v + 1] as number, rounded[3 * v + 2] as number];
    const key = `${bodyOf[v]}:${x},${y},${z}`;
    const place = places.get(key) ?? places.size;
    if (place === places.size) {
      places.set(key, place);
      positions.push(x + 0, y + 0, z + 0);
    }
    newIndex[v] = place;
    return place;
  });
  return { mesh: { positions: Float64Array.from(positions), triangles }, collapsed: used - places.size };
}

/** Per vertex a vertex that stands for its body: disjoint sets joined along every triangle. */
function findBodies({ positions, triangles }: Mesh): Uint32Array {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, v) => v);
  const rootOf = (v: number): number => {
    let at = v;
    for (let up = parent[at] as number; up !== at; up = parent[at] as number) {
      parent[at] = parent[up] as number;
      at = up;
    }
    return at;
  };
  for (let h = 0; h < triangles.length; h += 3) {
    const root = rootOf(triangles[h] as number);
    parent[rootOf(triangles[h + 1] as number)] = root;
    parent[rootOf(triangles[h + 2] as number)] = root;
  }
  return parent.map((_, v) => rootOf(v));
}
