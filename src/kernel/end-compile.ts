/**
 * From an end expression to sheets and a tree that says which sheet closes the bar where.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import type { EndExpression, HitContact } from "./end.js";
import { firstHitProfile, type Profile, pieceHeight, projectLoop } from "./profile.js";
import type { Region } from "./region.js";
import { planeSheet, profileSheet, type Sheet, sheetHeight } from "./sheet.js";
import { offsetLoop } from "./skin-offset.js";
import { branchStations, snapProfile } from "./station.js";
import { PARALLEL_SINE, STATION_MM } from "./tolerance.js";
import { addScaled, cross, dot, length, scale, type Vec3 } from "./vec.js";

/** A node of the compiled tree. */
export type EndNode =
  | { readonly kind: "leaf"; readonly sheet: number }
  | {
      readonly kind: "hit";
      readonly h0: number;
      readonly hu: number;
      readonly hv: number;
      readonly breaks: readonly number[];
      /** Sheet of each interval between breaks. */
      readonly sheets: readonly number[];
    }
  | { readonly kind: "min" | "max"; readonly of: readonly EndNode[] };

/** An end ready to be evaluated. */
export interface CompiledEnd {
  readonly dir: 1 | -1;
  readonly sheets: readonly Sheet[];
  readonly root: EndNode;
  readonly hits: readonly Extract<EndNode, { kind: "hit" }>[];
}

/** Which sheet closes the bar at a place; `sheet` is −1 and `out` +∞ where nothing does. */
export interface EndValue {
  /** Outward coordinate, dir·s. */
  readonly out: number;
  readonly sheet: number;
}

const NOTHING: EndValue = { out: Number.POSITIVE_INFINITY, sheet: -1 };

/** Evaluates a compiled end at (u, v). */
export function endAt(end: CompiledEnd, u: number, v: number): EndValue {
  return nodeAt(end, end.root, u, v);
}

/** The outward coordinate alone, for those who ask thousands of times: one contact is read without making an object. */
export function outAt(end: CompiledEnd, u: number, v: number): number {
  const { root } = end;
  if (root.kind !== "leaf" && root.kind !== "hit") return nodeAt(end, root, u, v).out;
  const sheet = end.sheets[sheetAt(end, u, v)];
  return sheet ? end.dir * sheetHeight(sheet, u, v) : NOTHING.out;
}

/** The sheet alone, likewise; −1 where nothing closes the bar. */
export function sheetAt(end: CompiledEnd, u: number, v: number): number {
  const { root } = end;
  if (root.kind === "leaf") return root.sheet;
  return root.kind === "hit"
    ? sheetOfHit(root, root.h0 + root.hu * u + root.hv * v)
    : nodeAt(end, root, u, v).sheet;
}

function nodeAt(end: CompiledEnd, node: EndNode, u: number, v: number): EndValue {
  switch (node.kind) {
    case "leaf":
      return { out: end.dir * sheetHeight(end.sheets[node.sheet] as Sheet, u, v), sheet: node.sheet };
    case "hit": {
      const sheet = sheetOfHit(node, node.h0 + node.hu * u + node.hv * v);
      return sheet < 0 ? NOTHING : { out: end.dir * sheetHeight(end.sheets[sheet] as Sheet, u, v), sheet };
    }
    default: {
      let best = nodeAt(end, node.of[0] as EndNode, u, v);
      for (let i = 1; i < node.of.length; i++) {
        const value = nodeAt(end, node.of[i] as EndNode, u, v);
        if (node.kind === "min" ? value.out < best.out : value.out > best.out) best = value;
      }
      return best;
    }
  }
}

function sheetOfHit(node: Extract<EndNode, { kind: "hit" }>, h: number): number {
  const { breaks, sheets } = node;
  const last = breaks.length - 1;
  if (h < (breaks[0] as number) - STATION_MM || h > (breaks[last] as number) + STATION_MM) return -1;
  for (let i = 1; i < last; i++) if (h < (breaks[i] as number)) return sheets[i - 1] as number;
  return sheets[last - 1] as number;
}

/** How far a branch's stations reach past what a header covers, millimetres; 0 when they do not. */
export function overhangOf(stations: readonly number[], breaks: readonly number[]): number {
  const below = (breaks[0] as number) - (stations[0] as number);
  const above = (stations[stations.length - 1] as number) - (breaks[breaks.length - 1] as number);
  const worst = Math.max(below, above);
  return worst > STATION_MM ? worst : 0;
}

interface Building {
  readonly dir: 1 | -1;
  readonly section: Region;
  readonly sheets: Sheet[];
  readonly hits: Extract<EndNode, { kind: "hit" }>[];
  readonly diagnostics: Diagnostic[];
}

/**
 * Compiles an end expression for a section.
 *
 * @param dir - +1 for the high end, −1 for the low one
 * @returns the compiled end, or null with the reasons in `diagnostics`
 */
