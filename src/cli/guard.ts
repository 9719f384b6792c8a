/**
 * From a design file to pieces with solids and masses, or to the findings that keep them from being made.
 *
 * @packageDocumentation
 */
import { resolve } from "node:path";
import { cutOrScribe, drillRoom, footDrillPlaces, sawLimits } from "../checks/index.js";
import { massOf, type PieceMass } from "../joints/mass-of.js";
import type { Piece } from "../joints/piece.js";
import { solidOf } from "../joints/solid-of.js";
import { type Diagnostic, hasErrors } from "../kernel/diagnostic.js";
import type { Solid } from "../kernel/solid.js";
import {
  type BuiltGuard,
  buildGuard,
  type Design,
  type EndDecision,
  type LayoutReport,
  parseShop,
  type Shop,
} from "../layout/index.js";
import { type Carried, carriedIn } from "./carried.js";
import { type CliIo, UsageError } from "./io.js";
import { progress } from "./progress.js";
import { readAsSet } from "./read-as-set.js";
import { readDesign } from "./read-design.js";

/** A guard that can be made. */
export interface Guard {
  readonly design: Design;
  readonly report: LayoutReport;
  /** The shop file, when one was given. */
  readonly shop?: Shop;
  readonly pieces: readonly Piece[];
  /** How far each piece has got, and what is made and does not fit any more. */
  readonly states: BuiltGuard["states"];
  readonly misfits: BuiltGuard["misfits"];
  readonly solids: ReadonlyMap<string, Solid>;
  readonly masses: ReadonlyMap<string, PieceMass>;
  /** Assemblies, and the longest loose piece. */
  readonly carried: Carried;
  /** Cut to length, or leave long and scribe, for both ends of every piece. */
  readonly fits: readonly EndDecision[];
  /** Messages of the warnings, for the papers. */
  readonly warnings: readonly string[];
}

/** What came out of a design; no guard when there are errors. */
export interface LoadedGuard {
  readonly guard?: Guard;
  readonly diagnostics: readonly Diagnostic[];
}

/** What a guard is loaded with. */
export interface LoadOptions {
  /** Path of the shop file, if any. */
  readonly shop: string | undefined;
  /** Path of the as-set file, if any. */
  readonly asSet?: string | undefined;
  readonly quiet: boolean;
}

/**
 * Reads, lays out, solves, and makes every solid.
 *
 * @throws UsageError when a file cannot be read
 */
export async function loadGuard(
  name: string,
  io: CliIo,
  { shop: file, asSet: asSetFile, quiet }: LoadOptions,
): Promise<LoadedGuard> {
  if ([name, file, asSetFile].filter((own) => own === "-").length > 1) {
    throw new UsageError(
      "Standard input can be only one of DESIGN, --shop and --as-set.",
      "Give the others as files.",
    );
  }
  const document = await readDesign(name, io);
  const read = file === undefined ? undefined : parseShop(await readDesign(file, io, "shop"));
  if (read && !read.ok) return { diagnostics: read.diagnostics };
  const shop = read?.value;
  const asSet =
    asSetFile === undefined
      ? undefined
      : readAsSet(await readDesign(asSetFile, io, "as-set"), document, resolve(io.cwd, asSetFile));
  if (asSet && !asSet.ok) return { diagnostics: [...(read?.diagnostics ?? []), ...asSet.diagnostics] };
  const built = buildGuard(document, shop, asSet?.value);
  const diagnostics = [...(read?.diagnostics ?? []), ...(asSet?.diagnostics ?? []), ...built.diagnostics];
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
  if (shop) diagnostics.push(...shopFindings(built, shop));
  const welded = built.assemblies.filter((own) => own.kind === "welded");
  const carried = carriedIn(welded, { pieces: built.pieces, solids, masses }, shop);
  diagnostics.push(...carried.diagnostics);
  if (hasErrors(diagnostics) || !built.design || !built.report) return { diagnostics };
  const { design, report } = built;
  const fits = cutOrScribe({ design, shop, asSet: asSet?.value }, { ...built, report }, { gap: design.gap });
  // A guard that cannot be judged so can still be made.
  diagnostics.push(...fits.diagnostics.map((own) => ({ ...own, severity: "warning" }) as const));
  const warnings = diagnostics.filter((d) => d.severity === "warning").map((d) => d.message);
  return {
    guard: {
      design,
      report,
      ...(shop && { shop }),
      pieces: built.pieces,
      states: built.states,
      misfits: built.misfits,
      solids,
      masses,
      carried,
      fits: fits.ok ? fits.value : [],
      warnings,
    },
    diagnostics,
  };
}

/** What the shop's saw and drill do not reach. */
function shopFindings({ design, report, pieces }: BuiltGuard, shop: Shop): readonly Diagnostic[] {
  const places = design && report ? footDrillPlaces(design, report.posts, pieces) : [];
  return [...sawLimits(pieces, shop), ...drillRoom(places, shop)];
}
