/**
 * Where are the holes of a foot, and how near to an edge or a face that stands up beside them?
 *
 * A base plate's holes are measured in plan: to the nosing in front (the edge of the tread), to the riser face behind, to the
 * edge of the stair where the inset is known. Sizes of what is under the plate are compared with what the fastener's own data
 * asks for; nothing here says whether an anchor holds. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { postName } from "../as-set/stance.js";
import type { Place } from "../part.js";
import { sayLength } from "../say-length.js";
import type { PlacedPost } from "./place-posts.js";
import { inwardOfAxis, postAxis } from "./post-line.js";
import { roomOf } from "./post-room.js";

/** Least level distances from the axes of a foot's holes; absent where there is no such edge or face. */
export interface HoleRoom {
  /** To the edge of the tread or landing in front. */
  readonly toNosing?: number;
  /** To the riser face behind. */
  readonly toRiser?: number;
  /** To the stair's edge beside. */
  readonly toSide?: number;
}

/** The room of a base plate's holes; undefined where the foot has none. */
export function holeRoom(place: Place, post: PlacedPost): HoleRoom | undefined {
  const { site, design } = place;
  const { inset } = design;
  if (post.foot.type !== "plate" || post.foot.holes === undefined) return undefined;
  const { along, across } = post.foot.holes;
  const { own, riser } = roomOf(site, post);
  const [front, behind] = [post.x - along / 2 - own, riser - (post.x + along / 2)];
  return {
    ...(Number.isFinite(front) ? { toNosing: front } : {}),
    ...(Number.isFinite(behind) ? { toRiser: behind } : {}),
    ...(inset === undefined
      ? {}
      : { toSide: inset - across / 2 + inwardOfAxis(place, postAxis(site, post), post.footZ) }),
  };
}

function nearEdge(post: PlacedPost, room: HoleRoom, least: number, under: string): Diagnostic[] {
  const edges = [
    ["the nosing in front", room.toNosing],
    ["the edge of the stair", room.toSide],
  ] as const;
  return edges.flatMap(([edge, got]): Diagnostic[] => {
    if (got === undefined || got >= least - STATION_MM) return [];
    return [
      diagnostic({
        code: "hole-near-edge",
        severity: "warning",
        path: post.path,
        members: [post.id],
        message: `${postName(post)}: expected its holes at least ${sayLength(least)} from ${edge} (${under}), got ${sayLength(got)}.`,
        hint: "Move the post or the holes in; the least distance is the fastener maker's to say.",
        values: { least, got },
      }),
    ];
  });
}

/** Findings about what is under the feet. */
export function checkFeet(place: Place, posts: readonly PlacedPost[]): Diagnostic[] {
  return posts.flatMap((post): Diagnostic[] => {
    const { substrate } = post.foot;
    if (substrate === undefined) return [];
    const { name, thickness, leastThickness, leastEdge } = substrate;
    const thin =
      leastThickness !== undefined && thickness < leastThickness - STATION_MM
        ? [
            diagnostic({
              code: "substrate-thin",
              severity: "warning",
              path: post.path,
              members: [post.id],
              message: `Post ${post.mark}: expected at least ${sayLength(leastThickness)} of ${name} for its fastener, got ${sayLength(thickness)}.`,
              hint: "Block it up from below, bolt through with a plate behind, or choose another fastener.",
              values: { leastThickness, thickness },
            }),
          ]
        : [];
    const room = holeRoom(place, post);
    if (room === undefined || leastEdge === undefined) return thin;
    return [...thin, ...nearEdge(post, room, leastEdge, name)];
  });
}
