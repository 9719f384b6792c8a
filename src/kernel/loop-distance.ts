/**
 * How far is a point from an outline, on which side, and where is the nearest place?
 *
 * Method: closed form per side (foot on a line, radius of an arc, a corner where neither has one), least of all. On a
 * side the sign follows from which hand the point lies on; at a corner from whether the loop goes round it.
 * Millimetres, section coordinates.
 *
 * @packageDocumentation
 */
import { type Loop, pointOn, type Segment } from "./region.js";
import { regionContains } from "./region-contains.js";
import { ROUNDING_SHARE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** The nearest place of an outline. */
export interface LoopDistance {
  /** Positive outside, negative inside. */
  readonly distance: number;
  /** Unit direction in which `distance` grows fastest. */
  readonly normal: Vec2;
  readonly foot: Vec2;
}

/**
 * Signed distance of a point from a loop.
 *
 * @param loop - counter-clockwise, as the outer loop of a section is
 * @param p - the point
 * @example
 * loopDistance(circleLoop([0, 0], 10, "wall"), [0, 13]); // { distance: 3, normal: [0, 1], foot: [0, 10] }
 */
export function loopDistance(loop: Loop, p: Vec2): LoopDistance {
  let best: LoopDistance = { distance: Number.POSITIVE_INFINITY, normal: [1, 0], foot: p };
  for (const side of loop) {
    const found = onSide(side, p);
    if (found && Math.abs(found.distance) < Math.abs(best.distance)) best = found;
  }
  let [nearest, corner]: [number, Vec2 | null] = [Math.abs(best.distance) * (1 - ROUNDING_SHARE), null];
  for (const side of loop) {
    const c = pointOn(side, 0);
    const [wu, wv] = [p[0] - c[0], p[1] - c[1]];
    const d = Math.sqrt(wu * wu + wv * wv);
    if (d < nearest) [nearest, corner] = [d, c];
  }
  return corner ? atCorner(loop, p, corner, nearest) : best;
}

/** Of the inside of a side; null where the point's foot is past its ends. */
function onSide(side: Segment, p: Vec2): LoopDistance | null {
  if (side.kind === "line") {
    const [du, dv] = [side.to[0] - side.from[0], side.to[1] - side.from[1]];
    const size = Math.sqrt(du * du + dv * dv);
    const [wu, wv] = [p[0] - side.from[0], p[1] - side.from[1]];
    const t = (wu * du + wv * dv) / (size * size);
    if (t < 0 || t > 1) return null;
    const normal: Vec2 = [dv / size, -du / size];
    const distance = wu * normal[0] + wv * normal[1];
    return { distance, normal, foot: [p[0] - distance * normal[0], p[1] - distance * normal[1]] };
  }
  const [wu, wv] = [p[0] - side.centre[0], p[1] - side.centre[1]];
  const away = Math.sqrt(wu * wu + wv * wv);
  const middle = side.start + side.sweep / 2;
  const [cu, cv] = away > 0 ? [wu / away, wv / away] : [Math.cos(middle), Math.sin(middle)];
  // Within half the sweep of the arc's middle.
  const off = Math.abs(
    Math.atan2(cv * Math.cos(middle) - cu * Math.sin(middle), cu * Math.cos(middle) + cv * Math.sin(middle)),
  );
  if (off > Math.abs(side.sweep) / 2 + ROUNDING_SHARE) return null;
  const outward = side.sweep > 0 ? 1 : -1;
  return {
    distance: outward * (away - side.radius),
    normal: [outward * cu, outward * cv],
    foot: [side.centre[0] + side.radius * cu, side.centre[1] + side.radius * cv],
  };
}

function atCorner(loop: Loop, p: Vec2, foot: Vec2, distance: number): LoopDistance {
  const sign = regionContains({ outer: loop, holes: [] }, p) ? -1 : 1;
  const k = distance > 0 ? sign / distance : 0;
  return { distance: sign * distance, normal: [k * (p[0] - foot[0]), k * (p[1] - foot[1])], foot };
}
