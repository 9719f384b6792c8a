/**
 * The wall behind a place on the outline: how thick the section is there, square to its outside.
 *
 * @packageDocumentation
 */

import { pointOn, type Segment, tangentOn } from "../kernel/region.js";
import type { Section } from "../members/section.js";

/** Thickness of material a saw or a grinder goes through square to the surface, millimetres; bars count to their middle. */
export function wallOf(section: Section): number {
  const { shape } = section;
  switch (shape.kind) {
    case "round-tube":
    case "rect-tube":
      return shape.wall;
    case "round-bar":
      return shape.od / 2;
    case "rect-bar":
      return Math.min(shape.width, shape.depth) / 2;
    case "angle":
      return shape.thickness;
    case "channel":
      return Math.min(shape.web, shape.flange);
    case "custom":
      return 0;
  }
}

/** A place on the outline with the unit direction from there into the material, square to the outline. */
export interface OutlinePlace {
  readonly u: number;
  readonly v: number;
  readonly iu: number;
  readonly iv: number;
}

/** The place at `t` of a segment of a loop; material lies on the left of a segment. */
export function outlinePlace(segment: Segment, t: number): OutlinePlace {
  if (segment.kind === "line") {
    const [u, v] = pointOn(segment, t);
    const [du, dv] = tangentOn(segment, t);
    const k = 1 / Math.sqrt(du * du + dv * dv);
    return { u, v, iu: -dv * k, iv: du * k };
  }
  const angle = segment.start + t * segment.sweep;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { centre, radius } = segment;
  const out = segment.sweep > 0 ? 1 : -1;
  return { u: centre[0] + radius * cos, v: centre[1] + radius * sin, iu: -out * cos, iv: -out * sin };
}
