/**
 * How far are two mitred sections rolled against each other?
 *
 * The first member mirrored in the miter plane runs along the second; the angle from its up to the second's up, about the
 * way that leaves the corner, is the twist (handbook: tan(tw/2) = tan(α/2)·sin((t₁+t₂)/2)/cos((t₁−t₂)/2) for plumb-sided
 * tubes). Round sections have none; a square one looks the same every quarter turn, a rectangle every half. Degrees.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { reachOf } from "../kernel/region-extent.js";
import { STATION_MM } from "../kernel/tolerance.js";
import { addScaled, cross, dot, scale, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { atan2Degrees } from "./degrees.js";
import type { MemberEnd, MiterJoint } from "./joint.js";
import { outward } from "./miter-plane.js";

/** Turn after which a section looks the same, degrees; 0 for a round one. */
function symmetryOf({ section: { shape } }: Member): number {
  if (shape.kind === "round-tube" || shape.kind === "round-bar") return 0;
  if (shape.kind !== "rect-tube" && shape.kind !== "rect-bar") return 360;
  return shape.width === shape.depth ? 90 : 180;
}

/** A roll between two members, degrees. */
export interface Twist {
  /** From the first's up, carried round the corner, to the second's, −180 to 180. */
  readonly twist: number;
  /** What to add to the second member's `roll` for the outlines to meet; the least turn that does it. */
  readonly roll: number;
}

/** The twist at a miter; null when a section is round, or the outlines are not rolled against each other. */
export function miterTwist(a: Member, b: Member, endB: 0 | 1, normal: Vec3): Twist | null {
  const symmetry = Math.max(symmetryOf(a), symmetryOf(b));
  if (symmetryOf(a) === 0 || symmetryOf(b) === 0) return null;
  const away = scale(outward(b, endB), -1);
  const mirrored = addScaled(a.frame.y, normal, -2 * dot(a.frame.y, normal));
  const up = addScaled(mirrored, away, -dot(mirrored, away));
  const twist = atan2Degrees(dot(cross(up, b.frame.y), away), dot(up, b.frame.y));
  const least = twist - symmetry * Math.round(twist / symmetry);
  if (Math.abs(least) * (Math.PI / 180) * reachOf(b.section.region.outer) <= STATION_MM) return null;
  // The roll is about the member's own direction, the twist about the way out of the corner.
  return { twist, roll: dot(away, b.frame.z) > 0 ? -least : least };
}

/** What to say of a twisted miter, with what can be built instead. */
export function twisted(
  joint: MiterJoint,
  { twist, roll }: Twist,
  step: number,
  about: { readonly members: readonly string[]; readonly end: MemberEnd["end"]; readonly point: Vec3 },
): Diagnostic {
  const [a = "", b = ""] = about.members;
  return diagnostic({
    ...about,
    code: "miter-twists",
    severity: "warning",
    joint: joint.id,
    message: `${a} and ${b} are rolled ${Math.abs(twist).toFixed(2)} deg against each other at their miter; their sides miss each other there by up to ${step.toFixed(3)} mm.`,
    hint: `Turn the corner on a plumb post with both plumb-cut to it, or on a short level piece between the two; use round tube; or roll ${b} by ${roll.toFixed(2)} deg (or each by half) and let its sides lean.`,
    values: { twist, roll, step },
  });
}
