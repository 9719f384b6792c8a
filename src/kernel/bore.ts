/**
 * The walls a bore goes through, and the sides of the section its openings lie on.
 *
 * Seen along the bar a bore is a strip of the section (see `bore-stance`), and the outline crosses it in chains: side
 * after side from one edge of the strip to the other. Two chains in turn, into the material and out of it, are one wall.
 * That holds as long as the outline does not turn back inside the strip; where it does, the bore leaves the section or
 * its hollow, and is refused. So is a bore that only touches the line between two sides: its opening would be pinched.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import { refuseBore, refuseTouching, refuseTurn } from "./bore-refusals.js";
import { acrossBore, alongBore, type BoreStance, stanceOf } from "./bore-stance.js";
import { type OutlineTurn, outlineTurns } from "./bore-turns.js";
import type { Diagnostic } from "./diagnostic.js";
import { arcFraction, type Loop, loopsOf, pointOn, type Region, type Segment } from "./region.js";
import { CLEAR_OF_CORNERS_SHARE, LEFT_BESIDE_BORE_MM } from "./tolerance.js";

/** The stretch of one opening on one side of the section. */
export interface OpeningPart {
  readonly segment: number;
  /** On a round side: −1 on the half that the bore meets first, +1 on the other. */
  readonly root: 1 | -1;
  /** h at its upper end; infinite for the last part of an opening. */
  readonly to: number;
  /** The corner of the loop (start of that segment) at its upper end; −1 for the last part. */
  readonly corner: number;
}

/** Where a bore opens: parts on side after side of one loop, in rising h. */
export interface Opening {
  readonly loop: number;
  /** True where the bore goes into the material. */
  readonly into: boolean;
  readonly parts: readonly OpeningPart[];
}

/** One wall that a bore goes through. */
export interface BoreWall {
  readonly bore: string;
  readonly wall: number;
  readonly stance: BoreStance;
  readonly entry: Opening;
  readonly exit: Opening;
}

/** Walls of a bore in the order it goes through them, or why it cannot be cut. */
export type BoreResult = { readonly walls: readonly BoreWall[] } | { readonly diagnostic: Diagnostic };

/** τ of a side at h, on the half `root` of a round one. */
export function tauAt(segment: Segment, root: 1 | -1, stance: BoreStance, h: number): number {
  const { along } = stance;
  if (segment.kind === "line") {
    const { from, to } = segment;
    const [h0, h1] = [acrossBore(along, from[0], from[1]), acrossBore(along, to[0], to[1])];
    const [t0, t1] = [alongBore(along, from[0], from[1]), alongBore(along, to[0], to[1])];
    return t0 + ((h - h0) / (h1 - h0)) * (t1 - t0);
  }
  const d = h - acrossBore(along, segment.centre[0], segment.centre[1]);
  const half = Math.sqrt(Math.max(0, (segment.radius - d) * (segment.radius + d)));
  return alongBore(along, segment.centre[0], segment.centre[1]) + root * half;
}

/** A bore with its walls. */
export interface Walled {
  readonly bore: Bore;
  readonly walls: readonly BoreWall[];
}

/**
 * Walls of one bore through a section.
 *
 * @param others - bores through the same section: one that runs in the same strip of it has the same openings
 */
