/**
 * Which edges bound a fin too thin for the mesh to have?
 *
 * Where a flat face of a header runs almost along a cylinder of the branch, a fin is left standing: a flat face between one
 * arch and one straight line, with the cylinder close behind it. When the arch keeps to one strip of the cylinder, all its
 * points are in one plane and both sides of the fin are the same polygon: nothing is between them, and triangles that reach
 * from the cylinder past the fin's foot would cut through it. A fin taller than wide is left off at its foot, which is
 * within the chord of the cylinder: the arch gets no points, so that it falls on the line. So is one that reaches over
 * several strips, but is thinner than an edge may be short: its sides would fold in the rounding of a file. There the
 * rulings go through the line, and the arch through the same points.
 *
 * @packageDocumentation
 */
import { evaluate } from "../curve/curve.js";
import type { Edge, EdgeUse, Face, Solid } from "../solid.js";
import { type CylinderSurface, distanceTo } from "../surface.js";
import { addScaled, distance, dot, lerp, near, sub, type Vec3 } from "../vec.js";
import type { EdgeSamples } from "./edge-samples.js";
import type { Crossings } from "./ruling-crossings.js";

/** Slack in steps when it is asked whether points keep to one strip. */
const SLACK = 1e-3;

/**
 * What is left off: arches that are to have no points of their own, each with the straight edge it falls on where rulings
 * go through that, and for each vertex on the way the foot's vertex it falls on.
 */
export interface LeftOff {
  readonly arches: ReadonlyMap<number, number | null>;
  readonly fallen: ReadonlyMap<number, number>;
}

/** The fins of a solid, sampled without regard to them; `thin` is how short an edge may be, millimetres. An arch may be of several edges, where the cylinder is of several sides' edges. */
export function finsOf(solid: Solid, samples: EdgeSamples, beside: readonly number[], thin: number): LeftOff {
  const arches = new Map<number, number | null>();
  const fallen = new Map<number, number>();
  for (const [own, { surface, loops }] of solid.faces.entries()) {
    const [loop] = loops;
    if (surface.kind !== "plane" || loops.length !== 1 || !loop || loop.length < 2) continue;
    const found = archOver(solid, loop);
    if (found === null) continue;
    const { chain, line } = found;
    const faces = chain.map(({ edge }) => otherFace(beside, edge, own));
    const face = solid.faces[faces[0] as number];
    if (face?.surface.kind !== "cylinder" || faces.some((f) => f !== faces[0])) continue;
    const cylinder = { face, index: faces[0] as number, beside };
    const over = standsOn(solid, samples, cylinder, chain, chain.length === 1 ? thin : 0);
    if (!over) continue;
    const foot = startOf(solid, chain[0] as EdgeUse);
    for (const [k, use] of chain.entries()) {
      arches.set(use.edge, over === "rulings" ? line : null);
      if (k > 0) fallen.set(startOf(solid, use), foot);
    }
  }
  return { arches, fallen };
}

/** The curved uses of a loop in order and its line, when it has one and no more; null otherwise. */
function archOver(
  { edges }: Solid,
  loop: readonly EdgeUse[],
): { readonly chain: readonly EdgeUse[]; readonly line: number } | null {
  const isLine = ({ edge }: EdgeUse): boolean => edges[edge]?.curve.kind === "line";
  const at = loop.findIndex(isLine);
  if (at < 0 || loop.filter(isLine).length !== 1) return null;
  return { chain: [...loop.slice(at + 1), ...loop.slice(0, at)], line: (loop[at] as EdgeUse).edge };
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

/**
 * Whether a fin is left off, and what its foot is over: false unless the arch has the face inside and is higher over its
 * foot than the foot is long, and is in one strip of the face or has its foot nearer to the face than `thin`.
 */
function standsOn(
  solid: Solid,
  samples: EdgeSamples,
  { face, index, beside }: Cylinder,
  arch: readonly EdgeUse[],
  thin: number,
): false | "strip" | "rulings" {
  const chain = arch.flatMap((use) => {
    const points = turnsAlong(solid, samples, use, beside[2 * use.edge] === index ? 0 : 1);
    return use === arch[0] ? points : points.slice(1);
  });
  const along = chain.map(([turn]) => turn);
  const inOne = Math.ceil(Math.max(...along) - SLACK) - Math.floor(Math.min(...along) + SLACK) <= 1;
  const [, a] = chain[0] as Turned;
  const [, b] = chain[chain.length - 1] as Turned;
  if (!inOne && Math.abs(distanceTo(face.surface, lerp(a, b, 0.5))) >= thin) return false;
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
  if (area * face.sense >= 0) return false;
  return inOne ? "strip" : "rulings";
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

/** Adds the points of an arch that falls on a straight edge: where the rulings of its cylinder go through that. */
export function addGrounded(
  solid: Solid,
  arch: Edge,
  line: Edge,
  surface: CylinderSurface,
  crossings: Crossings,
  within: number,
  add: (p: Vec3, ruling: number) => void,
): void {
  const [a, b] = [solid.vertices[line.from] as Vec3, solid.vertices[line.to] as Vec3];
  const { z } = surface.frame;
  const across = (p: Vec3): Vec3 => addScaled(sub(p, a), z, -dot(sub(p, a), z));
  const whole = across(b);
  const back = arch.t1 < arch.t0;
  for (let k = 0; k < crossings.count; k++) {
    const i = back ? crossings.count - 1 - k : k;
    const along = dot(across(evaluate(arch.curve, crossings.t[i] as number)), whole) / dot(whole, whole);
    const p = lerp(a, b, along);
    if (!near(p, a, within) && !near(p, b, within)) add(p, crossings.ruling[i] as number);
  }
}

function fromLine(p: Vec3, a: Vec3, b: Vec3): number {
  const [u, w] = [sub(b, a), sub(p, a)];
  const along = dot(w, u) / dot(u, u);
  return Math.hypot(w[0] - along * u[0], w[1] - along * u[1], w[2] - along * u[2]);
}
