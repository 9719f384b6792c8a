/**
 * A miter as decisions for its two ends.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { Member } from "../members/member.js";
import { type Decision, endKey } from "./decision.js";
import { fixedPlane } from "./fixed.js";
import type { MemberEnd, MiterJoint } from "./joint.js";
import { miterPlane } from "./miter-plane.js";
import { miterTwist, twisted } from "./miter-twist.js";
import { endPoint } from "./nodes.js";
import type { Piece } from "./piece.js";

/**
 * Both ends' decisions; none when the two cannot be mitred.
 * One that is cut already (`made`, by `endKey`) gives the plane to the other.
 */
export function miterDecisions(
  joint: MiterJoint,
  members: ReadonlyMap<string, Member>,
  made: ReadonlyMap<string, Piece> = new Map(),
): { readonly byEnd: ReadonlyMap<string, Decision>; readonly diagnostics: readonly Diagnostic[] } {
  const [ea, eb] = joint.ends;
  const [a, b] = [members.get(ea.member) as Member, members.get(eb.member) as Member];
  const [cutA, cutB] = [made.get(endKey(ea)), made.get(endKey(eb))];
  const given = cutA ? fixedPlane(cutA, ea, b, a) : cutB ? fixedPlane(cutB, eb, a, b) : null;
  const plane = given ?? miterPlane(a, ea.end, b, eb.end);
  const about = { members: [a.id, b.id], joint: joint.id, end: ea.end, point: endPoint(a, ea.end) };
  if (plane.kind === "none") {
    const back = plane.why === "straight-back";
    const found = diagnostic({
      ...about,
      code: "no-miter",
      message: back
        ? `${b.id} runs straight back along ${a.id}; no plane mitres them.`
        : `${a.id} and ${b.id} run on in one line with unequal sections; no miter makes them flush.`,
      hint: back
        ? "Join them by a short piece square to both."
        : "Join them with a sleeve, or cut both square.",
    });
    return { byEnd: new Map(), diagnostics: [found] };
  }
  const decision = (onto: MemberEnd): Decision => ({
    kind: "flat",
    joint: joint.id,
    onto: [onto.member],
    point: plane.point,
    normal: plane.normal,
    miter: true,
    step: plane.step,
  });
  const byEnd = new Map([
    [endKey(ea), decision(eb)],
    [endKey(eb), decision(ea)],
  ]);
  if (plane.step <= STATION_MM) return { byEnd, diagnostics: [] };
  const twist = miterTwist(a, b, eb.end, plane.normal);
  if (twist) return { byEnd, diagnostics: [twisted(joint, twist, plane.step, about)] };
  const found = diagnostic({
    ...about,
    code: "miter-steps",
    severity: "warning",
    message: `${a.id} and ${b.id} miss each other by up to ${plane.step.toFixed(3)} mm at their miter (centrelines pass ${plane.axisGap.toFixed(3)} mm apart).`,
    hint: "Line the two up, or use one section for both; the step is left standing, nothing is bent to hide it.",
    values: { step: plane.step, axisGap: plane.axisGap },
  });
  return { byEnd, diagnostics: [found] };
}
