/**
 * The joints asked for, as decisions; each refused one says why.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { directionToLocal, pointToLocal } from "../kernel/frame.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import { normalize, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { combineAt } from "./combine.js";
import { type Combine, type Decision, endKey } from "./decision.js";
import { facePlane } from "./face-cut.js";
import type {
  BoreJoint,
  CopeJoint,
  CutDirection,
  CutJoint,
  Joint,
  JointRules,
  MemberEnd,
  ThroughJoint,
} from "./joint.js";
import { miterDecisions } from "./miter-decision.js";
import { endPoint } from "./nodes.js";
import type { Piece } from "./piece.js";
import type { JointModel } from "./solve-types.js";
import { type ThroughResult, throughBore } from "./through.js";

/** Decisions of the joints asked for, by `endKey`. */
export interface Explicit {
  readonly byEnd: ReadonlyMap<string, Decision>;
  readonly diagnostics: readonly Diagnostic[];
}

/** Everything asked for: ends, and bores by member, each in the frame of the member it is in. */
export interface Asked extends Explicit {
  readonly bores: ReadonlyMap<string, readonly Bore[]>;
  /** Bars that run through a member, by its id. */
  readonly bars: ReadonlyMap<string, readonly string[]>;
}

/** Reads every joint of a model. Of two joints on one end a miter wins, else the first; the other is refused by name. */
export function explicitDecisions(
  model: JointModel,
  members: ReadonlyMap<string, Member>,
  rules: Required<JointRules>,
  made: ReadonlyMap<string, Piece> = new Map(),
): Asked {
  const byEnd = new Map<string, Decision>();
  const bores = new Map<string, Bore[]>();
  const bars = new Map<string, string[]>();
  const diagnostics: Diagnostic[] = [];
  // Miters first: a post coped under a break asks how its two rails are mitred.
  const rank = (j: Joint): number => (j.kind === "miter" ? 0 : 1);
  for (const joint of [...(model.joints ?? [])].sort((a, b) => rank(a) - rank(b))) {
    const unknown = namesOf(joint).filter((id) => !members.has(id));
    if (unknown.length > 0) {
      diagnostics.push(unknownMember(joint, unknown));
      continue;
    }
    if (joint.kind === "bore" || joint.kind === "through") {
      const drilled = drillOf(joint, members);
      if ("diagnostic" in drilled) diagnostics.push(drilled.diagnostic);
      else bores.set(joint.member, [...(bores.get(joint.member) ?? []), drilled.bore]);
      if (joint.kind === "through") bars.set(joint.member, [...(bars.get(joint.member) ?? []), joint.bar]);
      continue;
    }
    const asked = decisionsOf(joint, members, rules, byEnd, made);
    diagnostics.push(...asked.diagnostics);
    for (const [key, decision] of asked.byEnd) {
      const first = byEnd.get(key);
      if (first) diagnostics.push(taken(joint, key, first));
      else byEnd.set(key, decision);
    }
  }
  return { byEnd, bores, bars, diagnostics };
}

/** What a joint drills, in the frame of the member it is in. */
function drillOf(joint: BoreJoint | ThroughJoint, members: ReadonlyMap<string, Member>): ThroughResult {
  const member = members.get(joint.member) as Member;
  if (joint.kind === "through") return throughBore(joint, members.get(joint.bar) as Member, member);
  const { id, diameter, through } = joint;
  const { frame } = member;
  const [point, direction] = [pointToLocal(frame, joint.at), directionToLocal(frame, joint.direction)];
  return { bore: { id, point, direction, diameter, through } };
}

/** Ids of the members a joint speaks of. */
export function namesOf(joint: Joint): readonly string[] {
  switch (joint.kind) {
    case "miter":
      return joint.ends.map((e) => e.member);
    case "cope":
      return [joint.end.member, ...joint.onto];
    case "cut":
      return [joint.end.member];
    case "bore":
      return [joint.member];
    case "through":
      return [joint.bar, joint.member];
  }
}

function decisionsOf(
  joint: Exclude<Joint, BoreJoint | ThroughJoint>,
  members: ReadonlyMap<string, Member>,
  rules: Required<JointRules>,
  before: ReadonlyMap<string, Decision>,
  made: ReadonlyMap<string, Piece>,
): Explicit {
  switch (joint.kind) {
    case "miter":
      return miterDecisions(joint, members, made);
    case "cope":
      return cope(joint, members, rules, before);
    case "cut":
      return cut(joint, members);
  }
}

