/**
 * Which guards does a design have, and on which site does each stand?
 *
 * @packageDocumentation
 */
import type { AsSet } from "./as-set/as-set.js";
import { withMeasuredLegs } from "./as-set/stand.js";
import type { Design } from "./document/design.js";
import type { Shop } from "./document/shop.js";
import type { Place } from "./part.js";
import { siteOf } from "./site/site.js";

/** The guards of a design: one, or a pair that are each other's mirror image across the middle of the stair. */
export function placesOf(design: Design, shop?: Shop, asSet?: AsSet): Place[] {
  const one = (side: "left" | "right", prefix: string, suffix: string, mirrored = false, y = 0): Place => {
    const own = withMeasuredLegs(design, asSet, suffix);
    const given = { ...(shop && { shop }), ...(asSet && { asSet }) };
    return { ...given, design: own, site: siteOf(own, mirrored, y), side, prefix, suffix };
  };
  if (design.side !== "both") return [one(design.side, "", "")];
  const apart = (design.width ?? 0) - 2 * (design.inset ?? 0);
  return [one("left", "left-", "-L"), one("right", "right-", "-R", true, -apart)];
}
