/**
 * Does every lower rail of a bay clear the plates under it and the rails over it?
 *
 * Looked at where rails and plates are nearest: at the two posts' faces and at the edges of their plates. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, faceOf } from "../posts/post-line.js";
import { sayLength } from "../say-length.js";
import type { Bay } from "./bay.js";
import { pathZ, type RailPath } from "./rail-path.js";

function undersideZ(bay: Bay, x: number): number {
  const stretch = bay.stretches.find((own) => own.x[0] <= x && x <= own.x[1]) ?? bay.stretches[0];
  return stretch === undefined ? 0 : stretch.z0 + stretch.slope * x;
}

function topZ(bay: Bay, x: number): number {
  const slope = bay.stretches.find((own) => own.x[0] <= x && x <= own.x[1])?.slope ?? 0;
  return undersideZ(bay, x) + bay.extent.depth * Math.hypot(1, slope);
}

/** x of a post's face where the bay meets it, and of its plate's edge on the bay's side. */
function reachOf(place: Place, bay: Bay, post: PlacedPost, side: 1 | -1): readonly [number, number] {
  const plate = post.x + side * post.halfFoot;
  const stretch = bay.stretches.at(side === 1 ? 0 : -1);
  if (post.set === undefined || stretch === undefined)
    return [post.x + (side * post.extent.depth) / 2, plate];
  return [crossX(faceOf(place, post, stretch.reach, side), stretch), plate];
}

function inPlate(place: Place, bay: Bay, post: PlacedPost, side: 1 | -1): Diagnostic[] {
  const by = Math.max(...reachOf(place, bay, post, side).map((x) => post.footZ - undersideZ(bay, x)));
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "rail-below-post-foot",
      path: post.path,
      members: [bay.id],
      message: `Rail ${bay.rail.id} (${bay.mark}): expected its underside above the foot of post ${post.mark}, got ${sayLength(by)} below the top of it.`,
      hint: "Raise the rail's underside on this leg, or move the post.",
      values: { by },
    }),
  ];
}

function overlap(
  place: Place,
  bay: Bay,
  name: string,
  least: (x: number) => number | undefined,
): Diagnostic[] {
  const by = Math.max(
    ...[reachOf(place, bay, bay.from, 1)[0], reachOf(place, bay, bay.to, -1)[0]].map(
      (x) => topZ(bay, x) - (least(x) ?? Number.POSITIVE_INFINITY),
    ),
  );
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "rails-overlap",
      path: bay.from.path,
      members: [bay.id],
      message: `Rail ${bay.rail.id} (${bay.mark}): expected its top below the underside of ${name}, got ${sayLength(by)} above it.`,
      hint: "Change the undersides so that the rails stand clear of each other.",
      values: { by },
    }),
  ];
}

/** Findings about the lower rails of one bay; each names the bay it is about. */
export function checkBay(place: Place, bays: readonly Bay[], path: RailPath): Diagnostic[] {
  const upward = [...bays].sort((a, b) => undersideZ(a, a.from.x) - undersideZ(b, b.from.x));
  return upward.flatMap((bay, i) => {
    const next = upward[i + 1];
    const above =
      next === undefined ? [] : overlap(place, bay, `rail ${next.rail.id}`, (x) => undersideZ(next, x));
    return [
      ...inPlate(place, bay, bay.from, 1),
      ...inPlate(place, bay, bay.to, -1),
      ...above,
      ...overlap(place, bay, "the top rail", (x) => pathZ(path, "underside", x)),
    ];
  });
}
