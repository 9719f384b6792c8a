/**
 * Who meets where: ends that share a node, and ends that stand on another member's centreline.
 *
 * Ends nearer than the node tolerance are one cluster (single link, so the result does not depend on the order of the
 * members). An end within the tolerance of a centreline, and farther than that from its ends, stands on that span.
 *
 * @packageDocumentation
 */
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
  const ends = members.flatMap((m) =>
    ([0, 1] as const).map((end) => ({ member: m, end, point: endPoint(m, end), cluster: -1 })),
  );
  // Sorted along x, only neighbours within the tolerance can touch: near-linear for a real guard.
  const order = ends.map((_, i) => i).sort((a, b) => at(ends, a).point[0] - at(ends, b).point[0] || a - b);
  const root = ends.map((_, i) => i);
  const find = (i: number): number => {
    let r = i;
    while (root[r] !== r) r = root[r] as number;
    root[i] = r;
    return r;
  };
  for (let a = 0; a < order.length; a++) {
    const p = at(ends, order[a] as number).point;
    for (let b = a + 1; b < order.length; b++) {
      const q = at(ends, order[b] as number).point;
      if (q[0] - p[0] > tolerance) break;
      if (distance(p, q) <= tolerance) root[find(order[b] as number)] = find(order[a] as number);
    }
  }
  const clusters = new Map<number, number[]>();
  for (let i = 0; i < ends.length; i++) {
    const list = clusters.get(find(i));
    if (list) list.push(i);
    else clusters.set(find(i), [i]);
  }
  const spans = spanIndex(members, tolerance);
  return ends.map((e, i) => ({
    end: { member: e.member.id, end: e.end },
    ends: (clusters.get(find(i)) as number[])
      .filter((j) => j !== i)
      .map((j) => ({ member: at(ends, j).member.id, end: at(ends, j).end })),
    spans: spans(e.point)
      .filter((m) => m !== e.member && onSpan(m, e.point, tolerance))
      .map((m) => m.id),
  }));
}

function at<T>(list: readonly T[], i: number): T {
  return list[i] as T;
}

/** Members whose extent in x covers a point, in the members' order. */
function spanIndex(members: readonly Member[], tolerance: number): (p: Vec3) => readonly Member[] {
  const sorted = members
    .map((m, index) => ({ m, index, lo: Math.min(m.from[0], m.to[0]), hi: Math.max(m.from[0], m.to[0]) }))
    .sort((a, b) => a.lo - b.lo || a.index - b.index);
  // Greatest `hi` up to each place: tells when no earlier member can reach as far as the point.
  const reach: number[] = [];
  for (const s of sorted) reach.push(Math.max(s.hi, reach[reach.length - 1] ?? Number.NEGATIVE_INFINITY));
  return (p) => {
    let hi = sorted.length;
    let lo = 0;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if (at(sorted, mid).lo <= p[0] + tolerance) lo = mid + 1;
      else hi = mid;
    }
    const out: (typeof sorted)[number][] = [];
    for (let i = lo - 1; i >= 0 && at(reach, i) >= p[0] - tolerance; i--) {
      if (at(sorted, i).hi >= p[0] - tolerance) out.push(at(sorted, i));
    }
    return out.sort((a, b) => a.index - b.index).map((s) => s.m);
  };
}