export function boreWalls(section: Region, bore: Bore, others: readonly Walled[] = []): BoreResult {
  if (!(bore.diameter > 0) || !Number.isFinite(bore.diameter)) {
    return refuseBore(bore, {
      code: "bad-bore",
      message: "cannot be drilled: expected a diameter above zero.",
      hint: "Give the drill's diameter.",
    });
  }
  const stance = stanceOf(bore);
  if (!stance) {
    return refuseBore(bore, {
      code: "bore-along-axis",
      message: "runs along the bar and goes through no wall.",
      hint: "Turn the bore across the bar.",
    });
  }
  const like = others.find((o) => o.bore.through === bore.through && isOneStrip(o.walls[0]?.stance, stance));
  if (like) return { walls: like.walls.map((w) => ({ ...w, bore: bore.id, stance })) };
  const turns = outlineTurns(section, stance);
  const strip = stance.surface.radius + LEFT_BESIDE_BORE_MM;
  const near = turns.filter((t) => Math.abs(t.h - stance.h) < strip);
  const outside = near.filter((t) => t.loop === 0);
  const corners = cornersAcross(section, stance);
  const found = crossings(section, stance, turns, corners);
  if (found.length === 0 || (bore.through === "both" && near.length > 0)) {
    return refuseTurn(bore, stance, turns, outside.length > 0 ? outside : near);
  }
  const walls: BoreWall[] = [];
  for (let k = 0; k + 1 < found.length; k += 2) {
    const entry = chainFrom(section, stance, found[k] as Crossing, turns, corners);
    const exit = chainFrom(section, stance, found[k + 1] as Crossing, turns, corners);
    for (const end of [entry, exit]) {
      if ("turn" in end) return refuseTurn(bore, stance, turns, [end.turn]);
      if ("corner" in end) return refuseTouching(bore, loopsOf(section)[end.loop] as Loop, end.corner);
    }
    walls.push({ bore: bore.id, wall: k / 2, stance, entry: entry as Opening, exit: exit as Opening });
    if (bore.through === "first") break;
  }
  // What stands in the way of the first wall is met by a part of the bore only.
  const last = walls[0]?.exit as Opening;
  const before = near.filter((t) => t.tau < tauOf(section, last, stance, stance.h));
  return before.length > 0 ? refuseTurn(bore, stance, turns, before) : { walls };
}

/** True where two bores are one strip of the section, to the last bit. */
function isOneStrip(a: BoreStance | undefined, b: BoreStance): boolean {
  return (
    a !== undefined &&
    a.h === b.h &&
    a.surface.radius === b.surface.radius &&
    a.along[0] === b.along[0] &&
    a.along[1] === b.along[1]
  );
}

/** The part of an opening at h. */
export function partOf(opening: Opening, h: number): OpeningPart {
  return opening.parts.find((p) => h < p.to) as OpeningPart;
}

/** τ of an opening at h. */
export function tauOf(section: Region, opening: Opening, stance: BoreStance, h: number): number {
  const part = partOf(opening, h);
  return tauAt(sideOf(section, opening.loop, part.segment), part.root, stance, h);
}

/** One side of a section. */
export function sideOf(section: Region, loop: number, segment: number): Segment {
  return (loopsOf(section)[loop] as Loop)[segment] as Segment;
}

/** Where a line along the bore crosses the outline. */
interface Crossing {
  readonly loop: number;
  readonly segment: number;
  readonly root: 1 | -1;
  readonly h: number;
  readonly tau: number;
}

/** h of the corners, loop by loop. */
function cornersAcross(section: Region, { along }: BoreStance): readonly (readonly number[])[] {
  return loopsOf(section).map((loop) =>
    loop.map((s) => {
      const [u, v] = pointOn(s, 0);
      return acrossBore(along, u, v);
    }),
  );
}

/** Shares of the radius at which the outline is looked at, until one is clear of its corners and turns. */
const LOOKS = [0, 0.31, -0.37, 0.53, -0.61, 0.17, -0.13, 0.71, -0.79, 0.89, -0.91];

/** Where the outline is crossed, along the bore. Between the strip's edges the chains through these places are the same. */
function crossings(
  section: Region,
  stance: BoreStance,
  turns: readonly OutlineTurn[],
  corners: readonly (readonly number[])[],
): Crossing[] {
  const { radius } = stance.surface;
  const isClear = (h: number): boolean => {
    const off = (x: number): boolean => Math.abs(x - h) > CLEAR_OF_CORNERS_SHARE * radius;
    return turns.every((t) => off(t.h)) && corners.every((loop) => loop.every(off));
  };
  const h = LOOKS.map((k) => stance.h + k * radius).find(isClear) ?? stance.h;
  const loops = loopsOf(section);
  const out: Crossing[] = [];
  for (const [loop, segments] of loops.entries()) {
    for (const [segment, s] of segments.entries()) {
      for (const root of rootsAt(s, stance, h)) {
        out.push({ loop, segment, root, h, tau: tauAt(s, root, stance, h) });
      }
    }
  }
  return out.sort((a, b) => a.tau - b.tau);
}

