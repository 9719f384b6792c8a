/**
 * The two end cuts of a piece, old against new: kind, what it is cut to, saw settings, long point, marks, saddle numbers.
 *
 * @packageDocumentation
 */
import type { ArrisMark, CopeNumbers, Piece } from "../../joints/piece.js";
import { endWord, faceWord, sightOf } from "../../joints/words.js";
import { flatEnd } from "../flat-end.js";
import type { Differences } from "./compare.js";

/** Marks by id of the old and of the new set. */
export interface MarksOf {
  readonly old: ReadonlyMap<string, string>;
  readonly now: ReadonlyMap<string, string>;
}

/** Compares one end. */
export function compareEnd(old: Piece, now: Piece, end: 0 | 1, marks: MarksOf, into: Differences): void {
  const part = end === 0 ? "start" : "end";
  const name = `${endWord(sightOf(now), end)} end`;
  const [a, b] = [old.cuts[end], now.cuts[end]];
  // A cut a hair off square is plane to the solver, and square to the saw.
  const flats: readonly string[] = ["square", "plane"];
  const leans = Math.abs((a.saw?.fromSquare ?? 0) - (b.saw?.fromSquare ?? 0));
  if (!(flats.includes(a.kind) && flats.includes(b.kind) && leans <= into.overAngle)) {
    into.word(part, `${name}, cut`, a.kind, b.kind);
  }
  if (a.onto.join(" ") !== b.onto.join(" ")) {
    into.word(part, `${name}, cut to`, named(a.onto, marks.old), named(b.onto, marks.now));
  }
  compareFlat(old, now, end, name, into);
  compareSaddles(a.cope, b.cope, name, part, marks, into);
  compareArris(a.arris, b.arris, name, part, into);
  into.angle(part, `${name}, flat part from square`, a.flatPart?.fromSquare, b.flatPart?.fromSquare);
  into.length(part, `${name}, root gap taken off`, a.fit.gap, b.fit.gap);
}

function named(ids: readonly string[], marks: ReadonlyMap<string, string>): string {
  return ids.length === 0 ? "nothing" : ids.map((id) => marks.get(id) ?? id).join(" and ");
}

/** Of a cut that is flat both times: its angle, its long point, its saw settings. */
function compareFlat(old: Piece, now: Piece, end: 0 | 1, name: string, into: Differences): void {
  const part = end === 0 ? "start" : "end";
  const [a, b] = [flatEnd(old, end), flatEnd(now, end)];
  into.angle(part, `${name}, from square`, a?.fromSquare, b?.fromSquare);
  if (!a || !b) return;
  into.length(part, `${name}, long - short`, a.long?.minusShort ?? 0, b.long?.minusShort ?? 0);
  const long = (piece: Piece, cut: typeof a): string =>
    cut.long ? faceWord(sightOf(piece), cut.long.u, cut.long.v) : "none, square";
  if (Math.max(a.long?.minusShort ?? 0, b.long?.minusShort ?? 0) > into.over) {
    into.word(part, `${name}, long point`, long(old, a), long(now, b));
  }
  const [saw, sawNow] = [old.cuts[end].saw, now.cuts[end].saw];
  if (!saw || !sawNow) return;
  into.angle(part, `${name}, saw miter`, saw.miter, sawNow.miter);
  into.angle(part, `${name}, saw bevel`, saw.bevel, sawNow.bevel);
  // A cut that is all but square has no long point to roll to.
  if (Math.min(a.fromSquare, b.fromSquare) > into.overAngle)
    into.turn(part, `${name}, roll to long point`, saw.clock, sawNow.clock);
}

function compareSaddles(
  old: readonly CopeNumbers[],
  now: readonly CopeNumbers[],
  name: string,
  part: "start" | "end",
  marks: MarksOf,
  into: Differences,
): void {
  for (const b of now) {
    const a = old.find((own) => own.onto === b.onto);
    const on = `${name}, saddle to ${marks.now.get(b.onto) ?? b.onto}`;
    into.angle(part, `${on}, angle`, a?.angle, b.angle);
    into.length(part, `${on}, centrelines apart`, a?.offset, b.offset);
    into.length(part, `${on}, root gap`, a?.gap, b.gap);
  }
}

/** Marks past the axis point; told apart by face, and by order where several are on one. */
function compareArris(
  old: readonly ArrisMark[],
  now: readonly ArrisMark[],
  name: string,
  part: "start" | "end",
  into: Differences,
): void {
  const seen = new Map<string, number>();
  for (const b of now) {
    const nth = seen.get(b.name) ?? 0;
    seen.set(b.name, nth + 1);
    const a = old.filter((own) => own.name === b.name)[nth];
    if (a) into.length(part, `${name}, mark at ${b.name}`, a.offset, b.offset);
  }
}
