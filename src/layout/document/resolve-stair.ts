/**
 * Reads steps: counted ones, nosings taped one by one, each farther along and higher than the one before, or a survey.
 *
 * @packageDocumentation
 */

import type { TapedNosing } from "../site/nosing-line.js";
import { DEFAULTS, LIMITS } from "./defaults.js";
import type { StairDesign } from "./design.js";
import type { StepsInput } from "./design-input.js";
import type { Reader } from "./reader.js";
import { resolveSurvey } from "./resolve-survey.js";
import type { DocumentPath } from "./schema/path-text.js";

/** Nosings in place of those that cannot be used: enough of them that nothing else is blamed; the design is not laid out. */
const standIn = (count: number): readonly TapedNosing[] =>
  Array.from({ length: Math.max(count, 2) }, (_, i) => ({ run: i, height: i + 1 }));

function tapedOf(
  nosings: Extract<StepsInput, { readonly nosings: unknown }>["nosings"],
  path: DocumentPath,
  read: Reader,
): readonly TapedNosing[] {
  const taped = nosings.map((own, i): TapedNosing => {
    const run = read.length(own.run, [...path, i, "run"], "not-negative");
    return { run, height: read.length(own.height, [...path, i, "height"], "positive") };
  });
  const wrong = taped.findIndex((own, i) => {
    const before = taped[i - 1];
    if (before === undefined) return own.run !== 0;
    return own.run < before.run + LIMITS.least || own.height < before.height + LIMITS.least;
  });
  if (wrong < 0) return taped;
  const [own, before] = [taped[wrong], taped[wrong - 1]];
  read.report(
    "nosing-order",
    [...path, wrong],
    before === undefined
      ? `expected the lowest nosing at run 0, got ${own?.run} mm.`
      : `expected a nosing farther along and higher than the one before (${before.run}, ${before.height} mm), got ${own?.run}, ${own?.height} mm.`,
    "Tape runs from the lowest nosing and heights from the lower floor; list them from the lowest up.",
  );
  return standIn(taped.length);
}

/** The steps of a flight. */
export function resolveSteps(stair: StepsInput, path: DocumentPath, read: Reader): StairDesign {
  const overhang =
    stair.overhang === undefined
      ? DEFAULTS.overhang
      : read.length(stair.overhang, [...path, "overhang"], "not-negative");
  if ("survey" in stair) {
    const { found, terms } = resolveSurvey(stair.survey, [...path, "survey"], read);
    const survey = found.adjustment && { survey: found.adjustment };
    return { nosings: found.nosings ?? standIn(LIMITS.risers), ...survey, terms, overhang };
  }
  if ("nosings" in stair) return { nosings: tapedOf(stair.nosings, [...path, "nosings"], read), overhang };
  return {
    risers: stair.risers,
    floorToFloor: read.length(stair.floorToFloor, [...path, "floorToFloor"], "positive"),
    going: read.length(stair.going, [...path, "going"], "positive"),
    overhang,
  };
}
