/**
 * From an end expression to sheets and a tree that says which sheet closes the bar where.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "./diagnostic.js";
import type { EndExpression, HitContact, SelectEnd } from "./end.js";
import { firstHitProfile, type Profile, type ProfileJump, pieceHeight, projectLoop } from "./profile.js";
import type { Region } from "./region.js";
import { planeSheet, profileSheet, type Sheet, sheetHeight } from "./sheet.js";
import { offsetLoop } from "./skin-offset.js";
import { branchStations, snapProfile } from "./station.js";
import { INSIDE_MM, PARALLEL_SINE, STATION_MM } from "./tolerance.js";
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
  | { readonly kind: "min" | "max"; readonly of: readonly EndNode[] }
  | Split;

/** Two mitred headers: where their sheets take over from each other is the miter plane, not where they are equally far. */
export interface Split {
  readonly kind: "select";
  readonly point: Vec3;
  /** Unit, from the first header to the second. */
  readonly normal: Vec3;
  readonly of: readonly [EndNode, EndNode];
  /** Sheets of the first header are those in [from, middle), of the second those in [middle, to). */
  readonly from: number;
  readonly middle: number;
  readonly to: number;
}

/** An end ready to be evaluated. */
export interface CompiledEnd {
  readonly dir: 1 | -1;
  readonly sheets: readonly Sheet[];
  readonly root: EndNode;
  readonly hits: readonly Extract<EndNode, { kind: "hit" }>[];
  readonly splits: readonly Split[];
}

/** Which sheet closes the bar at a place; `sheet` is −1 and `out` +∞ where nothing does. */
export interface EndValue {
  /** Outward coordinate, dir·s. */
  readonly out: number;
  readonly sheet: number;
}

const NOTHING: EndValue = { out: Number.POSITIVE_INFINITY, sheet: -1 };

/** What is known of a place better than its coordinates say: of a place on a side of the section. */
export interface KnownPlace {
  /** The sheet that each header is met on, in the order of `hits`; −1 where it is missed. */
  readonly met: readonly number[];
  /** s of a sheet there. */
  readonly height: (sheet: number) => number;
}

