/**
 * Where does the top rail start and stop?
 *
 * Plumb over the lowest or the top nosing where no level leg goes on; an end plate short of a wall; or past the outer
 * face of the leg's last post by its overhang. Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import type { Design, LegDesign } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import type { PlacedPost } from "./place-posts.js";
import { sayLength } from "./say-length.js";

/** How far a level leg's rail reaches from the leg's start, and what is wrong with that. */
function reachOf(
  leg: LegDesign,
  index: number,
  posts: readonly PlacedPost[],
): { reach: number; diagnostics: Diagnostic[] } {
  const path = `legs[${index}]`;
  const length = leg.length ?? Number.POSITIVE_INFINITY;
  const faces = posts
    .filter((post) => post.along === leg.along)
    .map((post) => post.offset + post.extent.depth / 2);
  const last = faces.length === 0 ? undefined : Math.max(...faces);
  const free = leg.end?.type === "wall" ? undefined : (leg.end?.overhang ?? 0);
  const reach =
    leg.end?.type === "wall" ? length - leg.end.endPlate : last === undefined ? length : last + (free ?? 0);
  const diagnostics: Diagnostic[] = [];
  if (reach > length + STATION_MM) {
    diagnostics.push(
      diagnostic({
        code: "rail-past-leg",
        path: `${path}.end`,
        message: `${path} (${leg.along}): expected the rail to end within the leg's ${sayLength(length)}, got ${sayLength(reach)}.`,
        hint: "Move the last post, shorten the overhang, or correct `length`.",
        values: { length, reach },
      }),
    );
  }
  return { reach, diagnostics };
}

/** x of both ends of the top rail. */
export function pathEnds(
  design: Design,
  line: NosingLine,
  posts: readonly PlacedPost[],
): { readonly ends: readonly [number, number]; readonly diagnostics: readonly Diagnostic[] } {
  const low = line.nosings[0]?.x ?? 0;
  const find = (along: LegDesign["along"]) => {
    const index = design.legs.findIndex((leg) => leg.along === along);
    const leg = design.legs[index];
    return leg === undefined ? undefined : reachOf(leg, index, posts);
  };
  const floor = find("floor");
  const landing = find("landing");
  return {
    ends: [floor === undefined ? low : low - floor.reach, landing?.reach ?? 0],
    diagnostics: [...(floor?.diagnostics ?? []), ...(landing?.diagnostics ?? [])],
  };
}
