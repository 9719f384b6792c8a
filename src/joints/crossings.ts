/**
 * Which members run through each other without a joint between them?
 *
 * Boxes round the pieces as they are cut find the pairs that come near each other (see `box-tree`: near-linear in a
 * guard's pieces); pairs that meet at a joint or a node are what the joints are for and are passed over; centrelines
 * farther apart than the sections reach, and bars inside a hole drilled for them, are too; the rest is followed fibre by
 * fibre (see `run-through`). Millimetres, layout.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { endRange } from "../kernel/end-range.js";
import { directionToLocal, pointToLocal } from "../kernel/frame.js";
import { forEachOverlap } from "../kernel/mesh/box-tree.js";
import { reachOf } from "../kernel/region-extent.js";
import { segmentDistance } from "../kernel/segment-distance.js";
import { NODE_MM } from "../kernel/tolerance.js";
import { addScaled, cross, dot, length, normalize, sub, type Vec3 } from "../kernel/vec.js";
import type { Compiled } from "./footprint.js";
import { type CutBar, runThrough } from "./run-through.js";

/** A member as it is cut and drilled; passed over while an end is not compiled. */
export interface CutMember extends Compiled {
  readonly bores: readonly Bore[];
}

interface Standing extends CutBar {
  readonly id: string;
  readonly bores: readonly Bore[];
}

interface Stretch {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/**
 * One `members-cross` per pair.
 *
 * @param met - true for two members that meet at a joint or a node
 */
export function crossings(cut: readonly CutMember[], met: (a: string, b: string) => boolean): Diagnostic[] {
  const pieces = cut.flatMap(standing);
  const stretches = pieces.map(stretchOf);
  const boxes = new Float64Array(6 * pieces.length);
  for (const [i, s] of stretches.entries()) box(s, boxes, 6 * i);
  const pairs: [number, number][] = [];
  forEachOverlap(boxes, (i, j) => {
    const [a, b] = [stretches[i] as Stretch, stretches[j] as Stretch];
    const { distance } = segmentDistance(a.from, a.to, b.from, b.to);
    if (distance < a.radius + b.radius - NODE_MM) pairs.push(i < j ? [i, j] : [j, i]);
  });
  pairs.sort((p, q) => p[0] - q[0] || p[1] - q[1]);
  return pairs.flatMap(([i, j]) => {
    const [a, b] = [pieces[i] as Standing, pieces[j] as Standing];
    if (met(a.id, b.id) || inHole(a, b) || inHole(b, a)) return [];
    const found = runThrough(a, b);
    return found ? [crossing(a.id, b.id, found.point, found.depth)] : [];
  });
}

function standing({ member: { id, frame, section }, ends: [low, high], bores }: CutMember): Standing[] {
  return low && high ? [{ id, frame, section, ends: [low, high], bores }] : [];
}

/** The axis as far as the piece can reach. */
function stretchOf({ frame, section, ends }: Standing): Stretch {
  const radius = reachOf(section.region.outer);
  const [low, high] = [endRange(ends[0], radius), endRange(ends[1], radius)];
  return {
    from: addScaled(frame.origin, frame.z, -low.greatest),
    to: addScaled(frame.origin, frame.z, high.greatest),
    radius,
  };
}

function box({ from, to, radius }: Stretch, boxes: Float64Array, at: number): void {
  for (let k = 0; k < 3; k++) {
    const [a, b] = [from[k] as number, to[k] as number];
    boxes[at + k] = Math.min(a, b) - radius;
    boxes[at + 3 + k] = Math.max(a, b) + radius;
  }
}

/** True when a bar lies wholly in a hole drilled through another one. */
function inHole(bar: Standing, drilled: Standing): boolean {
  const radius = reachOf(bar.section.region.outer);
  const axis = directionToLocal(drilled.frame, bar.frame.z);
  const origin = pointToLocal(drilled.frame, bar.frame.origin);
  return drilled.bores.some(({ point, direction, diameter }) => {
    const along = normalize(direction);
    const nearest = addScaled(origin, axis, dot(sub(point, origin), axis));
    const beside = length(cross(sub(nearest, point), along));
    const lean = length(cross(axis, along)) * 2 * reachOf(drilled.section.region.outer);
    return beside + lean + radius <= diameter / 2 + NODE_MM;
  });
}

function crossing(a: string, b: string, point: Vec3, depth: number): Diagnostic {
  const at = point.map((x) => x.toFixed(1)).join(", ");
  return diagnostic({
    code: "members-cross",
    members: [a, b],
    point,
    message: `${a} and ${b} run through each other at (${at}), ${depth.toFixed(3)} mm deep, and no joint says how.`,
    hint: "Declare a `through` joint if one passes through a hole in the other, cope one to the other, or move one.",
    values: { depth },
  });
}
