/**
 * Where do two sides of an outline meet? Lines and arcs, in closed form.
 *
 * Candidates are the meeting points of the full line or circle of each, and the ends of each lying on the other (which
 * is how sides that run along one another show). Used to refuse outlines that cross themselves.
 *
 * @packageDocumentation
 */
import { type ArcSegment, type LineSegment, pointOn, type Segment } from "../../kernel/region.js";
import { PARALLEL_SINE, STATION_MM } from "../../kernel/tolerance.js";
import type { Vec2 } from "../../kernel/vec.js";

/** Distance between two points of the section, millimetres. */
export function apart(p: Vec2, q: Vec2): number {
  return Math.hypot(p[0] - q[0], p[1] - q[1]);
}

/** The points two sides have in common, each counted at least once; finitely many even where they run along one another. */
export function meetingPoints(a: Segment, b: Segment): Vec2[] {
  const ends = [pointOn(a, 0), pointOn(a, 1), pointOn(b, 0), pointOn(b, 1)];
  return [...carrierPoints(a, b), ...ends].filter((p) => liesOn(p, a) && liesOn(p, b));
}

function carrierPoints(a: Segment, b: Segment): Vec2[] {
  if (a.kind === "line") return b.kind === "line" ? lineLine(a, b) : lineCircle(a, b);
  return b.kind === "line" ? lineCircle(b, a) : circleCircle(a, b);
}

function liesOn(p: Vec2, s: Segment): boolean {
  if (s.kind === "line") {
    const [dx, dy] = [s.to[0] - s.from[0], s.to[1] - s.from[1]];
    const t = ((p[0] - s.from[0]) * dx + (p[1] - s.from[1]) * dy) / (dx * dx + dy * dy);
    return apart(p, pointOn(s, Math.min(1, Math.max(0, t)))) <= STATION_MM;
  }
  if (Math.abs(apart(p, s.centre) - s.radius) > STATION_MM) return false;
  const sense = Math.sign(s.sweep);
  const turn = (Math.atan2(p[1] - s.centre[1], p[0] - s.centre[0]) - s.start) * sense;
  const past = turn - 2 * Math.PI * Math.floor(turn / (2 * Math.PI));
  return (
    past <= Math.abs(s.sweep) ||
    apart(p, pointOn(s, 0)) <= STATION_MM ||
    apart(p, pointOn(s, 1)) <= STATION_MM
  );
}

function lineLine(a: LineSegment, b: LineSegment): Vec2[] {
  const [ax, ay] = [a.to[0] - a.from[0], a.to[1] - a.from[1]];
  const [bx, by] = [b.to[0] - b.from[0], b.to[1] - b.from[1]];
  const cross = ax * by - ay * bx;
  if (Math.abs(cross) <= PARALLEL_SINE * Math.hypot(ax, ay) * Math.hypot(bx, by)) return [];
  const t = ((b.from[0] - a.from[0]) * by - (b.from[1] - a.from[1]) * bx) / cross;
  return [[a.from[0] + t * ax, a.from[1] + t * ay]];
}

function lineCircle(line: LineSegment, arc: ArcSegment): Vec2[] {
  const [dx, dy] = [line.to[0] - line.from[0], line.to[1] - line.from[1]];
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const [rx, ry] = [arc.centre[0] - line.from[0], arc.centre[1] - line.from[1]];
  const [along, off] = [rx * ux + ry * uy, rx * uy - ry * ux];
  if (Math.abs(off) > arc.radius + STATION_MM) return [];
  const half = Math.sqrt(Math.max(0, (arc.radius - off) * (arc.radius + off)));
  return [along - half, along + half].map((s): Vec2 => [line.from[0] + s * ux, line.from[1] + s * uy]);
}

function circleCircle(a: ArcSegment, b: ArcSegment): Vec2[] {
  const d = apart(a.centre, b.centre);
  if (
    d <= STATION_MM ||
    d > a.radius + b.radius + STATION_MM ||
    d < Math.abs(a.radius - b.radius) - STATION_MM
  )
    return [];
  const [ux, uy] = [(b.centre[0] - a.centre[0]) / d, (b.centre[1] - a.centre[1]) / d];
  const along = (d * d + a.radius * a.radius - b.radius * b.radius) / (2 * d);
  const half = Math.sqrt(Math.max(0, (a.radius - along) * (a.radius + along)));
  return [half, -half].map(
    (h): Vec2 => [a.centre[0] + along * ux - h * uy, a.centre[1] + along * uy + h * ux],
  );
}
