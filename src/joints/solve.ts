/**
 * The joint solver: members in, pieces out.
 *
 * Every end is decided (asked for, or by rule), written as an end expression in the piece's own frame, compiled, and read
 * for the shop's numbers. Headers are met as untrimmed skins, so nothing here has an order. The solver never splits a
 * member; one failure blocks its own piece and leaves the rest.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { CompiledEnd } from "../kernel/end-compile.js";
import { shortFibre } from "../kernel/short-fibre.js";
import type { Member } from "../members/member.js";
import { boreMarks } from "./bore-marks.js";
import { crossings } from "./crossings.js";
import { decide } from "./decide.js";
import { type Decision, LAST_RAIL, matesOf, partsOf } from "./decision.js";
import { type Draft, draft, draftSquare } from "./draft.js";
import { endCut, sideTowardsEye } from "./end-cut.js";
import { contactKind, fixedContacts, type Kept, keep, strayFixed } from "./fixed.js";
import { type Compiled, footprintProblem } from "./footprint.js";
import { placeHeld } from "./held.js";
import { type Identity, identify, type Shape } from "./identity.js";
import { metPairs } from "./met-pairs.js";
import type { Contact, EndCut, Piece } from "./piece.js";
import { pieceLengths } from "./piece-lengths.js";
import { reusePieces } from "./reuse.js";
import { sameId, tooShort } from "./solve-findings.js";
import type { HeldPiece, JointModel, JointSolution } from "./solve-types.js";
import { endWord, sightOf } from "./words.js";

/**
 * Cuts every member of a model where it meets the others.
 *
 * @param asked - members, the joints asked for, rules for the rest
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
export function solveJoints(asked: JointModel): JointSolution {
  const model = placeHeld(asked);
  const diagnostics: Diagnostic[] = [];
  const ids = new Set<string>();
  const unique = model.members.filter((m) => {
    const first = !ids.has(m.id);
    if (first) ids.add(m.id);
    else diagnostics.push(sameId(m));
    return first;
  });
  const has = (id: string): boolean => ids.has(id);
  const fixed = new Map((model.fixed ?? []).map((piece) => [piece.id, piece]));
  const held = new Map((model.held ?? []).map((own) => [own.piece.id, own]));
  diagnostics.push(...strayFixed([...fixed.values(), ...(model.held ?? []).map((own) => own.piece)], has));
  const decisions = decide({ ...model, members: unique });
  const { members } = decisions;
  diagnostics.push(...decisions.diagnostics);
  const drafts = [...members.values()].map((m): Draft | Kept => {
    const piece = fixed.get(m.id);
    if (piece) return keep(m, piece);
    return draft(m, members, decisions.byEnd, decisions.bores.get(m.id) ?? [], held.get(m.id));
  });
  const compiled = new Map(drafts.map((d) => [d.member.id, d as Compiled]));
  const contacts: Contact[] = [];
  for (const d of drafts) {
    if ("piece" in d) {
      contacts.push(...fixedContacts(d.piece, has));
      continue;
    }
    diagnostics.push(...d.diagnostics);
    for (const end of [0, 1] as const) {
      const decision = d.decisions[end];
      const made = d.held?.ends[end] === true ? d.held.piece.cuts[end] : undefined;
      contacts.push(...contactsOf(d.member, end, decision, has).map((own) => asMade(own, made)));
      if (decision.kind !== "skin" || made) continue;
      const headers = decision.onto.filter(has).map((id) => compiled.get(id) as Compiled);
      const found = footprintProblem(d, end, headers);
      if (found) diagnostics.push(found);
    }
  }
  const faulty = new Set(diagnostics.flatMap(blockedBy));
  const standing = drafts.filter((d) => !faulty.has(d.member.id));
  diagnostics.push(...crossings(standing, metPairs(decisions.meetings, model.joints ?? [])));
  const blocked = new Set(diagnostics.flatMap(blockedBy));
  const cut = drafts.map((d) =>
    "piece" in d
      ? asCut(d)
      : finish(d, members, blocked.has(d.member.id), decisions.bars.get(d.member.id) ?? []),
  );
  for (const { piece, short } of cut) {
    if (short !== null && !blocked.has(piece.id)) diagnostics.push(tooShort(piece, short));
  }
  const identities = identify(cut.map((c) => c.shape));
  const pieces = cut.map((c, i) => withIdentity(c.piece, identities[i] as Identity));
  const stays = [...fixed.values(), ...(asked.held ?? []).map((own) => own.piece)];
  const earlier = [...(model.previous?.pieces ?? []), ...stays];
  return { pieces: earlier.length > 0 ? reusePieces(pieces, earlier) : pieces, contacts, diagnostics };
}

function withIdentity(piece: Piece, { identity, handOf }: Identity): Piece {
  const { handOf: _, ...rest } = piece;
  return { ...rest, identity, ...(handOf === undefined ? {} : { handOf }) };
}

/** Codes of what no one member answers for, so that every member named is blocked. */
const WHOLE_NODE: ReadonlySet<string> = new Set([
  "no-miter",
  "node-unresolved",
  "yield-cycle",
  "members-cross",
]);

