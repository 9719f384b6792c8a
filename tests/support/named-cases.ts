/**
 * Joints that have a name: ordinary ones of stair guards and the ones beside a tangency.
 */
import type { Vec3 } from "../../src/kernel/index.js";
import {
  type EndCase,
  type HeaderCase,
  type JointCase,
  type Outline,
  type SectionCase,
  SQUARE,
} from "./joint-case.js";

const RAD = Math.PI / 180;

export const tube = (od: number, wall: number): SectionCase => ({
  outer: { kind: "round", radius: od / 2 },
  hole: { kind: "round", radius: od / 2 - wall },
});
export const bar = (od: number): SectionCase => ({ outer: { kind: "round", radius: od / 2 } });
export const square = (side: number, wall: number, corner: number): SectionCase => ({
  outer: { kind: "rect", width: side, depth: side, corner },
  hole: { kind: "rect", width: side - 2 * wall, depth: side - 2 * wall, corner: Math.max(0, corner - wall) },
});
const round = (od: number): Outline => ({ kind: "round", radius: od / 2 });
const rect = (width: number, depth: number, corner: number): Outline => ({
  kind: "rect",
  width,
  depth,
  corner,
});

/** A header in the y-z plane, `angle` degrees from the branch, beside it by `offset`, its axis at z = `at`. */
export function header(
  outline: Outline,
  angle: number,
  more: {
    readonly at?: number;
    readonly offset?: number;
    readonly gap?: number;
    readonly shoulder?: boolean;
  } = {},
): HeaderCase {
  const axis: Vec3 = angle === 90 ? [0, 1, 0] : [0, Math.sin(angle * RAD), Math.cos(angle * RAD)];
  const shoulder = more.shoulder ? { shoulder: true } : {};
  return {
    outline,
    at: [more.offset ?? 0, 0, more.at ?? 120],
    axis,
    across: [1, 0, 0],
    gap: more.gap ?? 0,
    ...shoulder,
  };
}
const on = (h: HeaderCase): EndCase => ({ kind: "hit", header: h });
const one = (name: string, section: SectionCase, end: EndCase, low: EndCase = SQUARE): JointCase => ({
  name,
  section,
  ends: [low, end],
});
const pairOf = (kind: "min" | "max", od: number): EndCase => ({
  kind,
  of: [on(header(round(od), 54)), on(header(round(od), 90))],
});

/** A unit vector: `turn` degrees round from +x towards +y, rising `rise` per unit of level. */
const away = (turn: number, rise: number): Vec3 => {
  const k = 1 / Math.hypot(1, rise);
  return [Math.cos(turn * RAD) * k, Math.sin(turn * RAD) * k, rise * k];
};

/** Two mitred headers leaving a corner at z = 120 over the branch, one behind and one before their miter plane. */
export function corner(
  outline: Outline,
  first: readonly [number, number],
  second: readonly [number, number],
  gap = 0,
): EndCase {
  const [a, b] = [away(...first), away(...second)];
  const upright = (axis: Vec3): Vec3 => {
    const k = 1 / Math.hypot(axis[0], axis[1]);
    return [-axis[1] * k, axis[0] * k, 0];
  };
  const leg = (axis: Vec3) => ({
    kind: "hit" as const,
    header: { outline, at: [0, 0, 120] as const, axis, across: upright(axis), gap },
  });
  return {
    kind: "select",
    point: [0, 0, 120],
    normal: [b[0] - a[0], b[1] - a[1], b[2] - a[2]],
    of: [leg(a), leg(b)],
  };
}