/** The halves of a side that reach h; a straight side is its own first half. */
function rootsAt(s: Segment, { along }: BoreStance, h: number): readonly (1 | -1)[] {
  if (s.kind === "line") {
    const [a, b] = [acrossBore(along, ...s.from), acrossBore(along, ...s.to)];
    return a > h !== b > h ? [-1] : [];
  }
  const d = h - acrossBore(along, ...s.centre);
  if (Math.abs(d) >= s.radius) return [];
  const half = Math.sqrt((s.radius - d) * (s.radius + d));
  return ([-1, 1] as const).filter((root) => {
    const [u, v] = [d * along[1] + root * half * along[0], root * half * along[1] - d * along[0]];
    return arcFraction(s, Math.atan2(v, u)) < 1;
  });
}

/** A chain through the strip, or the turn or corner of its loop that keeps it from being one. */
type Chain = Opening | { readonly turn: OutlineTurn } | { readonly loop: number; readonly corner: number };

function chainFrom(
  section: Region,
  stance: BoreStance,
  from: Crossing,
  turns: readonly OutlineTurn[],
  corners: readonly (readonly number[])[],
): Chain {
  const loop = loopsOf(section)[from.loop] as Loop;
  const into = risesAlong(loop[from.segment] as Segment, from.root, stance);
  const { radius } = stance.surface;
  const parts: OpeningPart[] = [];
  // Into the material the outline is walked in rising h, out of it in falling h: material is on its left.
  const walk = (up: boolean): Chain | null => {
    const ahead = up === into;
    let [segment, root] = [from.segment, from.root];
    for (let k = 0; k <= loop.length; k++) {
      const corner = ahead ? (segment + 1) % loop.length : segment;
      const turn = turnAhead(turns, from, up, segment, corner);
      const h = turn?.h ?? ((corners[from.loop] as readonly number[])[corner] as number);
      const left = radius + (up ? stance.h - h : h - stance.h);
      const last = left <= -LEFT_BESIDE_BORE_MM;
      if (!last && turn) return { turn };
      if (!last && left < LEFT_BESIDE_BORE_MM) return { loop: from.loop, corner };
      const part = { segment, root };
      if (up) parts.push({ ...part, to: last ? Number.POSITIVE_INFINITY : h, corner: last ? -1 : corner });
      if (last) return null;
      segment = ahead ? corner : (segment + loop.length - 1) % loop.length;
      root = rootOf(loop[segment] as Segment, into);
      if (!up) parts.unshift({ segment, root, to: h, corner });
    }
    return null;
  };
  return walk(true) ?? walk(false) ?? { loop: from.loop, into, parts };
}

/** Where the outline turns back inside a side that is walked, or at the corner it ends in. */
function turnAhead(
  turns: readonly OutlineTurn[],
  { loop, h }: Crossing,
  up: boolean,
  segment: number,
  corner: number,
): OutlineTurn | undefined {
  const isAhead = (t: OutlineTurn, atCorner: boolean, at: number): boolean =>
    t.segment === at && t.atCorner === atCorner && t.loop === loop && t.h > h === up;
  return turns.find((t) => isAhead(t, false, segment)) ?? turns.find((t) => isAhead(t, true, corner));
}

/** True when h rises along a side where it is crossed on its half `root`: the bore goes into the material there. */
function risesAlong(s: Segment, root: 1 | -1, { along }: BoreStance): boolean {
  return s.kind === "line"
    ? acrossBore(along, s.to[0] - s.from[0], s.to[1] - s.from[1]) > 0
    : root * s.sweep < 0;
}

function rootOf(s: Segment, into: boolean): 1 | -1 {
  return s.kind === "arc" && s.sweep > 0 !== into ? 1 : -1;
}