/** Whom a finding keeps from being cut: of an error about one end, the member that yields there. */
function blockedBy(d: Diagnostic): readonly string[] {
  if (d.severity !== "error") return [];
  return WHOLE_NODE.has(d.code) ? d.members : d.members.slice(0, 1);
}

/** The piece without its identity, what identity is decided on, and the length of its shortest fibre when it is too short. */
interface Cut {
  readonly piece: Piece;
  readonly shape: Shape;
  readonly short: number | null;
}

/** A fixed piece as it is; ends that cannot be compiled leave its identity to its square ends. */
function asCut({ member, ends, piece, bores }: Kept): Cut {
  const square = draftSquare(member, new Map()).ends;
  const [low, high] = [ends[0] ?? square[0], ends[1] ?? square[1]] as readonly [CompiledEnd, CompiledEnd];
  return {
    piece,
    short: null,
    shape: { id: piece.id, section: piece.section, material: piece.material, low, high, bores },
  };
}

/** Every member an end is cut to, headers first. */
function contactsOf(member: Member, end: 0 | 1, decision: Decision, has: (id: string) => boolean): Contact[] {
  return partsOf(decision).flatMap((part) => {
    return part.onto.filter(has).map((onto) => contactOf(member, end, onto, part));
  });
}

/** A contact of an end that is made, as it was cut for; as it is decided now where it was not cut to this mate. */
function asMade(contact: Contact, made: EndCut | undefined): Contact {
  if (!made?.onto.includes(contact.onto)) return contact;
  return { ...contact, joint: made.joint, kind: contactKind(made), gap: made.fit.gap };
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

/** The end a tape hooks: the one that is there already, else a square one, else the start. */
function hookOf(cuts: Piece["cuts"], held: HeldPiece | undefined): 0 | 1 {
  const [start, end] = held?.ends ?? [false, false];
  if (held && start && end) return held.piece.hook.end;
  if (start !== end) return start ? 0 : 1;
  return cuts[1].kind === "square" && cuts[0].kind !== "square" ? 1 : 0;
}

function finish(
  d: Draft,
  members: ReadonlyMap<string, Member>,
  isBlocked: boolean,
  bars: readonly string[],
): Cut {
  const { member } = d;
  const bare = isBlocked || !d.ends[0] || !d.ends[1];
  const used = bare ? draftSquare(member, members) : d;
  const [low, high] = used.ends as readonly [
    NonNullable<Compiled["ends"][0]>,
    NonNullable<Compiled["ends"][1]>,
  ];
  const cutAt = (end: 0 | 1): EndCut =>
    used.held?.ends[end] === true
      ? used.held.piece.cuts[end]
      : endCut(member, end, used.decisions[end], end === 0 ? low : high, members);
  const cuts = [cutAt(0), cutAt(1)] as const;
  const lengths = pieceLengths(member.section, sightOf(member), low, high);
  const short = shortFibre(low, high, member.section.region);
  const hook = hookOf(cuts, used.held);
  const mark = member.mark ?? member.id;
  const named = [...d.decisions.flatMap(matesOf), ...cuts.flatMap((own) => own.onto), ...bars];
  const dependsOn = [...new Set(named)].filter((id) => members.has(id));
  const piece: Piece = {
    id: member.id,
    mark,
    kind: member.kind ?? "member",
    role: member.role,
    section: member.section,
    material: member.material,
    frame: member.frame,
    ...(member.heading === undefined ? {} : { heading: member.heading }),
    ends: used.expressions,
    bores: boreMarks(used.bores, used.drilled, member, hook, lengths.blank),
    cuts,
    lengths,
    shopPose: sideTowardsEye(member),
    hook: { end: hook, name: `${endWord(sightOf(member), hook)} end` },
    dependsOn,
    status: bare || short !== null ? "blocked" : "ok",
    identity: member.id,
  };
  return {
    piece,
    short,
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
