/**
 * The line a lower rail follows between two posts.
 *
 * Within one leg it is straight. Across a change of leg it breaks with the rail where both pieces clear the posts by at
 * least the rail's depth; otherwise it keeps the stair's rake to the post, and the level line starts at the next bay. At a plan
 * corner without a post it turns with the top rail. x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { CORNER_STEP_MM } from "../../kernel/tolerance.js";
import { bisectorShift } from "../angles.js";
import type { RailDesign } from "../document/design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { axisX, crossX, faceOf, type RakeLine } from "../posts/post-line.js";
import type { SectionExtent } from "../section-extent.js";
import type { Site } from "../site/site.js";
import type { Stretch } from "./bay.js";
import { oneLineOneRun, type RunLine, runsOfLeg } from "./rail-runs.js";

/** What a bay's rail looks like; `none` where the legs say nothing, `stuck` where no line fits. */
export type BayLine =
  | { readonly kind: "line"; readonly stretches: readonly Stretch[] }
  | { readonly kind: "none" }
  | { readonly kind: "stuck" };

/** First and last leg of a bay: a corner post belongs to the leg below it and to the one above. */
function legRange(site: Site, from: PlacedPost, to: PlacedPost): readonly [number, number] {
  const indexOf = (post: PlacedPost) => site.legs.findIndex(({ leg }) => leg.id === post.leg);
  const after = from.corner && site.corners[from.corner.index]?.legs[1];
  return [after ?? indexOf(from), indexOf(to)];
}

/** Lines of the undersides over the legs first to last, and over the short level pieces beside corners next to them. */
function linesOf(site: Site, rail: RailDesign, first: number, last: number): RunLine[] {
  const heights = site.legs.map(({ leg }) =>
    Object.hasOwn(leg.undersides, rail.id) ? leg.undersides[rail.id] : undefined,
  );
  const legs = site.legs.slice(first, last + 1);
  return oneLineOneRun(legs.flatMap((_, i) => runsOfLeg(site, first + i, heights)));
}

/** The lines a bay runs along: a short level piece only where the bay reaches it. */
function inBay(site: Site, lines: readonly RunLine[], bay: readonly [number, number], below: number) {
  const stops = stopsOf(site, lines, below);
  return lines.filter((line, i) => {
    const [from, to] = [stops[i - 1] ?? bay[0], stops[i] ?? bay[1]];
    return !line.stub || Math.min(to, bay[1]) > Math.max(from, bay[0]);
  });
}

/** x where the axes of two lines meet, above their undersides' meeting point by the bisector. */
function meet(lower: RunLine, upper: RunLine, below: number): number {
  const underside = (upper.z0 - lower.z0) / (lower.slope - upper.slope);
  return underside - below * bisectorShift(lower.slope, upper.slope);
}

/** Where the axis passes from one line to the next: their break, or the corner between their reaches. */
function stopsOf(site: Site, lines: readonly RunLine[], below: number): number[] {
  return lines.slice(1).map((upper, i) => {
    const lower = lines[i] ?? upper;
    return upper.reach === lower.reach
      ? meet(lower, upper, below)
      : (site.corners[lower.reach]?.x ?? Number.NaN);
  });
}

/** True where the axes meet at every corner. */
function meetsAtCorners(site: Site, lines: readonly RunLine[], below: number): boolean {
  const axis = (run: RunLine, x: number) => run.z0 + run.slope * x + below * Math.hypot(1, run.slope);
  return lines.slice(1).every((upper, i) => {
    const lower = lines[i] ?? upper;
    if (upper.reach === lower.reach) return true;
    const x = site.corners[lower.reach]?.x ?? Number.NaN;
    return Math.abs(axis(upper, x) - axis(lower, x)) <= CORNER_STEP_MM;
  });
}

/**
 * The line of one lower rail from one post's axis to the next.
 *
 * @param from - lower post
 * @param to - upper post
 */
export function bayLine(
  place: Place,
  rail: RailDesign,
  extent: SectionExtent,
  from: PlacedPost,
  to: PlacedPost,
): BayLine {
  const { site } = place;
  const [first, last] = legRange(site, from, to);
  const lines = inBay(site, linesOf(site, rail, first, last), [from.x, to.x], extent.below);
  const rake = lines.find((line) => line.ground.flight !== undefined);
  const [only] = lines;
  const legs = site.legs.slice(first, last + 1);
  const whole = legs.every(({ leg }) => Object.hasOwn(leg.undersides, rail.id));
  if (only === undefined || (!whole && rake === undefined)) return { kind: "none" };
  const axisOf = ({ reach, slope, z0 }: RunLine): RakeLine => ({
    ...{ reach, slope, z0: z0 + extent.below * Math.hypot(1, slope) },
  });
  const ends = (low: RunLine, high: RunLine) =>
    [axisX(site, from, axisOf(low)), axisX(site, to, axisOf(high))] as const;
  const straight = (line: RunLine): BayLine => {
    const { reach, slope, z0 } = line;
    return { kind: "line", stretches: [{ reach, slope, z0, x: ends(line, line) }] };
  };
  if (whole && lines.length === 1) return straight(only);
  const breaks = stopsOf(site, lines, extent.below);
  const [start, end] = [lines[0] ?? only, lines.at(-1) ?? only];
  const [startX, endX] = ends(start, end);
  const stops = [startX, ...breaks, endX];
  const face = (post: PlacedPost, line: RunLine, way: 1 | -1) =>
    post.set === undefined
      ? post.x + (way * post.extent.depth) / 2
      : crossX(faceOf(place, post, line.reach, way), axisOf(line));
  const clear = [face(from, start, 1), ...breaks, face(to, end, -1)];
  const roomy = clear.slice(1).every((x, i) => x - (clear[i] ?? x) >= extent.depth);
  if (whole && roomy && meetsAtCorners(site, lines, extent.below)) {
    const stretches = lines.map(({ reach, slope, z0 }, i): Stretch => {
      return { reach, slope, z0, x: [stops[i] ?? startX, stops[i + 1] ?? endX] };
    });
    return { kind: "line", stretches };
  }
  const oneReach = site.legs[first]?.reach === site.legs[last]?.reach;
  const raking = from.along === "stair" || to.along === "stair";
  return oneReach && raking && rake !== undefined ? straight(rake) : { kind: "stuck" };
}
