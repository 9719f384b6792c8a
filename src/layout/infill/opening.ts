/**
 * The openings between neighbouring posts, and the rows of each: from one rail's top to the next one's underside.
 *
 * An opening runs from post face to post face in the guard's middle plane; where the guard turns in plan between two posts it
 * is one span a reach. A leaning post's face is nearer at one end of a row than at the other. x along the guard, millimetres.
 *
 * @packageDocumentation
 */

import type { InfillDesign } from "../document/infill-design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, faceOf, type PlumbLine } from "../posts/post-line.js";
import type { Bay } from "../rails/bay.js";
import { type Boundary, faceOfBay } from "./boundary.js";

/** The part of a row in one reach. */
export interface Span {
  readonly reach: number;
  /** From and to which it is free over its whole height. */
  readonly x: readonly [number, number];
  /** From and to which it is free somewhere: the same, unless a post leans. */
  readonly widest: readonly [number, number];
  /** Its two sides: posts' faces, or the corner's plumb line. */
  readonly sides: readonly [PlumbLine, PlumbLine];
  /** True at an end that is a plan corner, not a post. */
  readonly corner: readonly [boolean, boolean];
}

/** From one rail up to the next. */
export interface Row {
  /** 1 is the lowest. */
  readonly number: number;
  readonly floor: Boundary;
  readonly ceiling: Boundary;
  readonly spans: readonly Span[];
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
  readonly rows: readonly Row[];
}

/** x where a side crosses the floor and the ceiling of a row. */
function crossings(side: PlumbLine, floor: Boundary, ceiling: Boundary, reach: number): readonly number[] {
  if (side.p === 0) return [side.x];
  return [floor, ceiling].flatMap(({ lines }) => {
    const found = lines
      .filter((line) => line.reach === reach)
      .map((line) => ({ line, x: crossX(side, { slope: line.slope, z0: line.face }) }));
    const over = found.find(({ line, x }) => line.x[0] <= x && x <= line.x[1]) ?? found[0];
    return over === undefined ? [] : [over.x];
  });
}

/** The spans between two posts, from a floor to a ceiling; \`half\` of what stands in the guard's plane is kept clear of the posts. */
function spansOf(place: Place, from: PlacedPost, to: PlacedPost, floor: Boundary, ceiling: Boundary): Span[] {
  const { corners } = place.site;
  const first = from.corner === undefined ? from.reach : from.corner.index + 1;
  const last = to.reach;
  const half = from.set === undefined && to.set === undefined ? 0 : floor.halfWidth;
  const plumb = (x: number): PlumbLine => ({ x, z: 0, p: 0 });
  const spans: Span[] = [];
  for (let reach = first; reach <= last; reach++) {
    const [starts, ends] = [reach === first, reach === last];
    const sides = [
      starts ? faceOf(place, from, reach, 1, half) : plumb(corners[reach - 1]?.x ?? from.x),
      ends ? faceOf(place, to, reach, -1, half) : plumb(corners[reach]?.x ?? to.x),
    ] as const;
    const low = crossings(sides[0], floor, ceiling, reach);
    const high = crossings(sides[1], floor, ceiling, reach);
    const x = [Math.max(...low), Math.min(...high)] as const;
    const widest = [Math.min(...low), Math.max(...high)] as const;
    if (x[1] > x[0]) spans.push({ reach, x, widest, sides, corner: [!starts, !ends] });
  }
  return spans;
}

function rowsOf(
  place: Place,
  [from, to]: readonly [PlacedPost, PlacedPost],
  bays: readonly Bay[],
  top: Boundary,
  all: boolean,
): Row[] {
  const startZ = ({ stretches: [first], from: post }: Bay) => (first?.z0 ?? 0) + (first?.slope ?? 0) * post.x;
  const upward = [...bays].sort((a, b) => startZ(a) - startZ(b));
  const rows = upward.map((floorBay, i): Row => {
    const ceilingBay = upward[i + 1];
    const floor = faceOfBay(place, floorBay, "top");
    const ceiling = ceilingBay === undefined ? top : faceOfBay(place, ceilingBay, "underside");
    return {
      ...{ number: i + 1, floor, ceiling, floorBay },
      spans: spansOf(place, from, to, floor, ceiling),
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
    const rows = rowsOf(place, [from, to], own, top, infill.design.rows === "all");
    return [{ number: i + 1, from, to, ...infill, rows }];
  });
}
