/**
 * Reads the words of a checked document (lengths, section sizes, names) and collects what is wrong with them.
 *
 * One bad word never hides another: a reader returns a stand-in and remembers the diagnostic; the caller looks at
 * `diagnostics` once, at the end.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { parseLength } from "../../kernel/length.js";
import type { Section } from "../../members/section.js";
import { parseSection } from "../../members/sections/parse-section.js";
import { LIMITS } from "./defaults.js";
import type { LengthInput } from "./design-input.js";
import { type DocumentPath, got, nearestName, pathForPeople, pathText } from "./schema/path-text.js";

/** What a length must be: `any`, not below zero, or above zero. */
export type LengthRange = "any" | "not-negative" | "positive";

/** A reader over one document. */
export interface Reader {
  readonly diagnostics: Diagnostic[];
  /** Millimetres; the fallback (mm) where the document has nothing. */
  length(input: LengthInput, path: DocumentPath, range: LengthRange): number;
  /** A section by its name in `sections`; undefined (and a diagnostic) when there is none. */
  section(name: string, path: DocumentPath): Section | undefined;
  /** Remembers a diagnostic at a path. */
  report(
    code: string,
    path: DocumentPath,
    message: string,
    hint: string,
    values?: Diagnostic["values"],
  ): void;
}

/**
 * A reader for one document.
 *
 * @param document - the checked document, for the names in messages
 * @param unit - of bare numbers
 * @param sections - name → size in words; every one is read at once, so that an unused bad one is told too
 */
export function readerOf(
  document: unknown,
  unit: "in" | "mm",
  sections: Readonly<Record<string, string>>,
): Reader {
  const diagnostics: Diagnostic[] = [];
  const report: Reader["report"] = (code, path, message, hint, values = {}) => {
    const place = pathForPeople(document, path);
    diagnostics.push(
      diagnostic({ code, path: pathText(path), message: `${place}: ${message}`, hint, values }),
    );
  };
  const known = new Map<string, Section | undefined>();
  for (const [name, words] of Object.entries(sections)) {
    const read = parseSection(words, unit, pathText(["sections", name]));
    known.set(name, read.ok ? asWritten(read.value, words, unit, [...known.values()]) : undefined);
    diagnostics.push(...read.diagnostics);
  }
  return {
    diagnostics,
    report,
    length(input, path, range) {
      const read = parseLength(input, unit, pathForPeople(document, path));
      if (!read.ok) {
        diagnostics.push(...read.diagnostics.map((d) => ({ ...d, path: pathText(path) })));
        return 1;
      }
      const least = range === "positive" ? LIMITS.least : range === "not-negative" ? 0 : -LIMITS.length;
      if (read.value < least || read.value > LIMITS.length) {
        const wanted = `expected a length from ${least} mm to ${LIMITS.length} mm, got ${got(input)} (${read.value} mm)`;
        report("out-of-range", path, `${wanted}.`, "Change the number, or name its unit.", {
          least,
          got: read.value,
        });
        return Math.max(1, least);
      }
      return read.value;
    },
    section(name, path) {
      if (known.has(name)) return known.get(name);
      const near = nearestName(name, [...known.keys()]);
      const names = [...known.keys()].join(", ") || "none";
      const hint = near === undefined ? "Add it to `sections`." : `Did you mean \`${near}\`?`;
      report("unknown-section", path, `expected the name of a section (${names}), got ${got(name)}.`, hint);
      return undefined;
    },
  };
}

const SHAPE_WORD_AT_END = /( (?:bar|tube|flat|round|square|rod|angle|channel))?$/i;

const sameSizes = (a: Section, b: Section): boolean => JSON.stringify(a.shape) === JSON.stringify(b.shape);

/**
 * A section called what the document calls it, with the unit behind the sizes where the words leave it out. Standard
 * names stay; sizes that were written before, in other words, keep the first words: equal steel is one section.
 */
function asWritten(
  section: Section,
  words: string,
  unit: "in" | "mm",
  before: readonly (Section | undefined)[],
): Section {
  if (section.source !== "as given") return section;
  const first = before.find((own) => own?.source === "as given" && sameSizes(own, section));
  if (first !== undefined) return { ...section, name: first.name };
  const name = words.trim().replace(/\s+/g, " ");
  // Words that mean the same sizes in a document of the other unit have a unit of their own.
  const other = parseSection(words, unit === "in" ? "mm" : "in");
  const named = other.ok && sameSizes(other.value, section);
  return { ...section, name: named ? name : name.replace(SHAPE_WORD_AT_END, ` ${unit}$1`) };
}
