/**
 * Is a mesh the boundary of a solid? The gate before every writer, and for anybody's mesh.
 *
 * Level `edges`: finite points, indices in range, every edge used exactly once in each direction, no triangle without
 * area, none twice, every shell the right way out. Level `full`: also nothing runs through itself, no shell stands in
 * another's material, and all of it again after rounding to 32-bit floats and welding equal points, as a reader of an
 * STL file does. All decisions are exact signs, in the mesh's own units (millimetres); nothing is repaired.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, hasErrors } from "../diagnostic.js";
import { roundToFloat32 } from "./float32.js";
import { pinchedVertices, surveyEdges, surveyShapes } from "./gate-edges.js";
import { surveyIntersections } from "./gate-intersections.js";
import { type MeshCounts, reportFindings } from "./gate-report.js";
import { findShells, overlappingShells } from "./gate-shells.js";
import type { Mesh } from "./mesh.js";

export type { MeshCounts } from "./gate-report.js";

/** How deep to look: topology and volume, or also self-intersection and 32-bit rounding. */
export type GateLevel = "edges" | "full";

/** How a mesh is judged. */
export interface GateOptions {
  /** Name of the piece, for messages. Default `The mesh`. */
  readonly name?: string;
  /** Millimetres, at least 0. A triangle less high than this over its longest side counts as degenerate. Default 0: only exactly flat ones. */
  readonly minAltitude?: number;
  /** `allow` passes over contact and overlap between different shells, as of pieces that touch. Default `refuse`. */
  readonly shellContacts?: "refuse" | "allow";
}

/** The verdict of the gate. */
export interface MeshReport extends MeshCounts {
  /** No error among the diagnostics. */
  readonly ok: boolean;
  readonly level: GateLevel;
  readonly diagnostics: readonly Diagnostic[];
  /** Level `full`: the same after rounding to 32-bit floats, and how many points fell together. */
  readonly float32: (MeshCounts & { readonly collapsedVertices: number }) | null;
}

const NOTHING: MeshCounts = {
  vertices: 0,
  edges: 0,
  triangles: 0,
  components: 0,
  euler: 0,
  openEdges: 0,
  degenerateTriangles: 0,
  duplicateTriangles: 0,
  wrongShells: null,
  pinchedVertices: null,
  volume: 0,
  leastAltitude: 0,
  selfIntersections: null,
  foldedEdges: null,
  overlappingShells: null,
};

/**
 * Judges a mesh; never repairs it. Several shells in one mesh are allowed.
 *
 * @param mesh - any mesh, millimetres
 * @param level - `edges` takes time in proportion to the triangles; `full` a few times longer
 * @returns counts and diagnostics: `mesh-malformed`, `mesh-empty`, `mesh-open-edge`, `mesh-degenerate-triangle`,
 * `mesh-duplicate-triangle`, `mesh-volume-not-positive`, `mesh-self-intersection`, `mesh-folded-edge`,
 * `mesh-shells-overlap`, the warning `mesh-pinched-vertex`, and the same with `float32-` for `mesh-` and
 * `float32-collapsed-vertex` after rounding
 * @example
 * ```ts
 * const report = checkMesh(mesh, "full", { name: "P3" });
 * if (!report.ok) for (const d of report.diagnostics) show(d.message, d.hint);
 * ```
 */
export function checkMesh(mesh: Mesh, level: GateLevel, options: GateOptions = {}): MeshReport {
  const name = options.name ?? "The mesh";
  const malformed = findMalformed(mesh, name);
  if (malformed) return { ...NOTHING, ok: false, level, diagnostics: [malformed], float32: null };
  const { counts, diagnostics } = judge(mesh, level, options, "mesh", name);
  const rounded = level === "full" && !hasErrors(diagnostics) ? roundToFloat32(mesh) : null;
  if (!rounded) return { ...counts, ok: !hasErrors(diagnostics), level, diagnostics, float32: null };
  const again = judge(rounded.mesh, level, { ...options, minAltitude: 0 }, "float32", name);
  const collapsed = collapsedDiagnostic(rounded.collapsed, name);
  const all = [...diagnostics, ...collapsed, ...again.diagnostics.filter((d) => d.severity === "error")];
  const float32 = { ...again.counts, collapsedVertices: rounded.collapsed };
  return { ...counts, ok: !hasErrors(all), level, diagnostics: all, float32 };
}

