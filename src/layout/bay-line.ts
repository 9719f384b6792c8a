/**
 * The line a lower rail follows between two posts.
 *
 * Within one leg it is straight. Across a change of leg it breaks with the rail where both pieces clear the posts by at
 * least the rail's depth; otherwise it keeps the stair's rake to the post, and the level line starts at the next bay.
 * Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import { tanHalf } from "./angles.js";
import type { Stretch } from "./bay.js";
import type { Design, RailDesign } from "./design.js";
import type { NosingLine } from "./nosing-line.js";
import type { PlacedPost } from "./place-posts.js";
import { groundOf, type LegGround } from "./rail-path.js";
import type { SectionExtent } from "./section-extent.js";

/** What a bay's rail looks like; `none` where the legs say nothing, `stuck` where no line fits. */
export type BayLine =
  | { readonly kind: "line"; readonly stretches: readonly Stretch[] }
  | { readonly kind: "none" }
  | { readonly kind: "stuck" };

interface Ground extends LegGround {
  readonly z0: number;
}

/** x where the axes of two lines meet, above their undersides' meeting point by the bisector. */
function meet(lower: Ground, upper: Ground, below: number): number {
  const underside = (upper.z0 - lower.z0) / (lower.slope - upper.slope);
  return underside - below * tanHalf(Math.max(lower.slope, upper.slope));
}

/**
 * The line of one lower rail from one post's axis to the next.
 *
 * @param from - lower post
 * @param to - upper post
 */
export function bayLine(
  design: Design,
  line: NosingLine,
  rail: RailDesign,
  extent: SectionExtent,
  from: PlacedPost,
  to: PlacedPost,
): BayLine {
  const first = design.legs.findIndex((leg) => leg.along === from.along);
  const last = design.legs.findIndex((leg) => leg.along === to.along);
  const legs = design.legs.slice(first, last + 1);
  const grounds = legs.flatMap((leg): Ground[] => {
    const height = Object.hasOwn(leg.undersides, rail.id) ? leg.undersides[rail.id] : undefined;
    const ground = groundOf(leg, line);
    return height === undefined ? [] : [{ ...ground, z0: ground.groundZ + height }];
  });
  const rake = grounds.find((ground) => ground.leg.along === "stair");
  const only = grounds[0];
  if (only === undefined || (legs.length > 1 && rake === undefined)) return { kind: "none" };
  const straight = (ground: Ground): BayLine => ({
    kind: "line",
    stretches: [{ slope: ground.slope, z0: ground.z0, x: [from.x, to.x] }],
  });
  if (legs.length === 1 || rake === undefined) return straight(only);
  const breaks = grounds.slice(1).map((upper, i) => meet(grounds[i] ?? upper, upper, extent.below));
  const stops = [from.x, ...breaks, to.x];
  const clear = [from.x + from.extent.depth / 2, ...breaks, to.x - to.extent.depth / 2];
  const roomy = clear.slice(1).every((x, i) => x - (clear[i] ?? x) >= extent.depth);
  if (grounds.length === legs.length && roomy) {
    const stretches = grounds.map((ground, i): Stretch => {
      const { slope, z0 } = ground;
      return { slope, z0, x: [stops[i] ?? from.x, stops[i + 1] ?? to.x] };
    });
    return { kind: "line", stretches };
  }
  return from.along === "stair" || to.along === "stair" ? straight(rake) : { kind: "stuck" };
}
