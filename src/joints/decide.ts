/**
 * What each end is cut to: the joints asked for first, then the rules of the trade.
 *
 * Rules, in order: an end on a span is cut to that member's skin; two rails that end together are mitred, and posts that
 * end there are shaped to both; a post that ends where one rail ends is shaped to the rail, which goes on past the
 * post's far face by the overhang (none: flush); two posts, or two others, that end together are mitred; an end that
 * meets nothing is cut square. Then branches that run into each other on one header are parted (see `shared-header`).
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { extentAlong } from "../kernel/region-extent.js";
import { NODE_MM } from "../kernel/tolerance.js";
import { addScaled, dot, length } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { checkJoints } from "./check-joints.js";
import { combineAt } from "./combine.js";
import { acrossPost } from "./crest.js";
import { type Combine, type Decision, endKey, LAST_RAIL } from "./decision.js";
import { explicitDecisions } from "./explicit.js";
import { asFixed } from "./fixed.js";
import type { JointRules, MemberEnd, MiterJoint } from "./joint.js";
import { madeEnds } from "./made-ends.js";
import { miterDecisions } from "./miter-decision.js";
import { outward } from "./miter-plane.js";
import { endPoint, type Meeting, meetingsOf } from "./nodes.js";
import type { Piece } from "./piece.js";
import { partBranches } from "./shared-header.js";
import type { JointModel } from "./solve-types.js";
import { yieldCycles } from "./yield-cycle.js";

/** All decisions by `endKey`, and what was found on the way. */
export interface Decisions {
  /** The members by id, each where it stands: a fixed one as its piece does. */
  readonly members: ReadonlyMap<string, Member>;
  readonly byEnd: ReadonlyMap<string, Decision>;
  /** By member, in the member's frame. */
  readonly bores: ReadonlyMap<string, readonly Bore[]>;
  /** Bars that run through a member, by its id. */
  readonly bars: ReadonlyMap<string, readonly string[]>;
  /** Who meets whom, end by end. */
  readonly meetings: readonly Meeting[];
  readonly diagnostics: readonly Diagnostic[];
}

interface Deciding {
  readonly members: ReadonlyMap<string, Member>;
  readonly rules: Required<JointRules>;
  /** Ends that are cut already, by `endKey`. */
  readonly made: ReadonlyMap<string, Piece>;
  readonly byEnd: Map<string, Decision>;
  readonly diagnostics: Diagnostic[];
}

/** Decides every end of every member. */
export function decide(model: JointModel): Decisions {
  const { nodeTolerance = NODE_MM, gap = 0, overhang = 0 } = model.rules ?? {};
  const rules = { nodeTolerance, gap, overhang };
  checkJoints(model.joints ?? [], rules);
  const fixed = new Map((model.fixed ?? []).map((piece) => [piece.id, piece]));
  const members = new Map(model.members.map((m) => [m.id, asFixed(m, fixed.get(m.id))]));
  const made = madeEnds(model);
  const explicit = explicitDecisions(model, members, rules, made);
  const d: Deciding = {
    members,
    rules,
    made,
    byEnd: new Map(explicit.byEnd),
    diagnostics: [...explicit.diagnostics],
  };
  // Who meets whom is told from the design's own lines: a post set off its place is still the rail's post. A plate is cut
  // to nothing and nothing to it unless a joint says so.
  const meetings = meetingsOf(
    model.members.filter((m) => m.kind === undefined),
    rules.nodeTolerance,
  );
  // Miters first: a post under a break follows from them.
  for (const m of meetings) decideMiter(d, m);
  for (const m of meetings) {
    if (!d.byEnd.has(endKey(m.end))) decideEnd(d, m);
  }
  d.diagnostics.push(...yieldCycles(d.byEnd, members));
  const parting = partBranches(d.byEnd, members, made);
  for (const [key, beside] of parting.beside) {
    const own = d.byEnd.get(key);
    if (own?.kind === "skin") d.byEnd.set(key, { ...own, beside });
  }
  d.diagnostics.push(...parting.diagnostics);
  const { bores, bars } = explicit;
  return { members, byEnd: d.byEnd, bores, bars, meetings, diagnostics: d.diagnostics };
}

function memberOf(d: Deciding, id: string): Member {
  return d.members.get(id) as Member;
}

function isPost(d: Deciding, end: MemberEnd): boolean {
  return memberOf(d, end.member).role === "post";
}

