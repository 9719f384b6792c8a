/**
 * Has a document the shape of a design? Before any of its words are read.
 *
 * @packageDocumentation
 */
import { diagnostic, type Result } from "../../../kernel/diagnostic.js";
import type { DesignInput } from "../design-input.js";
import { designSchema } from "./design-schema.js";
import { issueDiagnostics } from "./issue-diagnostic.js";

/** Findings past this many are counted, not listed. */
const MOST_LISTED = 50;

/** The document as a person writes it, or what keeps it from being one. */
export function checkShape(json: unknown): Result<DesignInput> {
  const checked = designSchema.safeParse(json);
  if (checked.success) return { ok: true, value: checked.data, diagnostics: [] };
  const { issues } = checked.error;
  const found = issues.slice(0, MOST_LISTED).flatMap((issue) => issueDiagnostics(issue, json));
  if (issues.length <= MOST_LISTED && found.length <= MOST_LISTED) return { ok: false, diagnostics: found };
  const more = diagnostic({
    code: "more-findings",
    severity: "note",
    message: `The design has more than ${MOST_LISTED} findings; the first ${MOST_LISTED} are listed.`,
    hint: "Correct these and read it again.",
  });
  return { ok: false, diagnostics: [...found.slice(0, MOST_LISTED), more] };
}
