/**
 * What may be wrong with bars along the rails, beyond what any infill may have wrong. Millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import { sayLength } from "../say-length.js";
import { where } from "./infill-findings.js";
import type { Opening } from "./opening.js";

/** Rails that do not run alike, so that bars between them cannot be parallel to both. */
export function notParallel(opening: Opening, floor: string, ceiling: string): Diagnostic {
  return diagnostic({
    code: "infill-not-parallel",
    path: opening.path,
    members: [opening.from.id, opening.to.id],
    message: `${where(opening)}: expected ${ceiling} parallel to ${floor} over each of its stretches, got none that is.`,
    hint: "Use plumb bars or a panel here, or let the rails run alike.",
  });
}

/** Bars that come to a plan corner at unequal heights from its two sides. */
export function missesCorner(opening: Opening, by: number): Diagnostic {
  return diagnostic({
    code: "infill-misses-corner",
    path: opening.path,
    members: [opening.from.id, opening.to.id],
    message: `${where(opening)}: expected bars that meet at the plan corner, got centrelines ${sayLength(by)} apart.`,
    hint: "Put a post at the corner, or let the rails turn level before it.",
    values: { by },
  });
}

/** A clear space greater than the one asked for, where a bar stops short of a break. */
export function widerSpace(opening: Opening, clear: number, asked: number): Diagnostic[] {
  if (clear - asked <= STATION_MM) return [];
  return [
    diagnostic({
      code: "infill-wider-space",
      severity: "warning",
      path: opening.path,
      members: [opening.from.id, opening.to.id],
      message: `${where(opening)}: expected clear spaces of at most ${sayLength(asked)}, got ${sayLength(clear)} where the rails break and the bars do not.`,
      hint: "Put a post at the break, or use plumb bars in this bay.",
      values: { clear, asked },
    }),
  ];
}
