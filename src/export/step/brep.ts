/**
 * One solid as a MANIFOLD_SOLID_BREP: vertices, edges with their curves, faces on planes and cylinders, one closed shell.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";
import type { Edge, Provenance, Solid } from "../../kernel/solid.js";
import { ON_SURFACE_MM, STEP_FIT_MM } from "../../kernel/tolerance.js";
import { distance, type Vec3 } from "../../kernel/vec.js";
import { weldedVertices } from "../../kernel/welded-vertices.js";
import { chartOf } from "./chart.js";
import { type Beside, writeCurve } from "./edge-geometry.js";
import { refs, text } from "./part21.js";
import type { Sink } from "./sink.js";

/**
 * Writes a solid; its number.
 *
 * @throws RakewrightError `step-edge-not-fitted`
 */
export function writeBrep(sink: Sink, solid: Solid, name: string): number {
  const surfaces = solid.faces.map((face): Beside => {
    const chart = chartOf(solid, face);
    const place = sink.placement(chart.frame);
    const id =
      chart.kind === "plane"
        ? sink.put(`PLANE('',#${place})`)
        : sink.put(`CYLINDRICAL_SURFACE('',#${place},${sink.length(chart.radius)})`);
    return { chart, id };
  });
  const same = weldedVertices(solid, ON_SURFACE_MM);
  const vertices = solid.vertices.map((p, v) =>
    same[v] === v ? sink.put(`VERTEX_POINT('',#${sink.point(p)})`) : 0,
  );
  const beside = facesBeside(solid, surfaces);
  const edges: ({ readonly id: number; readonly reversed: boolean } | null)[] = [];
  for (const [e, edge] of solid.edges.entries()) {
    // An edge shorter than a reader can see is its two ends' one point.
    if (same[edge.from] === same[edge.to] && isShort(solid, edge)) {
      edges.push(null);
      continue;
    }
    const written = writeCurve(sink, edge, beside[e] as readonly Beside[]);
    if (written === null) throw notFitted(e, edge);
    const [from, to] = written.reversed ? [edge.to, edge.from] : [edge.from, edge.to];
    const ends = `#${vertices[same[from] as number]},#${vertices[same[to] as number]}`;
    edges.push({ id: sink.put(`EDGE_CURVE('',${ends},#${written.id},.T.)`), reversed: written.reversed });
  }
  const faces = solid.faces.map(({ sense, loops, provenance }, f) => {
    const bounds = loops.map((loop, l) => {
      const uses = loop.flatMap(({ edge, forward }) => {
        const written = edges[edge];
        if (!written) return [];
        return sink.put(
          `ORIENTED_EDGE('',*,*,#${written.id},${forward !== written.reversed ? ".T." : ".F."})`,
        );
      });
      const ring = sink.put(`EDGE_LOOP('',${refs(uses)})`);
      return sink.put(`${l === 0 ? "FACE_OUTER_BOUND" : "FACE_BOUND"}('',#${ring},.T.)`);
    });
    const label = text(faceName(provenance));
    return sink.put(
      `ADVANCED_FACE(${label},${refs(bounds)},#${(surfaces[f] as Beside).id},${sense === 1 ? ".T." : ".F."})`,
    );
  });
  const shell = sink.put(`CLOSED_SHELL('',${refs(faces)})`);
  return sink.put(`MANIFOLD_SOLID_BREP(${text(name)},#${shell})`);
}

function isShort({ vertices }: Solid, { from, to }: Edge): boolean {
  return distance(vertices[from] as Vec3, vertices[to] as Vec3) <= ON_SURFACE_MM;
}

/** Where a face came from, for modellers that show names of faces. */
function faceName(p: Provenance): string {
  switch (p.from) {
    case "side":
      return `side ${p.label}`;
    case "end":
      return p.onto === "" ? `end ${p.end}` : `end ${p.end} to ${p.onto}`;
    case "bore":
      return `bore ${p.bore}`;
    case "relief":
      return `relief at end ${p.end}`;
  }
}

/** The two faces of every edge, in the order of their uses. */
function facesBeside(solid: Solid, surfaces: readonly Beside[]): readonly (readonly Beside[])[] {
  const out = solid.edges.map((): Beside[] => []);
  for (const [f, { loops }] of solid.faces.entries())
    for (const loop of loops)
      for (const { edge } of loop) (out[edge] as Beside[]).push(surfaces[f] as Beside);
  return out;
}

function notFitted(e: number, { curve }: Edge): RakewrightError {
  return new RakewrightError({
    code: "step-edge-not-fitted",
    message: `Edge ${e} (${curve.kind}): expected a spline within ${STEP_FIT_MM} mm of its curve, got none with thousands of spans.`,
    hint: "Report the design: it is a fault of the exporter. The mesh formats can still be written.",
    values: { edge: e },
  });
}
