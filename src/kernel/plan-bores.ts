/**
 * The bores of a bar as walls to be cut, each checked against the section, the ends and the other bores.
 *
 * A plan has no curves in it and costs little: the solver makes one for its diagnostics, the solid another to cut from.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { type BoreWall, boreWalls, type Walled } from "./bore.js";
import { meetsBore, meetsEnd, type PlacedWall, placeWall } from "./bore-clearance.js";
import type { Diagnostic } from "./diagnostic.js";
import type { CompiledEnd } from "./end-compile.js";
import { endRange } from "./end-range.js";
import type { Region } from "./region.js";
import { reachOf } from "./region-extent.js";

/** Walls of all bores that can be cut, and why the others cannot. */
export interface BorePlan {
  readonly walls: readonly BoreWall[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Plans the bores of a bar between two compiled ends. */
export function planBores(
  section: Region,
  bores: readonly Bore[],
  low: CompiledEnd,
  high: CompiledEnd,
): BorePlan {
  if (bores.length === 0) return { walls: [], diagnostics: [] };
  const placed: PlacedWall[] = [];
  const walled: Walled[] = [];
  const diagnostics: Diagnostic[] = [];
  const radius = reachOf(section.outer);
  const [lowBound, highBound] = [endRange(low, radius).least, endRange(high, radius).least];
  for (const bore of bores) {
    const made = boreWalls(section, bore, walled);
    if ("diagnostic" in made) {
      diagnostics.push(made.diagnostic);
      continue;
    }
    const own = made.walls.map((wall) => {
      const like = placed.find((p) => p.wall.entry === wall.entry);
      return placeWall(section, wall, like);
    });
    const fault =
      firstOf(own, (w) => meetsEnd(section, w, low, lowBound) ?? meetsEnd(section, w, high, highBound)) ??
      firstOf(own, (w) => firstOf(placed, (v) => meetsBore(w, v)));
    if (fault) diagnostics.push(fault);
    else {
      placed.push(...own);
      walled.push({ bore, walls: made.walls });
    }
  }
  return { walls: placed.map((p) => p.wall), diagnostics };
}

function firstOf<T>(list: readonly T[], f: (x: T) => Diagnostic | null): Diagnostic | null {
  for (const x of list) {
    const found = f(x);
    if (found) return found;
  }
  return null;
}
