/**
 * The wall behind a place on the outline: how thick the section is there, square to its outside.
 *
 * @packageDocumentation
 */

import { type Segment, tangentOn } from "../kernel/region.js";
import type { Vec2 } from "../kernel/vec.js";
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

/** Unit direction into the material, square to the outline at `t` of a segment of the outer loop. */
export function inwardAt(segment: Segment, t: number): Vec2 {
  const [du, dv] = tangentOn(segment, t);
  const k = 1 / Math.hypot(du, dv);
  return [-dv * k, du * k];
}
