/**
 * Does the top rail keep the height that the design asks for over every nosing, and if not, can any straight rail?
 *
 * Limits are the design's own; nothing here knows what a height has to be. Heights are plumb, to the top of the rail.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { LayoutReport } from "../report-types.js";
import { sayLength } from "../say-length.js";
import type { LegGround } from "../site/site.js";
import { railBand } from "../survey/rail-band.js";

const list = (numbers: readonly number[]): string => numbers.join(", ");

/** No straight rail at any pitch does it: the step that is in the way. */
function withoutRail({ leg, index, flight }: LegGround): Diagnostic[] {
  if (leg.heights === undefined || flight === undefined) return [];
  const found = railBand(flight.nosings, leg.heights);
  if (found.possible) return [];
  const { least, most } = leg.heights;
  const { steps, needs } = found;
  const which =
    steps.length === 0
      ? "more than one nosing is in the way"
      : `in the way is nosing ${steps.length === 1 ? steps[0] : `${list(steps.slice(0, -1))} or ${steps.at(-1)}`}`;
  return [
    diagnostic({
      code: "heights-no-rail",
      severity: "warning",
      path: `legs[${index}].heights`,
      message: `Leg ${leg.id}: expected a straight rail between ${sayLength(least)} and ${sayLength(most)} over every nosing, got none at any pitch: ${which}; it takes limits at least ${sayLength(needs)} apart.`,
      hint: "Tape that nosing again; then part or bend the rail there, or ask whoever set the limits.",
      values: { least, most, needs, nosing: steps[0] ?? 0 },
    }),
  ];
}

/** Nosings over which the rail as it is designed is too low or too high. */
function outside({ leg, index }: LegGround, report: LayoutReport): Diagnostic[] {
  if (leg.heights === undefined) return [];
  const { least, most } = leg.heights;
  const wrong = report.nosings.filter(
    (own) => own.leg === leg.id && (own.railTop < least - STATION_MM || own.railTop > most + STATION_MM),
  );
  const off = (height: number) => Math.max(least - height, height - most);
  const [first] = wrong;
  if (first === undefined) return [];
  const worst = wrong.reduce((best, own) => (off(own.railTop) > off(best.railTop) ? own : best), first);
  const others = wrong.length === 1 ? "" : ` (nosings ${list(wrong.map((own) => own.number))} are outside)`;
  return [
    diagnostic({
      code: "height-outside",
      severity: "warning",
      path: `legs[${index}].heights`,
      message: `Leg ${leg.id}: expected the top of the rail between ${sayLength(least)} and ${sayLength(most)} over every nosing, got ${sayLength(worst.railTop)} over nosing ${worst.number}${others}.`,
      hint: "Change `top`; where the nosings are not true, the height half-way between the limits leaves most room.",
      values: { least, most, got: worst.railTop, nosing: worst.number },
    }),
  ];
}

/** Warnings about heights over nosings, leg by leg: first whether any straight rail would do. */
export function heightFindings(legs: readonly LegGround[], report: LayoutReport): Diagnostic[] {
  return legs.flatMap((own) => {
    const none = withoutRail(own);
    return none.length > 0 ? none : outside(own, report);
  });
}
