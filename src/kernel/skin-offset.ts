/**
 * The outer loop of a header, moved outwards by a root gap.
 *
 * Straight sides shift, arcs grow, and a sharp corner becomes an arc of the gap's radius: every point keeps exactly the
 * gap from the skin. Hollow outlines (a channel's inside) are refused.
 *
 * @packageDocumentation
 */

import { diagnostic, type Result } from "./diagnostic.js";
import { type Loop, pointOn, type Segment, tangentOn } from "./region.js";
import { PARALLEL_SINE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

function outwardNormal(segment: Segment, t: number): Vec2 {
  const [du, dv] = tangentOn(segment, t);
  const k = 1 / Math.hypot(du, dv);
  return [dv * k, -du * k];
}

/**
 * A convex counter-clockwise loop offset outwards.
 *
 * @param gap - millimetres, ≥ 0; 0 returns the loop itself
 */
export function offsetLoop(loop: Loop, gap: number): Result<Loop> {
  if (gap === 0) return { ok: true, value: loop, diagnostics: [] };
  const out: Segment[] = [];
  for (const [i, s] of loop.entries()) {
    const next = loop[(i + 1) % loop.length] as Segment;
    const [n0, n1, n2] = [outwardNormal(s, 0), outwardNormal(s, 1), outwardNormal(next, 0)];
    if (s.kind === "line") {
      out.push({
        ...s,
        from: [s.from[0] + gap * n0[0], s.from[1] + gap * n0[1]],
        to: [s.to[0] + gap * n0[0], s.to[1] + gap * n0[1]],
      });
    } else {
      out.push({ ...s, radius: s.radius + gap });
    }
    const turn = Math.atan2(n1[0] * n2[1] - n1[1] * n2[0], n1[0] * n2[0] + n1[1] * n2[1]);
    if (turn < -PARALLEL_SINE || (s.kind === "arc" && s.sweep < 0)) {
      return {
        ok: false,
        diagnostics: [
          diagnostic({
            code: "gap-on-hollow-skin",
            message:
              "A root gap was asked for on a header whose outline is hollow; only convex outlines can be offset.",
            hint: "Ask for no gap on this joint, or cut the branch to a plane.",
            values: { gap },
          }),
        ],
      };
    }
    if (turn > PARALLEL_SINE) {
      out.push({
        kind: "arc",
        centre: pointOn(s, 1),
        radius: gap,
        start: Math.atan2(n1[1], n1[0]),
        sweep: turn,
      });
    }
  }
  return { ok: true, value: out, diagnostics: [] };
}