function cope(
  joint: CopeJoint,
  members: ReadonlyMap<string, Member>,
  rules: Required<JointRules>,
  before: ReadonlyMap<string, Decision>,
): Explicit {
  const diagnostics: Diagnostic[] = [];
  let combine: Combine = { by: "min" };
  if (joint.onto.length === 0 || joint.onto.includes(joint.end.member)) {
    return { byEnd: new Map(), diagnostics: [noHeader(joint)] };
  }
  const onto = [...new Set(joint.onto)];
  if (onto.length === 2) {
    const rails = sharedMiter(onto as [string, string], before);
    if (rails) {
      const found = combineAt(members, joint.end, rails, joint.id, before);
      combine = found.combine;
      if (found.diagnostic) diagnostics.push(found.diagnostic);
    }
  }
  const decision: Decision = {
    kind: "skin",
    joint: joint.id,
    onto,
    gap: joint.gap ?? rules.gap,
    shoulder: joint.shoulder ?? "refuse",
    combine,
  };
  return { byEnd: new Map([[endKey(joint.end), decision]]), diagnostics };
}

/** The ends at which two members are mitred to each other, when an earlier joint does so. */
function sharedMiter(
  [a, b]: readonly [string, string],
  before: ReadonlyMap<string, Decision>,
): readonly [MemberEnd, MemberEnd] | null {
  const mitred = (member: string, mate: string): MemberEnd | null => {
    for (const end of [0, 1] as const) {
      const d = before.get(endKey({ member, end }));
      if (d?.kind === "flat" && d.miter && d.onto.includes(mate)) return { member, end };
    }
    return null;
  };
  const [ea, eb] = [mitred(a, b), mitred(b, a)];
  return ea && eb ? [ea, eb] : null;
}

function cut(joint: CutJoint, members: ReadonlyMap<string, Member>): Explicit {
  const member = members.get(joint.end.member) as Member;
  if (joint.cut.type === "face") {
    const face = facePlane(joint, member, members);
    if ("code" in face) return { byEnd: new Map(), diagnostics: [face] };
    return cut({ ...joint, at: face.point, cut: { type: "plane", normal: face.normal } }, members);
  }
  const normal = cutNormal(joint.cut, member);
  if (!normal) return { byEnd: new Map(), diagnostics: [cutAlongAxis(joint)] };
  const decision: Decision = {
    kind: "flat",
    joint: joint.id,
    onto: joint.onto === undefined ? [] : [joint.onto],
    point: joint.at ?? endPoint(member, joint.end.end),
    normal,
    miter: false,
    step: 0,
  };
  return { byEnd: new Map([[endKey(joint.end), decision]]), diagnostics: [] };
}

/** Normal of the cut in the layout; null where the cut would run along the member. */
function cutNormal(cut: Exclude<CutDirection, { type: "face" }>, member: Member): Vec3 | null {
  const { z } = member.frame;
  switch (cut.type) {
    case "square":
      return z;
    case "plumb":
      return Math.hypot(z[0], z[1]) < PARALLEL_SINE ? null : normalize([z[0], z[1], 0]);
    case "level":
      return Math.abs(z[2]) < PARALLEL_SINE ? null : [0, 0, 1];
    case "plane": {
      const n = normalize(cut.normal);
      return Math.abs(n[0] * z[0] + n[1] * z[1] + n[2] * z[2]) < PARALLEL_SINE ? null : n;
    }
  }
}

function unknownMember(joint: Joint, ids: readonly string[]): Diagnostic {
  return diagnostic({
    code: "unknown-member",
    joint: joint.id,
    members: ids,
    message: `Joint ${joint.id} names ${ids.join(", ")}, which the model does not have.`,
    hint: "Give the id of a member of this model.",
  });
}

function taken(joint: Joint, key: string, first: Decision): Diagnostic {
  const [member = "", end = "0"] = key.split("\u0000");
  return diagnostic({
    code: "end-cut-twice",
    joint: joint.id,
    members: [member],
    end: end === "1" ? 1 : 0,
    message: `Joint ${joint.id} cuts end ${end} of ${member}, which joint ${first.joint} cuts already.`,
    hint: "Leave one of the two joints out.",
  });
}

function noHeader(joint: CopeJoint): Diagnostic {
  return diagnostic({
    code: "cope-onto-nothing",
    joint: joint.id,
    members: [joint.end.member],
    end: joint.end.end,
    message: `Joint ${joint.id} copes ${joint.end.member} onto ${joint.onto.length === 0 ? "nothing" : "itself"}.`,
    hint: "Name the member, or the two mitred members, it is cut to.",
  });
}

function cutAlongAxis(joint: CutJoint): Diagnostic {
  return diagnostic({
    code: "cut-along-axis",
    joint: joint.id,
    members: [joint.end.member],
    end: joint.end.end,
    message: `The ${joint.cut.type} cut of joint ${joint.id} runs along ${joint.end.member} and never closes it.`,
    hint: "Give a cut whose plane crosses the member's axis.",
  });
}
