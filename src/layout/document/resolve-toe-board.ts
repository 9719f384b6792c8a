/**
 * Reads toe boards: a flat, its gap, and the level legs it lies along.
 *
 * @packageDocumentation
 */
import type { LegDesign } from "./design.js";
import type { DesignInput } from "./design-input.js";
import type { ToeBoardDesign } from "./handrail-design.js";
import type { Reader } from "./reader.js";
import { legIndices } from "./resolve-handrails.js";

/** The toe board of a document, where it has one. */
export function resolveToeBoard(
  document: DesignInput,
  legs: readonly LegDesign[],
  read: Reader,
): { readonly toeBoard?: ToeBoardDesign } {
  const input = document.toeBoard;
  if (input === undefined) return {};
  const path = ["toeBoard"];
  const section = read.section(input.section, [...path, "section"]);
  if (section !== undefined && section.shape.kind !== "rect-bar") {
    const message = `expected a flat, got ${section.name}.`;
    read.report("bad-value", [...path, "section"], message, "Name a section made by `flat`.");
  }
  const level = legs.flatMap((leg, i) => (leg.along === "stair" ? [] : [i]));
  const asked = input.legs === undefined ? level : legIndices(input.legs, legs, [...path, "legs"], read);
  asked.forEach((index, j) => {
    if (level.includes(index)) return;
    const message = `expected a level leg, got the flight ${legs[index]?.id}.`;
    read.report("bad-value", [...path, "legs", j], message, "Name floors and landings only.");
  });
  const gap = read.length(input.gap, [...path, "gap"], "not-negative");
  if (section === undefined) return {};
  return { toeBoard: { section, gap, face: input.face ?? "between", legs: asked } };
}
