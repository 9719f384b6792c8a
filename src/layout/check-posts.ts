/**
 * Does every post fit where it stands?
 *
 * The plate must stay behind the nosing of its tread and in front of the next riser face (which stands `overhang` uphill
 * of the next nosing), the post's own face in front of the next nosing, and no two posts may share a place. Trade
 * practice, no source. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { Design } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import type { PlacedPost } from "./place-posts.js";
import { sayLength } from "./say-length.js";

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
function checkRoom(post: PlacedPost, design: Design, line: NosingLine): Diagnostic[] {
  const { overhang } = design.stair;
  const half = post.extent.depth / 2;
  const low = line.nosings[0]?.x ?? 0;
  const past = "Move the post, or make the plate smaller.";
  const room = `of the stair, whose going is ${sayLength(line.going)}`;
  if (post.along === "floor") {
    return [
      ...finding(
        post,
        post.x + half - low,
        "post-hits-nosing",
        `its face passes the lowest nosing`,
        past,
        "error",
      ),
      ...finding(
        post,
        post.x + post.halfFoot - low - overhang,
        "foot-hits-riser",
        "its foot passes the first riser face",
        past,
        "error",
      ),
    ];
  }
  const own = post.tread === undefined ? 0 : (line.nosings[post.tread - 1]?.x ?? 0);
  const front = finding(
    post,
    own - (post.x - post.halfFoot),
    "foot-past-nosing",
    `its foot stands out in front of the nosing under it`,
    "Move the post uphill, or make the plate smaller.",
    "warning",
  );
  if (post.tread === undefined) return front;
  const next = own + line.going;
  return [
    ...front,
    ...finding(
      post,
      post.x + half - next,
      "post-hits-nosing",
      `its face passes the next nosing ${room},`,
      past,
      "error",
    ),
    ...finding(
      post,
      post.x + post.halfFoot - next - overhang,
      "foot-hits-riser",
      `its foot passes the next riser face ${room},`,
      past,
      "error",
    ),
  ];
}

/** Findings about the places of the posts, in their order. */
export function checkPosts(posts: readonly PlacedPost[], design: Design, line: NosingLine): Diagnostic[] {
  return posts.flatMap((post, i) => {
    const before = posts[i - 1];
    const room = checkRoom(post, design, line);
    if (before === undefined) return room;
    const by = (before.extent.depth + post.extent.depth) / 2 - (post.x - before.x);
    const what = `it overlaps post ${before.mark}`;
    return [
      ...room,
      ...finding(post, by, "posts-overlap", what, "Move one of them, or take one out.", "error"),
    ];
  });
}
