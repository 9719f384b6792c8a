/**
 * Drafts: a member's two ends as decisions, as expressions in its own frame, and compiled; before it is a piece.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { splitsClearOf } from "../kernel/bore-splits.js";
import { closeEnd } from "../kernel/close-end.js";
import type { Diagnostic } from "../kernel/diagnostic.js";
import { compileEnd } from "../kernel/end-compile.js";
import type { Region } from "../kernel/region.js";
import { newShell } from "../kernel/shell.js";
import type { Member } from "../members/member.js";
import { type Drilled, drilledMember } from "./bore-marks.js";
import { type Decision, endKey, matesOf } from "./decision.js";
import { endExpression } from "./end-expression.js";
import { compileFlattest, type FlattestEnd } from "./flattest.js";
import type { Compiled } from "./footprint.js";
import { endPoint } from "./nodes.js";
import type { Piece } from "./piece.js";
import type { HeldPiece } from "./solve-types.js";

/** A member with its ends decided, written and compiled. */
export interface Draft extends Compiled {
  readonly decisions: readonly [Decision, Decision];
  readonly expressions: Piece["ends"];
  readonly bores: readonly Bore[];
  readonly drilled: Drilled;
  /** What of it is made already. */
  readonly held?: HeldPiece;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * The draft of a member whose ends are decided; an end without a decision is cut square. What of it is made (`held`) is as it
 * was made, whatever is decided.
 */
export function draft(
  member: Member,
  members: ReadonlyMap<string, Member>,
  byEnd: ReadonlyMap<string, Decision>,
  bores: readonly Bore[],
  held?: HeldPiece,
): Draft {
  const decisionAt = (end: 0 | 1): Decision =>
    byEnd.get(endKey({ member: member.id, end })) ?? squareAt(member, end, "rule:free-end");
  const decisions = [decisionAt(0), decisionAt(1)] as const;
  const [low, high] = ([0, 1] as const).map((end): FlattestEnd => {
    const dir = end === 0 ? -1 : 1;
    const { region } = member.section;
    const made = held?.ends[end] === true ? held.piece.ends[end] : undefined;
    if (made) return { ...compileEnd(made, dir, region), expression: made };
    return compileFlattest(endExpression(decisions[end], member, members), dir, region);
  }) as [FlattestEnd, FlattestEnd];
  const holes = held?.holes === true ? held.piece.bores.map(plainBore) : bores;
  const named =
    (end: 0 | 1) =>
    (d: Diagnostic): Diagnostic => ({
      ...d,
      members: [member.id, ...matesOf(decisions[end]).filter((id) => members.has(id))],
      joint: decisions[end].joint,
      end,
      point: endPoint(member, end),
      message: `${member.id}: ${d.message}`,
    });
  const drilled = drilledMember(member, holes, low.end, high.end);
  const section = splitsClearOf(member.section.region, holes);
  return {
    member,
    decisions,
    expressions: [low.expression, high.expression],
    ends: [low.end, high.end],
    bores: holes,
    ...(held ? { held } : {}),
    drilled,
    diagnostics: [
      ...[...low.diagnostics, ...unclosed(low, section, 0)].map(named(0)),
      ...[...high.diagnostics, ...unclosed(high, section, 1)].map(named(1)),
      ...drilled.diagnostics,
    ],
  };
}

/** A bore without its marks. */
function plainBore({ id, point, direction, diameter, through }: Bore): Bore {
  return { id, point, direction, diameter, through };
}

/** Why an end that is more than one flat cut has no faces; a piece whose solid would be refused is not to be cut. */
function unclosed({ end }: FlattestEnd, section: Region, index: 0 | 1): Diagnostic[] {
  if (!end || end.root.kind === "leaf") return [];
  const made = closeEnd(newShell(), end, section, index);
  return "diagnostic" in made ? [made.diagnostic] : [];
}

function squareAt(member: Member, end: 0 | 1, joint: string): Decision {
  const point = endPoint(member, end);
  return { kind: "flat", joint, onto: [], point, normal: member.frame.z, miter: false, step: 0 };
}

/** The member as it stands, square at the ends of its centreline. */
export function draftSquare(member: Member, members: ReadonlyMap<string, Member>): Draft {
  const decisions = [squareAt(member, 0, "rule:blocked"), squareAt(member, 1, "rule:blocked")] as const;
  const byEnd = new Map<string, Decision>([
    [endKey({ member: member.id, end: 0 }), decisions[0]],
    [endKey({ member: member.id, end: 1 }), decisions[1]],
  ]);
  return draft(member, members, byEnd, []);
}
