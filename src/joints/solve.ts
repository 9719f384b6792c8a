/**
 * The joint solver: members in, pieces out.
 *
 * Every end is decided (asked for, or by rule), written as an end expression in the piece's own frame, compiled, and read
 * for the shop's numbers. Headers are met as untrimmed skins, so nothing here has an order. The solver never splits a
 * member; one failure blocks its own piece and leaves the rest.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { SHORTEST_FIBRE_MM } from "../kernel/tolerance.js";
import type { Member } from "../members/member.js";
import { boreMarks, type Drilled, drilledMember } from "./bore-marks.js";
import { decide, LAST_RAIL } from "./decide.js";
import { type Decision, endKey } from "./decision.js";
import { endCut, sideTowardsEye } from "./end-cut.js";
import { endExpression } from "./end-expression.js";
import { compileFlattest, type FlattestEnd } from "./flattest.js";
import { type Compiled, footprintProblem } from "./footprint.js";
import { identify, type Shape } from "./identity.js";
import { endPoint } from "./nodes.js";
import type { Contact, Piece } from "./piece.js";
import { pieceLengths } from "./piece-lengths.js";
import type { JointModel, JointSolution } from "./solve-types.js";
import { endWord } from "./words.js";

/**
 * Cuts every member of a model where it meets the others.
 *
 * @param model - members, the joints asked for, rules for the rest
 * @returns one piece per member in the members' order, the contacts between them, and every finding. A piece with an error
 *   is `blocked`: its ends are those of its bare centreline, its diagnostics say why.
 * @example
 * ```ts
 * const rail = member({ id: "R", section: roundTube({ od: 48.3, wall: 3.2 }), from: [0, 0, 900], to: [2000, 0, 900], role: "top-rail" });
 * const post = member({ id: "P", section: roundTube({ od: 42.4, wall: 3.2 }), from: [1000, 0, 0], to: [1000, 0, 900], role: "post" });
 * const { pieces } = solveJoints({ members: [rail, post] });
 * pieces[1]?.cuts[1].kind; // "cope"
 * ```
 */
export function solveJoints(model: JointModel): JointSolution {
  const members = new Map<string, Member>();
  const diagnostics: Diagnostic[] = [];
  const unique = model.members.filter((m) => {
    const first = !members.has(m.id);
    if (first) members.set(m.id, m);
    else diagnostics.push(sameId(m));
    return first;
  });
  const decisions = decide({ ...model, members: unique });
  diagnostics.push(...decisions.diagnostics);
  const drafts = unique.map((m) => draft(m, members, decisions.byEnd, decisions.bores.get(m.id) ?? []));
  const compiled = new Map(drafts.map((d) => [d.member.id, d as Compiled]));
  const contacts: Contact[] = [];
  for (const d of drafts) {
    diagnostics.push(...d.diagnostics);
    for (const end of [0, 1] as const) {
      const decision = d.decisions[end];
      const onto = decision.onto.filter((id) => members.has(id));
      for (const id of onto) contacts.push(contactOf(d.member, end, id, decision));
      if (decision.kind !== "skin") continue;
      const found = footprintProblem(
        d,
        end,
        onto.map((id) => compiled.get(id) as Compiled),
      );
      if (found) diagnostics.push(found);
    }
  }
  const blocked = new Set(diagnostics.flatMap(blockedBy));
  const cut = drafts.map((d) =>
    finish(d, members, blocked.has(d.member.id), decisions.bars.get(d.member.id) ?? []),
  );
  for (const { piece } of cut) {
    if (!blocked.has(piece.id) && piece.lengths.shortPoint.value < SHORTEST_FIBRE_MM)
      diagnostics.push(tooShort(piece));
  }
  const identities = identify(cut.map((c) => c.shape));
  const pieces = cut.map((c, i): Piece => ({ ...c.piece, ...(identities[i] as { identity: string }) }));
  return { pieces, contacts, diagnostics };
}

/** Codes of a node that could not be decided: no end there is cut right, so every member named is blocked. */
const WHOLE_NODE: ReadonlySet<string> = new Set(["no-miter", "node-unresolved"]);

/** Whom a finding keeps from being cut: of an error about one end, the member that yields there. */
function blockedBy(d: Diagnostic): readonly string[] {
  if (d.severity !== "error") return [];
  return WHOLE_NODE.has(d.code) ? d.members : d.members.slice(0, 1);
}

interface Draft extends Compiled {
  readonly decisions: readonly [Decision, Decision];
  readonly expressions: Piece["ends"];
  readonly bores: readonly Bore[];
  readonly drilled: Drilled;
  readonly diagnostics: readonly Diagnostic[];
}

