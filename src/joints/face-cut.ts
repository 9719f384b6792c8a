/**
 * The face of a plate that an end is cut to.
 *
 * Of a plate's two flat faces it is the one on the side of the member's far end, so a post that is drawn through to the
 * floor is cut off on top of its base plate all the same. Layout, millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { dot, lerp, sub, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { CutJoint } from "./joint.js";
import { endPoint } from "./nodes.js";

/** A plane by a point and its normal. */
export interface CutPlane {
  readonly point: Vec3;
  readonly normal: Vec3;
}

/** The plane of the face that a cut of type `face` names, or why it names none. */
export function facePlane(
  joint: CutJoint,
  member: Member,
  members: ReadonlyMap<string, Member>,
): CutPlane | Diagnostic {
  const plate = members.get(joint.onto ?? "");
  if (plate?.kind === undefined) return noFace(joint);
  const far = endPoint(member, joint.end.end === 0 ? 1 : 0);
  const normal = plate.frame.z;
  const beyond = dot(sub(far, lerp(plate.from, plate.to, 0.5)), normal) > 0;
  return { point: beyond ? plate.to : plate.from, normal };
}

function noFace(joint: CutJoint): Diagnostic {
  const onto = joint.onto === undefined ? "nothing" : joint.onto;
  return diagnostic({
    code: "cut-onto-no-plate",
    joint: joint.id,
    members: [joint.end.member],
    end: joint.end.end,
    message: `Joint ${joint.id} cuts ${joint.end.member} to the face of ${onto}, which is no plate of the model.`,
    hint: 'Name a plate or a bracket in `onto`, or give the plane itself: `{ type: "plane", normal }` with a point `at`.',
  });
}
