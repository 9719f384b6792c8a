/**
 * Section regions: the area that is swept along an axis to make a bar.
 *
 * A region is one outer loop, counter-clockwise, and holes, clockwise, in the section's own (u, v) plane; seen with
 * the axis coming towards the eye. Loops are closed chains of straight lines and circular arcs.
 *
 * @packageDocumentation
 */
import type { Vec2 } from "./vec.js";

/** A straight side from one corner to the next, millimetres. */
export interface LineSegment {
  readonly kind: "line";
  readonly from: Vec2;
  readonly to: Vec2;
  /** Name of the side the segment belongs to, e.g. `top`, `wall`. */
  readonly label?: string;
}

/** A circular side. `start` and `sweep` are curve parameters in radians; `sweep` > 0 runs counter-clockwise, |sweep| ≤ π. */
export interface ArcSegment {
  readonly kind: "arc";
  readonly centre: Vec2;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
  readonly label?: string;
}

/** One side of a loop. */
export type Segment = LineSegment | ArcSegment;
/** A closed chain: each segment starts where the one before it ends. */
export type Loop = readonly Segment[];

/** An area bounded by an outer loop (counter-clockwise) and holes (clockwise). */
export interface Region {
  readonly outer: Loop;
  readonly holes: readonly Loop[];
}

/** All loops, the outer one first. */
export function loopsOf(region: Region): readonly Loop[] {
  return [region.outer, ...region.holes];
}

/** The point at fraction `t` (0 to 1) of a segment. */
export function pointOn(segment: Segment, t: number): Vec2 {
  if (segment.kind === "line") {
    const { from, to } = segment;
    return t === 1 ? to : [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])];
  }
  const angle = segment.start + t * segment.sweep;
  return [
    segment.centre[0] + segment.radius * Math.cos(angle),
    segment.centre[1] + segment.radius * Math.sin(angle),
  ];
}

/** The derivative of `pointOn` with respect to `t`. */
export function tangentOn(segment: Segment, t: number): Vec2 {
  if (segment.kind === "line") return [segment.to[0] - segment.from[0], segment.to[1] - segment.from[1]];
  const angle = segment.start + t * segment.sweep;
  const k = segment.radius * segment.sweep;
  return [-k * Math.sin(angle), k * Math.cos(angle)];
}

/** How far round an arc (0 to 1) an angle from its centre lies, radians; above 1 when it is past the arc. */
export function arcFraction(arc: ArcSegment, angle: number): number {
  const turn = 2 * Math.PI;
  const from = (angle - arc.start) * Math.sign(arc.sweep);
  return (((from % turn) + turn) % turn) / Math.abs(arc.sweep);
}

/** Length of a segment. */
export function segmentLength(segment: Segment): number {
  return segment.kind === "line"
    ? Math.hypot(segment.to[0] - segment.from[0], segment.to[1] - segment.from[1])
    : segment.radius * Math.abs(segment.sweep);
}

/** The same segment walked the other way. */
export function reverseSegment(segment: Segment): Segment {
  return segment.kind === "line"
    ? { ...segment, from: segment.to, to: segment.from }
    : { ...segment, start: segment.start + segment.sweep, sweep: -segment.sweep };
}

/** The same loop walked the other way. */
export function reverseLoop(loop: Loop): Loop {
  return [...loop].reverse().map(reverseSegment);
}

/** A full circle as two half arcs that meet on the u axis; counter-clockwise unless `clockwise`. */
export function circleLoop(centre: Vec2, radius: number, label: string, clockwise = false): Loop {
  const sweep = clockwise ? -Math.PI : Math.PI;
  return [
    { kind: "arc", centre, radius, start: 0, sweep, label },
    { kind: "arc", centre, radius, start: clockwise ? -Math.PI : Math.PI, sweep, label },
  ];
}
