/**
 * From a design file to pieces with solids and masses, or to the findings that keep them from being made.
 *
 * @packageDocumentation
 */
import { massOf, type PieceMass } from "../joints/mass-of.js";
import type { Piece } from "../joints/piece.js";
import { solidOf } from "../joints/solid-of.js";
import { type Diagnostic, hasErrors } from "../kernel/diagnostic.js";
import type { Solid } from "../kernel/solid.js";
import { buildGuard, type Design, type LayoutReport } from "../layout/index.js";
import type { CliIo } from "./io.js";
import { progress } from "./progress.js";
import { readDesign } from "./read-design.js";

/** A guard that can be made. */
export interface Guard {
  readonly design: Design;
  readonly report: LayoutReport;
  readonly pieces: readonly Piece[];
  readonly solids: ReadonlyMap<string, Solid>;
  readonly masses: ReadonlyMap<string, PieceMass>;
  /** Messages of the warnings, for the papers. */
  readonly warnings: readonly string[];
}

/** What came out of a design; no guard when there are errors. */
export interface LoadedGuard {
  readonly guard?: Guard;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Reads, lays out, solves, and makes every solid.
 *
 * @throws UsageError when the file cannot be read
 */
export async function loadGuard(name: string, io: CliIo, quiet: boolean): Promise<LoadedGuard> {
  const built = buildGuard(await readDesign(name, io));
  const diagnostics = [...built.diagnostics];
  const solids = new Map<string, Solid>();
  const masses = new Map<string, PieceMass>();
  const bar = progress(io, quiet);
  const sound = built.pieces.filter((piece) => piece.status === "ok");
  sound.forEach((piece, i) => {
    bar.step(i + 1, sound.length, `solid ${piece.mark}`);
    const solid = solidOf(piece);
    diagnostics.push(...solid.diagnostics);
    if (!solid.ok) return;
    const mass = massOf(piece, solid.value);
    diagnostics.push(...mass.diagnostics);
    solids.set(piece.id, solid.value);
    if (mass.ok) masses.set(piece.id, mass.value);
  });
  bar.end();
  if (hasErrors(diagnostics) || !built.design || !built.report) return { diagnostics };
  const warnings = diagnostics.filter((d) => d.severity === "warning").map((d) => d.message);
  return {
    guard: { design: built.design, report: built.report, pieces: built.pieces, solids, masses, warnings },
    diagnostics,
  };
}
