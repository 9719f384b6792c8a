/**
 * Does every post fit where it stands?
 *
 * The plate must stay behind the nosing of its tread and in front of the next riser face (which stands `overhang` uphill
 * of the next nosing), the post's own face in front of the next nosing, a post on its own leg, and no two posts in one place.
 * Trade practice, no source. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { postName } from "../as-set/stance.js";
import type { Place } from "../part.js";
import { sayLength } from "../say-length.js";
import type { Site } from "../site/site.js";
import type { PlacedPost } from "./place-posts.js";
import { faceOf, inwardOfAxis, postAxis, xAt } from "./post-line.js";
import { roomOf } from "./post-room.js";

function finding(
  post: PlacedPost,
  by: number,
  code: string,
  what: string,
  hint: string,
  severity: "error" | "warning",
): Diagnostic[] {
  if (!(by > STATION_MM)) return [];
  const message = `${postName(post)}: ${what} by ${sayLength(by)}.`;
  return [diagnostic({ code, severity, path: post.path, members: [post.id], message, hint, values: { by } })];
}

/** x of a post's uphill face where it is farthest, from its foot to the height of the next nosing; half the depth as it stands. */
function frontOf(place: Place, post: PlacedPost, nosingZ: number): number {
  if (post.set === undefined) return post.x + post.extent.depth / 2;
  const face = faceOf(place, post, post.reach, 1);
  return Math.max(xAt(face, post.footZ), xAt(face, Math.max(post.footZ, nosingZ)));
}

/** Room behind and in front of a post: down to its own nosing, up to the next. */
function checkRoom(place: Place, post: PlacedPost): Diagnostic[] {
  const { site } = place;
  if (post.foot.type === "side") return [];
  const { own, next, nextZ, riser, which } = roomOf(site, post);
  const front = frontOf(place, post, nextZ);
  const past = "Move the post, or make the plate smaller.";
  const uphill = "Move the post uphill, or make the plate smaller.";
  const before = "its foot stands out in front of the nosing under it";
  return [
    ...finding(post, own - (post.x - post.halfFoot), "foot-past-nosing", before, uphill, "warning"),
    ...finding(post, front - next, "post-hits-nosing", `its face passes ${which}`, past, "error"),
    ...finding(
      post,
      post.x + post.halfFoot - riser,
      "foot-hits-riser",
      `its foot passes the riser face under ${which}`,
      past,
      "error",
    ),
  ];
}

function checkLeg(site: Site, post: PlacedPost): Diagnostic[] {
  const ground = site.legs.find(({ leg }) => leg.id === post.leg);
  if (ground === undefined || post.corner !== undefined || post.tread !== undefined) return [];
  const by = Math.max(ground.x[0] - post.x, post.x - ground.x[1]);
  const hint = "Correct its station, or the length of the leg.";
  return finding(post, by, "post-past-leg", `it stands beyond the ${post.leg}`, hint, "error");
}

/** The plate across the stair: it may not stand out past the stair's edge, where the inset is known. */
function checkEdge(place: Place, post: PlacedPost): Diagnostic[] {
  const { inset } = place.design;
  if (inset === undefined || post.foot.type === "side") return [];
  const across = post.foot.type === "plate" ? (post.foot.across ?? 0) / 2 : 0;
  const outward = -inwardOfAxis(place, postAxis(place.site, post), post.footZ);
  const by = Math.max(across, post.extent.halfWidth) + outward - inset;
  const hint = "Make the plate narrower, or set the guard farther in.";
  return finding(
    post,
    by,
    "foot-past-edge",
    "its foot stands out past the edge of the stair",
    hint,
    "warning",
  );
}

/** How far two neighbours stand into each other, at the worse of their two ends. */
function intoEachOther(place: Place, before: PlacedPost, post: PlacedPost, topOf: TopOf): number {
  if (before.set === undefined && post.set === undefined) {
    return (before.extent.depth + post.extent.depth) / 2 - (post.x - before.x);
  }
  const reach = before.corner === undefined ? before.reach : post.reach;
  const [up, down] = [faceOf(place, before, reach, 1), faceOf(place, post, post.reach, -1)];
  const heights = [Math.max(before.footZ, post.footZ), Math.min(topOf(before), topOf(post))];
  return Math.max(...heights.map((z) => xAt(up, z) - xAt(down, z)));
}

/** Height at which a post's tube ends. */
type TopOf = (post: PlacedPost) => number;

/** Findings about the places of the posts, in their order. */
export function checkPosts(place: Place, posts: readonly PlacedPost[], topOf: TopOf): Diagnostic[] {
  return posts.flatMap((post, i) => {
    const before = posts[i - 1];
    const own = [...checkRoom(place, post), ...checkLeg(place.site, post), ...checkEdge(place, post)];
    if (before === undefined) return own;
    const by = intoEachOther(place, before, post, topOf);
    const what = `it overlaps post ${before.mark}`;
    return [
      ...own,
      ...finding(post, by, "posts-overlap", what, "Move one of them, or take one out.", "error"),
    ];
  });
}
