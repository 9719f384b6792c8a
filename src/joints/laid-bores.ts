/**
 * The bores of a piece as they lie when the piece is turned, reversed or mirrored, in a form that can be compared.
 *
 * @packageDocumentation
 */

import type { Bore } from "../kernel/bar.js";
import { LEVEL_DIRECTION } from "../kernel/tolerance.js";
import { addScaled, dot, normalize, type Vec3 } from "../kernel/vec.js";

/** A way to lay a piece: section angles become sign·flip·angle − turn, and s becomes flip·s − shift. */
export interface Lay {
  readonly sign: 1 | -1;
  readonly flip: 1 | -1;
  /** Radians. */
  readonly turn: number;
  /** Millimetres. */
  readonly shift: number;
}

/**
 * Each bore as numbers: the point of its axis nearest the origin, its direction, its diameter, 1 when it goes through one
 * wall only. In rising order along the piece.
 */
export function boresLaid(bores: readonly Bore[], lay: Lay): readonly (readonly number[])[] {
  const [c, s] = [Math.cos(lay.turn), Math.sin(lay.turn)];
  const laid = ([u, v, z]: Vec3, shift: number): Vec3 => {
    const w = lay.sign * lay.flip * v;
    return [c * u + s * w, c * w - s * u, lay.flip * z - shift];
  };
  return bores
    .map((bore) => {
      let d = laid(normalize(bore.direction), 0);
      if (bore.through === "both" && pointsBack(d)) d = [-d[0], -d[1], -d[2]];
      const p = laid(bore.point, lay.shift);
      return [...addScaled(p, d, -dot(p, d)), ...d, bore.diameter, bore.through === "first" ? 1 : 0];
    })
    .sort((a, b) => along(a) - along(b));
}

function pointsBack(d: Vec3): boolean {
  const lead = [d[2], d[1], d[0]].find((x) => Math.abs(x) > LEVEL_DIRECTION) ?? 0;
  return lead < 0;
}

/** Order along the piece, then round it; coarse enough that rounding does not swap neighbours. */
function along(numbers: readonly number[]): number {
  const [x = 0, y = 0, z = 0] = numbers;
  return Math.round(z * 10) * 1e6 + Math.round(y * 10) * 1e3 + Math.round(x * 10);
}

/** True when two lists agree: points within `tolerance` mm, directions within the turn that moves 100 mm by it. */
export function sameBores(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
  tolerance: number,
): boolean {
  return (
    a.length === b.length &&
    a.every((x, i) =>
      x.every(
        (n, k) =>
          Math.abs(n - ((b[i] as readonly number[])[k] as number)) <= (k < 3 ? tolerance : tolerance / 100),
      ),
    )
  );
}
