/**
 * Which edges bound a fin too thin for the mesh to have?
 *
 * Where a flat face of a header runs almost along a cylinder of the branch, a fin is left standing: a flat face between one
 * arch and one straight line, with the cylinder close behind it. When the arch keeps to one strip of the cylinder, all its
 * points are in one plane and both sides of the fin are the same polygon: nothing is between them, and triangles that reach
 * from the cylinder past the fin's foot would cut through it. A fin taller than wide is left off at its foot, which is
 * within the chord of the cylinder: the arch gets no points, so that it falls on the line.
 *
 * @packageDocumentation
 */
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { distance, dot, sub, type Vec3 } from "../vec.js";
import type { EdgeSamples } from "./edge-samples.js";

/** Slack in steps when it is asked whether points keep to one strip. */
const SLACK = 1e-3;

/** What is left off: arches that are to have no points, and for each vertex on the way the foot's vertex it falls on. */
export interface LeftOff {
  readonly arches: ReadonlySet<number>;
  readonly fallen: ReadonlyMap<number, number>;
}

/** The fins of a solid, sampled without regard to them. An arch may be of several edges, where the cylinder is of several sides' edges. */
export function finsOf(solid: Solid, samples: EdgeSamples, beside: readonly number[]): LeftOff {
  const arches = new Set<number>();
  const fallen = new Map<number, number>();
  for (const [own, { surface, loops }] of solid.faces.entries()) {
    const [loop] = loops;
    if (surface.kind !== "plane" || loops.length !== 1 || !loop || loop.length < 2) continue;
    const chain = archOver(solid, loop);
    if (chain === null) continue;
    const faces = chain.map(({ edge }) => otherFace(beside, edge, own));
    const face = solid.faces[faces[0] as number];
    if (face?.surface.kind !== "cylinder" || faces.some((f) => f !== faces[0])) continue;
    if (!standsOn(solid, samples, { face, index: faces[0] as number, beside }, chain)) continue;
    const foot = startOf(solid, chain[0] as EdgeUse);
    for (const [k, use] of chain.entries()) {
      arches.add(use.edge);
      if (k > 0) fallen.set(startOf(solid, use), foot);
    }
  }
  return { arches, fallen };
}

/** The curved uses of a loop in order, when it has one line and no more; null otherwise. */
function archOver({ edges }: Solid, loop: readonly EdgeUse[]): readonly EdgeUse[] | null {
  const isLine = ({ edge }: EdgeUse): boolean => edges[edge]?.curve.kind === "line";
  const at = loop.findIndex(isLine);
  if (at < 0 || loop.filter(isLine).length !== 1) return null;
  return [...loop.slice(at + 1), ...loop.slice(0, at)];
}

function startOf({ edges }: Solid, { edge, forward }: EdgeUse): number {
  const { from, to } = edges[edge] as Edge;
  return forward ? from : to;
}

function otherFace(beside: readonly number[], edge: number, own: number): number {
  const first = beside[2 * edge] as number;
  return first === own ? (beside[2 * edge + 1] as number) : first;
}

interface Cylinder {
  readonly face: Face;
  readonly index: number;
  readonly beside: readonly number[];
}

/** True when the arch is in one strip of the face, has the face inside, and is higher over its foot than the foot is long. */
function standsOn(
  solid: Solid,
  samples: EdgeSamples,
  { face, index, beside }: Cylinder,
  arch: readonly EdgeUse[],
): boolean {
  const chain = arch.flatMap((use) => {
    const points = turnsAlong(solid, samples, use, beside[2 * use.edge] === index ? 0 : 1);
    return use === arch[0] ? points : points.slice(1);
  });
  const along = chain.map(([turn]) => turn);
  if (Math.ceil(Math.max(...along) - SLACK) - Math.floor(Math.min(...along) + SLACK) > 1) return false;
  const [, a] = chain[0] as Turned;
  const [, b] = chain[chain.length - 1] as Turned;
  const wide = distance(a, b);
  if (!chain.some(([, p]) => fromLine(p, a, b) > wide)) return false;
  const { z } = face.surface.frame;
  let area = 0;
  for (let k = 0; k < chain.length; k++) {
    const [x, p] = chain[k] as Turned;
    const [xNext, q] = chain[(k + 1) % chain.length] as Turned;
    area += x * dot(sub(q, a), z) - xNext * dot(sub(p, a), z);
  }
  // The chain runs as the flat face's loop has it, the cylinder's own loop the other way.
  return area * face.sense < 0;
}

/** A point with its angle about the cylinder in steps. */
type Turned = readonly [number, Vec3];

/** Points of an edge along its use, ends included. */
function turnsAlong(
  { edges, vertices }: Solid,
  { positions, first, turns }: EdgeSamples,
  { edge, forward }: EdgeUse,
  side: 0 | 1,
): readonly Turned[] {
  const { from, to } = edges[edge] as Edge;
  const { atEnds, atPoints } = turns[side];
  const out: Turned[] = [[atEnds[2 * edge] as number, vertices[from] as Vec3]];
  for (let v = first[edge] as number; v < (first[edge + 1] as number); v++) {
    const p: Vec3 = [
      positions[3 * v] as number,
      positions[3 * v + 1] as number,
      positions[3 * v + 2] as number,
    ];
    out.push([atPoints[v] as number, p]);
  }
  out.push([atEnds[2 * edge + 1] as number, vertices[to] as Vec3]);
  return forward ? out : out.reverse();
}

function fromLine(p: Vec3, a: Vec3, b: Vec3): number {
  const [u, w] = [sub(b, a), sub(p, a)];
  const along = dot(w, u) / dot(u, u);
  return Math.hypot(w[0] - along * u[0], w[1] - along * u[1], w[2] - along * u[2]);
}
