/**
 * Where equal headers take over from each other along a side: on a plane that is known exactly.
 *
 * Two cylinders of one radius whose axes meet cross each other in two planes. Where they all but coincide their heights are
 * the same to the last digits for a while, and the place at which one passes the other is a matter of rounding; the plane
 * still crosses the side at an angle.
 *
 * @packageDocumentation
 */
import { equalCylindersMeet } from "./curve/intersect.js";
import { falsePosition } from "./false-position.js";
import type { Surface } from "./surface.js";
import { TIE_ROUNDING_MM, TOUCH_ROUNDING_MM } from "./tolerance.js";
import { cross, dot, normalize, sub, type Vec3 } from "./vec.js";

/** Signed distances (mm) from the planes in which two surfaces meet; none for surfaces that meet in no plane known. */
export function meetingPlanes(a: Surface, b: Surface): ((p: Vec3) => number)[] {
  if (a.kind !== "cylinder" || b.kind !== "cylinder") return [];
  return equalCylindersMeet(a, b, TOUCH_ROUNDING_MM).map(({ centre, major, minor }) => {
    const normal = normalize(cross(major, minor));
    return (p) => dot(sub(p, centre), normal);
  });
}

/**
 * The place at which a plane is crossed; null when `from` and `to` are on one side of it.
 *
 * @param away - signed distance from the plane, millimetres
 */
export function crossedBetween(away: (t: number) => number, from: number, to: number): number | null {
  const [a, b] = [away(from), away(to)];
  return a < 0 === b < 0 ? null : falsePosition(away, from, to, a, b, TIE_ROUNDING_MM);
}
