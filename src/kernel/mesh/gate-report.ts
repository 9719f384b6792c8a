/**
 * What the mesh gate says: one diagnostic per kind of finding, with its count and the place of the first.
 *
 * Codes begin with `mesh-` for the mesh as given and with `float32-` for the mesh as a 32-bit file keeps it.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic, type Severity } from "../diagnostic.js";
import type { Vec3 } from "../vec.js";
import type { Mesh } from "./mesh.js";

/** Counts of everything looked at; null where the level, or an earlier finding, kept the gate from looking. */
export interface MeshCounts {
  /** Vertices in use by a triangle. */
  readonly vertices: number;
  readonly edges: number;
  readonly triangles: number;
  /** Shells: what hangs together over edges. */
  readonly components: number;
  /** Vertices − edges + triangles: 2 for a ball, 0 for a tube, summed over shells. */
  readonly euler: number;
  /** Edges not used exactly once in each direction. */
  readonly openEdges: number;
  readonly degenerateTriangles: number;
  /** Triangles on the same three vertices as an earlier one. */
  readonly duplicateTriangles: number;
  /** Shells inside out or without volume; null while edges are open. */
  readonly wrongShells: number | null;
  /** Vertices where the surface is pinched to a point; null while edges are open. */
  readonly pinchedVertices: number | null;
  /** mm³, signed, all shells together; means nothing while edges are open. */
  readonly volume: number;
  /** Millimetres: least height of a triangle that is not degenerate over its longest side. */
  readonly leastAltitude: number;
  /** Pairs of triangles that meet beyond what they share. */
  readonly selfIntersections: number | null;
  /** Pairs of neighbours folded flat onto each other. */
  readonly foldedEdges: number | null;
  /** Shells inside another's material, or cavities outside any. */
  readonly overlappingShells: number | null;
}

/** Where the first finding of each kind is: vertex, triangle or shell numbers. */
export interface FindingPlaces {
  readonly openEdge: readonly [number, number] | undefined;
  readonly degenerate: number | undefined;
  readonly duplicate: number | undefined;
  readonly wrongShell: number | undefined;
  readonly pair: readonly [number, number] | undefined;
  readonly fold: readonly [number, number] | undefined;
}

/** The diagnostics for the counts of one look at a mesh, before (`mesh`) or after (`float32`) rounding. */
export function reportFindings(
  mesh: Mesh,
  counts: MeshCounts,
  at: FindingPlaces,
  prefix: "mesh" | "float32",
  name: string,
): readonly Diagnostic[] {
  const when = prefix === "float32" ? " after rounding to 32-bit floats" : "";
  const out: Diagnostic[] = [];
  const say = (
    count: number | null,
    code: string,
    what: string,
    hint: string,
    place?: Vec3,
    severity: Severity = "error",
  ) => {
    if (!count) return;
    out.push(
      diagnostic({
        code: `${prefix}-${code}`,
        severity,
        message: `${name}: expected none but got ${count} ${what}${when}.`,
        hint: prefix === "float32" ? `${hint} ${FLOAT32_HINT}` : hint,
        values: { count },
        ...(place && { point: place }),
      }),
    );
  };
  const vertex = (v: number): Vec3 => [
    mesh.positions[3 * v] as number,
    mesh.positions[3 * v + 1] as number,
    mesh.positions[3 * v + 2] as number,
  ];
  const corner = (t: number | undefined) =>
    t === undefined ? undefined : vertex(mesh.triangles[3 * t] as number);
  const [v, w] = at.openEdge ?? [];
  say(
    counts.openEdges,
    "open-edge",
    `edges not used exactly once in each direction, the first between vertices ${v} and ${w}`,
    "Weld equal points, close holes, and run all triangles counter-clockwise seen from outside.",
    v === undefined ? undefined : vertex(v),
  );
  say(
    counts.degenerateTriangles,
    "degenerate-triangle",
    `triangles without area, the first is triangle ${at.degenerate}`,
    "Leave out points that repeat or lie on the line between their neighbours.",
    corner(at.degenerate),
  );
  say(
    counts.duplicateTriangles,
    "duplicate-triangle",
    `triangles on the same three vertices as another, the first is triangle ${at.duplicate}`,
    "Leave out the copy, or both if they face each other.",
    corner(at.duplicate),
  );
  say(
    counts.wrongShells,
    "volume-not-positive",
    `shells inside out or without volume, the first is shell ${at.wrongShell}; all together hold ${counts.volume} mm3`,
    "Turn every triangle of the shell round.",
  );
  say(
    counts.selfIntersections,
    "self-intersection",
    `pairs of triangles that meet beyond what they share, the first are ${at.pair?.join(" and ")}`,
    "Pieces that touch or overlap need a mesh of their own each.",
    corner(at.pair?.[0]),
  );
  say(
    counts.foldedEdges,
    "folded-edge",
    `pairs of neighbours folded flat onto each other, the first are ${at.fold?.join(" and ")}`,
    "Leave out both triangles, or move the point that lies on the wrong side of their common edge.",
    corner(at.fold?.[0]),
  );
  say(
    counts.overlappingShells,
    "shells-overlap",
    "shells inside another's material, or cavities outside any",
    "Give each piece a mesh of its own; turn the wall of a cavity inside out.",
  );
  say(
    counts.pinchedVertices,
    "pinched-vertex",
    "vertices where the surface is pinched to a point",
    "A reader may split such a vertex; give each part a vertex of its own.",
    undefined,
    "warning",
  );
  return out;
}

const FLOAT32_HINT = "Near the origin, in the piece's own frame, 32-bit floats are finer.";
