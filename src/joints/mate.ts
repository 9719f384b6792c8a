/**
 * The piece another one is cut to, as signed distances: from its skin, from its own end cuts, from its material.
 *
 * Everything is asked in the frame of the yielding piece. Faces are trimmed: past an end of the mate, or past its outline,
 * the nearest place is on the rim, found on the exact edges of its solid. Positive outside the mate, millimetres. A
 * hollow mate counts as full: a branch that came through its wall would be in its bore.
 *
 * @packageDocumentation
 */
import { type At, extremesAlong, type Field, type FieldValue } from "../kernel/edge-extremes.js";
import { type CompiledEnd, compileEnd, type EndNode, endAt } from "../kernel/end-compile.js";
import { directionToParent, type Frame, frameInLocal, pointToLocal } from "../kernel/frame.js";
import { type LoopDistance, loopDistance } from "../kernel/loop-distance.js";
import type { Loop } from "../kernel/region.js";
import { type Sheet, sheetHeight } from "../kernel/sheet.js";
import type { Edge, Solid } from "../kernel/solid.js";
import { distanceTo, normalAt } from "../kernel/surface.js";
import { distance, scale, sub, type Vec3 } from "../kernel/vec.js";
import type { Piece } from "./piece.js";

/** A piece with its ends compiled and its solid. */
export interface Body {
  readonly piece: Piece;
  readonly low: CompiledEnd;
  readonly high: CompiledEnd;
  readonly solid: Solid;
}

/** A mate as the yielding piece sees it. */
export interface Mate extends Body {
  /** The mate's frame in the yielding piece's. */
  readonly stand: Frame;
}

/** A piece ready to be measured. Its ends compile: they made its solid. */
export function bodyOf(piece: Piece, solid: Solid): Body {
  const compiled = (end: 0 | 1): CompiledEnd =>
    compileEnd(piece.ends[end], end === 0 ? -1 : 1, piece.section.region).end as CompiledEnd;
  return { piece, low: compiled(0), high: compiled(1), solid };
}

/** A mate seen from a piece. */
export function mateOf(piece: Piece, mate: Body): Mate {
  return { ...mate, stand: frameInLocal(piece.frame, mate.piece.frame) };
}

const outerOf = (mate: Body): Loop => mate.piece.section.region.outer;

/** How far q, in the mate's frame, is past either of its ends along its axis; at or below 0 between them. */
function past({ low, high }: Body, [u, v]: readonly number[], s: number): number {
  const [a, b] = [u as number, v as number];
  return Math.max(-s - endAt(low, a, b).out, s - endAt(high, a, b).out);
}

/** Distance from the mate's skin between its ends: what a cope is cut to. */
export function fromSkin(mate: Mate): Field {
  const rim = rimOf(mate);
  return (p) => {
    const q = pointToLocal(mate.stand, p);
    const { distance: off, normal, foot } = loopDistance(outerOf(mate), [q[0], q[1]]);
    const sign = off < 0 && past(mate, q, q[2]) > 0 ? -1 : 1;
    if (past(mate, foot, q[2]) <= 0) {
      return {
        value: sign * off,
        gradient: scale(directionToParent(mate.stand, [normal[0], normal[1], 0]), sign),
      };
    }
    return fromRim(mate, rim, q, off < 0 && sign > 0 ? -1 : 1);
  };
}

/** Distance from the mate's skin as if it ran on past its ends: how far one outline stands proud of another. */
export function fromOutline(mate: Mate): Field {
  return (p) => {
    const q = pointToLocal(mate.stand, p);
    const { distance: off, normal } = loopDistance(outerOf(mate), [q[0], q[1]]);
    return { value: off, gradient: directionToParent(mate.stand, [normal[0], normal[1], 0]) };
  };
}

/** Distance from the plane or shape of one of the mate's own ends, as if it ran on past its outline: what a miter meets. */
export function fromCut(mate: Mate, end: 0 | 1): Field {
  const compiled = end === 0 ? mate.low : mate.high;
  return (p) => inParent(mate, atEnd(compiled, compiled.root, pointToLocal(mate.stand, p)));
}

