/**
 * A plate or a bracket's leg, old against new: size over all, outline, thickness, round holes from its left and bottom edge.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import type { Loop, Segment } from "../../kernel/region.js";
import { pointOn } from "../../kernel/region.js";
import { extentAlong } from "../../kernel/region-extent.js";
import { type MarkedHole, plateSizes } from "../../members/plate-sizes.js";
import type { Differences } from "./compare.js";

/** Compares two plates. */
export function comparePlates(old: Piece, now: Piece, into: Differences): void {
  const [a, b] = [plateSizes(old.section), plateSizes(now.section)];
  into.length("length", "width over all", a.width, b.width);
  into.length("length", "height over all", a.depth, b.depth);
  into.length("stock", "thickness", old.lengths.blank.value, now.lengths.blank.value);
  if (
    into.found.length === 0 &&
    !sameOutline(old.section.region.outer, now.section.region.outer, into.over)
  ) {
    into.word("length", "outline", "as drawn before", "another shape of the same size");
  }
  compareHoles(a.holes, b.holes, into);
  if (a.otherHoles !== b.otherHoles) {
    into.word("holes", "holes that are not round", String(a.otherHoles), String(b.otherHoles));
  }
}

/** Corners and the middles of the sides, from the lower left of the box. */
function places(loop: Loop): readonly (readonly [number, number])[] {
  const [left, bottom] = [extentAlong(loop, [1, 0]).least, extentAlong(loop, [0, 1]).least];
  return loop.flatMap((side: Segment) =>
    [0, 0.5].map((t) => {
      const [u, v] = pointOn(side, t);
      return [u - left, v - bottom] as const;
    }),
  );
}

function sameOutline(a: Loop, b: Loop, over: number): boolean {
  const [p, q] = [places(a), places(b)];
  return (
    p.length === q.length &&
    p.every(([u, v], i) => {
      const [s, t] = q[i] as readonly [number, number];
      return Math.hypot(u - s, v - t) <= over;
    })
  );
}

/** Each hole against the nearest one left of the others. */
function compareHoles(old: readonly MarkedHole[], now: readonly MarkedHole[], into: Differences): void {
  const rest = [...old];
  const away = (a: MarkedHole, b: MarkedHole): number =>
    Math.hypot(a.fromLeft - b.fromLeft, a.fromBottom - b.fromBottom);
  now.forEach((hole, i) => {
    const [nearest] = [...rest].sort((a, b) => away(a, hole) - away(b, hole));
    if (nearest) rest.splice(rest.indexOf(nearest), 1);
    const name = `hole ${i + 1}`;
    into.length("holes", `${name}, diameter`, nearest?.diameter, hole.diameter);
    into.length("holes", `${name}, from left edge`, nearest?.fromLeft, hole.fromLeft);
    into.length("holes", `${name}, from bottom edge`, nearest?.fromBottom, hole.fromBottom);
  });
  rest.forEach((hole, i) => {
    const name = `hole ${now.length + i + 1}`;
    into.length("holes", `${name}, diameter`, hole.diameter, undefined);
    into.length("holes", `${name}, from left edge`, hole.fromLeft, undefined);
    into.length("holes", `${name}, from bottom edge`, hole.fromBottom, undefined);
  });
}
