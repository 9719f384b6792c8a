/**
 * Reads what fills the space between the rails.
 *
 * @packageDocumentation
 */
import { DEFAULTS } from "./defaults.js";
import type { InfillDesign, LinesDesign } from "./infill-design.js";
import type { InfillInput, LinesInput } from "./infill-input.js";
import type { Reader } from "./reader.js";
import type { DocumentPath } from "./schema/path-text.js";

function byOf({ count, clear }: LinesInput, path: DocumentPath, read: Reader): LinesDesign["by"] {
  if ((count === undefined) === (clear === undefined)) {
    const what = count === undefined ? "neither" : "both";
    const message = `expected either \`count\` or \`clear\`, got ${what}.`;
    read.report("bad-infill", path, message, "Give one of the two.");
  }
  if (clear === undefined) return { type: "count", count: count ?? 1 };
  return { type: "clear", clear: read.length(clear, [...path, "clear"], "positive") };
}

function throughOf(input: LinesInput, path: DocumentPath, read: Reader): LinesDesign["through"] {
  const only = (["clearance", "past"] as const).filter((key) => input[key] !== undefined);
  if (input.through !== true) {
    if (only.length === 0) return undefined;
    const named = only.map((key) => `\`${key}\``).join(" and ");
    const message = `expected ${named} only with bars that run through the posts, got no \`through\`.`;
    read.report("bad-infill", path, message, 'Add `"through": true`, or remove it.');
    return undefined;
  }
  const { clearance, past } = input;
  if (past === undefined) {
    const message = "expected how far the bars go past the end posts, got nothing.";
    read.report("missing", [...path, "past"], message, "Add `past`, level from the post's far face.");
  }
  return {
    clearance:
      clearance === undefined
        ? DEFAULTS.throughClearance
        : read.length(clearance, [...path, "clearance"], "not-negative"),
    past: past === undefined ? 0 : read.length(past, [...path, "past"], "positive"),
  };
}

function linesOf(
  input: LinesInput,
  rows: InfillDesign["rows"],
  path: DocumentPath,
  read: Reader,
): InfillDesign | undefined {
  const section = read.section(input.section, [...path, "section"]);
  const [by, through] = [byOf(input, path, read), throughOf(input, path, read)];
  if (section === undefined) return undefined;
  const { kind } = section.shape;
  if (through !== undefined && kind !== "round-tube" && kind !== "round-bar") {
    const message = `expected a round section for bars that run through the posts, got ${section.name}.`;
    const hint = "Use a round bar or tube, or leave `through` out.";
    read.report("bad-infill", [...path, "section"], message, hint);
  }
  return { type: "rails", section, by, ...(through === undefined ? {} : { through }), rows };
}

/** Infill; undefined where its section cannot be read (its diagnostic is with the reader). */
export function resolveInfill(
  input: InfillInput,
  path: DocumentPath,
  read: Reader,
): InfillDesign | undefined {
  const rows = input.rows ?? "lowest";
  if (input.type === "rails") return linesOf(input, rows, path, read);
  const clear = read.length(input.clear, [...path, "clear"], "positive");
  if (input.type === "bars") {
    const section = read.section(input.section, [...path, "section"]);
    return section === undefined ? undefined : { type: "bars", section, clear, rows };
  }
  const { thickness, holes } = input;
  const at = [...path, "holes"];
  return {
    type: "panel",
    thickness: read.length(thickness, [...path, "thickness"], "positive"),
    clear,
    ...(holes === undefined
      ? {}
      : {
          holes: {
            diameter: read.length(holes.diameter, [...at, "diameter"], "positive"),
            edge: read.length(holes.edge, [...at, "edge"], "positive"),
          },
        }),
    rows,
  };
}
