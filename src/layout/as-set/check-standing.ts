/**
 * Can the measured posts be the design's? Each on its own leg, in the design's order, not far from where it was designed.
 *
 * A shift of more than half a going, or of more than half a riser in height, is more likely another post or another tread (common
 * practice, no source): a warning. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Place } from "../part.js";
import { type PlacedPost, placePosts } from "../posts/place-posts.js";
import { sayLength } from "../say-length.js";
import type { AsSet } from "./as-set.js";
import { standing } from "./stand.js";

type Found = Pick<Diagnostic, "code" | "message" | "hint" | "values" | "severity">;

function found(post: PlacedPost, path: string, own: Found): Diagnostic {
  return diagnostic({ ...own, path, members: [post.id] });
}

function pastLeg(place: Place, post: PlacedPost, path: string): Diagnostic[] {
  const ground = place.site.legs.find(({ leg }) => leg.id === post.leg);
  if (ground === undefined || post.corner !== undefined || ground.flight !== undefined) return [];
  const by = Math.max(ground.x[0] - post.x, post.x - ground.x[1]);
  if (!(by > STATION_MM)) return [];
  return [
    found(post, path, {
      code: "set-past-leg",
      severity: "error",
      message: `${path}: expected post ${post.mark} as set to stand on the ${post.leg}, got ${sayLength(by)} beyond its end.`,
      hint: "Correct the reading, the mark, or the length of the leg.",
      values: { by },
    }),
  ];
}

function outOfOrder(post: PlacedPost, next: PlacedPost | undefined, path: string): Diagnostic[] {
  if (next === undefined || next.x > post.x) return [];
  const by = post.x - next.x;
  return [
    found(post, path, {
      code: "set-out-of-order",
      severity: "error",
      message: `${path}: expected post ${post.mark} as set before post ${next.mark}, as designed, got it ${sayLength(by)} past it.`,
      hint: "Look whether the two readings or marks have changed places.",
      values: { by },
    }),
  ];
}

/** Going and riser of the post's own flight, else of the last one. */
function stepOf({ site }: Place, post: PlacedPost) {
  const own = site.legs.find(({ leg }) => leg.id === post.leg)?.flight?.line ?? site.main;
  return { going: own.going, riser: own.riser };
}

function farOff(place: Place, post: PlacedPost, path: string): Diagnostic[] {
  const { set } = post;
  if (set === undefined) return [];
  const { going, riser } = stepOf(place, post);
  const ways = [
    { by: post.x - set.design.x, limit: going / 2, what: "along the guard", step: "half a going" },
    { by: post.baseZ - set.design.baseZ, limit: riser / 2, what: "in height", step: "half a riser" },
    { by: set.y, limit: going / 2, what: "across the guard", step: "half a going" },
  ];
  return ways.flatMap(({ by, limit, what, step }): Diagnostic[] => {
    if (Math.abs(by) <= limit) return [];
    return [
      found(post, path, {
        code: "set-far-off",
        severity: "warning",
        message: `${path}: expected post ${post.mark} as set within ${step} (${sayLength(limit)}) ${what} of its designed place, got ${sayLength(Math.abs(by))}: a different post?`,
        hint: "Look at the mark, and at what the reading was taken from.",
        values: { by, limit },
      }),
    ];
  });
}

/** Findings about where measured posts stand. */
export function checkStanding(places: readonly Place[], asSet: AsSet): Diagnostic[] {
  return places.flatMap((bare) => {
    const place: Place = { ...bare, asSet };
    const posts = standing(place, placePosts(place).posts);
    return posts.flatMap((post, i): Diagnostic[] => {
      const next = posts[i + 1];
      const path = asSet.posts.find((own) => own.post === post.mark)?.path;
      const later = asSet.posts.find((own) => own.post === next?.mark)?.path;
      return [
        ...((path ?? later) === undefined ? [] : outOfOrder(post, next, path ?? later ?? "")),
        ...(path === undefined ? [] : [...pastLeg(place, post, path), ...farOff(place, post, path)]),
      ];
    });
  });
}
