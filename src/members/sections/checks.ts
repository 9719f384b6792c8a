/**
 * Is a size a section can have? Checks shared by every section constructor, and the short way to write a size.
 *
 * Nonsense sizes are a programming error: they throw. Text from a person goes through `parseSection`, which does not.
 *
 * @packageDocumentation
 */

import { RakewrightError } from "../../kernel/diagnostic.js";
import { LEAST_RADIUS_MM, ROUNDING_MM } from "../../kernel/tolerance.js";

/** Throws `bad-section`. */
export function badSection(
  message: string,
  hint: string,
  values: Readonly<Record<string, number>> = {},
): never {
  throw new RakewrightError({ code: "bad-section", message, hint, values });
}

/** Throws `bad-section` unless every named size is a finite number above zero, millimetres. */
export function requireSizes(what: string, sizes: Readonly<Record<string, number>>): void {
  for (const [name, size] of Object.entries(sizes)) {
    if (Number.isFinite(size) && size > 0) continue;
    badSection(`${what}: expected ${name} above 0 mm, got ${size}.`, "Give every size in millimetres.", {
      [name]: size,
    });
  }
}

/** Throws `bad-section` unless the wall leaves a bore in the smallest outside size. */
export function requireBore(what: string, outside: number, wall: number): void {
  if (wall < outside / 2) return;
  const limit = shortSize(outside / 2);
  badSection(
    `${what}: expected a wall below ${limit} mm, half the outside, got ${wall}.`,
    "For solid material use a bar.",
    {
      outside,
      wall,
    },
  );
}

/** Throws `bad-section` unless the radius is zero, or from `LEAST_RADIUS_MM` to half the smaller side. */
export function requireRadius(what: string, name: string, radius: number, side: number): void {
  requireRadiusUpTo(what, { [name]: radius }, side / 2, "half the smaller side");
}

/** The same with another limit, and what the limit is. */
export function requireRadiusUpTo(
  what: string,
  named: Readonly<Record<string, number>>,
  most: number,
  whose: string,
): void {
  for (const [name, radius] of Object.entries(named)) {
    if (radius > 0 && radius < LEAST_RADIUS_MM) {
      badSection(
        `${what}: expected ${name} to be 0 or at least ${LEAST_RADIUS_MM} mm, got ${radius}, a radius no tool makes and too small to tell the points of its arc apart.`,
        "Give 0 for a sharp corner, or the radius as measured.",
        { [name]: radius, least: LEAST_RADIUS_MM },
      );
    }
    if (Number.isFinite(radius) && radius >= 0 && radius <= most + ROUNDING_MM) continue;
    badSection(
      `${what}: expected ${name} from 0 to ${shortSize(Math.max(most, 0))} mm, ${whose}, got ${radius}.`,
      "Give a smaller radius, or none.",
      { [name]: radius, most },
    );
  }
}

/** A default radius: sharp where it would be below `LEAST_RADIUS_MM`, which a caller never asked for. */
export function defaultRadius(radius: number): number {
  return radius < LEAST_RADIUS_MM ? 0 : radius;
}

/** A size for a section's name: hundredths of a millimetre, no trailing zeros, e.g. `48.26`, `38.1`, `12`. */
export function shortSize(mm: number): string {
  return String(Number(mm.toFixed(2)));
}

/** The name's sizes joined the way the trade writes them: `48.26 x 3.68`. */
export function sizesOf(...mm: readonly number[]): string {
  return mm.map(shortSize).join(" x ");
}
