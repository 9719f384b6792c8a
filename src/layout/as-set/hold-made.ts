/**
 * From what is made and set to what the joint solver must leave alone.
 *
 * A piece that is set and wholly made stays where it was solved: it is fixed. A set post that was measured stands where it was
 * measured, its plates with it. Any other piece with something made keeps that and is placed by the layout: by its made end
 * (the start where both are), else by its holes. Millimetres, layout.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import type { HeldPiece } from "../../joints/solve-types.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import type { Member } from "../../members/member.js";
import type { AsSet, MadePiece } from "./as-set.js";
import { FEATURES, stagesOf } from "./piece-state.js";

/** What the solver takes besides members and joints. */
export interface HeldMade {
  readonly fixed: readonly Piece[];
  readonly held: readonly HeldPiece[];
  /** What is made of pieces that the layout still has, by id. */
  readonly made: ReadonlyMap<string, MadePiece>;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * What of some made pieces the solver must leave alone.
 *
 * @param members - of the new layout
 * @param asSet - what stands and what is made
 * @returns pieces for `fixed` and `held` of `solveJoints`. Diagnostics: `made-without-member`, `made-blocked`
 * @example
 * const { fixed, held } = holdMade(layout.members, asSet);
 * solveJoints({ members: layout.members, joints: layout.joints, fixed, held });
 */
export function holdMade(members: readonly Member[], asSet: Pick<AsSet, "posts" | "made">): HeldMade {
  const byId = new Map(members.map((own) => [own.id, own]));
  const stages = stagesOf(asSet, members);
  const made = new Map<string, MadePiece>();
  const diagnostics: Diagnostic[] = [];
  for (const own of asSet.made) {
    const member = byId.get(own.piece.id);
    const wrong = faultOf(own, member);
    if (wrong) diagnostics.push(wrong);
    else made.set(own.piece.id, merged(made.get(own.piece.id), own));
  }
  const [fixed, held]: [Piece[], HeldPiece[]] = [[], []];
  for (const own of made.values()) {
    const { piece, features, set } = own;
    const measured = stages.has(piece.id);
    if (set && !measured && FEATURES.every((feature) => features.includes(feature))) fixed.push(piece);
    else {
      const ends = [features.includes("start"), features.includes("end")] as const;
      const stands = set && !measured;
      held.push({ piece, ends, holes: features.includes("holes"), ...(stands && { stands }) });
    }
  }
  return { fixed, held, made, diagnostics };
}

/** Two statements about one piece: what either says is made is made. */
function merged(before: MadePiece | undefined, own: MadePiece): MadePiece {
  if (!before) return own;
  return {
    ...own,
    features: [...new Set([...before.features, ...own.features])],
    set: before.set || own.set,
  };
}

function faultOf({ piece, path }: MadePiece, member: Member | undefined): Diagnostic | null {
  const kind = member && (member.kind ?? "member");
  if (kind !== piece.kind) {
    const is = kind === undefined ? "no piece of that id" : `a ${kind} of that id`;
    return diagnostic({
      code: "made-without-member",
      severity: "warning",
      path,
      members: [piece.id],
      message: `Made piece ${piece.mark} (${piece.id}): expected a ${piece.kind} of that id in the layout, got ${is}; nothing is fitted to it.`,
      hint: "Keep it in the design under the same id, or take it out of what is made.",
    });
  }
  if (piece.status === "ok") return null;
  return diagnostic({
    code: "made-blocked",
    path,
    members: [piece.id],
    message: `Made piece ${piece.mark}: expected a piece that could be cut, got one that an error kept from it in its own build.`,
    hint: "Name the build that the piece was cut from.",
  });
}
