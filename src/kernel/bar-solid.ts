/**
 * From a bar's definition to its exact solid.
 *
 * Ends are closed each on its own (see `closeEnd`); the sides follow, one face per side of the section, between the two
 * chains of end edges. Then the solid is checked by the rules of topology before anybody sees it.
 *
 * @packageDocumentation
 */
import type { Bar } from "./bar.js";
import { splitsClearOf } from "./bore-splits.js";
import { type ClosedEnd, closeEnd, turnedOver } from "./close-end.js";
import { cutBores, type SideCuts } from "./cut-bores.js";
import { type Diagnostic, diagnostic, type Result } from "./diagnostic.js";
import { compileEnd } from "./end-compile.js";
import { planBores } from "./plan-bores.js";
import { loopsOf, type Region } from "./region.js";
import { topologyProblems } from "./rules/topology.js";
import { newShell, type Shell, solidFrom } from "./shell.js";
import { shortFibre } from "./short-fibre.js";
import { sideSense, sideSurface } from "./side-edge.js";
import { lineEdges, sideFaces } from "./side-faces.js";
import type { EdgeUse, Solid } from "./solid.js";

/** The exact solid of a bar in its own frame, or the reasons why there is none. */
export function solidOfBar(bar: Bar): Result<Solid> {
  const name = (d: Diagnostic): Diagnostic => ({
    ...d,
    members: d.members.length > 0 ? d.members : [bar.id],
  });
  const section = splitsClearOf(bar.section, bar.bores);
  const low = compileEnd(bar.ends[0], -1, section);
  const high = compileEnd(bar.ends[1], 1, section);
  const found = [
    ...low.diagnostics.map((d): Diagnostic => ({ ...d, end: 0 })),
    ...high.diagnostics.map((d): Diagnostic => ({ ...d, end: 1 })),
  ].map(name);
  if (!low.end || !high.end) return { ok: false, diagnostics: found };
  const bores = planBores(section, bar.bores, low.end, high.end);
  if (bores.diagnostics.length > 0)
    return { ok: false, diagnostics: [...found, ...bores.diagnostics.map(name)] };
  const shell = newShell();
  const e0 = closeEnd(shell, low.end, section, 0);
  if ("diagnostic" in e0) return { ok: false, diagnostics: [...found, name(e0.diagnostic)] };
  const e1 = closeEnd(shell, high.end, section, 1);
  if ("diagnostic" in e1) return { ok: false, diagnostics: [...found, name(e1.diagnostic)] };
  const short = shortFibre(low.end, high.end, section);
  if (short !== null) return { ok: false, diagnostics: [...found, name(tooShort(bar, short))] };
  addSides(shell, section, e0.closed, e1.closed, cutBores(shell, section, bores.walls));
  const solid = solidFrom(shell);
  const problems = topologyProblems(solid).map(name);
  return problems.length > 0
    ? { ok: false, diagnostics: [...found, ...problems] }
    : { ok: true, value: solid, diagnostics: found };
}

function addSides(
  shell: Shell,
  section: Region,
  low: ClosedEnd,
  high: ClosedEnd,
  cuts: readonly (readonly SideCuts[])[],
): void {
  for (const [l, loop] of loopsOf(section).entries()) {
    const own = cuts[l] as readonly SideCuts[];
    const lines = own.map(({ onLine }, k) => {
      const from = (low.corners[l] as number[])[k] as number;
      const to = (high.corners[l] as number[])[k] as number;
      return lineEdges(shell, from, to, onLine);
    });
    for (const [k, segment] of loop.entries()) {
      const bottom = (low.chains[l] as EdgeUse[][])[k] as EdgeUse[];
      const top = turnedOver((high.chains[l] as EdgeUse[][])[k] as EdgeUse[]);
      const right = lines[(k + 1) % loop.length] as EdgeUse[];
      const left = turnedOver(lines[k] as EdgeUse[]);
      for (const loops of sideFaces(shell, [...bottom, ...right, ...top, ...left], own[k] as SideCuts)) {
        shell.faces.push({
          surface: sideSurface(segment),
          sense: sideSense(segment),
          loops,
          provenance: { from: "side", loop: l, segment: k, label: segment.label ?? "" },
        });
      }
    }
  }
}

function tooShort(bar: Bar, short: number): Diagnostic {
  return diagnostic({
    code: "piece-too-short",
    message: `The two ends of ${bar.id} meet or cross: its shortest fibre would be ${short.toFixed(3)} mm.`,
    hint: "Move the neighbouring members apart, or leave this piece out.",
    values: { shortest: short },
  });
}
