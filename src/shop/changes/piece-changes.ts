/**
 * What must be cut or marked again: two sets of pieces held against each other, every number a fabricator marks.
 *
 * Pieces are the same by id. Compared are section and material, all lengths, both end cuts, every mark of every hole, plates
 * with their outline and holes; where a piece stands is no number on it and is not compared. A number that moved by no more
 * than the papers can print is left out. Millimetres, degrees.
 *
 * @packageDocumentation
 */
import type { Piece, PieceLengths } from "../../joints/piece.js";
import { endWord, faceWord, sightOf } from "../../joints/words.js";
import { MM_PER } from "../../kernel/length.js";
import type { PieceState } from "../../layout/as-set/piece-state.js";
import type {
  ChangedPart,
  ChangeOptions,
  LonePiece,
  NumberChange,
  PieceChange,
  PieceChanges,
} from "./change-types.js";
import { type Differences, differences } from "./compare.js";
import { compareEnd, type MarksOf } from "./compare-ends.js";
import { compareHoles } from "./compare-holes.js";
import { comparePlates } from "./compare-plates.js";

/** mm. The papers print to 1/32 in. */
export const OVER_MM = MM_PER.in / 32;
/** Degrees. The papers print to a tenth. */
export const OVER_DEGREES = 0.1;

/** How the length is called that walls cut square through land on. */
export const SQUARE_CUT = "if walls are cut square";

/** What is compared with, beside the pieces. */
interface Comparing {
  readonly over: number;
  readonly overAngle: number;
  readonly marks: MarksOf;
}

/**
 * What moved between two sets of pieces.
 *
 * @param old - the pieces as they were issued
 * @param now - the pieces as they are solved now
 * @param options - the least that counts as moved, and what is made already
 * @returns pieces of which something moved, in the new order; new ones, gone ones, and how many are as they were
 * @example
 * pieceChanges(before.pieces, guard.pieces, { over: 0.5 }).changed.map((own) => own.mark); // ["R1", "P2"]
 */
export function pieceChanges(
  old: readonly Piece[],
  now: readonly Piece[],
  options: ChangeOptions = {},
): PieceChanges {
  const { over = OVER_MM, overAngle = OVER_DEGREES, states = [], misfits = [] } = options;
  const marks = { old: marksOf(old), now: marksOf(now) };
  const comparing: Comparing = { over, overAngle, marks };
  const before = new Map(old.map((own) => [own.id, own]));
  const stateOf = new Map(states.map((own) => [own.id, own]));
  const changed = now.flatMap((piece): PieceChange[] => {
    const was = before.get(piece.id);
    if (!was) return [];
    const numbers = compared(was, piece, comparing, stateOf.get(piece.id));
    const own = misfits.filter((misfit) => misfit.piece === piece.id);
    if (numbers.length === 0 && own.length === 0 && was.mark === piece.mark) return [];
    return [changeOf(was, piece, numbers, own)];
  });
  const after = new Set(now.map((own) => own.id));
  const [added, gone] = [now.filter((own) => !before.has(own.id)), old.filter((own) => !after.has(own.id))];
  const alike = (own: Piece, others: readonly Piece[], isOld: boolean): LonePiece => {
    const blank = own.lengths.blank.value;
    const same = others.find((other) => {
      // Most are told apart by their length alone.
      if (Math.abs(other.lengths.blank.value - blank) > over) return false;
      const pair = isOld ? ([own, other] as const) : ([other, own] as const);
      return compared(pair[0], pair[1], comparing, undefined).length === 0;
    });
    const { id, mark, kind, role, section } = own;
    return { id, mark, kind, role, section: section.name, ...(same && { sameAs: same.mark }) };
  };
  return {
    over,
    overAngle,
    changed,
    added: added.map((own) => alike(own, gone, false)),
    gone: gone.map((own) => alike(own, added, true)),
    unchanged: now.length - added.length - changed.length,
    marks: Object.fromEntries([...marks.old, ...marks.now]),
  };
}

function marksOf(pieces: readonly Piece[]): ReadonlyMap<string, string> {
  return new Map(pieces.map((own) => [own.id, own.mark]));
}

