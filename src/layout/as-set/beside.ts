/**
 * What a rail is cut to at a post that stands beside the guard's plane, or beside its corner.
 *
 * The rules of the joints look for the post's axis on the rail's; where it stands aside the joint is asked for by name. What of the
 * rail passes the post's side is closed level with the post's middle, and told.
 *
 * @packageDocumentation
 */
import type { Joint, MemberEnd } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { extentAlong } from "../../kernel/region-extent.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Part, Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { besideLine, crossX, postAxis, type RakeLine, yAt } from "../posts/post-line.js";
import { sayLength } from "../say-length.js";
import { postName } from "./stance.js";

/** A rail at a post: which end of it, its mark, its axis and half its width. */
export interface RailAt {
  readonly end: MemberEnd;
  readonly mark: string;
  readonly line: RakeLine;
  readonly halfWidth: number;
}

/** A post that stands wholly beside a rail: nothing can be cut to it. */
export function missesRail(post: PlacedPost, rail: string, off: number): Diagnostic {
  return diagnostic({
    code: "post-misses-rail",
    path: post.path,
    members: [post.id],
    message: `${postName(post)}: expected it to reach ${rail}, got its axis ${sayLength(off)} beside the rail's middle: they do not touch.`,
    hint: "Correct the reading, or set the post again.",
    values: { off },
  });
}

/** Half of a post across a reach. */
function halfIn(place: Place, post: PlacedPost, reach: number): number {
  const corner = place.site.corners[post.reach];
  if (reach === post.reach || corner === undefined) return post.extent.halfWidth;
  const angle = (corner.angle * Math.PI) / 180;
  const { least, greatest } = extentAlong(post.section.region.outer, [Math.cos(angle), Math.sin(angle)]);
  return Math.max(greatest, -least);
}

function pastSide(place: Place, post: PlacedPost, { line, mark, halfWidth }: RailAt): Diagnostic[] {
  const axis = postAxis(place.site, post, line.reach);
  const off = Math.abs(yAt(axis, line.z0 + line.slope * crossX(axis, line)));
  const by = off + halfWidth - halfIn(place, post, line.reach) * Math.hypot(1, axis.q);
  if (by <= STATION_MM) return [];
  if (by >= 2 * halfWidth) return [missesRail(post, mark, off)];
  return [
    diagnostic({
      code: "rail-past-post-side",
      severity: "warning",
      path: post.path,
      members: [post.id],
      message: `${postName(post)}: expected it over the whole width of ${mark}, got ${sayLength(off)} beside the rail's middle: ${sayLength(by)} of the rail passes its side and is closed level with its middle.`,
      hint: "Set the post over, or grind the rail's edge to suit.",
      values: { off, by },
    }),
  ];
}

/** The joint of a rail's end at a post whose axis it passes, and what of it hangs over; nothing where it does not pass it. */
export function cutBeside(place: Place, post: PlacedPost, rail: RailAt): Omit<Part, "members"> {
  if (!besideLine(place.site, post, rail.line)) return { joints: [], diagnostics: [] };
  return cutToPost(place, post, rail);
}

/** The same wherever the post stands. */
export function cutToPost(place: Place, post: PlacedPost, rail: RailAt): Omit<Part, "members"> {
  const { end } = rail;
  const joint: Joint = {
    ...{ kind: "cope", id: `${end.member}-end-${end.end}`, end, onto: [post.id], shoulder: "midline" },
  };
  return { joints: [joint], diagnostics: pastSide(place, post, rail) };
}
