/**
 * Closes one end of a bar: vertices, edges and faces of its end, added to a shell.
 *
 * @packageDocumentation
 */
import { type CapUse, capFaces } from "./cap.js";
import { evaluate } from "./curve/curve.js";
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import { type BoundaryInterval, boundaryOf } from "./end-boundary.js";
import type { CompiledEnd } from "./end-compile.js";
import { loopsOf, pointOn, type Region, type Segment } from "./region.js";
import { type OutlineVertex, type Ridge, ridgesOf } from "./ridge.js";
import type { Sheet } from "./sheet.js";
import { addEdge, addVertex, type Shell } from "./shell.js";
import { sideEdge, sideHeight } from "./side-edge.js";
import type { EdgeUse } from "./solid.js";
import { distanceTo } from "./surface.js";
import { ON_SURFACE_MM, ROUNDING_MM, STATION_MM, STEP_MM } from "./tolerance.js";
import { distance, type Vec3 } from "./vec.js";

/** What the sides of the bar need to know of a closed end. */
export interface ClosedEnd {
  /** Vertex at the start of each segment of each loop. */
  readonly corners: readonly (readonly number[])[];
  /** Edges along each segment of each loop, in walking order, all forward. */
  readonly chains: readonly (readonly (readonly EdgeUse[])[])[];
}

/** A closed end, or why it cannot be closed. */
export type EndResult = { readonly closed: ClosedEnd } | { readonly diagnostic: Diagnostic };

/** Adds one end to the shell. `index` is 0 for the low end, 1 for the high one. */
export function closeEnd(shell: Shell, end: CompiledEnd, section: Region, index: 0 | 1): EndResult {
  const intervals = boundaryOf(end, section);
  const open = intervals.find((i) => i.sheet < 0);
  if (open) return { diagnostic: openEnd(section, open, index) };
  const loops = loopsOf(section);
  const starts: number[] = [];
  for (const [k, i] of intervals.entries()) {
    const segment = (loops[i.loop] as readonly Segment[])[i.segment] as Segment;
    const [u, v] = pointOn(segment, i.t0);
    const before = previous(intervals, k);
    const s = sideHeight(segment, i.t0, end.sheets[i.sheet] as Sheet);
    const comesFrom = (loops[before.loop] as readonly Segment[])[before.segment] as Segment;
    // One sheet does not step against itself; beside a silhouette an arc knows its height better than a line.
    if (before.sheet === i.sheet) {
      const exact = segment.kind === "line" && comesFrom.kind === "arc";
      const at = exact ? sideHeight(comesFrom, before.t1, end.sheets[i.sheet] as Sheet) : s;
      starts.push(addVertex(shell, [u, v, at]));
      continue;
    }
    const sBefore = sideHeight(comesFrom, before.t1, end.sheets[before.sheet] as Sheet);
    const at = commonHeight(
      u,
      v,
      s,
      sBefore,
      end.sheets[i.sheet] as Sheet,
      end.sheets[before.sheet] as Sheet,
    );
    if (at === null) return { diagnostic: steppedEnd([u, v, s], Math.abs(s - sBefore), index) };
    starts.push(addVertex(shell, [u, v, at]));
  }
  const chains = loops.map((l) => l.map((): EdgeUse[] => []));
  const corners = loops.map((l) => l.map(() => -1));
  const uses: CapUse[] = [];
  for (const [k, i] of intervals.entries()) {
    const segment = (loops[i.loop] as readonly Segment[])[i.segment] as Segment;
    const [from, to] = [starts[k] as number, starts[following(intervals, k)] as number];
    const [p, q] = [shell.vertices[from] as Vec3, shell.vertices[to] as Vec3];
    const edge = addEdge(shell, sideEdge(segment, i.t0, i.t1, end.sheets[i.sheet] as Sheet, p, q), from, to);
    if (i.t0 === 0) (corners[i.loop] as number[])[i.segment] = from;
    ((chains[i.loop] as EdgeUse[][])[i.segment] as EdgeUse[]).push({ edge, forward: true });
    uses.push({ edge, forward: true, sheet: i.sheet });
  }
  const vertices = outlineOf(shell, intervals, starts);
  const ridges = end.sheets.length > 1 ? ridgesOf(end, section, intervals, vertices) : [];
  if (ridges.some((r) => strays(r, end))) return { diagnostic: unresolvedEnd(index) };
  addRidges(shell, ridges, uses);
  const faces = capFaces(shell, uses, ridges.length === 0 ? loops.length : 0);
  if (!faces) return { diagnostic: unresolvedEnd(index) };
  for (const face of faces) {
    const sheet = end.sheets[face.sheet] as Sheet;
    shell.faces.push({
      surface: sheet.surface,
      sense: sheet.sense,
      loops: index === 1 ? face.loops.map((l) => l.map(plainUse)) : face.loops.map(turnedOver),
      provenance: { from: "end", end: index, joint: sheet.source.joint, onto: sheet.source.onto },
    });
  }
  return { closed: { corners, chains } };
}

