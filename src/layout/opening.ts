/**
 * The openings between neighbouring posts, and the rows of each: from one rail's top to the next one's underside.
 *
 * An opening runs from post face to post face in the guard's middle plane; where the guard turns in plan between two posts it
 * is one span a reach. x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { stretchesInside } from "../kernel/region-line.js";
import { dot, negate, type Vec3 } from "../kernel/vec.js";
import type { Bay } from "./bay.js";
import { type Boundary, faceOfBay } from "./boundary.js";
import type { InfillDesign } from "./infill-design.js";
import { alongOf, type Place } from "./part.js";
import type { PlacedPost } from "./place-posts.js";

/** The part of an opening in one reach. */
export interface Span {
  readonly reach: number;
  readonly x: readonly [number, number];
  /** True at an end that is a plan corner, not a post. */
  readonly corner: readonly [boolean, boolean];
}

/** From one rail up to the next. */
export interface Row {
  /** 1 is the lowest. */
  readonly number: number;
  readonly floor: Boundary;
  readonly ceiling: Boundary;
  readonly floorBay: Bay;
  /** Where the ceiling is a lower rail too. */
  readonly ceilingBay?: Bay;
}

/** An opening that is to be filled. */
export interface Opening {
  /** Of its bay, from the foot. */
  readonly number: number;
  readonly from: PlacedPost;
  readonly to: PlacedPost;
  readonly design: InfillDesign;
  /** Of the infill in the document. */
  readonly path: string;
  readonly spans: readonly Span[];
  readonly rows: readonly Row[];
}

/** Farther than any post's face is from its axis. */
const FAR = 1e4;

/** From a post's axis to its face in the guard's middle plane, towards the way a reach runs (+1) or back (−1). */
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

function spansOf(place: Place, from: PlacedPost, to: PlacedPost): Span[] {
  const { corners } = place.site;
  const first = from.corner === undefined ? from.reach : from.corner.index + 1;
  const last = to.reach;
  const spans: Span[] = [];
  for (let reach = first; reach <= last; reach++) {
    const [starts, ends] = [reach === first, reach === last];
    const low = starts ? from.x + faceReach(place, from, reach, 1) : (corners[reach - 1]?.x ?? from.x);
    const high = ends ? to.x - faceReach(place, to, reach, -1) : (corners[reach]?.x ?? to.x);
    if (high > low) spans.push({ reach, x: [low, high], corner: [!starts, !ends] });
  }
  return spans;
}

function rowsOf(place: Place, bays: readonly Bay[], top: Boundary, all: boolean): Row[] {
  const startZ = ({ stretches: [first], from }: Bay) => (first?.z0 ?? 0) + (first?.slope ?? 0) * from.x;
  const upward = [...bays].sort((a, b) => startZ(a) - startZ(b));
  const rows = upward.map((floorBay, i): Row => {
    const ceilingBay = upward[i + 1];
    return {
      number: i + 1,
      floor: faceOfBay(place, floorBay, "top"),
      ceiling: ceilingBay === undefined ? top : faceOfBay(place, ceilingBay, "underside"),
      floorBay,
      ...(ceilingBay === undefined ? {} : { ceilingBay }),
    };
  });
  return all ? rows : rows.slice(0, 1);
}

/** The infill of the leg a bay's lower post stands on; a corner post counts to the leg above it. */
function infillOf(
  place: Place,
  from: PlacedPost,
): { readonly design: InfillDesign; readonly path: string } | undefined {
  const { site, design } = place;
  const own = site.legs.findIndex(({ leg }) => leg.id === from.leg);
  const index = from.corner === undefined ? own : (site.corners[from.corner.index]?.legs[1] ?? own);
  const leg = site.legs[index]?.leg;
  if (leg?.infill === "none") return undefined;
  if (leg?.infill !== undefined) return { design: leg.infill, path: `legs[${index}].infill` };
  return design.infill && { design: design.infill, path: "infill" };
}

/** Every opening that is to be filled, from the foot upward. */
export function openings(
  place: Place,
  posts: readonly PlacedPost[],
  bays: readonly Bay[],
  top: Boundary,
): Opening[] {
  return posts.slice(1).flatMap((to, i): Opening[] => {
    const from = posts[i] as PlacedPost;
    const infill = infillOf(place, from);
    if (infill === undefined || to.x - from.x <= (from.extent.depth + to.extent.depth) / 2) return [];
    const own = bays.filter((bay) => bay.from === from);
    const rows = rowsOf(place, own, top, infill.design.rows === "all");
    return [{ number: i + 1, from, to, ...infill, spans: spansOf(place, from, to), rows }];
  });
}
