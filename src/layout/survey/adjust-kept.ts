/**
 * Adjusts the readings of a document's survey that count, and says of every finding which reading it is about.
 *
 * What the adjustment only warns of keeps a guard from being built on it: steps that go back, and readings that contradict each
 * other beyond any chance. The adjustment itself is still given, so that whoever taped can see where.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { nearestName } from "../document/schema/path-text.js";
import { adjustReadings, type SurveyUnknowns } from "./adjust.js";
import type { Adjustment } from "./adjustment.js";
import { checkReadings } from "./check-readings.js";
import type { Reading } from "./reading.js";

/** How to adjust, and what not to count. */
export interface KeptOptions extends Pick<SurveyUnknowns, "tape" | "limit"> {
  /** Ids of readings that are left out. */
  readonly without?: readonly string[];
}

/** A survey as far as its readings go. */
export interface KeptSurvey {
  /** Absent where the readings cannot be adjusted at all. */
  readonly adjustment?: Adjustment;
  readonly leftOut: readonly Reading[];
  /** Paths are `readings[3]` or `without[0]`, into what was given; empty for the survey as a whole. */
  readonly diagnostics: readonly Diagnostic[];
}

/** What a kind of survey asks besides. */
interface KindOptions extends KeptOptions, Pick<SurveyUnknowns, "fixed"> {
  /** Errors of the readings that count, before they are adjusted. */
  check?(kept: readonly Reading[]): Diagnostic[];
  /** Readings that look like another unit; paths into what is given. */
  units?(readings: readonly Reading[]): Diagnostic[];
}

/** Warnings of an adjustment on which nothing can be built. */
const NOT_TO_BUILD: readonly string[] = ["survey-step-back", "survey-contradictory"];

/** Ids to be left out that no reading has. */
function checkWithout(readings: readonly Reading[], without: readonly string[]): Diagnostic[] {
  const ids = readings.map((own) => own.id);
  return without.flatMap((id, i) => {
    if (ids.includes(id)) return [];
    const near = nearestName(id, ids);
    return [
      diagnostic({
        code: "survey-unknown-reading",
        path: `without[${i}]`,
        members: [id],
        message: `Survey: expected the id of a reading to leave out, got "${id}".`,
        hint: near === undefined ? "Give it as it stands with the reading." : `Did you mean \`${near}\`?`,
      }),
    ];
  });
}

/** Findings at their readings, as grave as they are for a guard; steps between contradictory readings say nothing. */
function inDocument(findings: readonly Diagnostic[], readings: readonly Reading[]): Diagnostic[] {
  const lost = findings.some((own) => own.code === "survey-contradictory");
  return findings.flatMap((own): Diagnostic[] => {
    if (lost && own.code === "survey-step-back") return [];
    const suspect = own.code === "survey-suspect";
    const one = suspect || own.members.length === 1;
    const at = one ? readings.findIndex((reading) => reading.id === own.members[0]) : -1;
    return [
      {
        ...own,
        path: at < 0 ? "" : `readings[${at}]`,
        ...(suspect && { hint: `${own.hint} \`without\` leaves a reading out until then.` }),
        ...(NOT_TO_BUILD.includes(own.code) && { severity: "error" }),
      },
    ];
  });
}

/** Adjusts what counts. */
export function adjustKept(readings: readonly Reading[], options: KindOptions): KeptSurvey {
  const { without = [], check, units, ...unknowns } = options;
  const leftOut = readings.filter((own) => without.includes(own.id));
  const wrong = [...checkReadings(readings), ...checkWithout(readings, without)];
  if (wrong.length > 0) return { leftOut, diagnostics: wrong };
  const kept = readings.filter((own) => !without.includes(own.id));
  if (kept.length === 0) return { leftOut, diagnostics: checkReadings(kept) };
  const slips = (units?.(readings) ?? []).filter((own) => !without.includes(own.members[0] as string));
  const missing = check?.(kept) ?? [];
  if (missing.length > 0) return { leftOut, diagnostics: [...missing, ...slips] };
  const found = adjustReadings(kept, unknowns);
  // A length 25 times off may leave nothing that can be adjusted: what comes of that is no finding of its own.
  if (!found.ok && slips.length > 0) {
    return { leftOut, diagnostics: slips.map((own) => ({ ...own, severity: "error" as const })) };
  }
  const diagnostics = [...slips, ...inDocument(found.diagnostics, readings)];
  return found.ok ? { adjustment: found.value, leftOut, diagnostics } : { leftOut, diagnostics };
}
