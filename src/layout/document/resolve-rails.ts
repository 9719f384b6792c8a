/**
 * Reads the rails of a checked document: ids by role and order, exactly one top rail, no id twice.
 *
 * @packageDocumentation
 */
import type { RailDesign } from "./design.js";
import type { DesignInput } from "./design-input.js";
import type { Reader } from "./reader.js";

/** True where a stair side has handrails and no guard: no rail at all is asked for. */
export function handrailsAlone(document: Pick<DesignInput, "rails" | "handrails">): boolean {
  return document.rails.length === 0 && (document.handrails ?? []).length > 0;
}

/** The rails, the top one first; a rail whose section cannot be read is left out (its diagnostic is with the reader). */
export function resolveRails(document: DesignInput, read: Reader): RailDesign[] {
  let lower = 0;
  const seen = new Set<string>();
  const rails = document.rails.flatMap((rail, i): RailDesign[] => {
    if (rail.role === "lower") lower += 1;
    const id = rail.id ?? (rail.role === "lower" ? `lower-${lower}` : rail.role);
    if (seen.has(id.toLowerCase())) {
      read.report(
        "duplicate-id",
        ["rails", i],
        `expected an id of its own, got ${id} again.`,
        "Give the rail another id.",
      );
    }
    seen.add(id.toLowerCase());
    const section = read.section(rail.section, ["rails", i, "section"]);
    return section === undefined ? [] : [{ id, role: rail.role, section }];
  });
  const tops = document.rails.filter((rail) => rail.role === "top").length;
  if (tops !== 1 && !handrailsAlone(document)) {
    const hint = "Give exactly one rail the role `top`; the others are `lower`.";
    read.report(
      "top-rail-count",
      ["rails"],
      `expected exactly one rail with the role top, got ${tops}.`,
      hint,
      { tops },
    );
  }
  const caps = document.rails.filter((rail) => rail.role === "cap").length;
  if (caps > 1) {
    const hint = "Keep one rail with the role `cap`.";
    read.report("top-rail-count", ["rails"], `expected at most one cap, got ${caps}.`, hint, { caps });
  }
  return (["top", "cap", "lower"] as const).flatMap((role) => rails.filter((rail) => rail.role === role));
}
