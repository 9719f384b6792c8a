/**
 * What is carried in: the layout's assemblies, and the longest piece that is in none of them.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Shop } from "../layout/index.js";
import {
  type Assembly,
  type AssemblyParts,
  type AssemblyReport,
  assemblies,
  longestLoose,
} from "../shop/index.js";

/** Reports for the papers. */
export interface Carried {
  readonly assemblies: readonly AssemblyReport[];
  /** Only where the shop file knows something of the way in. */
  readonly loose?: AssemblyReport;
  readonly diagnostics: readonly Diagnostic[];
}

/** Weighs, measures and holds against the way in. */
export function carriedIn(list: readonly Assembly[], parts: AssemblyParts, shop: Shop | undefined): Carried {
  const access = shop?.access ?? {};
  const { reports, diagnostics } = assemblies(list, parts, access);
  const single = Object.keys(access).length > 0 ? longestLoose(parts.pieces, list) : undefined;
  const [loose] = single ? assemblies([single], parts, access).reports : [];
  return { assemblies: reports, ...(loose && { loose }), diagnostics };
}
