/**
 * From a design document to cut pieces in one call: read, lay out, solve.
 *
 * @packageDocumentation
 */
import type { Contact, Piece } from "../joints/piece.js";
import { solveJoints } from "../joints/solve.js";
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import type { AsSet } from "./as-set/as-set.js";
import type { LayoutAssembly } from "./assemblies.js";
import type { Design } from "./design.js";
import { designInShop } from "./design-in-shop.js";
import { layOut } from "./lay-out.js";
import { parseDesign } from "./parse-design.js";
import type { LayoutReport } from "./report-types.js";
import type { Shop } from "./shop.js";

/** A guard as far as it could be built; `design` and `report` are absent when the document could not be read. */
export interface BuiltGuard {
  readonly design?: Design;
  readonly members: readonly Member[];
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  /** What is welded in the shop and what is fitted on site. */
  readonly assemblies: readonly LayoutAssembly[];
  readonly report?: LayoutReport;
  /** Of reading, laying out and solving, in that order. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Builds a guard from a design document.
 *
 * @param document - parsed JSON of any shape; a `DesignInput` when it is well formed
 * @param shop - from `parseShop`: its fit gap where the document has no `gap`, its slip fit and finish
 * @param asSet - from `parseAsSet`: measured posts and legs override the document's
 * @returns pieces and contacts, with every finding on the way. Never throws on JSON.
 * @example
 * ```ts
 * const guard = buildGuard(JSON.parse(text));
 * for (const piece of guard.pieces) solidOf(piece);
 * ```
 */
export function buildGuard(document: unknown, shop?: Shop, asSet?: AsSet): BuiltGuard {
  const read = parseDesign(shop === undefined ? document : designInShop(document, shop));
  if (!read.ok)
    return { members: [], pieces: [], contacts: [], assemblies: [], diagnostics: read.diagnostics };
  const layout = layOut(read.value, shop, asSet);
  const solved = solveJoints({ members: layout.members, joints: layout.joints, rules: layout.rules });
  return {
    design: read.value,
    members: layout.members,
    pieces: solved.pieces,
    contacts: solved.contacts,
    assemblies: layout.assemblies,
    report: layout.report,
    diagnostics: [...read.diagnostics, ...layout.diagnostics, ...solved.diagnostics],
  };
}
