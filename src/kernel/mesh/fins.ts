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

/** Curved edges of a solid, sampled without regard to fins, that are to have no points. */
export function archesOfFins(
  solid: Solid,
  samples: EdgeSamples,
  beside: readonly number[],
): ReadonlySet<number> {
  const out = new Set<number>();
  for (const { surface, loops } of solid.faces) {
    const [loop] = loops;
    if (surface.kind !== "plane" || loops.length !== 1 || loop?.length !== 2) continue;
    const arch = loop.find(({ edge }) => solid.edges[edge]?.curve.kind !== "line")?.edge;
    if (arch === undefined || loop.every(({ edge }) => solid.edges[edge]?.curve.kind !== "line")) continue;
    for (const side of [0, 1] as const) {
      const face = solid.faces[beside[2 * arch + side] as number];
      if (face?.surface.kind === "cylinder" && standsOn(solid, samples, face, arch, side)) out.add(arch);
    }
  }
  return out;
}

/** True when the arch is in one strip of the face, has the face inside, and is higher over its foot than the foot is long. */
function standsOn(
  { edges, vertices }: Solid,
  { positions, first, turns }: EdgeSamples,
  { surface, sense, loops }: Face,
  arch: number,
  side: 0 | 1,
): boolean {
  const { from, to } = edges[arch] as Edge;
  const [a, b] = [vertices[from] as Vec3, vertices[to] as Vec3];
  const { atEnds, atPoints } = turns[side];
  const chain: (readonly [number, Vec3])[] = [[atEnds[2 * arch] as number, a]];
  for (let v = first[arch] as number; v < (first[arch + 1] as number); v++) {
    const p: Vec3 = [
      positions[3 * v] as number,
      positions[3 * v + 1] as number,
      positions[3 * v + 2] as number,
    ];
    chain.push([atPoints[v] as number, p]);
  }
  chain.push([atEnds[2 * arch + 1] as number, b]);
  const along = chain.map(([turn]) => turn);
  if (Math.ceil(Math.max(...along) - SLACK) - Math.floor(Math.min(...along) + SLACK) > 1) return false;
  const wide = distance(a, b);
  if (!chain.some(([, p]) => fromLine(p, a, b) > wide)) return false;
  let area = 0;
  for (let k = 0; k < chain.length; k++) {
    const [x, p] = chain[k] as readonly [number, Vec3];
    const [xNext, q] = chain[(k + 1) % chain.length] as readonly [number, Vec3];
    area += x * dot(sub(q, a), surface.frame.z) - xNext * dot(sub(p, a), surface.frame.z);
  }
  const use = loops.flat().find(({ edge }) => edge === arch) as EdgeUse;
  return area * sense * (use.forward ? 1 : -1) > 0;
}

function fromLine(p: Vec3, a: Vec3, b: Vec3): number {
  const [u, w] = [sub(b, a), sub(p, a)];
  const along = dot(w, u) / dot(u, u);
  return Math.hypot(w[0] - along * u[0], w[1] - along * u[1], w[2] - along * u[2]);
}
