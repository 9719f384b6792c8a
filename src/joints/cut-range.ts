/**
 * The faces of one end cut, which face of the mate they meet, and the range of their distance from it.
 *
 * Extremes are found along the exact edges of the cut by slope, and inside it in closed form (`stationary.ts`).
 * Millimetres, the yielding piece's frame.
 *
 * @packageDocumentation
 */
import { evaluate } from "../kernel/curve/curve.js";
import { type Extremes, extremesAlong, type Field, including } from "../kernel/edge-extremes.js";
import type { EndExpression, HitContact, PlaneContact } from "../kernel/end.js";
import { endAt } from "../kernel/end-compile.js";
import { directionToParent, pointToLocal, pointToParent } from "../kernel/frame.js";
import { loopDistance } from "../kernel/loop-distance.js";
import { regionContains } from "../kernel/region-contains.js";
import type { Edge, Face } from "../kernel/solid.js";
import { ON_SURFACE_MM } from "../kernel/tolerance.js";
import { dot, normalize, scale, sub, type Vec3 } from "../kernel/vec.js";
import { type Body, fromCut, fromEnd, fromMaterial, fromSkin, type Mate } from "./mate.js";
import type { Contact } from "./piece.js";
import { nearestToLine } from "./stationary.js";

/** Faces of a cut onto one mate. */
export interface CutFaces {
  readonly onMate: readonly Face[];
  /** Flats that close a branch beside a narrower header. */
  readonly shoulders: readonly Face[];
}

/** The faces that a contact's cut has onto its mate. */
export function cutFaces(body: Body, { end, onto }: Contact): CutFaces {
  const all = body.solid.faces.filter(
    ({ provenance: from }) => from.from === "end" && from.end === end && from.onto === onto,
  );
  const hit = hitOnto(body.piece.ends[end], onto);
  if (hit?.skin.shoulder !== "midline") return { onMate: all, shoulders: [] };
  const shoulders = all.filter((f) => edgesOf(body, [f]).some((edge) => !liesOn(hit, edge)));
  return { onMate: all.filter((f) => !shoulders.includes(f)), shoulders };
}

function hitOnto(e: EndExpression, onto: string): HitContact | undefined {
  if (e.kind === "hit") return e.source.onto === onto ? e : undefined;
  return e.kind === "plane" ? undefined : e.of.map((x) => hitOnto(x, onto)).find((x) => x !== undefined);
}

/** Is the middle of an edge on the skin (and a root gap away) that the cut was made to? */
function liesOn({ skin }: HitContact, { curve, t0, t1 }: Edge): boolean {
  const [u, v] = pointToLocal(skin.frame, evaluate(curve, (t0 + t1) / 2));
  return Math.abs(loopDistance(skin.loop, [u, v]).distance - (skin.gap ?? 0)) <= ON_SURFACE_MM;
}

/** The edges of some faces, each once. */
export function edgesOf({ solid }: Body, faces: readonly Face[]): Edge[] {
  const used = new Set(faces.flatMap((f) => f.loops.flat().map((use) => use.edge)));
  return [...used].map((edge) => solid.edges[edge] as Edge);
}

/** The edges in which the outside of a piece meets its cut onto a mate. */
export function rimOfCut(body: Body, contact: Contact): Edge[] {
  const sides = body.solid.faces.filter(({ provenance: from }) => from.from === "side" && from.loop === 0);
  const outside = new Set(edgesOf(body, sides));
  return edgesOf(body, cutFaces(body, contact).onMate).filter((edge) => outside.has(edge));
}

/**
 * Distance from the face of the mate that a contact's cut meets; null where it is to meet none.
 *
 * @param beside - the other mates of the same cut: where rails run on in one line, the cut onto one is closed by the next
 */
export function faceMet(contact: Contact, body: Body, mate: Mate, beside: readonly Mate[]): Field | null {
  switch (contact.kind) {
    case "flush":
      return null;
    case "cope":
      return nearestOf([mate, ...beside].map(fromSkin));
    case "miter": {
      const shared = mate.piece.cuts.find((c) => c.kind === "miter" && c.onto.includes(contact.piece));
      return shared ? fromCut(mate, shared.end) : (fromPartingPlane(mate, contact.piece) ?? fromSkin(mate));
    }
    case "seat":
      return seatOn(contact, body, mate);
  }
}

/** Distance from the plane that parts a mate from a piece beside it on one header; null where it has none. */
function fromPartingPlane(mate: Mate, id: string): Field | null {
  for (const end of [0, 1] as const) {
    const plane = planeOnto(mate.piece.ends[end], id);
    if (!plane) continue;
    const outward = plane.normal[2] * (end === 0 ? -1 : 1) > 0 ? 1 : -1;
    const normal = scale(normalize(plane.normal), outward);
    const gradient = directionToParent(mate.stand, normal);
    return (p) => ({ value: dot(sub(pointToLocal(mate.stand, p), plane.point), normal), gradient });
  }
  return null;
}

function planeOnto(e: EndExpression, onto: string): PlaneContact | undefined {
  if (e.kind === "plane") return e.source.onto === onto ? e : undefined;
  return e.kind === "hit" ? undefined : e.of.map((x) => planeOnto(x, onto)).find((x) => x !== undefined);
}

function nearestOf(fields: readonly Field[]): Field {
  const [only] = fields as [Field];
  if (fields.length === 1) return only;
  return (p) => fields.map((f) => f(p)).reduce((best, x) => (x.value < best.value ? x : best));
}

/** A seat meets the face that the middle of its cut is outermost of: an end of the mate, or its skin. */
function seatOn(contact: Contact, body: Body, mate: Mate): Field {
  const compiled = contact.end === 0 ? body.low : body.high;
  const middle: Vec3 = [0, 0, compiled.dir * endAt(compiled, 0, 0).out];
  const { gradient } = fromMaterial(mate)(middle);
  const along = gradient[0] * mate.stand.z[0] + gradient[1] * mate.stand.z[1] + gradient[2] * mate.stand.z[2];
  if (Math.abs(along) <= ON_SURFACE_MM) return fromSkin(mate);
  return fromEnd(mate, along > 0 ? 1 : 0);
}

/** Least and greatest of a distance over faces; null without faces. */
export function rangeOver(body: Body, faces: readonly Face[], field: Field, mate: Mate): Extremes | null {
  let found = extremesAlong(edgesOf(body, faces), field);
  for (const face of faces) {
    for (const p of inside(body, face, mate)) found = including(found, field(p).value, p);
  }
  return found;
}

/** Places inside a face where its distance from a round side of the mate is stationary. */
function inside(body: Body, face: Face, mate: Mate): Vec3[] {
  return mate.piece.section.region.outer.flatMap((side) => {
    if (side.kind === "line") return [];
    const axis = pointToParent(mate.stand, [side.centre[0], side.centre[1], 0]);
    const along = directionToParent(mate.stand, [0, 0, 1]);
    return nearestToLine(face.surface, axis, along).filter((p) => isOn(body, face, p));
  });
}

function isOn(body: Body, { provenance }: Face, [u, v, s]: Vec3): boolean {
  if (provenance.from !== "end" || !regionContains(body.piece.section.region, [u, v])) return false;
  const end = provenance.end === 0 ? body.low : body.high;
  return Math.abs(endAt(end, u, v).out - end.dir * s) <= ON_SURFACE_MM;
}
