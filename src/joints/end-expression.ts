/**
 * A decision as an end expression in the frame of the piece it cuts.
 *
 * @packageDocumentation
 */
import type { ContactSource, EndExpression } from "../kernel/end.js";
import { directionToLocal, frameInLocal, pointToLocal } from "../kernel/frame.js";
import type { Member } from "../members/member.js";
import { type Decision, partsOf } from "./decision.js";

/** The end expression of a decision: the nearest of its parts where others stand beside it. */
export function endExpression(
  decision: Decision,
  member: Member,
  members: ReadonlyMap<string, Member>,
): EndExpression {
  const parts = partsOf(decision).map((part) => partExpression(part, member, members));
  return parts.length === 1 ? (parts[0] as EndExpression) : { kind: "min", of: parts };
}

function partExpression(
  decision: Decision,
  member: Member,
  members: ReadonlyMap<string, Member>,
): EndExpression {
  const { frame } = member;
  if (decision.kind === "flat") {
    const source: ContactSource = { joint: decision.joint, onto: decision.onto[0] ?? "" };
    return {
      kind: "plane",
      point: pointToLocal(frame, decision.point),
      normal: directionToLocal(frame, decision.normal),
      source,
    };
  }
  const hits = decision.onto.map((id): EndExpression => {
    const header = members.get(id) as Member;
    return {
      kind: "hit",
      skin: {
        frame: frameInLocal(frame, header.frame),
        loop: header.section.region.outer,
        gap: decision.gap,
        shoulder: decision.shoulder,
      },
      source: { joint: decision.joint, onto: id },
    };
  });
  const { combine } = decision;
  if (hits.length === 1 || combine.by === "first") return hits[0] as EndExpression;
  if (combine.by !== "select") return { kind: combine.by, of: hits };
  return {
    kind: "select",
    plane: { point: pointToLocal(frame, combine.point), normal: directionToLocal(frame, combine.normal) },
    of: hits as [EndExpression, EndExpression],
  };
}
