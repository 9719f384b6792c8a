/**
 * The holes of a piece, old against new, mark by mark.
 *
 * Distances are told from the end the tape hooks now, the old ones too: where the tape hooked the other end before, the old
 * mark is told from the same end of the old piece. Holes are counted from that end, as they come along the piece. Whether that end is itself cut anew is for the reader to be told.
 *
 * @packageDocumentation
 */
import type { BoreMark, MeasuredLength, Piece, PieceBore } from "../../joints/piece.js";
import type { Differences } from "./compare.js";

/** Compares all holes. */
export function compareHoles(old: Piece, now: Piece, into: Differences): void {
  const before = new Map(old.bores.map((own) => [own.id, own]));
  for (const [i, bore] of counted(now, now.hook.end).entries()) {
    const was = before.get(bore.id);
    before.delete(bore.id);
    const hole = `hole ${i + 1}`;
    if (was) {
      compareHole(old, now, was, bore, hole, into);
      continue;
    }
    into.length("holes", `${hole}, diameter`, undefined, bore.diameter);
    for (const mark of bore.marks) {
      into.measured("holes", placeOf(hole, mark, now), undefined, mark.distance);
    }
  }
  for (const [i, bore] of counted(old, now.hook.end).entries()) {
    if (!before.has(bore.id)) continue;
    const hole = `old hole ${i + 1}`;
    into.length("holes", `${hole}, diameter`, bore.diameter, undefined);
    for (const mark of bore.marks) {
      into.measured("holes", placeOf(hole, mark, now), fromEnd(old, mark, now.hook.end), undefined);
    }
  }
}

/** The holes of a piece in their order from an end, each by its nearest mark. */
function counted(piece: Piece, end: 0 | 1): readonly PieceBore[] {
  const at = ({ marks }: PieceBore): number =>
    Math.min(...marks.map((mark) => fromEnd(piece, mark, end).value));
  return [...piece.bores].sort((a, b) => at(a) - at(b));
}

const placeOf = (hole: string, { face }: BoreMark, { hook }: Piece): string =>
  `${hole}, ${face}, from ${hook.name}`;

/** How far a mark is from an end of its piece. */
function fromEnd(piece: Piece, mark: BoreMark, end: 0 | 1): MeasuredLength {
  const { from, to } = piece.lengths.blank;
  const mine = mark.distance.to;
  const [, , s] = mine.point;
  return end === 0
    ? { value: s - from.point[2], from, to: mine }
    : { value: to.point[2] - s, from: to, to: mine };
}

function compareHole(
  old: Piece,
  now: Piece,
  was: PieceBore,
  bore: PieceBore,
  hole: string,
  into: Differences,
): void {
  into.length("holes", `${hole}, diameter`, was.diameter, bore.diameter);
  into.word("holes", `${hole}, through`, walls(was), walls(bore));
  const rest = [...was.marks];
  for (const mark of bore.marks) {
    const at = rest.findIndex((own) => own.face === mark.face);
    const [match] = at >= 0 ? rest.splice(at, 1) : [undefined];
    const on = `${hole}, ${mark.face}`;
    const distance = match && fromEnd(old, match, now.hook.end);
    into.measured("holes", placeOf(hole, mark, now), distance, mark.distance);
    if (!match) continue;
    const { towards } = mark.offset?.towards ? mark.offset : (match.offset ?? { towards: "" });
    into.length(
      "holes",
      towards === "" ? `${on}, off middle` : `${on}, off middle to ${towards}`,
      signed(match.offset, towards),
      signed(mark.offset, towards),
    );
    into.turn("holes", `${on}, round the tube`, match.angle, mark.angle);
    into.angle("holes", `${on}, drill from square`, match.fromSquare, mark.fromSquare);
    into.angle("holes", `${on}, drill leans along`, alongFrom(old, now, match), mark.along);
    const lean = mark.across.towards || match.across.towards;
    into.angle(
      "holes",
      `${on}, drill leans to ${lean}`,
      signed(match.across, lean),
      signed(mark.across, lean),
    );
  }
  for (const gone of rest) {
    into.measured("holes", placeOf(hole, gone, now), fromEnd(old, gone, now.hook.end), undefined);
  }
}

const walls = ({ through }: PieceBore): string => (through === "both" ? "both walls" : "one wall");

/** A lean is told from the hooked end: from the other one it has the other sign. */
function alongFrom(old: Piece, now: Piece, mark: BoreMark): number {
  return old.hook.end === now.hook.end ? mark.along : -mark.along;
}

/** A size towards one side, below zero where it is towards the other. */
function signed(of: BoreMark["offset"], towards: string): number | undefined {
  if (!of) return undefined;
  return of.towards === "" || of.towards === towards ? of.value : -of.value;
}
