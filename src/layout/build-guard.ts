/**
 * From a design document to cut pieces in one call: read, lay out, solve.
 *
 * @packageDocumentation
 */
import type { Contact, Piece } from "../joints/piece.js";
import { solveJoints } from "../joints/solve.js";
import type { JointSolution } from "../joints/solve-types.js";
import type { Diagnostic } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import { type AsSet, NOTHING_SET } from "./as-set/as-set.js";
import { holdMade } from "./as-set/hold-made.js";
import { madeFit } from "./as-set/made-fit.js";
import type { MadeMisfit } from "./as-set/made-misfit.js";
import { type PieceState, pieceStates } from "./as-set/piece-state.js";
import type { LayoutAssembly } from "./assemblies.js";
import type { Design } from "./document/design.js";
import { designInShop } from "./document/design-in-shop.js";
import { parseDesign } from "./document/parse-design.js";
import type { Shop } from "./document/shop.js";
import { type Layout, layOut } from "./lay-out.js";
import type { LayoutReport } from "./report-types.js";

/** A guard as far as it could be built; `design` and `report` are absent when the document could not be read. */
export interface BuiltGuard {
  readonly design?: Design;
  readonly members: readonly Member[];
  readonly pieces: readonly Piece[];
  readonly contacts: readonly Contact[];
  /** What is welded in the shop and what is fitted on site. */
  readonly assemblies: readonly LayoutAssembly[];
  readonly report?: LayoutReport;
  /** How far each piece has got, in their order. */
  readonly states: readonly PieceState[];
  /** What is made already and does not fit any more. */
  readonly misfits: readonly MadeMisfit[];
  /** Of reading, laying out and solving, in that order. */
  readonly diagnostics: readonly Diagnostic[];
}

const NOTHING_BUILT = { members: [], pieces: [], contacts: [], assemblies: [], states: [], misfits: [] };

/** A layout solved around what is made already. */
export interface SolvedAsSet extends JointSolution, Pick<BuiltGuard, "states" | "misfits"> {}

/**
 * Solves a layout: what is made stays, what is not adapts, and how what is made fits is measured.
 *
 * @param layout - from `layOut`
 * @param asSet - what stands and what is made already
 * @returns the solution, the state of every piece, and what does not fit. Diagnostics besides the solver's:
 *   `made-without-member`, `made-blocked`, `made-misfit`
 * @example
 * solveAsSet(layOut(design), { ...NOTHING_SET, made }).misfits.length;
 */
export function solveAsSet(
  { members, joints, rules }: Pick<Layout, "members" | "joints" | "rules">,
  asSet: Pick<AsSet, "posts" | "made">,
): SolvedAsSet {
  const { fixed, held, made, diagnostics } = holdMade(members, asSet);
  const anew = (): JointSolution => solveJoints({ members, joints, rules });
  const solution = made.size === 0 ? anew() : solveJoints({ members, joints, rules, fixed, held });
  const fit = madeFit({ solution, joints, made, fitGap: rules.gap ?? 0, anew });
  return {
    ...solution,
    states: pieceStates(solution.pieces, { ...asSet, made: [...made.values()] }),
    misfits: fit.misfits,
    diagnostics: [...diagnostics, ...solution.diagnostics, ...fit.diagnostics],
  };
}

/**
 * Builds a guard from a design document.
 *
 * @param document - parsed JSON of any shape; a `DesignInput` when it is well formed
 * @param shop - from `parseShop`: its fit gap where the document has no `gap`, its slip fit and finish
 * @param asSet - from `parseAsSet`: what stands and what is made already overrides the document; default nothing
 * @returns pieces and contacts, with every finding on the way. Never throws on JSON.
 * @example
 * ```ts
 * const guard = buildGuard(JSON.parse(text));
 * for (const piece of guard.pieces) solidOf(piece);
 * ```
 */
export function buildGuard(document: unknown, shop?: Shop, asSet?: AsSet): BuiltGuard {
  const read = parseDesign(shop === undefined ? document : designInShop(document, shop));
  if (!read.ok) return { ...NOTHING_BUILT, diagnostics: read.diagnostics };
  const layout = layOut(read.value, shop, asSet);
  const solved = solveAsSet(layout, asSet ?? NOTHING_SET);
  return {
    design: read.value,
    members: layout.members,
    pieces: solved.pieces,
    contacts: solved.contacts,
    assemblies: layout.assemblies,
    report: layout.report,
    states: solved.states,
    misfits: solved.misfits,
    diagnostics: [...read.diagnostics, ...layout.diagnostics, ...solved.diagnostics],
  };
}
