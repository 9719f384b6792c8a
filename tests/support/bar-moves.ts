/**
 * The same bar turned, mirrored, reversed or scaled, by its coordinates alone.
 */
import type { Bar } from "../../src/kernel/bar.js";
import type { EndExpression } from "../../src/kernel/end.js";
import { type Loop, type Region, reverseLoop, type Segment } from "../../src/kernel/region.js";
import type { Vec2, Vec3 } from "../../src/kernel/vec.js";

interface Move {
  readonly point: (p: Vec3) => Vec3;
  readonly direction: (p: Vec3) => Vec3;
  /** Turned over: a mirror image needs its headers' own y flipped to stay right-handed. */
  readonly mirrored: boolean;
  readonly size: number;
}

const mapLoop = (loop: Loop, f: (s: Segment) => Segment): Loop => loop.map(f);

/** A loop turned about the origin by `angle` radians. */
export function turnLoop(loop: Loop, angle: number): Loop {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (p: Vec2): Vec2 => [c * p[0] - s * p[1], s * p[0] + c * p[1]];
  return mapLoop(loop, (x) =>
    x.kind === "line"
      ? { ...x, from: at(x.from), to: at(x.to) }
      : { ...x, centre: at(x.centre), start: x.start + angle },
  );
}

/** A loop with v → −v, walked so that it keeps its sense. */
export function flipLoop(loop: Loop): Loop {
  const at = (p: Vec2): Vec2 => [p[0], -p[1]];
  return reverseLoop(
    mapLoop(loop, (x) =>
      x.kind === "line"
        ? { ...x, from: at(x.from), to: at(x.to) }
        : { ...x, centre: at(x.centre), start: -x.start, sweep: -x.sweep },
    ),
  );
}

/** A loop k times as large. */
export function scaleLoop(loop: Loop, k: number): Loop {
  const at = (p: Vec2): Vec2 => [k * p[0], k * p[1]];
  return mapLoop(loop, (x) =>
    x.kind === "line"
      ? { ...x, from: at(x.from), to: at(x.to) }
      : { ...x, centre: at(x.centre), radius: k * x.radius },
  );
}

export const mapRegion = (r: Region, f: (l: Loop) => Loop): Region => ({
  outer: f(r.outer),
  holes: r.holes.map(f),
});

function moveEnd(e: EndExpression, m: Move): EndExpression {
  switch (e.kind) {
    case "plane":
      return { ...e, point: m.point(e.point), normal: m.direction(e.normal) };
    case "hit": {
      const { frame, loop, ...rest } = e.skin;
      const y = m.direction(frame.y);
      const moved = {
        origin: m.point(frame.origin),
        x: m.direction(frame.x),
        y: m.mirrored ? ([-y[0], -y[1], -y[2]] as const) : y,
        z: m.direction(frame.z),
      };
      const own = m.mirrored ? flipLoop(loop) : loop;
      const gap = rest.gap === undefined ? {} : { gap: rest.gap * m.size };
      return { ...e, skin: { ...rest, ...gap, frame: moved, loop: scaleLoop(own, m.size) } };
    }
    case "select": {
      const plane = { point: m.point(e.plane.point), normal: m.direction(e.plane.normal) };
      return { ...e, plane, of: [moveEnd(e.of[0], m), moveEnd(e.of[1], m)] };
    }
    default:
      return { ...e, of: e.of.map((x) => moveEnd(x, m)) };
  }
}

const moveEnds = (b: Bar, m: Move): readonly [EndExpression, EndExpression] => [
  moveEnd(b.ends[0], m),
  moveEnd(b.ends[1], m),
];

/** The whole bar, contacts and all, turned about its axis by `angle` radians. */
export function turned(bar: Bar, angle: number): Bar {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const at = (p: Vec3): Vec3 => [c * p[0] - s * p[1], s * p[0] + c * p[1], p[2]];
  const section = mapRegion(bar.section, (l) => turnLoop(l, angle));
  return { ...bar, section, ends: moveEnds(bar, { point: at, direction: at, mirrored: false, size: 1 }) };
}

/** The mirror image v → −v. */
export function mirrored(bar: Bar): Bar {
  const at = (p: Vec3): Vec3 => [p[0], -p[1], p[2]];
  const section = mapRegion(bar.section, flipLoop);
  return { ...bar, section, ends: moveEnds(bar, { point: at, direction: at, mirrored: true, size: 1 }) };
}

/** The same bar seen from its other end: half a turn about the u axis. */
export function reversed(bar: Bar): Bar {
  const at = (p: Vec3): Vec3 => [p[0], -p[1], -p[2]];
  const [a, b] = moveEnds(bar, { point: at, direction: at, mirrored: false, size: 1 });
  return { ...bar, section: mapRegion(bar.section, flipLoop), ends: [b, a] };
}

/** The bar k times as large. */
export function scaled(bar: Bar, k: number): Bar {
  const point = (p: Vec3): Vec3 => [k * p[0], k * p[1], k * p[2]];
  const section = mapRegion(bar.section, (l) => scaleLoop(l, k));
  return { ...bar, section, ends: moveEnds(bar, { point, direction: (d) => d, mirrored: false, size: k }) };
}
