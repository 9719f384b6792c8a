/**
 * Area, first and second moments of a region of lines and arcs, exactly.
 *
 * Green's theorem turns each area integral into a sum over the sides of the boundary, and each side has a closed form:
 * ∬dA = −∮y dx, ∬y dA = −½∮y² dx, ∬y² dA = −⅓∮y³ dx, ∬xy dA = ½∮x²y dy. Moments about the other axis are those of the
 * region turned by a quarter. Powers of a sine are integrated by their multiple-angle forms (any table of integrals).
 *
 * @packageDocumentation
 */
import type { ArcSegment, Loop, Segment } from "../kernel/region.js";
import type { Vec2 } from "../kernel/vec.js";

/** −(1/k)∫y^k dx along a side: its share of area (k = 1), first (2) and second (3) moment about the x axis. */
export function sideMoment(side: Segment, k: 1 | 2 | 3): number {
  if (side.kind === "arc") return arcMoment(side, side.start, side.start + side.sweep, k);
  const [x1, y1] = side.from;
  const [x2, y2] = side.to;
  return lineMoment(x2 - x1, y1, y2, k);
}

/** The same for a straight run over `dx` with y going from `y1` to `y2`. */
export function lineMoment(dx: number, y1: number, y2: number, k: 1 | 2 | 3): number {
  if (k === 1) return (-dx * (y1 + y2)) / 2;
  if (k === 2) return (-dx * (y1 * y1 + y1 * y2 + y2 * y2)) / 6;
  return (-dx * (y1 + y2) * (y1 * y1 + y2 * y2)) / 12;
}

/** The same for an arc's circle between two angles, radians: (1/k)∫(b + r sin θ)^k · r sin θ dθ. */
export function arcMoment(arc: ArcSegment, from: number, to: number, k: 1 | 2 | 3): number {
  const [r, b] = [arc.radius, arc.centre[1]];
  const [s1, s2, s3, s4] = sinePowers(from, to);
  if (k === 1) return r * (b * s1 + r * s2);
  if (k === 2) return (r * (b * b * s1 + 2 * b * r * s2 + r * r * s3)) / 2;
  return (r * (b * b * b * s1 + 3 * b * b * r * s2 + 3 * b * r * r * s3 + r * r * r * s4)) / 3;
}

/** Integrals of sin, sin², sin³ and sin⁴ between two angles. */
function sinePowers(from: number, to: number): [number, number, number, number] {
  const [c1, c2] = [Math.cos(from), Math.cos(to)];
  const half = (to - from) / 2;
  const double = (Math.sin(2 * to) - Math.sin(2 * from)) / 4;
  const fourfold = (Math.sin(4 * to) - Math.sin(4 * from)) / 32;
  return [
    c1 - c2,
    half - double,
    c1 - c2 + (c2 * c2 * c2 - c1 * c1 * c1) / 3,
    (3 * half) / 4 - double + fourfold,
  ];
}

/** ½∫x²y dy along a side: its share of the product moment ∬xy dA. */
export function sideProduct(side: Segment): number {
  if (side.kind === "line") {
    const [x1, y1] = side.from;
    const [x2, y2] = side.to;
    return ((y2 - y1) * (x1 * x1 * (3 * y1 + y2) + 2 * x1 * x2 * (y1 + y2) + x2 * x2 * (y1 + 3 * y2))) / 24;
  }
  const [a, b] = side.centre;
  const r = side.radius;
  const [from, to] = [side.start, side.start + side.sweep];
  const [s1, s2, c1, c2] = [Math.sin(from), Math.sin(to), Math.cos(from), Math.cos(to)];
  const cos1 = s2 - s1;
  const cos2 = (to - from) / 2 + (Math.sin(2 * to) - Math.sin(2 * from)) / 4;
  const cos3 = s2 - s1 - (s2 ** 3 - s1 ** 3) / 3;
  const sinCos1 = (s2 * s2 - s1 * s1) / 2;
  const sinCos2 = (c1 ** 3 - c2 ** 3) / 3;
  const sinCos3 = (c1 ** 4 - c2 ** 4) / 4;
  const even = b * (a * a * cos1 + 2 * a * r * cos2 + r * r * cos3);
  const odd = r * (a * a * sinCos1 + 2 * a * r * sinCos2 + r * r * sinCos3);
  return (r * (even + odd)) / 2;
}

/** Area inside a loop, mm²; positive when it runs counter-clockwise. */
export function loopArea(loop: Loop): number {
  return loop.reduce((sum, side) => sum + sideMoment(side, 1), 0);
}

/** A side moved by (−at) and, with `quarter`, turned a quarter counter-clockwise: (x, y) to (−y, x). */
export function sideFrom(side: Segment, at: Vec2, quarter: boolean): Segment {
  const place = (p: Vec2): Vec2 => {
    const [x, y] = [p[0] - at[0], p[1] - at[1]];
    return quarter ? [-y, x] : [x, y];
  };
  return side.kind === "line"
    ? { ...side, from: place(side.from), to: place(side.to) }
    : { ...side, centre: place(side.centre), start: side.start + (quarter ? Math.PI / 2 : 0) };
}

/** Least and greatest y of a side. */
export function sideRange(side: Segment): readonly [number, number] {
  if (side.kind === "line") return [Math.min(side.from[1], side.to[1]), Math.max(side.from[1], side.to[1])];
  const ends = [side.start, side.start + side.sweep];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const y = (angle: number): number => side.centre[1] + side.radius * Math.sin(angle);
  const reaches = (angle: number): boolean =>
    angle + 2 * Math.PI * Math.ceil((low - angle) / (2 * Math.PI)) <= high;
  return [
    reaches(-Math.PI / 2) ? side.centre[1] - side.radius : Math.min(y(low), y(high)),
    reaches(Math.PI / 2) ? side.centre[1] + side.radius : Math.max(y(low), y(high)),
  ];
}