/** The same within the mate's outline; past it from the rim: what a post meets on its base plate. */
export function fromEnd(mate: Mate, end: 0 | 1): Field {
  const compiled = end === 0 ? mate.low : mate.high;
  const rim = rimOf(mate);
  return (p) => {
    const q = pointToLocal(mate.stand, p);
    const { value, gradient } = atEnd(compiled, compiled.root, q);
    const foot: Vec3 = [q[0] - value * gradient[0], q[1] - value * gradient[1], 0];
    if (loopDistance(outerOf(mate), [foot[0], foot[1]]).distance <= 0)
      return inParent(mate, { value, gradient });
    return fromRim(mate, rim, q, isIn(mate, q) ? -1 : 1);
  };
}

/**
 * Distance from the mate's material. Inside it is the nearest of its skin and the surfaces of its ends; outside it is no
 * more than the distance, and above 0.
 */
export function fromMaterial(mate: Mate): Field {
  return (p) => {
    const q = pointToLocal(mate.stand, p);
    const skin: LoopDistance = loopDistance(outerOf(mate), [q[0], q[1]]);
    let best: FieldValue = { value: skin.distance, gradient: [skin.normal[0], skin.normal[1], 0] };
    for (const end of [mate.low, mate.high]) {
      const found = atEnd(end, end.root, q);
      if (found.value > best.value) best = found;
    }
    return inParent(mate, best);
  };
}

function isIn(mate: Mate, q: Vec3): boolean {
  return loopDistance(outerOf(mate), [q[0], q[1]]).distance < 0 && past(mate, q, q[2]) < 0;
}

function inParent(mate: Mate, { value, gradient }: FieldValue): FieldValue {
  return { value, gradient: directionToParent(mate.stand, gradient) };
}

/** Distance from the surface that closes a compiled end at q, positive beyond it; both in that piece's frame. */
function atEnd(end: CompiledEnd, node: EndNode, q: Vec3): FieldValue {
  if (node.kind === "min" || node.kind === "max") {
    const sign = node.kind === "min" ? 1 : -1;
    const all = node.of.map((n) => atEnd(end, n, q));
    return all.reduce((best, x) => (sign * (x.value - best.value) > 0 ? x : best));
  }
  const index = node.kind === "leaf" ? node.sheet : endAt({ ...end, root: node }, q[0], q[1]).sheet;
  const sheet = end.sheets[index];
  if (!sheet) return { value: Number.NEGATIVE_INFINITY, gradient: [0, 0, 0] };
  return atSheet(sheet, end.dir, q);
}

/** What falls off at a sheet is all that lies beyond its height, the far side of its cylinder too. */
function atSheet(sheet: Sheet, dir: 1 | -1, q: Vec3): FieldValue {
  const signed = distanceTo(sheet.surface, q);
  const beyond = dir * (q[2] - sheetHeight(sheet, q[0], q[1])) > 0 ? 1 : -1;
  const sign = signed === 0 ? sheet.sense : beyond * Math.sign(signed);
  return { value: sign * signed, gradient: scale(normalAt(sheet.surface, q), sign) };
}

/** The edges in which the mate's outer sides meet its ends. */
function rimOf({ solid }: Body): readonly Edge[] {
  const of = (wanted: (from: Solid["faces"][number]["provenance"]) => boolean): Set<number> =>
    new Set(solid.faces.flatMap((f) => (wanted(f.provenance) ? f.loops.flat().map((use) => use.edge) : [])));
  const sides = of((from) => from.from === "side" && from.loop === 0);
  const ends = of((from) => from.from === "end");
  return [...sides].filter((edge) => ends.has(edge)).map((edge) => solid.edges[edge] as Edge);
}

/** Distance of q, in the mate's frame, from the rim. */
function fromRim(mate: Mate, rim: readonly Edge[], q: Vec3, sign: 1 | -1): FieldValue {
  const away: Field = (c) => {
    const d = distance(c, q);
    return { value: d, gradient: d === 0 ? [0, 0, 0] : scale(sub(c, q), 1 / d) };
  };
  const nearest = extremesAlong(rim, away)?.least as At;
  const k = nearest.value === 0 ? 0 : sign / nearest.value;
  return {
    value: sign * nearest.value,
    gradient: directionToParent(mate.stand, scale(sub(q, nearest.at), k)),
  };
}