function judge(
  mesh: Mesh,
  level: GateLevel,
  options: GateOptions,
  prefix: "mesh" | "float32",
  name: string,
): { counts: MeshCounts; diagnostics: readonly Diagnostic[] } {
  const { positions, triangles } = mesh;
  const total = positions.length / 3;
  const edges = surveyEdges(total, triangles);
  const shapes = surveyShapes(positions, triangles, options.minAltitude ?? 0);
  const shells = findShells(positions, triangles, edges.opposite);
  const closed = edges.openEdges === 0;
  const vertices = countUsed(total, triangles);
  const allow = options.shellContacts === "allow";
  const deep = level === "full" && shapes.degenerate === 0;
  const crossings = deep
    ? surveyIntersections(positions, triangles, allow ? shells.shellOf : undefined)
    : undefined;
  const apart = crossings && !allow && closed && crossings.intersections + crossings.folded === 0;
  const counts: MeshCounts = {
    vertices,
    edges: edges.edges,
    triangles: triangles.length / 3,
    components: shells.count,
    euler: vertices - edges.edges + triangles.length / 3,
    openEdges: edges.openEdges,
    degenerateTriangles: shapes.degenerate,
    duplicateTriangles: edges.duplicateTriangles,
    wrongShells: closed ? shells.wrong.length : null,
    pinchedVertices: closed ? pinchedVertices(total, triangles, edges.opposite) : null,
    volume: shells.volumes.reduce((sum, v) => sum + v, 0),
    leastAltitude: Number.isFinite(shapes.leastAltitude) ? shapes.leastAltitude : 0,
    selfIntersections: crossings?.intersections ?? null,
    foldedEdges: crossings?.folded ?? null,
    overlappingShells: apart ? overlappingShells(positions, triangles, shells) : null,
  };
  const places = {
    openEdge: edges.firstOpen,
    degenerate: shapes.first,
    duplicate: edges.firstDuplicate,
    wrongShell: shells.wrong[0],
    pair: crossings?.firstPair,
    fold: crossings?.firstFold,
  };
  return { counts, diagnostics: reportFindings(mesh, counts, places, prefix, name) };
}

function collapsedDiagnostic(collapsed: number, name: string): Diagnostic[] {
  if (collapsed === 0) return [];
  return [
    diagnostic({
      code: "float32-collapsed-vertex",
      message: `${name}: ${collapsed} vertices fall onto another vertex of their body in 32-bit floats; expected none.`,
      hint: "Write the piece in its own frame, near the origin, or in a format that keeps doubles.",
      values: { collapsed },
    }),
  ];
}

function findMalformed({ positions, triangles }: Mesh, name: string): Diagnostic | undefined {
  const problem = (message: string, hint: string, values: Record<string, number>) =>
    diagnostic({ code: "mesh-malformed", message: `${name}: ${message}`, hint, values });
  const vertices = positions.length / 3;
  if (positions.length % 3 !== 0 || triangles.length % 3 !== 0) {
    const message = `expected three numbers per vertex and triangle, got ${positions.length} and ${triangles.length}.`;
    const values = { positions: positions.length, triangles: triangles.length };
    return problem(message, "Give both arrays in whole threes.", values);
  }
  if (triangles.length === 0) {
    const hint = "A piece that was not solved has no mesh: look at its own diagnostics first.";
    return { ...problem("it has no triangle; expected a closed surface.", hint, {}), code: "mesh-empty" };
  }
  let bad = 0;
  while (bad < positions.length && Number.isFinite(Math.fround(positions[bad] as number))) bad++;
  if (bad < positions.length) {
    const message = `vertex ${Math.floor(bad / 3)} has the coordinate ${positions[bad]}; expected a finite number, below 3.4e38.`;
    return problem(message, "Look for a division by zero where the mesh was made.", {
      vertex: Math.floor(bad / 3),
    });
  }
  let out = 0;
  while (out < triangles.length && (triangles[out] as number) < vertices) out++;
  if (out === triangles.length) return undefined;
  const message = `triangle ${Math.floor(out / 3)} names vertex ${triangles[out]}; expected below ${vertices}.`;
  return problem(message, "Indices count vertices from 0, not coordinates.", {
    triangle: Math.floor(out / 3),
  });
}

function countUsed(total: number, triangles: Uint32Array): number {
  const used = new Uint8Array(total);
  let count = 0;
  for (let h = 0; h < triangles.length; h++) {
    const v = triangles[h] as number;
    if (used[v] === 1) continue;
    used[v] = 1;
    count++;
  }
  return count;
}