/** True when an end is shaped to a member: no rule makes that member yield in turn. */
function yieldsTo(d: Deciding, end: MemberEnd, member: string): boolean {
  const decision = d.byEnd.get(endKey(end));
  return decision?.kind === "skin" && decision.onto.includes(member);
}

/** Two free rails (or two posts, or two others) that end together, and neither on a span. */
function decideMiter(d: Deciding, m: Meeting): void {
  if (d.byEnd.has(endKey(m.end)) || m.spans.length > 0) return;
  const post = isPost(d, m.end);
  const alike = m.ends.filter((e) => isPost(d, e) === post);
  if (post && m.ends.length > alike.length) return;
  if (alike.length === 0) return;
  if (alike.length > 1) {
    if (alike.some((e) => e.member < m.end.member)) return;
    d.diagnostics.push(
      diagnostic({
        code: "node-unresolved",
        members: [m.end.member, ...alike.map((e) => e.member)],
        end: m.end.end,
        point: endPoint(memberOf(d, m.end.member), m.end.end),
        message: `${alike.length + 1} members of one kind end together at ${m.end.member}; a miter joins two.`,
        hint: "Name the joints at this node: which two are mitred, and to what the others are cut.",
        values: { ends: alike.length + 1 },
      }),
    );
    return;
  }
  const mate = alike[0] as MemberEnd;
  if (d.byEnd.has(endKey(mate))) return;
  const joint: MiterJoint = { kind: "miter", id: "rule:ends-together", ends: [m.end, mate] };
  const made = miterDecisions(joint, d.members, d.made);
  d.diagnostics.push(...made.diagnostics);
  for (const [key, decision] of made.byEnd) d.byEnd.set(key, decision);
}

function decideEnd(d: Deciding, m: Meeting): void {
  const key = endKey(m.end);
  if (m.spans.length > 0) {
    d.byEnd.set(key, skin(d, "rule:end-on-span", m.spans, NEAREST));
    return;
  }
  const rails = m.ends.filter((e) => !isPost(d, e) && !yieldsTo(d, e, m.end.member));
  if (isPost(d, m.end) && rails.length === 2) {
    underBreak(d, m, rails as [MemberEnd, MemberEnd]);
    return;
  }
  if (isPost(d, m.end) && rails.length === 1) {
    d.byEnd.set(key, skin(d, "rule:post-under-rail", [(rails[0] as MemberEnd).member], NEAREST));
    return;
  }
  const posts = m.ends.filter((e) => isPost(d, e));
  if (!isPost(d, m.end) && posts.length === 1 && rails.length === 0) {
    d.byEnd.set(key, flush(d, m.end, (posts[0] as MemberEnd).member));
    return;
  }
  const member = memberOf(d, m.end.member);
  const point = endPoint(member, m.end.end);
  const normal = member.frame.z;
  d.byEnd.set(key, { kind: "flat", joint: "rule:free-end", onto: [], point, normal, miter: false, step: 0 });
}

const NEAREST: Combine = { by: "min" };

function skin(d: Deciding, joint: string, onto: readonly string[], combine: Combine): Decision {
  return { kind: "skin", joint, onto, gap: d.rules.gap, shoulder: "refuse", combine };
}

/** Where a post ends under two mitred rails. */
function underBreak(d: Deciding, m: Meeting, rails: readonly [MemberEnd, MemberEnd]): void {
  const onto = rails.map((r) => r.member);
  const combined = combineAt(d.members, m.end, rails, "rule:post-under-break", d.byEnd);
  if (combined.diagnostic) d.diagnostics.push(combined.diagnostic);
  d.byEnd.set(endKey(m.end), skin(d, "rule:post-under-break", onto, combined.combine));
}

/** A last rail goes on past its last post: flush with the post's far face, or by the stated overhang. */
function flush(d: Deciding, end: MemberEnd, postId: string): Decision {
  const rail = memberOf(d, end.member);
  const post = memberOf(d, postId);
  const out = outward(rail, end.end);
  const across = acrossPost(post.frame.z, out);
  const normal = length(across) > 0 ? across : out;
  const [u, v] = [dot(normal, post.frame.x), dot(normal, post.frame.y)];
  const size = Math.hypot(u, v);
  const reach = size > 0 ? extentAlong(post.section.region.outer, [u / size, v / size]).greatest : 0;
  const point = addScaled(endPoint(rail, end.end), normal, reach + d.rules.overhang);
  return { kind: "flat", joint: LAST_RAIL, onto: [postId], point, normal, miter: false, step: 0 };
}
