/**
 * The outline of a rectangle with rounded corners, centred on the axis.
 *
 * Sides are named after the section's own axes (u to the left, v up): `+u`, `top`, `-u`, `bottom`; every arc is a
 * `corner`. A radius of zero gives four sharp corners, a radius of half a side leaves no straight there: no segment of
 * zero length is ever made.
 *
 * @packageDocumentation
 */
import type { ArcSegment, LineSegment, Loop, Segment } from "../../kernel/region.js";
import type { Vec2 } from "../../kernel/vec.js";

/**
 * A rounded rectangle, counter-clockwise from the foot of its `+u` side.
 *
 * @param width - along u, millimetres, above zero
 * @param depth - along v, millimetres, above zero
 * @param radius - of all four corners, from 0 to half the smaller side
 * @param prefix - put before every label, e.g. `inner `
 * @example
 * roundedRectLoop(40, 20, 0, "").map((side) => side.label); // +u, top, -u, bottom
 */
export function roundedRectLoop(width: number, depth: number, radius: number, prefix: string): Loop {
  const [a, b] = [width / 2, depth / 2];
  const [p, q] = [a - radius, b - radius];
  const side = (name: string, from: Vec2, to: Vec2): LineSegment => ({
    kind: "line",
    from,
    to,
    label: prefix + name,
  });
  const corner = (centre: Vec2, start: number): ArcSegment => ({
    kind: "arc",
    centre,
    radius,
    start,
    sweep: Math.PI / 2,
    label: `${prefix}corner`,
  });
  const all: Segment[] = [
    side("+u", [a, -q], [a, q]),
    corner([p, q], 0),
    side("top", [p, b], [-p, b]),
    corner([-p, q], Math.PI / 2),
    side("-u", [-a, q], [-a, -q]),
    corner([-p, -q], Math.PI),
    side("bottom", [-p, -b], [p, -b]),
    corner([p, -q], -Math.PI / 2),
  ];
  return all.filter((s) =>
    s.kind === "arc" ? s.radius > 0 : s.from[0] !== s.to[0] || s.from[1] !== s.to[1],
  );
}
