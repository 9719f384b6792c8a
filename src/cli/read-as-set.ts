/**
 * What stands already, from an as-set file, held against the design it was measured on.
 *
 * @packageDocumentation
 */
import type { Result } from "../kernel/diagnostic.js";
import { type AsSet, NOTHING_SET, parseAsSet, parseDesign } from "../layout/index.js";
import { piecesFrom } from "./load-solved.js";

/**
 * Reads the document; beside a design that cannot be read nothing is said of it: the design is to be mended first.
 *
 * @param path - of the document, absolute: the builds it names are found from its folder
 */
export function readAsSet(document: unknown, design: unknown, path: string): Result<AsSet> {
  const read = parseDesign(design);
  if (!read.ok) return { ok: true, value: NOTHING_SET, diagnostics: [] };
  return parseAsSet(document, read.value, piecesFrom(path));
}
