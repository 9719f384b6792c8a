/**
 * Who meets where: ends that share a node, and ends that stand on another member's centreline.
 *
 * Ends nearer than the node tolerance are one cluster (single link, so the result does not depend on the order of the
 * members). An end within the tolerance of a centreline, and farther than that from its ends, stands on that span. Who
 * may meet is asked of a tree of boxes, so that rows of one guard beside or above another cost no more than one alone.
 *
 * @packageDocumentation
 */
import { forEachOverlap } from "../kernel/mesh/box-tree.js";
import { addScaled, distance, dot, sub, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { MemberEnd } from "./joint.js";

/** What one end meets. */
export interface Meeting {
  readonly end: MemberEnd;
  /** Other ends in the same cluster, in the members' order. */
  readonly ends: readonly MemberEnd[];
  /** Members whose span the end stands on, in the members' order. */
  readonly spans: readonly string[];
}

/** The centreline point of an end. */
export function endPoint(member: Member, end: 0 | 1): Vec3 {
  return end === 0 ? member.from : member.to;
}

/** True when p is within `tolerance` of the member's centreline and farther than that from both its ends. */
export function onSpan(member: Member, p: Vec3, tolerance: number): boolean {
  const w = sub(p, member.from);
  const s = dot(w, member.frame.z);
  if (s <= tolerance || s >= distance(member.from, member.to) - tolerance) return false;
  return distance(p, addScaled(member.from, member.frame.z, s)) <= tolerance;
}

/** The meetings of all ends, end 0 before end 1, in the members' order. */
export function meetingsOf(members: readonly Member[], tolerance: number): Meeting[] {
  const ends = members.flatMap((m) => [endOf(m, 0), endOf(m, 1)]);
  const root = ends.map((_, i) => i);
  const find = (i: number): number => {
    let r = i;
    while (root[r] !== r) r = root[r] as number;
    root[i] = r;
    return r;
  };
  const spans = ends.map((): number[] => []);
  // Boxes of the ends first, then those of the members: both kinds of meeting are overlaps of boxes.
  forEachOverlap(boxesOf(ends, members, tolerance), (i, j) => {
    const [a, b] = i < j ? [i, j] : [j, i];
    if (a >= ends.length) return;
    const end = ends[a] as MemberPoint;
    if (b < ends.length) {
      if (distance(end.point, (ends[b] as MemberPoint).point) <= tolerance) root[find(b)] = find(a);
      return;
    }
    const member = members[b - ends.length] as Member;
    if (member !== end.member && onSpan(member, end.point, tolerance))
      (spans[a] as number[]).push(b - ends.length);
  });
  const clusters = new Map<number, number[]>();
  for (let i = 0; i < ends.length; i++) {
    const list = clusters.get(find(i));
    if (list) list.push(i);
    else clusters.set(find(i), [i]);
  }
  const nameOf = ({ member, end }: MemberPoint): MemberEnd => ({ member: member.id, end });
  return ends.map((e, i) => ({
    end: nameOf(e),
    ends: (clusters.get(find(i)) as number[])
      .filter((j) => j !== i)
      .map((j) => nameOf(ends[j] as MemberPoint)),
    spans: (spans[i] as number[]).sort((a, b) => a - b).map((k) => (members[k] as Member).id),
  }));
}

interface MemberPoint {
  readonly member: Member;
  readonly end: 0 | 1;
  readonly point: Vec3;
}

function endOf(member: Member, end: 0 | 1): MemberPoint {
  return { member, end, point: endPoint(member, end) };
}

/** Boxes round points and centrelines, each wider by the tolerance all round. */
function boxesOf(ends: readonly MemberPoint[], members: readonly Member[], tolerance: number): Float64Array {
  const boxes = new Float64Array(6 * (ends.length + members.length));
  let at = 0;
  const box = (p: Vec3, q: Vec3): void => {
    for (let k = 0; k < 3; k++) {
      boxes[at + k] = Math.min(p[k] as number, q[k] as number) - tolerance;
      boxes[at + k + 3] = Math.max(p[k] as number, q[k] as number) + tolerance;
    }
    at += 6;
  };
  for (const { point } of ends) box(point, point);
  for (const { from, to } of members) box(from, to);
  return boxes;
}
