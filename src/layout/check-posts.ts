/**
 * Does every post fit where it stands?
 *
 * The plate must stay behind the nosing of its tread and in front of the next riser face (which stands `overhang` uphill
 * of the next nosing), the post's own face in front of the next nosing, a post on its own leg, and no two posts in one place.
 * Trade practice, no source. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { PlacedPost } from "./place-posts.js";
import { roomOf } from "./post-room.js";
import { sayLength } from "./say-length.js";
import type { Site } from "./site.js";

function finding(
  post: PlacedPost,
  by: number,
  code: string,
  what: string,
  hint: string,
  severity: "error" | "warning",
): Diagnostic[] {
  if (!(by > STATION_MM)) return [];
  const message = `Post ${post.mark}: ${what} by ${sayLength(by)}.`;
  return [diagnostic({ code, severity, path: post.path, members: [post.id], message, hint, values: { by } })];
}

/** Room behind and in front of a post: down to its own nosing, up to the next. */
function checkRoom(site: Site, post: PlacedPost): Diagnostic[] {
  if (post.foot.type === "side") return [];
  const half = post.extent.depth / 2;
  const { own, next, riser, which } = roomOf(site, post);
  const past = "Move the post, or make the plate smaller.";
  const uphill = "Move the post uphill, or make the plate smaller.";
  const front = "its foot stands out in front of the nosing under it";
  return [
    ...finding(post, own - (post.x - post.halfFoot), "foot-past-nosing", front, uphill, "warning"),
    ...finding(post, post.x + half - next, "post-hits-nosing", `its face passes ${which}`, past, "error"),
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
function checkEdge(post: PlacedPost, inset: number | undefined): Diagnostic[] {
  if (inset === undefined || post.foot.type === "side") return [];
  const across = post.foot.type === "plate" ? (post.foot.across ?? 0) / 2 : 0;
  const by = Math.max(across, post.extent.halfWidth) - inset;
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

/** Findings about the places of the posts, in their order. */
export function checkPosts(
  site: Site,
  posts: readonly PlacedPost[],
  inset: number | undefined,
): Diagnostic[] {
  return posts.flatMap((post, i) => {
    const before = posts[i - 1];
    const own = [...checkRoom(site, post), ...checkLeg(site, post), ...checkEdge(post, inset)];
    if (before === undefined) return own;
    const by = (before.extent.depth + post.extent.depth) / 2 - (post.x - before.x);
    const what = `it overlaps post ${before.mark}`;
    return [
      ...own,
      ...finding(post, by, "posts-overlap", what, "Move one of them, or take one out.", "error"),
    ];
  });
}