/** Evaluates a compiled end at (u, v). */
export function endAt(end: CompiledEnd, u: number, v: number, known?: KnownPlace): EndValue {
  return nodeAt(end, end.root, u, v, known);
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

function nodeAt(end: CompiledEnd, node: EndNode, u: number, v: number, known?: KnownPlace): EndValue {
  const height = (sheet: number): number =>
    known ? known.height(sheet) : sheetHeight(end.sheets[sheet] as Sheet, u, v);
  switch (node.kind) {
    case "leaf":
      return { out: end.dir * height(node.sheet), sheet: node.sheet };
    case "hit": {
      const met = known?.met[end.hits.indexOf(node)];
      const sheet = met ?? sheetOfHit(node, node.h0 + node.hu * u + node.hv * v);
      return sheet < 0 ? NOTHING : { out: end.dir * height(sheet), sheet };
    }
    case "select":
      return selectAt(end, node, u, v, known);
    default: {
      let best = nodeAt(end, node.of[0] as EndNode, u, v, known);
      for (let i = 1; i < node.of.length; i++) {
        const value = nodeAt(end, node.of[i] as EndNode, u, v, known);
        if (node.kind === "min" ? value.out < best.out : value.out > best.out) best = value;
      }
      return best;
    }
  }
}

function selectAt(end: CompiledEnd, node: Split, u: number, v: number, known?: KnownPlace): EndValue {
  const [a, b] = [nodeAt(end, node.of[0], u, v, known), nodeAt(end, node.of[1], u, v, known)];
  // How far each hit is past the plane, on the side where it is not its header's own.
  const pastA = a.sheet < 0 ? Number.POSITIVE_INFINITY : sideOfSplit(node, u, v, end.dir * a.out);
  const pastB = b.sheet < 0 ? Number.POSITIVE_INFINITY : -sideOfSplit(node, u, v, end.dir * b.out);
  if (pastA <= 0 && pastB <= 0) return a.out <= b.out ? a : b;
  if (Math.min(pastA, pastB) > STATION_MM) return NOTHING;
  return pastA <= pastB ? a : b;
}

/** Signed distance of (u, v, s) from a miter plane, millimetres; + on the second header's side. */
export function sideOfSplit({ point, normal }: Split, u: number, v: number, s: number): number {
  return (u - point[0]) * normal[0] + (v - point[1]) * normal[1] + (s - point[2]) * normal[2];
}

/** The select whose two headers two sheets belong to, one each; undefined when none parts them. */
export function splitBetween(end: CompiledEnd, i: number, j: number): Split | undefined {
  const [lo, hi] = i < j ? [i, j] : [j, i];
  return end.splits.find((s) => lo >= s.from && lo < s.middle && hi >= s.middle && hi < s.to);
}

/** The sheet of a header that a fibre at h meets, −1 where it passes by. */
export function sheetOfHit(node: Extract<EndNode, { kind: "hit" }>, h: number): number {
  const { breaks, sheets } = node;
  const last = breaks.length - 1;
  // Half of what a label is read beside a break, so that beyond the last one there is nothing.
  const slack = INSIDE_MM / 2;
  if (h < (breaks[0] as number) - slack || h > (breaks[last] as number) + slack) return -1;
  for (let i = 1; i < last; i++) if (h < (breaks[i] as number)) return sheets[i - 1] as number;
  return sheets[last - 1] as number;
}

/** How far a branch's stations reach past what a header covers, millimetres; 0 when they do not. */
function overhangOf(stations: readonly number[], breaks: readonly number[]): number {
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
  readonly splits: Split[];
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
  const b: Building = { dir, section, sheets: [], hits: [], splits: [], diagnostics: [] };
  const root = build(b, expression, false);
  if (!root || b.diagnostics.some((d) => d.severity === "error"))
    return { end: null, diagnostics: b.diagnostics };
  return { end: { dir, sheets: b.sheets, root, hits: b.hits, splits: b.splits }, diagnostics: b.diagnostics };
}

function build(b: Building, e: EndExpression, shielded: boolean): EndNode | null {
  if (e.kind === "hit") return buildHit(b, e, shielded);
  if (e.kind === "select") return buildSelect(b, e);
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

/** Each header covers its own side only, so neither need reach over the whole branch. */
function buildSelect(b: Building, e: SelectEnd): Split | null {
  const from = b.sheets.length;
  const first = build(b, e.of[0], true);
  const middle = b.sheets.length;
  const second = build(b, e.of[1], true);
  if (!first || !second) return null;
  const normal = scale(e.plane.normal, 1 / length(e.plane.normal));
  const { point } = e.plane;
  const split: Split = {
    kind: "select",
    point,
    normal,
    of: [first, second],
    from,
    middle,
    to: b.sheets.length,
  };
  b.splits.push(split);
  return split;
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
  const h0 = -dot(frame.origin, n);
  const stations = branchStations(b.section, n[0], n[1], h0);
  let profile = snapProfile(firstHitProfile(seen), stations);
  const jump = profile.jumps.find((j) => isAcross(j.h, stations));
  if (jump) {
    b.diagnostics.push(jumpProblem(source.onto, jump));
    return null;
  }
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
  // The header's own origin may be metres away, and its digits would be lost to every angle round the skin.
  const along = -(frame.origin[0] * a[0] + frame.origin[1] * a[1]) / (sine * sine);
  const stance = { point: addScaled(frame.origin, a, along), axis: a, sine, n, m };
  const sheets = profile.pieces.map((p) => b.sheets.push(profileSheet(p, stance, b.dir, source)) - 1);
  const node = { kind: "hit" as const, h0, hu: n[0], hv: n[1], breaks: profile.breaks, sheets };
  b.hits.push(node);
  return node;
}

/** True when a place across the header is under the branch, not at its edge or beside it. */
function isAcross(h: number, stations: readonly number[]): boolean {
  const [lo, hi] = [stations[0] as number, stations[stations.length - 1] as number];
  return h > lo + STATION_MM && h < hi - STATION_MM;
}

function jumpProblem(onto: string, { h, step }: ProfileJump): Diagnostic {
  return diagnostic({
    code: "profile-jumps",
    message: `The near side of header ${onto} steps by ${step.toFixed(3)} mm under the branch, ${h.toFixed(3)} mm across the header; a cope needs a skin without steps.`,
    hint: "Keep the branch clear of the step, turn the header so that an unbroken side faces it, or cut the branch to a plane.",
    values: { onto, at: h, step },
  });
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
    pieces.push({ kind: "flat", h: last, m: pieceHeight(lastPiece, last), slope: 0, segment: -1 });
    breaks.push(hi);
  }
  if (lo < first) {
    pieces.unshift({ kind: "flat", h: first, m: pieceHeight(firstPiece, first), slope: 0, segment: -1 });
    breaks.unshift(lo);
  }
  return { ...profile, breaks, pieces };
}
