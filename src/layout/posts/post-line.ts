/**
 * Where are a post's axis and faces at a height?
 *
 * A post as designed is plumb in the guard's plane. One that stands already may lean and stand beside it: its axis runs through
 * (x, y) at its foot and moves by the tangent of its lean per height. With d the axis and a the way the guard runs, its v is as
 * near to a as can be (see `member`), so that its u has no part along a: the uphill face is the plane
 * (1 + q²)·x − p·z − p·q·y = const with p, q the tangents of the lean along and across, half the depth from the axis (analytic
 * geometry). x along the guard, y to its left, z up, millimetres.
 *
 * @packageDocumentation
 */
import { stretchesInside } from "../../kernel/region-line.js";
import { dot, negate, sub, type Vec3 } from "../../kernel/vec.js";
import { member } from "../../members/member.js";
import { alongOf, at, type Place } from "../part.js";
import type { Site } from "../site/site.js";
import type { PlacedPost } from "./place-posts.js";
import { halfAcross } from "./post-across.js";

/** The axis of a post in one reach: through (x, y) at height z, moving by p and q per millimetre up. */
export interface PostAxis {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly p: number;
  readonly q: number;
}

/** A plumb or leaning line in the guard's plane: x at height z, p more per millimetre up. */
export interface PlumbLine {
  readonly x: number;
  readonly z: number;
  readonly p: number;
}

/** A straight line in a reach: height z0 + slope·x. */
export interface RakeLine {
  readonly reach: number;
  readonly slope: number;
  readonly z0: number;
}

/** Farther than any post's face is from its axis. */
const FAR = 1e4;

/** The axis of a post, in the coordinates of a reach: a corner post stands in two. */
export function postAxis(site: Site, post: PlacedPost, reach = post.reach): PostAxis {
  const { x, footZ: z, set } = post;
  if (set === undefined) return { x, y: 0, z, p: 0, q: 0 };
  const { y, tilt } = set;
  const corner = site.corners[post.reach];
  if (reach === post.reach || corner === undefined) return { x, y, z, p: tilt.along, q: tilt.across };
  const angle = (corner.angle * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const from = x - corner.x;
  return {
    ...{ x: corner.x + c * from + s * y, y: c * y - s * from, z },
    ...{ p: c * tilt.along + s * tilt.across, q: c * tilt.across - s * tilt.along },
  };
}

/** x of a plumb or leaning line at a height. */
export function xAt(line: PlumbLine, z: number): number {
  return line.p === 0 ? line.x : line.x + line.p * (z - line.z);
}

/** How far to the left of the guard's plane a post's axis is at a height. */
export function yAt(axis: PostAxis, z: number): number {
  return axis.q === 0 ? axis.y : axis.y + axis.q * (z - axis.z);
}

/** x where a plumb or leaning line crosses a straight one. */
export function crossX(line: PlumbLine, { slope, z0 }: Omit<RakeLine, "reach">): number {
  if (line.p === 0) return line.x;
  return (line.x + line.p * (z0 - line.z)) / (1 - line.p * slope);
}

/** x where a post's axis crosses a straight line of a reach. */
export function axisX(site: Site, post: PlacedPost, line: RakeLine): number {
  return crossX(postAxis(site, post, line.reach), line);
}

/** True where a post's axis passes a line of the guard's plane beside that plane: no rule of the joints finds it then. */
export function besideLine(site: Site, post: PlacedPost, line: RakeLine): boolean {
  if (post.set === undefined) return false;
  const axis = postAxis(site, post, line.reach);
  return yAt(axis, line.z0 + line.slope * crossX(axis, line)) !== 0;
}

/** The post's tube as it stands, a metre of it: for its frame. */
function tubeOf(place: Place, post: PlacedPost) {
  const low = axisPoint(place, post, post.footZ);
  return member({
    ...{ id: post.id, section: post.section, up: alongOf(place, post.reach) },
    ...{ from: low, to: axisPoint(place, post, post.footZ + 1000) },
  });
}

/** Along a level line of the guard's plane, from the post's axis out: how far in x the section reaches at a height. */
function rayX(place: Place, post: PlacedPost, reach: number, way: 1 | -1, z: number): number {
  const axis = postAxis(place.site, post, reach);
  const [along, { frame }] = [alongOf(place, reach), tubeOf(place, post)];
  const x = xAt(axis, z);
  const [from, out] = [at(place, reach, x, z), way === 1 ? along : negate(along)];
  const foot = sub(from, frame.origin);
  const inside = stretchesInside(
    { outer: post.section.region.outer, holes: [] },
    [dot(foot, frame.x), dot(foot, frame.y)],
    [dot(out, frame.x), dot(out, frame.y)],
    0,
    FAR,
  );
  return x + way * (inside.at(-1)?.[1] ?? post.extent.depth / 2);
}

/** From a post's axis to its face in the guard's middle plane, towards the way a reach runs (+1) or back (−1): as designed. */
export function faceReach(place: Place, post: PlacedPost, reach: number, way: 1 | -1): number {
  if (post.reach === reach) return post.extent.depth / 2;
  const along = alongOf(place, reach);
  const out = way === 1 ? along : negate(along);
  // A post's v runs along its own reach, its u to the right of that.
  const v = alongOf(place, post.reach);
  const u: Vec3 = [v[1], -v[0], 0];
  const solid = { outer: post.section.region.outer, holes: [] };
  const inside = stretchesInside(solid, [0, 0], [dot(out, u), dot(out, v)], 0, FAR);
  return inside.at(-1)?.[1] ?? post.extent.depth / 2;
}

/**
 * A post's face towards the way a reach runs (+1) or back (−1), in the guard's middle plane.
 *
 * @param half - of a thing that is to clear the face over that much on either side of the middle plane; default 0
 */
export function faceOf(place: Place, post: PlacedPost, reach: number, way: 1 | -1, half = 0): PlumbLine {
  const { set, extent, footZ: z } = post;
  if (set === undefined) return { x: post.x + way * faceReach(place, post, reach, way), z, p: 0 };
  if (reach !== post.reach) {
    const [low, high] = [z, z + 1000].map((own) => rayX(place, post, reach, way, own)) as [number, number];
    return { x: low, z, p: (high - low) / 1000 };
  }
  const { x, y, p, q } = postAxis(place.site, post);
  const square = 1 + q * q;
  const out = (extent.depth / 2) * Math.sqrt(square * (square + p * p));
  const aside = way * half * Math.abs(p * q) - p * q * y;
  return { x: x + (way * out + aside) / square, z, p: p / square };
}

/** A point of a post's axis in the layout. */
export function axisPoint(place: Place, post: PlacedPost, z: number): Vec3 {
  const axis = postAxis(place.site, post);
  return at(place, post.reach, xAt(axis, z), z, inwardOfAxis(place, axis, z));
}

/** How far towards the walking side of the guard's plane a post's axis is at a height. */
export function inwardOfAxis(place: Place, axis: PostAxis, z: number): number {
  const y = yAt(axis, z);
  return y === 0 ? 0 : place.side === "left" ? -y : y;
}

/** How far a post reaches towards the walking side of the guard's plane, at most between two heights. */
export function inwardReach(
  place: Place,
  post: PlacedPost,
  reach: number,
  heights: readonly number[],
): number {
  const half = halfAcross(place.site, post);
  if (post.set === undefined) return half;
  const axis = postAxis(place.site, post, reach);
  const wide = half * Math.hypot(1, post.corner === undefined ? axis.q : Math.hypot(axis.p, axis.q));
  return wide + Math.max(...heights.map((z) => inwardOfAxis(place, axis, z)));
}
