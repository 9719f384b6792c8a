/**
 * Where the outline of a section turns back across a bore: the places it reaches farthest to either side of it.
 *
 * h (see `bore-stance`) rises or falls steadily along every stretch of the outline between two turns. A side that runs
 * along the bore is a turn as a whole.
 *
 * @packageDocumentation
 */
import { acrossBore, alongBore, type BoreStance } from "./bore-stance.js";
import { arcFraction, loopsOf, pointOn, type Region, type Segment, tangentOn } from "./region.js";
import { ROUNDING_SHARE } from "./tolerance.js";
import type { Vec2 } from "./vec.js";

/** A place where the outline turns back across a bore. */
export interface OutlineTurn {
  readonly loop: number;
  /** The side it is inside of, or that starts at it. */
  readonly segment: number;
  readonly atCorner: boolean;
  readonly h: number;
  readonly tau: number;
}

/** All turns of a section's outline across a bore. */
export function outlineTurns(section: Region, { along }: BoreStance): OutlineTurn[] {
  const out: OutlineTurn[] = [];
  const right = Math.atan2(-along[0], along[1]);
  for (const [loop, segments] of loopsOf(section).entries()) {
    let before = trend(segments[segments.length - 1] as Segment, 1, along);
    for (const [segment, s] of segments.entries()) {
      const add = ([u, v]: Vec2, atCorner: boolean): void => {
        out.push({ loop, segment, atCorner, h: acrossBore(along, u, v), tau: alongBore(along, u, v) });
      };
      if (trend(s, 0, along) * before <= 0) add(pointOn(s, 0), true);
      before = trend(s, 1, along);
      if (s.kind === "line") continue;
      for (const angle of [right, right + Math.PI]) {
        const t = arcFraction(s, angle);
        if (t > ROUNDING_SHARE && t < 1 - ROUNDING_SHARE) add(pointOn(s, t), false);
      }
    }
  }
  return out;
}

/** Whether h rises (+1) or falls (−1) at `t` of a side; 0 where the side runs along the bore. */
function trend(segment: Segment, t: number, along: Vec2): number {
  const [du, dv] = tangentOn(segment, t);
  const rise = acrossBore(along, du, dv);
  return Math.abs(rise) <= ROUNDING_SHARE * Math.hypot(du, dv) ? 0 : Math.sign(rise);
}
