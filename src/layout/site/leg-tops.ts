/**
 * How high is the top rail over each leg in fact?
 *
 * As the design says, except where a break over the riser face fixes the height of the level leg after it: there the level
 * rail stands at h + overhang·tan θ (trade geometry). Millimetres.
 *
 * @packageDocumentation
 */
import type { Site } from "./site.js";

/** Height of the top edge over each leg's own line, by leg. */
export function legTops(site: Site): number[] {
  const tops: number[] = [];
  site.legs.forEach(({ leg, slope, groundZ, x }, i) => {
    const before = site.legs[i - 1];
    const riser = leg.break.type === "riser" && before?.flight !== undefined;
    if (!riser || before.flight === undefined) {
      tops.push(leg.top);
      return;
    }
    const face = before.x[1] + before.flight.overhang;
    const rake = before.groundZ + before.slope * face + (tops[i - 1] ?? 0);
    tops.push(rake - groundZ - slope * (Number.isFinite(x[0]) ? face : 0));
  });
  return tops;
}
