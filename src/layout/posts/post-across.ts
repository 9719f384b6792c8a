/**
 * How far does a post stand out of the guard's plane?
 *
 * Half its width; a corner post stands square to the reach below it, so that across the reach above it is seen turned by the
 * corner's angle: the farther of both counts. Millimetres.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../../kernel/region-extent.js";
import type { Site } from "../site/site.js";
import type { PlacedPost } from "./place-posts.js";

/** Half the post across the reaches it stands in. */
export function halfAcross(site: Site, post: PlacedPost): number {
  const corner = post.corner && site.corners[post.corner.index];
  if (corner === undefined) return post.extent.halfWidth;
  const angle = (corner.angle * Math.PI) / 180;
  const { least, greatest } = extentAlong(post.section.region.outer, [Math.cos(angle), Math.sin(angle)]);
  return Math.max(post.extent.halfWidth, greatest, -least);
}
