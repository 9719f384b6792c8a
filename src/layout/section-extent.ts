/**
 * How far does a section reach from its axis, up, down and to the sides?
 *
 * Exact for lines and arcs: corners, and the arcs' own crowns where the tangent is level or plumb.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../kernel/region-extent.js";
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

/** The reach of a section. */
export function sectionExtent(section: Section): SectionExtent {
  const { outer } = section.region;
  const [across, up] = [extentAlong(outer, [1, 0]), extentAlong(outer, [0, 1])];
  const [above, below] = [up.greatest, -up.least];
  return { above, below, halfWidth: Math.max(across.greatest, -across.least), depth: above + below };
}
