/**
 * How far does a section reach from its axis, up, down and to the sides?
 *
 * Exact for lines and arcs: corners, and the arcs' own crowns where the tangent is level or plumb.
 *
 * @packageDocumentation
 */
import { pointOn, type Segment } from "../kernel/region.js";
import type { Vec2 } from "../kernel/vec.js";
import type { Section } from "../members/section.js";

/** Reach from the axis, mm; all positive for a section that surrounds its axis. */
export interface SectionExtent {
  /** To the top (+v) and the bottom (−v). */
  readonly above: number;
  readonly below: number;
  /** Farther of the two sides (±u). */
  readonly halfWidth: number;
  /** above + below. */
  readonly depth: number;
}

const QUARTER = Math.PI / 2;

function extremes(segment: Segment): readonly Vec2[] {
  const ends = [pointOn(segment, 0), pointOn(segment, 1)];
  if (segment.kind === "line") return ends;
  const { centre, radius, start, sweep } = segment;
  const [low, high] = sweep > 0 ? [start, start + sweep] : [start + sweep, start];
  const crowns: Vec2[] = [];
  for (let k = Math.ceil(low / QUARTER); k * QUARTER <= high; k++) {
    const quarter = ((k % 4) + 4) % 4;
    crowns.push([
      centre[0] + (quarter === 0 ? radius : quarter === 2 ? -radius : 0),
      centre[1] + (quarter === 1 ? radius : quarter === 3 ? -radius : 0),
    ]);
  }
  return [...ends, ...crowns];
}

/** The reach of a section. */
export function sectionExtent(section: Section): SectionExtent {
  const points = section.region.outer.flatMap(extremes);
  const above = Math.max(...points.map((p) => p[1]));
  const below = -Math.min(...points.map((p) => p[1]));
  const halfWidth = Math.max(...points.map((p) => Math.abs(p[0])));
  return { above, below, halfWidth, depth: above + below };
}
