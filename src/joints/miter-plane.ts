/**
 * The one plane to which two mitred members are cut.
 *
 * It holds the point midway between the two centrelines where they pass nearest. With equal depths it halves the angle.
 * With unequal depths, and sections that are upright in the plane of the turn, it runs from where the outer edges meet
 * to where the inner edges meet, so that tops and undersides are flush.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../kernel/region-extent.js";
import { PARALLEL_SINE, STATION_MM } from "../kernel/tolerance.js";
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  length,
  normalize,
  scale,
  sub,
  type Vec3,
} from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { endPoint } from "./nodes.js";
import { outlineStep } from "./outline-step.js";

/** A miter plane, or why there is none. */
export type MiterPlane =
  | {
      readonly kind: "plane";
      readonly point: Vec3;
      readonly normal: Vec3;
      /** Between the centrelines where they pass nearest, millimetres. */
      readonly axisGap: number;
      /** How far the outlines of the two miss each other on the plane, millimetres. */
      readonly step: number;
    }
  | { readonly kind: "none"; readonly why: "straight-back" | "step" };

/** Direction in which a member leaves an end, outwards. */
export function outward(member: Member, end: 0 | 1): Vec3 {
  return end === 1 ? member.frame.z : scale(member.frame.z, -1);
}

/** Half the section's extent in a layout direction. */
function halfExtent(member: Member, direction: Vec3): { readonly half: number; readonly upright: boolean } {
  const { frame, section } = member;
  const [u, v] = [dot(direction, frame.x), dot(direction, frame.y)];
  const size = Math.hypot(u, v);
  const e = extentAlong(section.region.outer, [u / size, v / size]);
  const round = section.shape.kind === "round-tube" || section.shape.kind === "round-bar";
  const upright = round || Math.min(Math.abs(u), Math.abs(v)) < PARALLEL_SINE * size;
  return { half: Math.max(e.greatest, -e.least), upright };
}

/** The miter plane of two ends. */
export function miterPlane(a: Member, endA: 0 | 1, b: Member, endB: 0 | 1): MiterPlane {
  const u = outward(a, endA);
  const v = scale(outward(b, endB), -1);
  const [pa, pb] = [endPoint(a, endA), endPoint(b, endB)];
  const turn = cross(u, v);
  const sine = length(turn);
  if (sine < PARALLEL_SINE) {
    if (dot(u, v) < 0) return { kind: "none", why: "straight-back" };
    return straightOn(a, b, u, pa, pb);
  }
  const across = scale(turn, 1 / sine);
  const w = sub(pb, pa);
  const onA = addScaled(pa, u, dot(cross(w, v), turn) / (sine * sine));
  const onB = addScaled(pb, v, dot(cross(w, u), turn) / (sine * sine));
  const point = scale(add(onA, onB), 0.5);
  // Outer side of the turn: square to each member, in the plane of the turn.
  const [qa, qb] = [cross(u, across), cross(v, across)];
  const [da, db] = [halfExtent(a, qa), halfExtent(b, qb)];
  const axisGap = distance(onA, onB);
  const made = (normal: Vec3): MiterPlane => {
    const step = outlineStep(a, b, normal, across, sub(onB, onA));
    return { kind: "plane", point, normal, axisGap, step };
  };
  const equal = Math.abs(da.half - db.half) < STATION_MM;
  if (equal || !da.upright || !db.upright) return made(normalize(add(u, v)));
  // Outer corner P with P·qa = da and P·qb = db: P = x·u + da·qa, with v = cos·u + … in the plane of the turn.
  const x = (db.half - da.half * dot(qa, qb)) / dot(u, qb);
  const corner = addScaled(scale(qa, da.half), u, x);
  const normal = normalize(cross(corner, across));
  return made(dot(normal, u) < 0 ? scale(normal, -1) : normal);
}

function straightOn(a: Member, b: Member, u: Vec3, pa: Vec3, pb: Vec3): MiterPlane {
  const w = sub(pb, pa);
  const beside = addScaled(w, u, -dot(w, u));
  const axisGap = length(beside);
  const step = outlineStep(a, b, u, a.frame.x, beside);
  if (step > STATION_MM) return { kind: "none", why: "step" };
  return { kind: "plane", point: scale(add(pa, pb), 0.5), normal: u, axisGap, step };
}
