/**
 * The outer loop of a header, moved outwards by a root gap.
 *
 * Straight sides shift and arcs grow. Every point keeps exactly the gap from the skin: a sharp outer corner becomes an
 * arc of the gap's radius, a fillet shrinks by it, two sides that meet in an inner corner end where their offsets cross.
 *
 * @packageDocumentation
 */

import { diagnostic, type Result } from "./diagnostic.js";
import { type LineSegment, type Loop, pointOn, type Segment, tangentOn } from "./region.js";
import { PARALLEL_SINE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

function outwardNormal(segment: Segment, t: number): Vec2 {
  const [du, dv] = tangentOn(segment, t);
  const k = 1 / Math.hypot(du, dv);
  return [dv * k, -du * k];
}

/** One side moved outwards; null where a fillet is too small to be. */
function moved(s: Segment, gap: number): Segment | null {
  if (s.kind === "arc") {
    const radius = s.radius + (s.sweep > 0 ? gap : -gap);
    return radius > 0 ? { ...s, radius } : null;
  }
  const [nu, nv] = outwardNormal(s, 0);
  return {
    ...s,
    from: [s.from[0] + gap * nu, s.from[1] + gap * nv],
    to: [s.to[0] + gap * nu, s.to[1] + gap * nv],
  };
}

/** Where two lines cross, and at which fraction of each. */
function crossing(
  a: LineSegment,
  b: LineSegment,
): { readonly at: Vec2; readonly ta: number; readonly tb: number } {
  const [da, db] = [tangentOn(a, 0), tangentOn(b, 0)];
  const d = da[0] * db[1] - da[1] * db[0];
  const w: Vec2 = [b.from[0] - a.from[0], b.from[1] - a.from[1]];
  const ta = (w[0] * db[1] - w[1] * db[0]) / d;
  return { at: pointOn(a, ta), ta, tb: (w[0] * da[1] - w[1] * da[0]) / d };
}

/**
 * A counter-clockwise loop offset outwards.
 *
 * @param gap - millimetres, ≥ 0; 0 returns the loop itself
 * @returns the offset loop, or `gap-on-hollow-skin` where an inner corner has no room for the gap
 */
export function offsetLoop(loop: Loop, gap: number): Result<Loop> {
  if (gap === 0) return { ok: true, value: loop, diagnostics: [] };
  const sides = loop.map((s) => moved(s, gap));
  const round: (Segment | null)[] = loop.map(() => null);
  for (const [i, s] of loop.entries()) {
    const j = (i + 1) % loop.length;
    const [side, next] = [sides[i], sides[j]];
    if (!side || !next) return noRoom(gap);
    const [n1, n2] = [outwardNormal(s, 1), outwardNormal(loop[j] as Segment, 0)];
    const turn = Math.atan2(n1[0] * n2[1] - n1[1] * n2[0], n1[0] * n2[0] + n1[1] * n2[1]);
    if (turn > PARALLEL_SINE) {
      const start = Math.atan2(n1[1], n1[0]);
      round[i] = { kind: "arc", centre: pointOn(s, 1), radius: gap, start, sweep: turn };
    }
    if (turn >= -PARALLEL_SINE) continue;
    if (side.kind !== "line" || next.kind !== "line") return noRoom(gap);
    const { at, ta, tb } = crossing(side, next);
    if (!(ta > 0 && ta <= 1 && tb >= 0 && tb < 1)) return noRoom(gap);
    sides[i] = { ...side, to: at };
    sides[j] = { ...next, from: at };
  }
  const value = sides.flatMap((s, i) => [s, round[i]].filter((x) => !!x));
  return { ok: true, value, diagnostics: [] };
}

function noRoom(gap: number): Result<Loop> {
  return {
    ok: false,
    diagnostics: [
      diagnostic({
        code: "gap-on-hollow-skin",
        message: `A root gap of ${gap} mm has no room in an inner corner of the header's outline: a fillet or a side there is smaller than the gap.`,
        hint: "Ask for a smaller gap on this joint, or cut the branch to a plane.",
        values: { gap },
      }),
    ],
  };
}