/** Away from any tangency of branch and header, or exactly on one. */
export const NAMED: readonly JointCase[] = [
  one("tee 42.4 on 48.3", tube(42.4, 3.2), on(header(round(48.3), 90))),
  one("rake 37 on 60.3", tube(42.4, 3.2), on(header(round(60.3), 37))),
  one("offset 5", tube(33.7, 3), on(header(round(48.3), 60, { offset: 5 }))),
  one("gap 2", tube(42.4, 3.2), on(header(round(48.3), 55, { gap: 2 }))),
  one("bar", bar(30), on(header(round(48.3), 60))),
  one("plane cut", tube(42.4, 3.2), { kind: "plane", point: [0, 0, 80], normal: [0, 0.7, 1] }),
  one("square tube on round", square(38.1, 3, 6), on(header(round(48.26), 54.5))),
  one("sharp square tube on round", square(38.1, 3, 0), on(header(round(48.26), 54.5))),
  one("round on rect", tube(33.7, 3), on(header(rect(50, 30, 5), 70))),
  one("round across the corners of a rect", tube(48, 3), on(header(rect(50, 30, 5), 70))),
  one("round on sharp rect with a gap", tube(48, 3), on(header(rect(50, 30, 0), 70, { gap: 1.5 }))),
  one("crest", tube(42.4, 3.2), pairOf("min", 48.3)),
  one("valley", tube(42.4, 3.2), pairOf("max", 48.3)),
  one("crest of a square post", square(38.1, 3, 6), pairOf("min", 48.3)),
  one("crest of a bar", bar(42.4), pairOf("min", 48.3)),
  one("two sizes", tube(42.4, 3.2), {
    kind: "min",
    of: [on(header(round(60.3), 54)), on(header(round(48.3), 90))],
  }),
  one("header and plane", bar(42.4), {
    kind: "min",
    of: [on(header(round(48.3), 54)), { kind: "plane", point: [0, 0, 105], normal: [0, 0, 1] }],
  }),
  one("three planes", bar(42.4), {
    kind: "min",
    of: [0, 1, 2].map((k) => ({
      kind: "plane" as const,
      point: [0, 0, 99] as const,
      normal: [0.6 * Math.cos(2.1 * k), 0.6 * Math.sin(2.1 * k), 1] as const,
    })),
  }),
  one(
    "both ends",
    tube(42.4, 3.2),
    on(header(round(60.3), 37, { at: 200 })),
    on(header(round(60.3), 50, { at: -20 })),
  ),
  one("plan corner", tube(42.4, 3.2), corner(round(48.3), [180, 0], [90, 0])),
  one("plan corner of 60 degrees", tube(42.4, 3.2), corner(round(48.3), [180, 0], [120, 0])),
  one("plan corner with a gap", tube(42.4, 3.2), corner(round(48.3), [180, 0], [90, 0], 1.5)),
  one("acute plan corner", tube(33.7, 3), corner(round(48.3), [180, 0], [230, 0])),
  one("raking plan corner", tube(42.4, 3.2), corner(round(48.3), [180, -0.7], [90, 0])),
  one("raking plan corner of two rakes", bar(30), corner(round(48.3), [170, -0.6], [80, 0.5])),
  one("both rails to one side", tube(33.7, 3), corner(round(48.3), [0, 0], [0, 0.7])),
  one("square post under a round plan corner", square(38.1, 3, 6), corner(round(48.3), [180, 0], [90, 0])),
  one("round post under a square plan corner", tube(33.7, 3), corner(rect(50, 30, 5), [180, 0], [90, 0])),
  one("shoulders", square(50.8, 4.76, 9.5), on(header(round(48.26), 54.5, { shoulder: true }))),
];

/** Branch and header touch along a line or at a point. */
export const TANGENT: readonly JointCase[] = [
  one("equal tubes 90", tube(42.4, 3.2), on(header(round(42.4), 90))),
  one("equal tubes 45", tube(42.4, 3.2), on(header(round(42.4), 45))),
  one("equal bars 90", bar(42.4), on(header(round(42.4), 90))),
  one("offset tangent", tube(33.7, 3), on(header(round(48.3), 60, { offset: 7.3 }))),
  one("bore tangent", tube(48.3, 3.2), on(header(round(60.3), 70, { offset: 6 }))),
  one("equal square tubes", square(38.1, 3, 6), on(header(rect(38.1, 25, 6), 60))),
  one("equal sharp square tubes", square(38.1, 3, 0), on(header(rect(38.1, 25, 0), 60))),
  one("square tube on equal round", square(38.1, 3, 6), on(header(round(38.1), 60))),
  one("equal plan corner", tube(48.3, 3.2), corner(round(48.3), [180, 0], [90, 0])),
  one("equal bars at a plan corner", bar(48.3), corner(round(48.3), [180, 0], [70, 0])),
  one("equal raking plan corner", tube(48.3, 3.2), corner(round(48.3), [180, -0.7], [90, 0])),
  one("equal crest", tube(48.3, 3.2), pairOf("min", 48.3)),
  one("equal valley", tube(48.3, 3.2), pairOf("max", 48.3)),
];

/** Flats of the two headers in one plane, and corners on corners: the quadrature is slow where two contacts are one. */
export const COPLANAR: readonly JointCase[] = [
  one("square post under a square plan corner", square(50, 3, 6), corner(rect(50, 50, 6), [180, 0], [90, 0])),
];

/** A 42.4 tube on a header whose radius is larger by `more`. */
export const nearTangent = (more: number): JointCase =>
  one(`R - r = ${more}`, tube(42.4, 3.2), on(header({ kind: "round", radius: 21.2 + more }, 60)));
