/**
 * What may be wrong with the infill of one opening. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { LIMITS } from "../document/defaults.js";
import { sayLength } from "../say-length.js";
import type { Opening } from "./opening.js";

/** `Infill between P1 and P2`. */
export const where = ({ from, to }: Opening): string => `Infill between ${from.mark} and ${to.mark}`;

/** A bay that is to be filled has no lower rail. */
export function withoutRail(opening: Opening): Diagnostic {
  return diagnostic({
    code: "infill-without-rail",
    path: opening.path,
    members: [opening.from.id, opening.to.id],
    message: `${where(opening)}: expected a lower rail to stand on, got none in this bay.`,
    hint: 'Add a lower rail and its underside on this leg, or `"infill": "none"`.',
  });
}

/** A bar is wider across than what it is cut to. */
export function tooWide(
  opening: Opening,
  onto: string,
  halves: { readonly bar: number; readonly onto: number },
): Diagnostic[] {
  const by = halves.bar - halves.onto;
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "infill-too-wide",
      path: opening.path,
      members: [opening.from.id, opening.to.id],
      message: `${where(opening)}: expected bars no wider across than ${onto}, got ${sayLength(by)} more on each side.`,
      hint: "Use a narrower bar, or a wider rail or post.",
      values: { by, barHalfWidth: halves.bar, ontoHalfWidth: halves.onto },
    }),
  ];
}

/** Nothing fits; `room` is what is left, not above 0. */
export function noRoom(opening: Opening, what: string, room: number): Diagnostic {
  return diagnostic({
    code: "infill-no-room",
    path: opening.path,
    members: [opening.from.id, opening.to.id],
    message: `${where(opening)}: expected room for ${what}, got ${sayLength(room)}.`,
    hint: "Move the posts or the rails apart, use a smaller size or fewer, or leave this leg open with `none`.",
    values: { room },
  });
}

/** More bars than a document may have in one opening. */
export function tooMany(opening: Opening, count: number): Diagnostic[] {
  if (count <= LIMITS.infill) return [];
  return [
    diagnostic({
      code: "infill-too-many",
      path: opening.path,
      members: [opening.from.id, opening.to.id],
      message: `${where(opening)}: expected at most ${LIMITS.infill} bars, got ${count}.`,
      hint: "Give a greater `clear`.",
      values: { count },
    }),
  ];
}

/** A bar that ends where no one rail, nor two that are mitred, reach over all of it. */
export function withoutSeat(opening: Opening, bar: string, end: string): Diagnostic {
  return diagnostic({
    code: "bar-without-seat",
    path: opening.path,
    members: [bar],
    message: `${where(opening)}, bar ${bar}: expected one rail, or two that are mitred, at its ${end}; got another place: beside a plumb leg, or between several breaks.`,
    hint: "Change `clear` or the posts so that no bar stands there, or move the leg with the break's `at`.",
  });
}
