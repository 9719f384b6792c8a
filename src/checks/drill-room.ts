/**
 * Does a drill get at the holes of a foot where it stands, beside its riser or a wall?
 *
 * A chuck of diameter d drilling square wants its axis d/2 and a clearance away from whatever stands up beside it. The
 * motor above the chuck is taken to be no wider than the chuck and its clearance. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { ROUNDING_MM } from "../kernel/tolerance.js";
import type { Shop } from "../layout/document/shop.js";
import { sayLength } from "../layout/say-length.js";

/** A hole that is drilled in place. */
export interface DrillPlace {
  /** Id of the piece it belongs to, and what papers call it. */
  readonly member: string;
  readonly mark: string;
  /** From the hole's axis, level, to the nearest face that stands up beside it, mm. */
  readonly toFace: number;
  /** What that face is, e.g. `the riser behind it`. */
  readonly face: string;
}

/**
 * Holes too near a riser or a wall for the shop's drill chuck.
 *
 * With a chuck of 45 mm and 6 mm of clearance a hole wants 45/2 + 6 = 28.5 mm.
 *
 * @param places - the holes
 * @param shop - its drill chuck
 * @returns a `no-room-to-drill` warning for each hole that is nearer
 * @throws RakewrightError `bad-length` when a distance is not finite
 * @example
 * const place = { member: "P1", mark: "P1", toFace: 20, face: "the riser behind it" };
 * drillRoom([place], { drillChuck: { diameter: 45, clearance: 6 } })[0]?.values.least; // 28.5
 */
export function drillRoom(
  places: readonly DrillPlace[],
  { drillChuck: { diameter, clearance } }: Pick<Shop, "drillChuck">,
): readonly Diagnostic[] {
  const least = diameter / 2 + clearance;
  return places
    .filter(({ toFace }) => !(toFace >= least - ROUNDING_MM))
    .map(({ member, mark, toFace, face }) =>
      diagnostic({
        code: "no-room-to-drill",
        severity: "warning",
        members: [member],
        message:
          `${mark}: expected its hole at least ${sayLength(least)} from ${face} (half a chuck of ${sayLength(diameter)}` +
          ` and ${sayLength(clearance)} of clearance), got ${sayLength(toFace)}.`,
        hint: "Move the hole or the post, drill from below or with a right-angle drill; where nothing stands there (an open stair) there is room.",
        values: { least, toFace, diameter, clearance },
      }),
    );
}
