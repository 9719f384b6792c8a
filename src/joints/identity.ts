/**
 * Which pieces are the same to cut, and which are left and right hand of each other.
 *
 * The two end functions are sampled on a ring of fibres. Two pieces are the same when some way of turning one, about its
 * axis by a symmetry of its section or end for end, makes all samples agree; they are hands of each other when only a
 * mirrored one agrees. Round sections are first turned so that the steepest side of the first shaped end is at φ = 0.
 *
 * @packageDocumentation
 */

import type { Bore } from "../kernel/bar.js";
import { type CompiledEnd, outAt } from "../kernel/end-compile.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Sheet } from "../kernel/sheet.js";
import { PARALLEL_SINE, ROUNDING_SHARE, SAME_PIECE_MM } from "../kernel/tolerance.js";
import { dot, normalize } from "../kernel/vec.js";
import type { Section } from "../members/section.js";
import { boresLaid, type Lay, sameBores } from "./laid-bores.js";

/** Fibres in the ring: a multiple of four, so that quarter turns map samples onto samples. */
const FIBRES = 16;

/** What identity is decided on. */
export interface Shape {
  readonly id: string;
  readonly section: Section;
  readonly material: string;
  readonly low: CompiledEnd;
  readonly high: CompiledEnd;
  readonly bores: readonly Bore[];
}

/** Identity and hand of one piece. */
export interface Identity {
  readonly identity: string;
  readonly handOf?: string;
}

interface Group {
  readonly id: string;
  readonly ring: Ring;
  readonly handOf?: string;
}

/** Samples (low, high per fibre, slid to the middle) and the mean length, by which groups are looked up. */
interface Ring {
  readonly samples: Float64Array;
  readonly mean: number;
  /** How far the ring was slid, millimetres. */
  readonly middle: number;
  readonly bores: () => readonly (readonly number[])[];
}

/** One way to lay a piece; sampled when somebody asks. */
type Way = () => Ring;

/** A value made at most once, when it is first asked for. */
function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

/** Identities of shapes in their order: the id of the first piece that is the same. */
export function identify(shapes: readonly Shape[]): Identity[] {
  const groups = new Map<string, Group[]>();
  return shapes.map((s): Identity => {
    const ways = waysToTurn(s, false);
    const ring = (ways[0] as Way)();
    const [length, spread] = [cellOf(ring.mean), cellOf(boreSpread(s.bores, ring.middle))];
    const sort = `${s.section.name}|${s.material}|${s.section.shape.kind}${outlineKey(s.section)}|${s.bores.length}`;
    const known: Group[] = [];
    for (let l = length - 1; l <= length + 1; l++)
      for (let b = Math.max(0, spread - 1); b <= spread + (s.bores.length > 0 ? 1 : 0); b++)
        known.push(...(groups.get(`${l}|${b}|${sort}`) ?? []));
    const same = known.find((g) => ways.some((w) => agree(w(), g.ring)));
    if (same) return { identity: same.id, ...(same.handOf === undefined ? {} : { handOf: same.handOf }) };
    const mirrored = known.length > 0 ? waysToTurn(s, true) : [];
    const hand = known.find((g) => mirrored.some((w) => agree(w(), g.ring)));
    const group: Group = { id: s.id, ring, ...(hand ? { handOf: hand.id } : {}) };
    const key = `${length}|${spread}|${sort}`;
    const list = groups.get(key);
    if (list) list.push(group);
    else groups.set(key, [group]);
    return { identity: group.id, ...(hand ? { handOf: hand.id } : {}) };
  });
}

/** Cells so wide that what agrees within the tolerance lies in one cell or in two neighbours. */
function cellOf(millimetres: number): number {
  return Math.round(millimetres / (4 * SAME_PIECE_MM));
}

/** A section of its own outline is the same only where the outline and its holes are. */
function outlineKey({ shape, region }: Section): string {
  return shape.kind === "custom" ? JSON.stringify(region) : "";
}

/** Outward coordinates of both ends along a direction round the axis. */
type Ends = (phi: number) => readonly [number, number];

