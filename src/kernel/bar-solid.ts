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
import { lineThrough } from "./curve/intersect.js";
import { cutBores, planBores } from "./cut-bores.js";
import { type Diagnostic, diagnostic, type Result } from "./diagnostic.js";
import { insidePoint } from "./end-boundary.js";
import { type CompiledEnd, compileEnd, outAt } from "./end-compile.js";
import { nearestOf } from "./end-nearest.js";
import { loopsOf, type Region, type Segment } from "./region.js";
import { reachOf } from "./region-extent.js";
import { topologyProblems } from "./rules/topology.js";
import { addEdge, newShell, type Shell, solidFrom } from "./shell.js";
import { sideSense, sideSurface } from "./side-edge.js";
import type { EdgeUse, Solid } from "./solid.js";
import { SHORTEST_FIBRE_MM } from "./tolerance.js";
import { distance, type Vec3 } from "./vec.js";

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
  const short = leastFibre(low.end, high.end, section);
  if (short < SHORTEST_FIBRE_MM) return { ok: false, diagnostics: [...found, name(tooShort(bar, short))] };
  addSides(shell, section, e0.closed, e1.closed, cutBores(shell, bores.walls));
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
  holes: ReadonlyMap<string, EdgeUse[][]>,
): void {
  for (const [l, loop] of loopsOf(section).entries()) {
    const lines = loop.map((_, k) => {
      const [from, to] = [
        (low.corners[l] as number[])[k] as number,
        (high.corners[l] as number[])[k] as number,
      ];
      const [p, q] = [shell.vertices[from] as Vec3, shell.vertices[to] as Vec3];
      return addEdge(shell, { curve: lineThrough(p, q), t0: 0, t1: distance(p, q) }, from, to);
    });
    for (const [k, segment] of loop.entries()) {
      const bottom = (low.chains[l] as EdgeUse[][])[k] as EdgeUse[];
      const top = turnedOver((high.chains[l] as EdgeUse[][])[k] as EdgeUse[]);
      const right = { edge: lines[(k + 1) % loop.length] as number, forward: true };
      const left = { edge: lines[k] as number, forward: false };
      shell.faces.push({
        surface: sideSurface(segment),
        sense: sideSense(segment),
        loops: [[...bottom, right, ...top, left], ...(holes.get(`${l}:${k}`) ?? [])],
        provenance: { from: "side", loop: l, segment: k, label: segment.label ?? "" },
      });
    }
  }
}

/** A length no fibre is shorter than when that settles the matter, else the shortest fibre found. */
function leastFibre(low: CompiledEnd, high: CompiledEnd, section: Region): number {
  const reach = reachOf(section.outer);
  const bound = nearestOf(low, reach) + nearestOf(high, reach);
  return bound >= SHORTEST_FIBRE_MM ? bound : shortestFibre(low, high, section);
}

const FIBRES = 16;

/** The shortest fibre found on the outline and across the section, millimetres; negative when the ends cross. */
function shortestFibre(low: CompiledEnd, high: CompiledEnd, section: Region): number {
  let least = Number.POSITIVE_INFINITY;
  const inside: (readonly [number, number])[] = [];
  for (const loop of loopsOf(section)) {
    for (const segment of loop as readonly Segment[]) {
      for (let k = 0; k < FIBRES; k++) inside.push(insidePoint(segment, k / FIBRES));
    }
  }
  const solidBar = section.holes.length === 0;
  const [cu, cv] = centreOf(inside);
  for (const [u, v] of inside) {
    for (const f of solidBar ? [1, 2 / 3, 1 / 3, 0] : [1]) {
      const [x, y] = [cu + f * (u - cu), cv + f * (v - cv)];
      // Outward coordinates: dir·s, so the low end's is −s.
      least = Math.min(least, outAt(high, x, y) + outAt(low, x, y));
    }
  }
  return least;
}

function centreOf(points: readonly (readonly [number, number])[]): readonly [number, number] {
  let [u, v] = [0, 0];
  for (const p of points) {
    u += p[0] / points.length;
    v += p[1] / points.length;
  }
  return [u, v];
}

function tooShort(bar: Bar, short: number): Diagnostic {
  return diagnostic({
    code: "piece-too-short",
    message: `The two ends of ${bar.id} meet or cross: its shortest fibre would be ${short.toFixed(3)} mm.`,
    hint: "Move the neighbouring members apart, or leave this piece out.",
    values: { shortest: short },
  });
}
