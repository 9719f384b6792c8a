/**
 * Angle bar, equal or unequal legs, rolled with a root fillet and rounded toes.
 *
 * The member's axis runs through the middle of the box `width` x `depth`, as in every bar here and in ISO 16739 (IFC,
 * IfcLShapeProfileDef): the outer faces, which a shop lays out to, stand at ±width/2 and ±depth/2, the heel is the corner at
 * −u, bottom, and what is known of a rectangle (tops flush, posts in line) holds. `sectionProperties` gives the centroid.
 *
 * @packageDocumentation
 */
import type { Section } from "../section.js";
import { badSection, defaultRadius, requireRadiusUpTo, requireSizes, sizesOf } from "./checks.js";
import { cornerAt, filletedLoop } from "./filleted-loop.js";
import type { SectionNaming } from "./round.js";

/** Sizes of an angle bar, millimetres. */
export interface AngleBarInput extends SectionNaming {
  /** Leg along u, over its outside: lies at the bottom. */
  readonly width: number;
  /** Leg along v, over its outside: stands at −u. */
  readonly depth: number;
  /** Of both legs; below the shorter leg. */
  readonly thickness: number;
  /** Fillet between the legs: 0, or from 0.001 mm; default the thickness. EN 10056-1 has 0.75 to 1.75 thicknesses. */
  readonly rootRadius?: number;
  /** Rounding of both toes, inside: 0, or from 0.001 mm to the thickness; default half the root radius, as in EN 10056-1. */
  readonly toeRadius?: number;
}

/**
 * An angle bar; outer sides `-u` and `bottom` meet in the heel, `inner -u` and `inner bottom` are the insides of the same legs,
 * `top` and `+u` the toes; `corner` and `inner corner` are the toes' roundings and the root fillet.
 *
 * @throws RakewrightError `bad-section` for sizes that are no angle, a radius above 0 and below 0.001 mm, or radii that do not
 *   fit on a leg together
 * @example
 * angleBar({ width: 50, depth: 50, thickness: 5, rootRadius: 7, toeRadius: 3.5 }).name; // angle 50 x 50 x 5
 */
export function angleBar(input: AngleBarInput): Section {
  const { width, depth, thickness } = input;
  requireSizes("Angle", { width, depth, thickness });
  const shorter = Math.min(width, depth);
  if (thickness >= shorter) {
    badSection(
      `Angle: expected a thickness below ${shorter} mm, the shorter leg, got ${thickness}.`,
      "For solid material use a flat bar.",
      { thickness, shorter },
    );
  }
  const room = shorter - thickness;
  const rootRadius = input.rootRadius ?? defaultRadius(Math.min(thickness, room / 2));
  const toeRadius = input.toeRadius ?? defaultRadius(Math.min(rootRadius / 2, thickness));
  requireRadiusUpTo("Angle", { toeRadius }, thickness, "the thickness");
  requireRadiusUpTo("Angle", { rootRadius }, room - toeRadius, "what the toe leaves of the shorter leg");
  const [a, b, t] = [width / 2, depth / 2, thickness];
  return {
    name: input.name ?? `angle ${sizesOf(width, depth, thickness)}`,
    shape: { kind: "angle", width, depth, thickness, rootRadius, toeRadius },
    region: {
      outer: filletedLoop([
        cornerAt(-a, -b, 0, "corner", "bottom"),
        cornerAt(a, -b, 0, "corner", "+u"),
        cornerAt(a, t - b, toeRadius, "corner", "inner bottom"),
        cornerAt(t - a, t - b, rootRadius, "inner corner", "inner -u"),
        cornerAt(t - a, b, toeRadius, "corner", "top"),
        cornerAt(-a, b, 0, "corner", "-u"),
      ]),
      holes: [],
    },
    source: input.source ?? "as given",
  };
}
