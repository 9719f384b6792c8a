/**
 * The outline through given corners with some of them rounded: lines and the arcs tangent to both neighbours.
 *
 * A corner of radius r that turns by τ is cut back by r·tan(τ/2) along both sides; its arc stands square to both there. Where
 * two roundings use up a side, no segment of zero length is made.
 *
 * @packageDocumentation
 */
import type { Loop, Segment } from "../../kernel/region.js";
import { ROUNDING_MM } from "../../kernel/tolerance.js";
import type { Vec2 } from "../../kernel/vec.js";

/** A corner of the outline before it is rounded. */
export interface Corner {
  readonly at: Vec2;
  /** Millimetres; 0 leaves it sharp. */
  readonly radius: number;
  /** Label of the rounding's arc. */
  readonly label: string;
  /** Label of the side that leaves towards the next corner. */
  readonly side: string;
}

/** A corner in one line. */
export function cornerAt(u: number, v: number, radius: number, label: string, side: string): Corner {
  return { at: [u, v], radius, label, side };
}

/**
 * The loop, in the order of its corners.
 *
 * @param corners - at least three, each turning by less than half a turn, with room for their roundings
 * @example
 * const at = ([[0, 0], [20, 0], [20, 10], [0, 10]] as const).map((p) => ({ at: p, radius: 2, label: "corner", side: "side" }));
 * filletedLoop(at).length; // 8
 */
export function filletedLoop(corners: readonly Corner[]): Loop {
  const rounded = corners.map((corner, i) => {
    const before = corners.at(i - 1) ?? corner;
    const after = corners[(i + 1) % corners.length] ?? corner;
    return { corner, ...rounding(before.at, corner, after.at) };
  });
  const all = rounded.flatMap(({ corner, arc, leave }, i): Segment[] => {
    const { enter } = rounded[(i + 1) % rounded.length] as (typeof rounded)[number];
    return [...arc, { kind: "line", from: leave, to: enter, label: corner.side }];
  });
  return all.filter(
    (s) => s.kind === "arc" || Math.hypot(s.to[0] - s.from[0], s.to[1] - s.from[1]) > ROUNDING_MM,
  );
}

/** Where the side before a corner ends, where the one after it starts, and the arc between. */
function rounding(before: Vec2, { at, radius, label }: Corner, after: Vec2) {
  if (radius === 0) return { enter: at, leave: at, arc: [] };
  const [inU, inV] = direction(before, at);
  const [outU, outV] = direction(at, after);
  const turn = Math.atan2(inU * outV - inV * outU, inU * outU + inV * outV);
  const back = radius * Math.tan(Math.abs(turn) / 2);
  const left = Math.sign(turn);
  const enter: Vec2 = [at[0] - back * inU, at[1] - back * inV];
  const leave: Vec2 = [at[0] + back * outU, at[1] + back * outV];
  const centre: Vec2 = [enter[0] - left * radius * inV, enter[1] + left * radius * inU];
  const start = Math.atan2(-left * inU, left * inV);
  const arc: Segment[] = [{ kind: "arc", centre, radius, start, sweep: turn, label }];
  return { enter, leave, arc };
}

function direction(from: Vec2, to: Vec2): Vec2 {
  const [u, v] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(u, v);
  return [u / length, v / length];
}
