/**
 * The cut list: what to cut, how many, how long between which two points, and each end in words. Plain data.
 *
 * Pieces that share an identity (the same to cut, after turning end for end or rolling) make one row; rows are grouped
 * by section and material in the order of the pieces. Nothing is rounded here. Frame: layout words of `words.ts`.
 *
 * @packageDocumentation
 */
import type { MeasuredLength, Piece } from "../joints/piece.js";
import { faceWord, isSteep, sightOf } from "../joints/words.js";
import { PARALLEL_SINE } from "../kernel/tolerance.js";
import type { Vec2 } from "../kernel/vec.js";
import { cutEndRow } from "./cut-end.js";
import type { CutGroup, CutList, CutListOptions, CutRow } from "./cut-list-types.js";
import { flatEnd } from "./flat-end.js";
import { groupBy } from "./group-by.js";
import { madeAlready } from "./made-already.js";
import { plateRows } from "./plate-rows.js";

/**
 * The cut list of some pieces.
 *
 * @param pieces - pieces of one guard, from `solveJoints` or `buildGuard`
 * @param options - unit of the paper, fraction, and the masses if known
 * @returns groups by section, each with its rows, the sum of its blanks (kerf not included) and its mass; plates apart
 * @example
 * cutList(guard.pieces, { unit: "in", denominator: 32 }).groups[0]?.rows[0]?.blank.value;
 */
export function cutList(pieces: readonly Piece[], options: CutListOptions): CutList {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const bars = pieces.filter((p) => p.kind === "member");
  const groups = groupBy(bars, (p) => JSON.stringify([p.section.name, p.section.shape, p.material]));
  return {
    unit: options.unit,
    denominator: options.denominator ?? 32,
    groups: groups.map((members) => cutGroup(members, pieces, byId, options)),
    plates: plateRows(pieces, options.masses, options.states),
  };
}

function cutGroup(
  members: readonly Piece[],
  all: readonly Piece[],
  byId: ReadonlyMap<string, Piece>,
  options: CutListOptions,
): CutGroup {
  const [first] = members as [Piece];
  const each = members.map((piece) => options.masses?.get(piece.id));
  const mass = each.reduce((sum, m) => (sum === undefined || m === undefined ? undefined : sum + m), 0);
  return {
    section: first.section,
    material: first.material,
    rows: groupBy(members, (p) => p.identity).map((same) => cutRow(same, all, byId, options)),
    pieces: members.length,
    totalBlank: members.reduce((sum, p) => sum + p.lengths.blank.value, 0),
    longestBlank: Math.max(...members.map((p) => p.lengths.blank.value)),
    ...(mass !== undefined && { mass }),
  };
}

function cutRow(
  same: readonly Piece[],
  all: readonly Piece[],
  byId: ReadonlyMap<string, Piece>,
  { masses, states }: CutListOptions,
): CutRow {
  const [first] = same as [Piece];
  const { lengths } = first;
  const sight = sightOf(first);
  const ends = [cutEndRow(first, 0, byId), cutEndRow(first, 1, byId)] as const;
  const mass = masses?.get(first.id);
  const above = viewDirection(first);
  return {
    marks: same.map((p) => p.mark),
    ids: same.map((p) => p.id),
    quantity: same.length,
    role: first.role,
    blank: lengths.blank,
    longPoint: lengths.longPoint,
    shortPoint: lengths.shortPoint,
    squareCut: lengths.squareCut,
    faces: [...face(faceWord(sight, 0, 1), lengths.top), ...face(faceWord(sight, 0, -1), lengths.bottom)],
    ...(lengths.axis && { axis: lengths.axis }),
    ends,
    handOf: all.filter((p) => first.handOf !== undefined && p.identity === first.handOf).map((p) => p.mark),
    holes: first.bores.length,
    faceUp: first.shopPose.faceUp,
    hook: first.hook.name,
    blocked: same.some((p) => p.status === "blocked"),
    made: madeAlready(same, states),
    steep: isSteep(sight),
    view: [faceWord(sight, above[0], above[1]), faceWord(sight, -above[0], -above[1])],
    ...(mass !== undefined && { mass }),
  };
}

function face(name: string, length: MeasuredLength | undefined): CutRow["faces"] {
  return length ? [{ face: name, length }] : [];
}

/** The side of the section drawn above in the side view: its v side, or its u side where the cuts lean that way more. */
function viewDirection(piece: Piece): Vec2 {
  const leans = [flatEnd(piece, 0)?.normal ?? [0, 0, 1], flatEnd(piece, 1)?.normal ?? [0, 0, 1]];
  const [alongU, alongV] = [0, 1].map((k) =>
    Math.max(...leans.map((n) => Math.abs((n[k] as number) / n[2]))),
  );
  return (alongU as number) > (alongV as number) + PARALLEL_SINE ? [1, 0] : [0, 1];
}
