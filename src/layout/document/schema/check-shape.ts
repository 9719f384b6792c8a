/**
 * Has a document the shape it is to have? Before any of its words are read.
 *
 * @packageDocumentation
 */
import type * as z from "zod";
import { diagnostic, type Result } from "../../../kernel/diagnostic.js";
import type { DesignInput } from "../design-input.js";
import { designSchema } from "./design-schema.js";
import { DESIGN, type DocumentWords, issueDiagnostics } from "./issue-diagnostic.js";

/** Findings past this many are counted, not listed. */
const MOST_LISTED = 50;

/**
 * A document of any kind against its schema.
 *
 * @param of - what messages call it
 * @param hint - of the note that not every finding is listed
 * @returns the document, typed, or what keeps it from being one: at most 50 findings and the note `more-findings`
 */
export function checkAgainst<T>(
  schema: z.ZodType<T>,
  json: unknown,
  of: DocumentWords,
  hint = "Correct these and read it again.",
): Result<T> {
  const checked = schema.safeParse(json);
  if (checked.success) return { ok: true, value: checked.data, diagnostics: [] };
  const { issues } = checked.error;
  const found = issues.slice(0, MOST_LISTED).flatMap((issue) => issueDiagnostics(issue, json, of));
  if (issues.length <= MOST_LISTED && found.length <= MOST_LISTED) return { ok: false, diagnostics: found };
  const more = diagnostic({
    code: "more-findings",
    severity: "note",
    message: `${of.name} has more than ${MOST_LISTED} findings; the first ${MOST_LISTED} are listed.`,
    hint,
  });
  return { ok: false, diagnostics: [...found.slice(0, MOST_LISTED), more] };
}

/** A design as a person writes it, or what keeps it from being one. */
export function checkShape(json: unknown): Result<DesignInput> {
  return checkAgainst(designSchema, json, DESIGN);
}