/** Every number of one piece that moved. */
function compared(
  old: Piece,
  now: Piece,
  { over, overAngle, marks }: Comparing,
  state: PieceState | undefined,
): readonly NumberChange[] {
  const into = differences(over, overAngle, (part) => isMade(part, state));
  if (old.kind !== now.kind) {
    into.word("stock", "kind", old.kind, now.kind);
    return into.found;
  }
  into.word("stock", "material", old.material, now.material);
  if (now.kind !== "member") {
    comparePlates(old, now, into);
    compareHoles(old, now, into);
    return into.found;
  }
  if (sectionKey(old) !== sectionKey(now)) {
    into.word("stock", "section", old.section.name, now.section.name);
  }
  compareLengths(old, now, into);
  for (const end of [0, 1] as const) compareEnd(old, now, end, marks, into);
  compareHoles(old, now, into);
  return into.found;
}

function sectionKey({ section: { name, shape, region } }: Piece): string {
  return JSON.stringify([name, shape, shape.kind === "custom" ? region : null]);
}

/** A length is made when both ends are; stock when anything is. */
function isMade(part: ChangedPart, state: PieceState | undefined): boolean {
  if (!state) return false;
  const { start, end, holes } = state;
  if (part === "length") return start === "made" && end === "made";
  if (part === "stock") return [start, end, holes].includes("made");
  return state[part] === "made";
}

function compareLengths(old: Piece, now: Piece, into: Differences): void {
  const sight = sightOf(now);
  const rows: readonly (readonly [keyof PieceLengths, string])[] = [
    ["blank", "BLANK"],
    ["longPoint", "LONG POINT to LONG POINT"],
    ["shortPoint", "shortest line"],
    ["top", `along ${faceWord(sight, 0, 1)}`],
    ["bottom", `along ${faceWord(sight, 0, -1)}`],
    ["axis", "along the axis"],
    ["squareCut", SQUARE_CUT],
  ];
  // Where every line along it is as long, which of them is the long point is chance and not said.
  const told = [old, now].every(
    ({ lengths }) => lengths.longPoint.value - lengths.shortPoint.value > into.over,
  );
  for (const [key, what] of rows) {
    const named = told && (key === "longPoint" || key === "shortPoint");
    into.measured("length", what, old.lengths[key], now.lengths[key], named);
  }
}

function changeOf(
  old: Piece,
  now: Piece,
  numbers: readonly NumberChange[],
  misfits: PieceChange["misfits"],
): PieceChange {
  const open = numbers.filter((own) => !own.made);
  const holes = (own: NumberChange): boolean => own.part === "holes";
  const renamed = old.mark !== now.mark;
  return {
    ...{ id: now.id, mark: now.mark, kind: now.kind, role: now.role, section: now.section.name },
    ...(renamed && { oldMark: old.mark }),
    actions: [
      ...(open.some((own) => !holes(own)) ? (["re-cut"] as const) : []),
      ...(open.some(holes) ? (["re-mark"] as const) : []),
      ...(renamed ? (["rename"] as const) : []),
      ...(misfits.length > 0 || open.length < numbers.length ? (["made-misfit"] as const) : []),
    ],
    numbers,
    notes: notesOf(old, now, numbers),
    ends: [`${endWord(sightOf(now), 0)} end`, `${endWord(sightOf(now), 1)} end`],
    misfits,
  };
}

/** What marks along the piece are told from, where that is not what it was. */
function notesOf(old: Piece, now: Piece, numbers: readonly NumberChange[]): string[] {
  const { hook } = now;
  const blocked = now.status === "blocked" ? ["DO NOT CUT: an error keeps this piece from being made"] : [];
  if (now.bores.length === 0 || now.kind !== "member") return blocked;
  if (old.hook.end !== hook.end) {
    const note = `the tape hooks the ${hook.name} now, it was the ${old.hook.name}: old marks are told from the ${hook.name} too`;
    return [...blocked, note];
  }
  const part = hook.end === 0 ? "start" : "end";
  if (!numbers.some((own) => own.part === part)) return blocked;
  const note = numbers.some((own) => own.part === "holes")
    ? `marks are told from the ${hook.name}, which is cut anew: cut it first, then mark; old marks are from the old cut`
    : `no hole moved from the ${hook.name}, but that end is cut anew: mark after the cut`;
  return [...blocked, note];
}