/** Every way the piece can be laid that its section allows. */
function waysToTurn(s: Shape, mirror: boolean): Way[] {
  const { shape, region } = s.section;
  const round = isRound(s.section) ? (shape as { od: number }).od / 2 : 0;
  const box =
    round > 0
      ? [0, 0]
      : [extentAlong(region.outer, [1, 0]).greatest, extentAlong(region.outer, [0, 1]).greatest];
  const sign = mirror ? -1 : 1;
  const ends: Ends = (phi) => {
    const [cu, cv] = [Math.cos(sign * phi), Math.sin(sign * phi)];
    const k = round > 0 ? round : boxReach(box as [number, number], cu, cv);
    return [outOr(s.low, k * cu, k * cv), outOr(s.high, k * cu, k * cv)];
  };
  const reversed: Ends = (phi) => {
    const [low, high] = ends(-phi);
    return [high, low];
  };
  return [
    ...turnsOf(s, sign, 1).map((t) => lazily(() => ringOf(ends, t, s.bores, { sign, flip: 1 }))),
    ...turnsOf({ ...s, low: s.high, high: s.low }, sign, -1).map((t) =>
      lazily(() => ringOf(reversed, -t, s.bores, { sign, flip: -1 })),
    ),
  ];
}

function isRound(section: Section): boolean {
  return section.shape.kind === "round-tube" || section.shape.kind === "round-bar";
}

function outOr(end: CompiledEnd, u: number, v: number): number {
  const out = outAt(end, u, v);
  return Number.isFinite(out) ? out : 1e6;
}

/** Along a ray from the middle, well inside a rounded rectangle, the same share on all pieces. */
function boxReach(box: readonly [number, number], cu: number, cv: number): number {
  return (
    0.7 *
    Math.min(box[0] / Math.max(Math.abs(cu), ROUNDING_SHARE), box[1] / Math.max(Math.abs(cv), ROUNDING_SHARE))
  );
}

/** Turns about the axis under which the section is the same, once mirrored (`sign` −1) or laid end for end (`flip` −1). */
function turnsOf(s: Shape, sign: 1 | -1, flip: 1 | -1): readonly number[] {
  const { shape } = s.section;
  const quarter = Math.PI / 2;
  if (isRound(s.section)) return roundTurns(s).map((t) => sign * t);
  if (shape.kind === "rect-tube" || shape.kind === "rect-bar") {
    return (shape.width === shape.depth ? [0, 1, 2, 3] : [0, 2]).map((k) => k * quarter);
  }
  // Mirroring and laying end for end undo each other; one of them alone turns the section's outline over.
  if (sign === flip) return [0];
  // A channel is its own mirror image about u, an equal angle about the line through its heel, others about nothing known.
  if (shape.kind === "channel") return [0];
  return shape.kind === "angle" && shape.width === shape.depth ? [sign * quarter] : [];
}

/** Angles that bring the steepest side of the first end that is not square to φ = 0. */
function roundTurns(s: Shape): readonly number[] {
  for (const end of [s.low, s.high]) {
    const sheet = end.sheets[0] as Sheet;
    const [gu, gv] = [end.dir * sheet.a, end.dir * sheet.b];
    if (Math.hypot(gu, gv) > PARALLEL_SINE) return [Math.atan2(gv, gu)];
    const hit = end.hits[0];
    if (!hit) continue;
    const across = Math.atan2(hit.hv, hit.hu);
    return [across, across + Math.PI];
  }
  return [0];
}

function ringOf(f: Ends, turn: number, bores: readonly Bore[], lay: Omit<Lay, "turn" | "shift">): Ring {
  const samples = new Float64Array(2 * FIBRES);
  let [middle, mean] = [0, 0];
  for (let k = 0; k < FIBRES; k++) {
    const [low, high] = f(turn + (2 * Math.PI * k) / FIBRES);
    samples[2 * k] = low;
    samples[2 * k + 1] = high;
    middle += (high - low) / (2 * FIBRES);
    mean += (high + low) / FIBRES;
  }
  // Sliding a piece along its own axis changes nothing.
  for (let i = 0; i < samples.length; i++)
    samples[i] = (samples[i] as number) + (i % 2 === 0 ? middle : -middle);
  return { samples, mean, middle, bores: lazily(() => boresLaid(bores, { ...lay, turn, shift: middle })) };
}

/** How far bores are from the middle on average, by the points of their axes that sameness is decided on: the same for every lay. */
function boreSpread(bores: readonly Bore[], middle: number): number {
  let sum = 0;
  for (const { point, direction } of bores) {
    const d = normalize(direction);
    sum += Math.abs(point[2] - middle - (dot(point, d) - middle * d[2]) * d[2]);
  }
  return bores.length === 0 ? 0 : sum / bores.length;
}

function agree(a: Ring, b: Ring): boolean {
  for (let i = 0; i < a.samples.length; i++) {
    if (Math.abs((a.samples[i] as number) - (b.samples[i] as number)) > SAME_PIECE_MM) return false;
  }
  return sameBores(a.bores(), b.bores(), SAME_PIECE_MM);
}
