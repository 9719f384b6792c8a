/**
 * Is a size a section can have? Checks shared by every section constructor, and the short way to write a size.
 *
 * Nonsense sizes are a programming error: they throw. Text from a person goes through `parseSection`, which does not.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../../kernel/diagnostic.js";

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

/** Throws `bad-section` unless the radius is between zero and half the smaller side. */
export function requireRadius(what: string, name: string, radius: number, side: number): void {
  if (Number.isFinite(radius) && radius >= 0 && radius <= side / 2) return;
  const most = shortSize(side / 2);
  badSection(
    `${what}: expected ${name} from 0 to ${most} mm, half the smaller side, got ${radius}.`,
    "Give a smaller radius, or none.",
    {
      [name]: radius,
      side,
    },
  );
}

/** A size for a section's name: hundredths of a millimetre, no trailing zeros, e.g. `48.26`, `38.1`, `12`. */
export function shortSize(mm: number): string {
  return String(Number(mm.toFixed(2)));
}

/** The name's sizes joined the way the trade writes them: `48.26 x 3.68`. */
export function sizesOf(...mm: readonly number[]): string {
  return mm.map(shortSize).join(" x ");
}