export function compileEnd(
  expression: EndExpression,
  dir: 1 | -1,
  section: Region,
): { readonly end: CompiledEnd | null; readonly diagnostics: readonly Diagnostic[] } {
  const b: Building = { dir, section, sheets: [], hits: [], diagnostics: [] };
  const root = build(b, expression, false);
  if (!root || b.diagnostics.some((d) => d.severity === "error"))
    return { end: null, diagnostics: b.diagnostics };
  return { end: { dir, sheets: b.sheets, root, hits: b.hits }, diagnostics: b.diagnostics };
}

function build(b: Building, e: EndExpression, shielded: boolean): EndNode | null {
  if (e.kind === "hit") return buildHit(b, e, shielded);
  if (e.kind === "plane") {
    const sheet = planeSheet(e.point, e.normal, b.dir, e.source);
    if (!sheet) {
      b.diagnostics.push(
        diagnostic({
          code: "cut-along-axis",
          message: `The flat cut of ${e.source.joint} runs along the bar's axis and never closes it.`,
          hint: "Give the cut a normal that is not square to the bar.",
          values: { joint: e.source.joint },
        }),
      );
      return null;
    }
    return { kind: "leaf", sheet: b.sheets.push(sheet) - 1 };
  }
  if (e.of.length === 0) {
    b.diagnostics.push(
      diagnostic({
        code: "empty-end",
        message: `A ${e.kind} of nothing closes no bar.`,
        hint: "Name at least one contact.",
      }),
    );
    return null;
  }
  // Beside a plane, a header that is missed on part of the section still leaves the bar closed.
  const planeBeside = e.kind === "min" && e.of.some((x) => x.kind === "plane");
  const of = e.of.map((x) => build(b, x, shielded || planeBeside || (e.kind === "min" && e.of.length > 1)));
  if (of.some((x) => x === null)) return null;
  return { kind: e.kind, of: of as EndNode[] };
}

function buildHit(b: Building, e: HitContact, shielded: boolean): EndNode | null {
  const { skin, source } = e;
  const d: Vec3 = [0, 0, b.dir];
  const a = skin.frame.z;
  const ad = cross(a, d);
  const sine = length(ad);
  if (sine < PARALLEL_SINE) {
    b.diagnostics.push(
      diagnostic({
        code: "header-parallel",
        message: `The branch runs along its header ${source.onto} and never meets its side.`,
        hint: "Cut the branch square or to a plane, or turn one of the two members.",
        values: { onto: source.onto },
      }),
    );
    return null;
  }
  const n = scale(ad, 1 / sine);
  const m = scale(addScaled(d, a, -dot(a, d)), 1 / sine);
  const { frame } = skin;
  const loop = offsetLoop(skin.loop, skin.gap ?? 0);
  if (!loop.ok) {
    b.diagnostics.push(...loop.diagnostics);
    return null;
  }
  const seen = projectLoop(
    loop.value,
    [dot(frame.x, n), dot(frame.y, n)],
    [dot(frame.x, m), dot(frame.y, m)],
  );
  const raw = firstHitProfile(seen);
  if (!raw.ok) {
    b.diagnostics.push(...raw.diagnostics);
    return null;
  }
  const h0 = -dot(frame.origin, n);
  const stations = branchStations(b.section, n[0], n[1], h0);
  let profile = snapProfile(raw.value, stations);
  const over = overhangOf(stations, profile.breaks);
  if (over > 0 && skin.shoulder === "midline") profile = withShoulders(profile, stations);
  else if (over > 0 && !shielded) {
    b.diagnostics.push(
      diagnostic({
        code: "branch-hangs-off",
        message: `The branch hangs off its header ${source.onto} by ${over.toFixed(3)} mm.`,
        hint: 'Use a narrower branch or a wider header, move the branch over it, or close the overhang with shoulders (`shoulder: "midline"`) or a plane.',
        values: { onto: source.onto, missBy: over },
      }),
    );
    return null;
  }
  const stance = { point: frame.origin, axis: a, sine, n, m };
  const sheets = profile.pieces.map((p) => b.sheets.push(profileSheet(p, stance, b.dir, source)) - 1);
  const node = { kind: "hit" as const, h0, hu: n[0], hv: n[1], breaks: profile.breaks, sheets };
  b.hits.push(node);
  return node;
}

/** The profile carried on past its silhouettes by level pieces, as far as the branch reaches. */
function withShoulders(profile: Profile, stations: readonly number[]): Profile {
  const breaks = [...profile.breaks];
  const pieces = [...profile.pieces];
  const [lo, hi] = [(stations[0] as number) - 1, (stations[stations.length - 1] as number) + 1];
  const first = breaks[0] as number;
  const last = breaks[breaks.length - 1] as number;
  const firstPiece = profile.pieces[0] as Profile["pieces"][number];
  const lastPiece = profile.pieces[profile.pieces.length - 1] as Profile["pieces"][number];
  if (hi > last) {
    pieces.push({ kind: "flat", m0: pieceHeight(lastPiece, last), slope: 0, segment: -1 });
    breaks.push(hi);
  }
  if (lo < first) {
    pieces.unshift({ kind: "flat", m0: pieceHeight(firstPiece, first), slope: 0, segment: -1 });
    breaks.unshift(lo);
  }
  return { breaks, pieces };
}