function draft(
  member: Member,
  members: ReadonlyMap<string, Member>,
  byEnd: ReadonlyMap<string, Decision>,
  bores: readonly Bore[],
): Draft {
  const decisionAt = (end: 0 | 1): Decision =>
    byEnd.get(endKey({ member: member.id, end })) ?? squareAt(member, end, "rule:free-end");
  const decisions = [decisionAt(0), decisionAt(1)] as const;
  const [low, high] = ([0, 1] as const).map((end) =>
    compileFlattest(
      endExpression(decisions[end], member, members),
      end === 0 ? -1 : 1,
      member.section.region,
    ),
  ) as [FlattestEnd, FlattestEnd];
  const named =
    (end: 0 | 1) =>
    (d: Diagnostic): Diagnostic => ({
      ...d,
      members: [member.id, ...decisions[end].onto.filter((id) => members.has(id))],
      joint: decisions[end].joint,
      end,
      point: endPoint(member, end),
      message: `${member.id}: ${d.message}`,
    });
  const drilled = drilledMember(member, bores, low.end, high.end);
  return {
    member,
    decisions,
    expressions: [low.expression, high.expression],
    ends: [low.end, high.end],
    bores,
    drilled,
    diagnostics: [
      ...low.diagnostics.map(named(0)),
      ...high.diagnostics.map(named(1)),
      ...drilled.diagnostics,
    ],
  };
}

function squareAt(member: Member, end: 0 | 1, joint: string): Decision {
  const point = endPoint(member, end);
  return { kind: "flat", joint, onto: [], point, normal: member.frame.z, miter: false, step: 0 };
}

function contactOf(member: Member, end: 0 | 1, onto: string, decision: Decision): Contact {
  const common = { piece: member.id, end, onto, joint: decision.joint };
  if (decision.kind === "skin") return { ...common, kind: "cope", gap: decision.gap };
  return {
    ...common,
    kind: decision.miter ? "miter" : decision.joint === LAST_RAIL ? "flush" : "seat",
    gap: 0,
  };
}

/** The piece without its identity, and what identity is decided on. */
function finish(
  d: Draft,
  members: ReadonlyMap<string, Member>,
  isBlocked: boolean,
  bars: readonly string[],
): { readonly piece: Piece; readonly shape: Shape } {
  const { member } = d;
  const bare = isBlocked || !d.ends[0] || !d.ends[1];
  const used = bare ? draftSquare(member, members) : d;
  const [low, high] = used.ends as readonly [
    NonNullable<Compiled["ends"][0]>,
    NonNullable<Compiled["ends"][1]>,
  ];
  const cuts = [
    endCut(member, 0, used.decisions[0], low, members),
    endCut(member, 1, used.decisions[1], high, members),
  ] as const;
  const lengths = pieceLengths(member.section, member.frame, low, high);
  const hook = cuts[1].kind === "square" && cuts[0].kind !== "square" ? 1 : 0;
  const mark = member.mark ?? member.id;
  const named = [...d.decisions.flatMap((x) => x.onto), ...bars];
  const dependsOn = [...new Set(named)].filter((id) => members.has(id));
  const piece: Piece = {
    id: member.id,
    mark,
    kind: member.kind ?? "member",
    role: member.role,
    section: member.section,
    material: member.material,
    frame: member.frame,
    ends: used.expressions,
    bores: boreMarks(used.bores, used.drilled, member, hook, lengths.blank),
    cuts,
    lengths,
    shopPose: sideTowardsEye(member.frame),
    hook: { end: hook, name: `${endWord(member.frame, hook)} end` },
    dependsOn,
    status: bare || lengths.shortPoint.value < SHORTEST_FIBRE_MM ? "blocked" : "ok",
    identity: member.id,
  };
  return {
    piece,
    shape: {
      id: member.id,
      section: member.section,
      material: member.material,
      low,
      high,
      bores: used.bores,
    },
  };
}

/** The member as it stands, square at the ends of its centreline. */
function draftSquare(member: Member, members: ReadonlyMap<string, Member>): Draft {
  const decisions = [squareAt(member, 0, "rule:blocked"), squareAt(member, 1, "rule:blocked")] as const;
  const byEnd = new Map<string, Decision>([
    [endKey({ member: member.id, end: 0 }), decisions[0]],
    [endKey({ member: member.id, end: 1 }), decisions[1]],
  ]);
  return draft(member, members, byEnd, []);
}

function sameId(m: Member): Diagnostic {
  return diagnostic({
    code: "same-id",
    members: [m.id],
    message: `Two members have the id ${m.id}; only the first is looked at, and it is not cut.`,
    hint: "Give every member an id of its own.",
  });
}

function tooShort(piece: Piece): Diagnostic {
  const shortest = piece.lengths.shortPoint.value;
  return diagnostic({
    code: "piece-too-short",
    members: [piece.id, ...piece.dependsOn],
    message: `The two ends of ${piece.id} meet or cross: its shortest fibre would be ${shortest.toFixed(3)} mm.`,
    hint: "Move the neighbouring members apart, or leave this piece out.",
    values: { shortest },
  });
}
