/**
 * Where a piece lies deepest in its mate.
 *
 * Every fibre of the piece's outline is a straight line, and the depth in a convex mate is concave along it: its greatest
 * value is closed in on between two tangents. Round the outline the greatest of these is found by `outline.ts`. Depth is
 * to the nearest of the mate's skin and its own end cuts; a mate that is not convex is judged by the nearest dip.
 *
 * @packageDocumentation
 */
import type { At, Field } from "../kernel/edge-extremes.js";
import { endAt } from "../kernel/end-compile.js";
import { greatestOnOutline } from "../kernel/outline.js";
import { loopsOf } from "../kernel/region.js";
import { ROUNDING_MM } from "../kernel/tolerance.js";
import type { Vec3 } from "../kernel/vec.js";
import { type Body, fromMaterial, type Mate } from "./mate.js";

/**
 * The deepest place, positive inside the mate; 0 or below, with the place that comes nearest, where none is inside.
 *
 * @param also - a place of the piece to look at besides, such as the least of its cut
 */
export function deepestIn(body: Body, mate: Mate, also?: Vec3): At {
  const material = fromMaterial(mate);
  const alongFibre = (u: number, v: number): At => onFibre(body, material, u, v);
  const { at } = greatestOnOutline(loopsOf(body.piece.section.region), (u, v) => alongFibre(u, v).value);
  const deepest = alongFibre(at[0], at[1]);
  const extra = also ? -material(also).value : Number.NEGATIVE_INFINITY;
  return also && extra > deepest.value ? { value: extra, at: also } : deepest;
}

const STEPS = 60;

/** Greatest depth along one fibre of the piece. */
function onFibre({ low, high }: Body, material: Field, u: number, v: number): At {
  const depth = (s: number): { readonly s: number; readonly value: number; readonly slope: number } => {
    const { value, gradient } = material([u, v, s]);
    return { s, value: -value, slope: -gradient[2] };
  };
  let [a, b] = [depth(-endAt(low, u, v).out), depth(endAt(high, u, v).out)];
  for (let k = 0; k < STEPS && a.slope > 0 && b.slope < 0; k++) {
    // Where the two tangents meet: as deep as a concave function between them can be.
    const s = (b.value - a.value + a.slope * a.s - b.slope * b.s) / (a.slope - b.slope);
    const most = a.value + a.slope * (s - a.s);
    if (!(s > a.s && s < b.s) || most - Math.max(a.value, b.value) < ROUNDING_MM) break;
    const c = depth(s);
    if (c.slope > 0) a = c;
    else b = c;
  }
  const best = a.value >= b.value ? a : b;
  return { value: best.value, at: [u, v, best.s] };
}