/**
 * The height at which two sheets meet over (u, v); null where the end steps. Beside a silhouette a skin runs upright and
 * its height over a rounded place says little: there it is the other's height, where that lies on the skin as well.
 */
function commonHeight(u: number, v: number, s: number, other: number, a: Sheet, b: Sheet): number | null {
  const step = Math.abs(s - other);
  if (step <= ROUNDING_MM) return s;
  const onA = Math.abs(distanceTo(a.surface, [u, v, other]));
  const onB = Math.abs(distanceTo(b.surface, [u, v, s]));
  if (step > STEP_MM && Math.min(onA, onB) > STATION_MM) return null;
  return onA < onB ? other : s;
}

function plainUse(use: EdgeUse): EdgeUse {
  return { edge: use.edge, forward: use.forward };
}

/** The same loop walked the other way. */
export function turnedOver(loop: readonly EdgeUse[]): EdgeUse[] {
  return [...loop].reverse().map((use) => ({ edge: use.edge, forward: !use.forward }));
}

function previous(all: readonly BoundaryInterval[], k: number): BoundaryInterval {
  const loop = (all[k] as BoundaryInterval).loop;
  const before = all[k - 1];
  if (before && before.loop === loop) return before;
  let last = k;
  while (all[last + 1]?.loop === loop) last++;
  return all[last] as BoundaryInterval;
}

function following(all: readonly BoundaryInterval[], k: number): number {
  const loop = (all[k] as BoundaryInterval).loop;
  if (all[k + 1]?.loop === loop) return k + 1;
  let first = k;
  while (all[first - 1]?.loop === loop) first--;
  return first;
}

/** Every vertex of the outline: one where the sheet stays the same may still lie on a ridge that only touches it. */
function outlineOf(
  shell: Shell,
  intervals: readonly BoundaryInterval[],
  starts: readonly number[],
): OutlineVertex[] {
  return intervals.map((i, k): OutlineVertex => {
    const index = starts[k] as number;
    const before = previous(intervals, k).sheet;
    return { index, point: shell.vertices[index] as Vec3, sheets: [before, i.sheet], touches: i.touches };
  });
}

/** Inner places of a ridge that are looked at. */
const LOOKS = 7;

/**
 * True when a ridge leaves one of its two surfaces: where a fibre only grazes a round header the curve they share ends
 * inside the stretch. A refusal then, never a wrong solid.
 */
function strays(ridge: Ridge, end: CompiledEnd): boolean {
  for (let k = 0; k <= LOOKS; k++) {
    const p = evaluate(ridge.curve, ridge.t0 + ((ridge.t1 - ridge.t0) * k) / LOOKS);
    for (const sheet of [ridge.left, ridge.right]) {
      const off = Math.abs(distanceTo((end.sheets[sheet] as Sheet).surface, p));
      if (!(off < 10 * ON_SURFACE_MM)) return true;
    }
  }
  return false;
}

function addRidges(shell: Shell, ridges: readonly Ridge[], uses: CapUse[]): void {
  const inner: number[] = [];
  const vertexAt = (known: number, p: Vec3): number => {
    if (known >= 0) return known;
    const same = inner.find((i) => distance(shell.vertices[i] as Vec3, p) < STATION_MM);
    if (same !== undefined) return same;
    const added = addVertex(shell, p);
    inner.push(added);
    return added;
  };
  for (const r of ridges) {
    const [from, to] = [vertexAt(r.fromVertex, r.from), vertexAt(r.toVertex, r.to)];
    const edge = addEdge(shell, { curve: r.curve, t0: r.t0, t1: r.t1 }, from, to);
    uses.push({ edge, forward: true, sheet: r.left }, { edge, forward: false, sheet: r.right });
  }
}

function openEnd(section: Region, at: BoundaryInterval, index: 0 | 1): Diagnostic {
  const [u, v] = pointOn((loopsOf(section)[at.loop] ?? [])[at.segment] as Segment, (at.t0 + at.t1) / 2);
  return diagnostic({
    code: "end-open",
    end: index,
    message: `Nothing closes end ${index} at (${u.toFixed(3)}, ${v.toFixed(3)}) mm of the section.`,
    hint: "Add a contact that reaches over the whole section, for example a plane.",
    values: { u, v },
  });
}

function steppedEnd(p: Vec3, step: number, index: 0 | 1): Diagnostic {
  return diagnostic({
    code: "end-steps",
    end: index,
    message: `The cut of end ${index} steps by ${step.toFixed(3)} mm at (${p[0].toFixed(3)}, ${p[1].toFixed(3)}) mm of the section.`,
    hint: 'Close the branch where the header ends with shoulders (`shoulder: "midline"`) or a plane through the header\'s widest line.',
    values: { u: p[0], v: p[1], step },
  });
}

function unresolvedEnd(index: 0 | 1): Diagnostic {
  return diagnostic({
    code: "end-unresolved",
    end: index,
    message: `The contacts of end ${index} meet in a way the kernel does not resolve into faces.`,
    hint: "Replace one of the contacts by a plane, and report the design: it is a gap in the kernel.",
  });
}
