/**
 * Bars for tests: sections, contacts, and a list of named cases that between them reach every kind of end.
 *
 * Millimetres and degrees; the bar's axis is +z, the header's axis lies in the y-z plane at `angle` to it, moved along x
 * by `offset`.
 */
import type { Bar } from "../../src/kernel/bar.js";
import { solidOfBar } from "../../src/kernel/bar-solid.js";
import type { EndExpression, HitContact, PlaneContact } from "../../src/kernel/end.js";
import { frameFromAxis } from "../../src/kernel/frame.js";
import { circleLoop, type Loop, type Region } from "../../src/kernel/region.js";
import type { Skin } from "../../src/kernel/skin.js";
import type { Solid } from "../../src/kernel/solid.js";
import type { Vec3 } from "../../src/kernel/vec.js";
import { rectBar, rectTube } from "../../src/members/sections/rect.js";
import { roundBar, roundTube } from "../../src/members/sections/round.js";

export const RAD = Math.PI / 180;
const SOURCE = { joint: "j1", onto: "H1" };

export const tube = (od: number, wall: number): Region => roundTube({ od, wall }).region;
export const rod = (od: number): Region => roundBar({ od }).region;
export const box = (width: number, depth: number, edgeRadius = 0): Region =>
  rectBar({ width, depth, edgeRadius }).region;
export const rect = (
  width: number,
  depth: number,
  wall: number,
  outerRadius: number,
  innerRadius: number,
): Region => rectTube({ width, depth, wall, outerRadius, innerRadius }).region;

export const plane = (point: Vec3, normal: Vec3): PlaneContact => ({
  kind: "plane",
  point,
  normal,
  source: SOURCE,
});
export const square = (z = 0): PlaneContact => plane([0, 0, z], [0, 0, 1]);

type SkinExtras = Pick<Skin, "gap" | "shoulder">;

/** First hit on any header. */
export const onLoop = (
  loop: Loop,
  z: number,
  angle: number,
  offset = 0,
  extras: SkinExtras = {},
): HitContact => ({
  kind: "hit",
  skin: {
    frame: frameFromAxis([offset, 0, z], [0, Math.sin(angle * RAD), Math.cos(angle * RAD)], [1, 0, 0]),
    loop,
    ...extras,
  },
  source: SOURCE,
});
/** First hit on a round header. */
export const onRound = (
  od: number,
  z: number,
  angle: number,
  offset = 0,
  extras: SkinExtras = {},
): HitContact => onLoop(circleLoop([0, 0], od / 2, "wall"), z, angle, offset, extras);

export const min = (...of: EndExpression[]): EndExpression => ({ kind: "min", of });
export const max = (...of: EndExpression[]): EndExpression => ({ kind: "max", of });

export const barOf = (section: Region, low: EndExpression, high: EndExpression): Bar => ({
  id: "B1",
  section,
  ends: [low, high],
  bores: [],
});

/** The solid of a bar that is meant to have one. */
export function solidFor(bar: Bar): Solid {
  const made = solidOfBar(bar);
  if (!made.ok) throw new Error(made.diagnostics.map((d) => `${d.code}: ${d.message}`).join("; "));
  return made.value;
}

const square38 = rect(38.1, 38.1, 3, 6, 3);
const flat = (width: number, depth: number, edgeRadius: number): Loop => box(width, depth, edgeRadius).outer;

/** Every kind of end the kernel closes, by name. */
export const BARS: Readonly<Record<string, Bar>> = {
  "equal tubes square": barOf(tube(42.4, 3.2), square(), onRound(42.4, 1000, 90)),
  "raked on a wider tube": barOf(tube(42.4, 3.2), square(), onRound(60.3, 1000, 37)),
  "equal tubes raked": barOf(tube(42.4, 3.2), square(), onRound(42.4, 1000, 45)),
  "off the axis": barOf(tube(33.7, 3), square(), onRound(48.3, 1000, 60, 5)),
  "off the axis, walls in line": barOf(tube(33.7, 3), square(), onRound(48.3, 1000, 60, 7.3)),
  "tube cut to a plane": barOf(tube(42.4, 3.2), square(), plane([0, 0, 500], [0, 1, 1])),
  "bar on a tube": barOf(rod(30), square(), onRound(48.3, 500, 60)),
  "square tube on a tube": barOf(square38, square(), onRound(48.26, 1000, 54.5)),
  "square tube square on a tube": barOf(square38, square(), onRound(48.26, 1000, 90)),
  "wide tube with shoulders": barOf(
    rect(50.8, 50.8, 4.76, 9.5, 4.76),
    square(),
    onRound(48.26, 1000, 54.5, 0, { shoulder: "midline" }),
  ),
  "tube on a flat side": barOf(tube(33.7, 3), square(), onLoop(flat(50, 30, 5), 1000, 70)),
  "tube over flat side and corners": barOf(tube(48, 3), square(), onLoop(flat(50, 30, 5), 1000, 70)),
  "equal widths, equal corners": barOf(square38, square(), onLoop(flat(38.1, 25, 6), 1000, 60)),
  "equal widths, tighter corners": barOf(square38, square(), onLoop(flat(38.1, 25, 5), 1000, 60)),
  "equal widths, sharp corners": barOf(square38, square(), onLoop(flat(38.1, 25, 0), 1000, 60)),
  crest: barOf(tube(42.4, 3.2), square(), min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90))),
  valley: barOf(tube(42.4, 3.2), square(), max(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90))),
  "crest of equal tubes": barOf(
    tube(48.3, 3.2),
    square(),
    min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90)),
  ),
  "valley of equal tubes": barOf(
    tube(48.3, 3.2),
    square(),
    max(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90)),
  ),
  "crest on a square tube": barOf(square38, square(), min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90))),
  "crest on a bar": barOf(rod(42.4), square(), min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90))),
  "valley on a bar": barOf(rod(42.4), square(), max(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90))),
  "cope and plane on a bar": barOf(rod(42.4), square(), min(onRound(48.3, 1000, 54), square(985))),
  "cope and plane on a tube": barOf(tube(42.4, 3.2), square(), min(onRound(48.3, 1000, 54), square(985))),
  "two copes and a plane": barOf(
    rod(42.4),
    square(),
    min(onRound(48.3, 1000, 54), onRound(48.3, 1000, 90), plane([0, 0, 979], [0.3, 0, 1])),
  ),
  "three planes": barOf(
    rod(42.4),
    square(),
    min(...[0, 1, 2].map((k) => plane([0, 0, 979], [Math.cos(k * 2.1) * 0.6, Math.sin(k * 2.1) * 0.6, 1]))),
  ),
  "both ends coped": barOf(tube(42.4, 3.2), onRound(60.3, 0, 50), onRound(60.3, 300, 37)),
  "headers of different sizes": barOf(
    tube(48.3, 3.2),
    square(),
    min(onRound(60.3, 1000, 54), onRound(48.3, 1000, 90)),
  ),
  "with a root gap": barOf(tube(42.4, 3.2), square(), onRound(42.4, 1000, 60, 0, { gap: 2 })),
  "square tube with a root gap on a sharp corner": barOf(
    rect(30, 30, 3, 6, 3),
    square(),
    onLoop(flat(40, 25, 0), 1000, 75, 0, { gap: 2 }),
  ),
};
