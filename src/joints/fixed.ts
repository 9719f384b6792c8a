/**
 * Pieces that are cut already: where their members stand, and what is fitted to their ends.
 *
 * A fixed piece stands where its own frame says and in its own section, whatever the model's member of that id says; its
 * neighbours are shaped to it there. A neighbour mitred to it takes the plane it is cut to. Millimetres, layout.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import type { EndExpression, PlaneContact } from "../kernel/end.js";
import { compileEnd } from "../kernel/end-compile.js";
import { directionToParent, pointToParent } from "../kernel/frame.js";
import { addScaled, cross, distance, dot, length, normalize, sub, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { LAST_RAIL } from "./decision.js";
import type { Compiled } from "./footprint.js";
import type { MemberEnd } from "./joint.js";
import type { MiterPlane } from "./miter-plane.js";
import { outlineStep } from "./outline-step.js";
import type { Contact, EndCut, Piece } from "./piece.js";

/** The member as its fixed piece stands; the member itself when it has none. */
export function asFixed(member: Member, piece: Piece | undefined): Member {
  if (!piece) return member;
  const { frame, section, material, role } = piece;
  const drawn = distance(member.from, member.to);
  const to = addScaled(frame.origin, frame.z, member.kind === undefined ? drawn : piece.lengths.blank.value);
  return { ...member, frame, section, material, role, from: frame.origin, to };
}

/** The plane a fixed piece is cut to at an end, for the member mitred to it; null when it is not cut flat there. */
export function fixedPlane(piece: Piece, { end }: MemberEnd, own: Member, mate: Member): MiterPlane | null {
  const expression = piece.ends[end];
  if (expression.kind !== "plane") return null;
  const point = pointToParent(piece.frame, expression.point);
  const normal = directionToParent(piece.frame, expression.normal);
  const size = length(normal);
  const n: Vec3 = [normal[0] / size, normal[1] / size, normal[2] / size];
  const meet = ({ frame }: Member): Vec3 =>
    addScaled(frame.origin, frame.z, dot(sub(point, frame.origin), n) / dot(frame.z, n));
  const [here, there] = [meet(own), meet(mate)];
  const turn = cross(own.frame.z, mate.frame.z);
  const along = length(turn) > 0 ? turn : own.frame.x;
  const step = outlineStep(own, mate, n, along, sub(there, here));
  return { kind: "plane", point, normal: n, axisGap: distance(here, there), step };
}

/** The plane by which a piece's end is parted from a mate beside it on one header, in the layout; null where it has none. */
export function partingPlane(
  piece: Piece,
  end: 0 | 1,
  mate: string,
): { readonly point: Vec3; readonly normal: Vec3 } | null {
  const find = (e: EndExpression): PlaneContact | null => {
    if (e.kind === "plane") return e.source.onto === mate ? e : null;
    return e.kind === "hit" ? null : (e.of.map(find).find((x) => x !== null) ?? null);
  };
  const plane = find(piece.ends[end]);
  if (!plane) return null;
  return {
    point: pointToParent(piece.frame, plane.point),
    normal: normalize(directionToParent(piece.frame, plane.normal)),
  };
}

/** A fixed piece with its ends compiled. */
export interface Kept extends Compiled {
  readonly piece: Piece;
  readonly bores: Piece["bores"];
}

/** Compiles a fixed piece's ends as they are. */
export function keep(member: Member, piece: Piece): Kept {
  const { region } = piece.section;
  const ends = [compileEnd(piece.ends[0], -1, region).end, compileEnd(piece.ends[1], 1, region).end] as const;
  return { member, ends, piece, bores: piece.bores };
}

/** The contacts a fixed piece was cut for, with members that are there. */
export function fixedContacts(piece: Piece, has: (id: string) => boolean): Contact[] {
  return piece.cuts.flatMap((cut) => {
    const { end, onto, joint, fit } = cut;
    const kind = contactKind(cut);
    return onto
      .filter(has)
      .map((id): Contact => ({ piece: piece.id, end, onto: id, joint, kind, gap: fit.gap }));
  });
}

/** What of its mate a cut that is made already meets. */
export function contactKind({ kind, joint }: EndCut): Contact["kind"] {
  if (kind === "cope" || kind === "miter") return kind;
  return joint === LAST_RAIL ? "flush" : "seat";
}

/** Fixed pieces whose member the model does not have. */
export function strayFixed(fixed: readonly Piece[], has: (id: string) => boolean): Diagnostic[] {
  return fixed
    .filter((piece) => !has(piece.id))
    .map((piece) =>
      diagnostic({
        code: "unknown-member",
        severity: "warning",
        path: "fixed",
        members: [piece.id],
        message: `Fixed piece ${piece.id} has no member of its id in the model; nothing is fitted to it.`,
        hint: "Keep its member in the model, or leave the piece out of `fixed`.",
      }),
    );
}
