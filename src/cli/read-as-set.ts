/**
 * What stands already, from an as-set file, held against the design it was measured on.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { diagnostic, type Result } from "../kernel/diagnostic.js";
import { type AsSet, NOTHING_SET, parseAsSet, parseDesign } from "../layout/index.js";

/** The pieces of an earlier build. */
function loadSolved(from: string): Result<readonly Piece[]> {
  const found = diagnostic({
    code: "made-without-pieces",
    path: "made",
    message: `made: expected no made pieces, got some of ${from}; made pieces cannot be read yet.`,
    hint: "Leave `made` out.",
  });
  return { ok: false, diagnostics: [found] };
}

/** Reads the document; beside a design that cannot be read nothing is said of it: the design is to be mended first. */
export function readAsSet(document: unknown, design: unknown): Result<AsSet> {
  const read = parseDesign(design);
  if (!read.ok) return { ok: true, value: NOTHING_SET, diagnostics: [] };
  return parseAsSet(document, read.value, loadSolved);
}
