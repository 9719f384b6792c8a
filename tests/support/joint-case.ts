/**
 * A joint said in neutral words: outlines, axes, planes. Three readers build it by three routes: the library
 * (`barOf`), a B-rep kernel (occt.ts) and a quadrature of ray casts (quadrature.ts).
 *
 * The branch runs along +z, its section centred on the z axis; `ends[0]` is the low end. Millimetres.
 */
import type { Bar, EndExpression, Loop, Vec3 } from "../../src/kernel/index.js";
import { rectBar, rectTube, roundBar, roundTube } from "../../src/members/index.js";

/** A convex outline centred on its axis; rectangles along x (width) and y (depth). */
export type Outline =
  | { readonly kind: "round"; readonly radius: number }
  | { readonly kind: "rect"; readonly width: number; readonly depth: number; readonly corner: number };

export interface SectionCase {
  readonly outer: Outline;
  readonly hole?: Outline;
}

export interface HeaderCase {
  readonly outline: Outline;
  /** A point on the header's axis. */
  readonly at: Vec3;
  /** Unit direction of the axis. */
  readonly axis: Vec3;
  /** Unit x direction of its outline, square to `axis`. */
  readonly across: Vec3;
  readonly gap: number;
  /** Where the header is missed: closed at the level of its widest line (round headers). */
  readonly shoulder?: boolean;
}

export type EndCase =
  | { readonly kind: "plane"; readonly point: Vec3; readonly normal: Vec3 }
  | { readonly kind: "hit"; readonly header: HeaderCase }
  | { readonly kind: "min"; readonly of: readonly EndCase[] }
  | { readonly kind: "max"; readonly of: readonly EndCase[] }
  /** Two mitred headers, whole on their own sides of a plane; its normal points from the first to the second. */
  | {
      readonly kind: "select";
      readonly point: Vec3;
      readonly normal: Vec3;
      readonly of: readonly [EndCase & { kind: "hit" }, EndCase & { kind: "hit" }];
    };

export interface JointCase {
  readonly name: string;
  readonly section: SectionCase;
  readonly ends: readonly [EndCase, EndCase];
}

export const SQUARE: EndCase = { kind: "plane", point: [0, 0, 0], normal: [0, 0, 1] };

export const dot3 = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross3 = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const unit3 = (a: Vec3): Vec3 => {
  const k = 1 / Math.hypot(...a);
  return [a[0] * k, a[1] * k, a[2] * k];
};

/** Half the width of an outline seen along a unit direction of its own plane. */
export function halfWidth(o: Outline, x: number, y: number): number {
  if (o.kind === "round") return o.radius;
  return (
    (o.width / 2 - o.corner) * Math.abs(x) +
    (o.depth / 2 - o.corner) * Math.abs(y) +
    o.corner * Math.hypot(x, y)
  );
}

/** The outline moved outwards by a gap: a sharp corner becomes round. */
export function grown(o: Outline, gap: number): Outline {
  return o.kind === "round"
    ? { kind: "round", radius: o.radius + gap }
    : { kind: "rect", width: o.width + 2 * gap, depth: o.depth + 2 * gap, corner: o.corner + gap };
}

export function areaOf(o: Outline): number {
  return o.kind === "round" ? Math.PI * o.radius ** 2 : o.width * o.depth - (4 - Math.PI) * o.corner ** 2;
}

const loopOf = (o: Outline): Loop =>
  o.kind === "round"
    ? roundBar({ od: 2 * o.radius }).region.outer
    : rectBar({ width: o.width, depth: o.depth, edgeRadius: o.corner }).region.outer;

export function sectionOf({ outer, hole }: SectionCase) {
  if (outer.kind === "round") {
    if (hole?.kind === "round") return roundTube({ od: 2 * outer.radius, wall: outer.radius - hole.radius });
    return roundBar({ od: 2 * outer.radius });
  }
  const { width, depth, corner } = outer;
  if (hole?.kind !== "rect") return rectBar({ width, depth, edgeRadius: corner });
  const wall = (width - hole.width) / 2;
  return rectTube({ width, depth, wall, outerRadius: corner, innerRadius: hole.corner });
}

function endOf(e: EndCase, onto: string): EndExpression {
  const source = { joint: "case", onto };
  if (e.kind === "plane") return { kind: "plane", point: e.point, normal: e.normal, source };
  if (e.kind === "select") {
    const [first, second] = [endOf(e.of[0], `${onto}.0`), endOf(e.of[1], `${onto}.1`)];
    return { kind: "select", plane: { point: e.point, normal: e.normal }, of: [first, second] };
  }
  if (e.kind !== "hit") return { kind: e.kind, of: e.of.map((x, i) => endOf(x, `${onto}.${i}`)) };
  const { outline, at, axis, across, gap, shoulder } = e.header;
  const frame = { origin: at, x: across, y: cross3(axis, across), z: axis };
  const loop = loopOf(outline);
  return { kind: "hit", skin: { frame, loop, gap, ...(shoulder && { shoulder: "midline" }) }, source };
}

/** The case as the library is asked for it. */
export function barOf(c: JointCase): Bar {
  return {
    id: c.name,
    section: sectionOf(c.section).region,
    ends: [endOf(c.ends[0], "low"), endOf(c.ends[1], "high")],
    bores: [],
  };
}
