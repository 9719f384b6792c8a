/**
 * How far do the outlines of two members miss each other on the plane to which both are cut?
 *
 * Each outline is carried along its member onto the plane. How far it reaches there in a direction of the plane is the
 * reach of the section in a direction of its own (exact for lines and arcs); the step is the greatest difference of the
 * two reaches over directions all round, those of the turn and square to it among them. Unequal tubes, sections rolled
 * or twisted against each other, and centrelines that pass beside each other all show. Millimetres, layout.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../kernel/region-extent.js";
import { STATION_MM } from "../kernel/tolerance.js";
import { add, addScaled, cross, dot, normalize, scale, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";

/** Directions looked at: a multiple of four. Between two of them a corner of a 100 mm section hides less than 0.3 mm. */
const DIRECTIONS = 64;

/**
 * The step between two members cut to one plane.
 *
 * @param normal - of the plane, unit, across neither member's axis
 * @param along - a direction of the plane to start from
 * @param beside - where b's centreline meets the plane, less where a's does
 * @returns millimetres ≥ 0; exactly 0 within the tolerance of a station
 */
export function outlineStep(a: Member, b: Member, normal: Vec3, along: Vec3, beside: Vec3): number {
  const first = normalize(addScaled(along, normal, -dot(along, normal)));
  const second = cross(normal, first);
  let worst = 0;
  for (let k = 0; k < DIRECTIONS; k++) {
    const angle = (2 * Math.PI * k) / DIRECTIONS;
    const d = add(scale(first, Math.cos(angle)), scale(second, Math.sin(angle)));
    worst = Math.max(worst, Math.abs(reach(a, normal, d) - reach(b, normal, d) - dot(beside, d)));
  }
  return worst < STATION_MM ? 0 : worst;
}

/** How far a member's outline reaches in direction d of the plane, from where its centreline meets the plane. */
function reach({ frame, section }: Member, normal: Vec3, d: Vec3): number {
  const along = dot(d, frame.z) / dot(normal, frame.z);
  const u = dot(d, frame.x) - along * dot(normal, frame.x);
  const v = dot(d, frame.y) - along * dot(normal, frame.y);
  const size = Math.hypot(u, v);
  return size === 0 ? 0 : size * extentAlong(section.region.outer, [u / size, v / size]).greatest;
}
