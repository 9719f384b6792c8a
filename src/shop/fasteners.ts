/**
 * How many fasteners do the holes of some plates take?
 *
 * Each round hole takes one, but holes in line through plates that lie on one another share theirs: a side plate and its
 * packer are held by the same bolts. In line: the axes coincide; on one another: no gap between the plates along the axis,
 * both to the distance at which ends meet (`NODE_MM`). Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { directionToParent, pointToParent } from "../kernel/frame.js";
import { extentAlong } from "../kernel/region-extent.js";
import { NODE_MM, PARALLEL_SINE, STATION_MM } from "../kernel/tolerance.js";
import { addScaled, cross, distance, dot, length, normalize, sub, type Vec3 } from "../kernel/vec.js";
import { plateSizes } from "../members/plate-sizes.js";
import type { BoughtFastener } from "./buying-types.js";
import { groupBy } from "./group-by.js";

/** A hole where it stands: a point on its axis, the unit axis, and the plate's faces along it from that point. */
interface Hole {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly from: number;
  readonly to: number;
  readonly diameter: number;
}

/**
 * Fasteners by the diameter of the hole, smallest first; a stack of plates counts by its smallest hole.
 *
 * @param plates - pieces that are plates or brackets' legs
 * @example fastenersOf(plates); // [{ hole: 11, count: 8 }]
 */
export function fastenersOf(plates: readonly Piece[]): readonly BoughtFastener[] {
  const stacks: Hole[][] = [];
  for (const hole of plates.flatMap(holesOf)) {
    const [first, ...more] = stacks.filter((stack) => stack.some((own) => shares(own, hole)));
    if (!first) {
      stacks.push([hole]);
      continue;
    }
    first.push(hole, ...more.flat());
    for (const own of more) stacks.splice(stacks.indexOf(own), 1);
  }
  const diameters = stacks.map((stack) => Math.min(...stack.map((hole) => hole.diameter)));
  return groupBy(diameters, (diameter) => String(Math.round(diameter / STATION_MM)))
    .map((same) => ({ hole: same[0] as number, count: same.length }))
    .sort((a, b) => a.hole - b.hole);
}

/** Holes of the outline run along the plate's z; bores as they are drilled, through both faces. */
function holesOf({ section, lengths, frame, bores }: Piece): readonly Hole[] {
  const thickness = lengths.blank.value;
  const [u, v] = [extentAlong(section.region.outer, [1, 0]), extentAlong(section.region.outer, [0, 1])];
  const straight = plateSizes(section).holes.map((hole): Hole => {
    const local: Vec3 = [u.least + hole.fromLeft, v.least + hole.fromBottom, 0];
    return {
      at: pointToParent(frame, local),
      axis: frame.z,
      from: 0,
      to: thickness,
      diameter: hole.diameter,
    };
  });
  const drilled = bores.map((bore): Hole => {
    const axis = normalize(directionToParent(frame, bore.direction));
    return {
      at: pointToParent(frame, bore.point),
      axis,
      from: -thickness,
      to: thickness,
      diameter: bore.diameter,
    };
  });
  return [...straight, ...drilled];
}

/** One fastener through both: in line, and no gap between. */
function shares(a: Hole, b: Hole): boolean {
  if (length(cross(a.axis, b.axis)) > PARALLEL_SINE) return false;
  const apart = sub(b.at, a.at);
  const along = dot(apart, a.axis);
  if (distance(b.at, addScaled(a.at, a.axis, along)) > NODE_MM) return false;
  const way = dot(a.axis, b.axis) > 0 ? 1 : -1;
  const ends = [along + way * b.from, along + way * b.to];
  return Math.min(...ends) <= a.to + NODE_MM && Math.max(...ends) >= a.from - NODE_MM;
}
