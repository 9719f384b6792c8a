/**
 * Do two branches on one header run into each other beside it, and can one be shaped to the other there?
 *
 * Every fibre of one branch's outline is followed up to its header; where it enters the other branch first, at a place
 * where that one still has material (its own cut is farther on), the two overlap by what is left of the fibre. Fibres
 * are followed on the exact ends, and the deepest is closed in on as lengths are. Outlines count as filled: a tube's end
 * inside another tube is an overlap. Millimetres, each branch in its own frame.
 *
 * @packageDocumentation
 */
import type { EndExpression } from "../kernel/end.js";
import { type CompiledEnd, compileEnd, endAt } from "../kernel/end-compile.js";
import { pointToLocal, pointToParent } from "../kernel/frame.js";
import { greatestOnOutline } from "../kernel/outline.js";
import type { Region } from "../kernel/region.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { Decision } from "./decision.js";
import { endExpression } from "./end-expression.js";

/** A branch with the end that stands on a header, cut as it was decided. */
export interface Branch {
  readonly member: Member;
  readonly end: 0 | 1;
  readonly decision: Extract<Decision, { kind: "skin" }>;
}

/** How far one branch reaches into the other along its own fibres, and whether the other's skin could stop it there. */
export interface Overlap {
  /** Greatest length of a fibre inside the other, 0 when there is none. */
  readonly depth: number;
  /** True when the other's untrimmed skin stops every fibre of this branch only where the other has material. */
  readonly shapes: boolean;
}

const dirOf = (end: 0 | 1): 1 | -1 => (end === 0 ? -1 : 1);

function compiled(expression: EndExpression, end: 0 | 1, section: Region): CompiledEnd | null {
  return compileEnd(expression, dirOf(end), section).end;
}

/** The decision for this branch to be cut to the other branch's skin. */
export function ontoBranch(branch: Branch, other: Branch, joint: string): Branch["decision"] {
  const { gap } = branch.decision;
  return { kind: "skin", joint, onto: [other.member.id], gap, shoulder: "refuse", combine: { by: "min" } };
}

/** How far a branch runs into another; null where either of the two cuts cannot be made, or the two run alike. */
export function overlapInto(
  branch: Branch,
  other: Branch,
  members: ReadonlyMap<string, Member>,
): Overlap | null {
  const { member, end, decision } = branch;
  const { region } = member.section;
  const dir = dirOf(end);
  const own = endExpression(decision, member, members);
  const skin = endExpression(ontoBranch(branch, other, ""), member, members);
  const free = compiled(own, end, region);
  const met = compiled({ kind: "min", of: [own, skin] }, end, region);
  const theirs = compiled(
    endExpression(other.decision, other.member, members),
    other.end,
    other.member.section.region,
  );
  if (!free || !met || !theirs) return null;
  let shapes = compiled(skin, end, region) !== null;
  const inside = (u: number, v: number): number => {
    const stop = endAt(met, u, v).out;
    const depth = endAt(free, u, v).out - stop;
    if (!(depth > STATION_MM)) return 0;
    if (hasMaterial(theirs, other, pointToParent(member.frame, [u, v, dir * stop]))) return depth;
    shapes = false;
    return 0;
  };
  const depth = Math.max(0, greatestOnOutline([region.outer], inside).value);
  return { depth, shapes };
}

/** True when a point on the skin of a branch is before its own cut. */
function hasMaterial(cut: CompiledEnd, branch: Branch, p: Vec3): boolean {
  const [u, v, s] = pointToLocal(branch.member.frame, p);
  return dirOf(branch.end) * s <= endAt(cut, u, v).out + STATION_MM;
}
