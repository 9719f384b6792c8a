/**
 * Random bars for fast-check: every section turned about its axis, any end the kernel has words for.
 *
 * Headers are as likely equal in size to the branch (or equal up to 10⁻ᵏ mm) as wider; both ends may be coped. About a
 * fifth of the bars have no solid, by design: a narrow header, ends that cross.
 */
import fc from "fast-check";
import type { Bar } from "../../src/kernel/bar.js";
import type { EndExpression } from "../../src/kernel/end.js";
import { circleLoop, type Loop, type Region } from "../../src/kernel/region.js";
import type { Skin } from "../../src/kernel/skin.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { mapRegion, turnLoop } from "./bar-moves.js";
import { barOf, box, plane, RAD, rect, rod, tube } from "./bars.js";

/** On a grid of 10,000 steps: a corner radius of 1e-90 mm is no section. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 10_000 }).map((k) => min + ((max - min) * k) / 10_000);
const oftenFrom = (values: readonly number[], min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(fc.constantFrom(...values), between(min, max));

interface Sized {
  readonly region: Region;
  /** Diameter or diagonal: a header this wide covers the section however it is turned. */
  readonly reach: number;
  /** Its width before turning. */
  readonly width: number;
}

const roundSections: fc.Arbitrary<Sized> = fc
  .record({ od: oftenFrom([33.7, 42.4, 48.3], 12, 80), share: between(0.08, 0.8), hollow: fc.boolean() })
  .map(({ od, share, hollow }) => ({
    region: hollow ? tube(od, (share * od) / 2) : rod(od),
    reach: od,
    width: od,
  }));

const rectSections: fc.Arbitrary<Sized> = fc
  .record({
    width: oftenFrom([38.1, 40, 50], 15, 60),
    depth: oftenFrom([38.1, 40, 50], 15, 60),
    wall: between(1.5, 4),
    corner: oftenFrom([0, 2], 0.3, 2.5),
    hollow: fc.boolean(),
    turn: oftenFrom([0, 45, 90], 0, 360),
  })
  .map(({ width, depth, wall, corner, hollow, turn }) => {
    const outer = corner * wall;
    const region = hollow
      ? rect(width, depth, wall, Math.min(outer, 7), Math.max(0, Math.min(outer, 7) - wall))
      : box(width, depth, Math.min(outer, 7));
    return {
      region: mapRegion(region, (l) => turnLoop(l, turn * RAD)),
      reach: Math.hypot(width, depth),
      width,
    };
  });

interface HeaderPick {
  readonly round: boolean;
  readonly size: "equal" | "nearly" | "wider";
  readonly decades: number;
  readonly ratio: number;
  readonly thick: number;
  readonly corner: number;
  readonly roll: number;
  readonly angle: number;
  readonly around: number;
  readonly offset: number;
  readonly gap: number;
  readonly shoulder: boolean;
}

const headers: fc.Arbitrary<HeaderPick> = fc.record({
  round: fc.boolean(),
  size: fc.constantFrom("equal", "nearly", "wider", "wider"),
  decades: fc.integer({ min: 1, max: 12 }),
  ratio: between(1, 2),
  thick: between(20, 50),
  corner: oftenFrom([0, 5], 0.3, 9),
  roll: oftenFrom([0, 0, 0, 30], 0, 360),
  angle: oftenFrom([90, 90, 45, 37, 90 - 1e-7], 15, 90),
  around: oftenFrom([0, 0, 90], 0, 360),
  offset: oftenFrom([0, 0, 3, 1e-7], -5, 5),
  gap: oftenFrom([0, 0, 1.5], 0, 3),
  shoulder: fc.boolean(),
});

function hitOn(section: Sized, pick: HeaderPick, z: number): EndExpression {
  const base = pick.size === "wider" ? section.reach * pick.ratio + 2 * Math.abs(pick.offset) : section.width;
  const width = pick.size === "nearly" ? base + 10 ** -pick.decades : base;
  const offset = pick.size === "wider" ? pick.offset : 0;
  const loop: Loop = pick.round
    ? circleLoop([0, 0], width / 2, "wall")
    : turnLoop(box(width, pick.thick, Math.min(pick.corner, width / 2)).outer, pick.roll * RAD);
  const [c, s] = [Math.cos(pick.around * RAD), Math.sin(pick.around * RAD)];
  const turn = (p: Vec3): Vec3 => [c * p[0] - s * p[1], s * p[0] + c * p[1], p[2]];
  const [sa, ca] = [Math.sin(pick.angle * RAD), Math.cos(pick.angle * RAD)];
  const skin: Skin = {
    frame: { origin: turn([offset, 0, z]), x: turn([1, 0, 0]), y: turn([0, ca, -sa]), z: turn([0, sa, ca]) },
    loop,
    ...(pick.gap > 0 && { gap: pick.gap }),
    ...(pick.shoulder && { shoulder: "midline" as const }),
  };
  return { kind: "hit", skin, source: { joint: "j1", onto: "H1" } };
}

interface EndPick {
  readonly kind: "square" | "plane" | "hit" | "min" | "max" | "min-plane" | "three";
  readonly headers: readonly HeaderPick[];
  readonly tilt: number;
  readonly towards: number;
  readonly nearer: number;
}

const ends: fc.Arbitrary<EndPick> = fc.record({
  kind: fc.constantFrom("square", "plane", "hit", "hit", "hit", "min", "max", "min-plane", "three"),
  headers: fc.array(headers, { minLength: 3, maxLength: 3 }),
  tilt: between(0, 60),
  towards: between(0, 360),
  nearer: between(0, 25),
});

function endOf(section: Sized, pick: EndPick, z: number, out: 1 | -1): EndExpression {
  const [s, c] = [Math.sin(pick.tilt * RAD), Math.cos(pick.tilt * RAD)];
  const at = z - out * pick.nearer;
  const cut = plane([0, 0, at], [s * Math.cos(pick.towards * RAD), s * Math.sin(pick.towards * RAD), c]);
  const [a, b, d] = pick.headers.map((h) => hitOn(section, h, z)) as [
    EndExpression,
    EndExpression,
    EndExpression,
  ];
  switch (pick.kind) {
    case "square":
      return plane([0, 0, z], [0, 0, 1]);
    case "plane":
      return cut;
    case "hit":
      return a;
    case "min":
      return { kind: "min", of: [a, b] };
    case "max":
      return { kind: "max", of: [a, b] };
    case "min-plane":
      return { kind: "min", of: [a, cut] };
    case "three":
      return { kind: "min", of: [a, { kind: "max", of: [b, d] }] };
  }
}

const barsWith = (end: fc.Arbitrary<EndPick>): fc.Arbitrary<Bar> =>
  fc
    .record({
      section: fc.oneof(roundSections, rectSections),
      low: end,
      high: end,
      length: between(400, 1200),
    })
    .map(({ section, low, high, length }) =>
      barOf(section.region, endOf(section, low, 0, -1), endOf(section, high, length, 1)),
    );

/** A bar with any section and any two ends, 400 to 1200 mm between its work points. */
export const bars: fc.Arbitrary<Bar> = barsWith(ends);

/** The same with one contact at each end: a cut or a cope. */
export const simpleBars: fc.Arbitrary<Bar> = barsWith(
  ends.map((e) => (e.kind === "square" || e.kind === "plane" ? e : { ...e, kind: "hit" as const })),
);
