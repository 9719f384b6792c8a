/**
 * One end of a piece in the shop's words: how the cut lies, which face has the long point, what a saddle fits.
 *
 * Method: the long point of a flat cut is read off the cut itself (`flat-end.ts`), so it does not hang on anybody's sign
 * convention for saw angles. Saddle depths come from `saddle` at whole degrees. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { CopeNumbers, Piece } from "../joints/piece.js";
import { saddle } from "../joints/saddle.js";
import { endWord, faceWord, sightOf } from "../joints/words.js";
import type { CutEndRow, SaddleRow } from "./cut-list-types.js";
import { flatEnd } from "./flat-end.js";

/** Ordinates of a saddle's depth are taken at whole degrees. */
const DEPTH_STATIONS = 360;

/**
 * The words and numbers of one end.
 *
 * @param piece - the piece
 * @param end - which end
 * @param byId - all pieces of the guard, to turn ids into marks and to find headers
 * @returns a row of plain data; never fails, a part that cannot be told is absent
 * @example
 * cutEndRow(piece, 1, new Map(pieces.map((p) => [p.id, p]))).name; // "UPHILL"
 */
export function cutEndRow(piece: Piece, end: 0 | 1, byId: ReadonlyMap<string, Piece>): CutEndRow {
  const cut = piece.cuts[end];
  const sight = sightOf(piece);
  const flat = flatEnd(piece, end);
  return {
    end,
    name: endWord(sight, end),
    kind: cut.kind,
    ...(flat && { lies: flat.lies, fromSquare: flat.fromSquare }),
    ...(flat?.long && {
      long: { face: faceWord(sight, flat.long.u, flat.long.v), minusShort: flat.long.minusShort },
    }),
    onto: cut.onto.map((id) => byId.get(id)?.mark ?? id),
    ...(cut.saw && { saw: cut.saw }),
    ...(cut.flatPart && { flatPart: cut.flatPart }),
    plus: [faceWord(sight, 1, 0), faceWord(sight, 0, 1)],
    saddles: cut.cope.map((cope) => saddleRow(piece, cope, byId)),
    arris: cut.arris,
    ...(cut.dihedral && { dihedral: cut.dihedral }),
    step: cut.fit.step,
    gap: cut.fit.gap,
  };
}

function saddleRow(piece: Piece, cope: CopeNumbers, byId: ReadonlyMap<string, Piece>): SaddleRow {
  const header = byId.get(cope.onto);
  const sizes = header && roundSizes(piece, header);
  const depth = sizes && saddleDepth(sizes, cope);
  return {
    onto: header?.mark ?? cope.onto,
    ...(header && { header: header.section }),
    ...(sizes && { sizes }),
    angle: cope.angle,
    offset: cope.offset,
    gap: cope.gap,
    toe: faceWord(sightOf(piece), cope.toe[0], cope.toe[1]),
    heel: faceWord(sightOf(piece), -cope.toe[0], -cope.toe[1]),
    ...(depth && { depth }),
  };
}

type Sizes = NonNullable<SaddleRow["sizes"]>;

/** Solid bar counts as a tube whose wall reaches the axis. */
function roundSizes(branch: Piece, header: Piece): Sizes | undefined {
  const [b, h] = [branch.section.shape, header.section.shape];
  if (h.kind !== "round-tube" && h.kind !== "round-bar") return undefined;
  if (b.kind === "round-tube") return { od: b.od, wall: b.wall, headerOd: h.od };
  return b.kind === "round-bar" ? { od: b.od, wall: b.od / 2, headerOd: h.od } : undefined;
}

/** Depth of a round branch's saddle; absent where the branch hangs off its header or runs along it. */
function saddleDepth(sizes: Sizes, cope: CopeNumbers): SaddleRow["depth"] {
  const { angle, offset, gap } = cope;
  if (!(angle > 0)) return undefined;
  const { od, wall, headerOd } = sizes;
  const stations = DEPTH_STATIONS;
  const result = saddle({
    branch: { od, wall },
    header: { od: headerOd },
    angle,
    offset,
    gap,
    stations,
    leastAngle: angle,
  });
  if (result.missBy > 0) return undefined;
  const outer = result.stations.flatMap((s) => (s.outer === null ? [] : [s.outer]));
  const effective = result.stations.flatMap((s) => (s.effective === null ? [] : [s.effective]));
  return { outer: spread(outer), effective: spread(effective) };
}

function spread(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
