/**
 * How the skins of two rails combine over a post that ends under their break.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { scale, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { breakOver } from "./crest.js";
import { type Combine, type Decision, endKey } from "./decision.js";
import type { MemberEnd } from "./joint.js";
import { outward } from "./miter-plane.js";
import { endPoint } from "./nodes.js";

/**
 * min under a crest, max under a valley, first where the rails run on in one line and their skins are one. Where the post
 * stands out of the rails' plane (under a plan corner) or both rails leave it to one side, each of two mitred rails counts
 * on its own side of their miter plane; with a diagnostic where they are not mitred and nothing is right.
 *
 * @param byEnd - what is decided so far; the miter of the two rails among it
 */
export function combineAt(
  members: ReadonlyMap<string, Member>,
  end: MemberEnd,
  rails: readonly [MemberEnd, MemberEnd],
  joint: string,
  byEnd: ReadonlyMap<string, Decision>,
): { readonly combine: Combine; readonly diagnostic?: Diagnostic } {
  const away = (r: MemberEnd): Vec3 => scale(outward(members.get(r.member) as Member, r.end), -1);
  const post = members.get(end.member) as Member;
  const over = breakOver(outward(post, end.end), away(rails[0]), away(rails[1]));
  if (over === "straight") return { combine: { by: "first" } };
  if (over === "crest") return { combine: { by: "min" } };
  if (over === "valley") return { combine: { by: "max" } };
  const select = acrossMiter(members, rails, byEnd);
  if (select) return { combine: select };
  return {
    combine: { by: "min" },
    diagnostic: diagnostic({
      code: "post-off-break",
      members: [end.member, rails[0].member, rails[1].member],
      joint,
      end: end.end,
      point: endPoint(post, end.end),
      message:
        over === "off-plane"
          ? `${end.member} ends under ${rails[0].member} and ${rails[1].member}, which are not mitred, and does not stand in their common plane.`
          : `${rails[0].member} and ${rails[1].member} are not mitred and leave the break on the same side of ${end.member}.`,
      hint: "Miter the two rails, cut the post to one of them, or turn the corner on a post that stands through it.",
    }),
  };
}

/** The miter plane of two rails that are mitred to each other, its normal from the first to the second. */
function acrossMiter(
  members: ReadonlyMap<string, Member>,
  [first, second]: readonly [MemberEnd, MemberEnd],
  byEnd: ReadonlyMap<string, Decision>,
): Combine | null {
  const made = byEnd.get(endKey(first));
  if (made?.kind !== "flat" || !made.miter || !made.onto.includes(second.member)) return null;
  const { point, normal } = made;
  const out = outward(members.get(first.member) as Member, first.end);
  const turned = normal[0] * out[0] + normal[1] * out[1] + normal[2] * out[2] < 0;
  return { by: "select", point, normal: turned ? scale(normal, -1) : normal };
}
