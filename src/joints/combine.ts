/**
 * How the skins of two mitred rails combine over a post that ends under their break.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { scale, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import { breakOver } from "./crest.js";
import type { MemberEnd } from "./joint.js";
import { outward } from "./miter-plane.js";
import { endPoint } from "./nodes.js";

/**
 * min under a crest, max under a valley, first where the rails run on in one line and their skins are one; with a
 * diagnostic where none is right.
 */
export function combineAt(
  members: ReadonlyMap<string, Member>,
  end: MemberEnd,
  rails: readonly [MemberEnd, MemberEnd],
  joint: string,
): { readonly combine: "min" | "max" | "first"; readonly diagnostic?: Diagnostic } {
  const away = (r: MemberEnd): Vec3 => scale(outward(members.get(r.member) as Member, r.end), -1);
  const post = members.get(end.member) as Member;
  const over = breakOver(outward(post, end.end), away(rails[0]), away(rails[1]));
  if (over === "straight") return { combine: "first" };
  if (over === "crest") return { combine: "min" };
  if (over === "valley") return { combine: "max" };
  return {
    combine: "min",
    diagnostic: diagnostic({
      code: "post-off-break",
      members: [end.member, rails[0].member, rails[1].member],
      joint,
      end: end.end,
      point: endPoint(post, end.end),
      message:
        over === "off-plane"
          ? `${end.member} ends under the break of ${rails[0].member} and ${rails[1].member} but does not stand in their common plane.`
          : `${rails[0].member} and ${rails[1].member} leave the break on the same side of ${end.member}.`,
      hint: "Cut the post to one of the rails, or turn the corner on a post that stands through it.",
    }),
  };
}
