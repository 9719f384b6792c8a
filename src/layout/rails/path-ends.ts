/**
 * Where does the top rail start and stop?
 *
 * Plumb over the lowest or the top nosing where nothing else is said; an end plate short of a wall; or past the outer face of
 * the leg's outermost post by its overhang. x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { EndDesign } from "../document/design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, faceOf } from "../posts/post-line.js";
import { sayLength } from "../say-length.js";
import type { SectionExtent } from "../section-extent.js";
import type { LegGround } from "../site/site.js";
import type { RunLine } from "./rail-runs.js";

/** How far out along the guard a post's face is, from the underside to the axis of the rail that ends over it. */
function faceOut(place: Place, post: PlacedPost, run: RunLine, extent: SectionExtent, way: 1 | -1): number {
  if (post.set === undefined) return way * post.x + post.extent.depth / 2;
  const face = faceOf(place, post, run.reach, way);
  const secant = Math.hypot(1, run.slope);
  const heights = [run.z0 - extent.above * secant, run.z0 - extent.depth * secant];
  return Math.max(...heights.map((z0) => way * crossX(face, { slope: run.slope, z0 })));
}

/** x of one end: `way` is −1 at the lower end of the path, 1 at the upper; `faceAt` is how far out a post's face is. */
function endOf(
  ground: LegGround,
  end: EndDesign | undefined,
  posts: readonly PlacedPost[],
  way: 1 | -1,
  faceAt: (post: PlacedPost) => number,
): { readonly x: number; readonly diagnostics: Diagnostic[] } {
  const edge = ground.x[way === 1 ? 1 : 0];
  if (ground.flight !== undefined && end === undefined) return { x: edge, diagnostics: [] };
  if (end?.type === "wall") return { x: edge - way * end.endPlate, diagnostics: [] };
  const faces = posts.filter((post) => post.leg === ground.leg.id && post.corner === undefined).map(faceAt);
  const x = faces.length === 0 ? edge : way * (Math.max(...faces) + (end?.overhang ?? 0));
  const past = way * (x - edge);
  if (!(past > STATION_MM) || ground.flight !== undefined) return { x, diagnostics: [] };
  const { index, leg } = ground;
  const length = Math.abs(ground.x[1] - ground.x[0]);
  const path = `legs[${index}]`;
  return {
    x,
    diagnostics: [
      diagnostic({
        code: "rail-past-leg",
        path: `${path}.end`,
        message: `${path} (${leg.along}): expected the rail to end within the leg's ${sayLength(length)}, got ${sayLength(length + past)}.`,
        hint: "Move the last post, shorten the overhang, or correct `length`.",
        values: { length, reach: length + past },
      }),
    ],
  };
}

/** x of both ends of the top rail: `lines` and `extent` are the rail's. */
export function pathEnds(
  place: Place,
  posts: readonly PlacedPost[],
  lines: readonly RunLine[],
  extent: SectionExtent,
): { readonly ends: readonly [number, number]; readonly diagnostics: readonly Diagnostic[] } {
  const { legs } = place.site;
  const [first, last] = [legs[0] as LegGround, legs.at(-1) as LegGround];
  const [lowest, highest] = [lines[0] as RunLine, lines.at(-1) as RunLine];
  const low = endOf(first, first.leg.start, posts, -1, (post) => faceOut(place, post, lowest, extent, -1));
  const high = endOf(last, last.leg.end, posts, 1, (post) => faceOut(place, post, highest, extent, 1));
  return { ends: [low.x, high.x], diagnostics: [...low.diagnostics, ...high.diagnostics] };
}
