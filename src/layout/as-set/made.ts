/**
 * Which pieces are made already, in what part, and as they were solved then?
 *
 * Ends are named as on the papers (see `joints/words`): foot and top of what stands, downhill and uphill of what lies, left and
 * right of what runs across.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import { endWord, sightOf } from "../../joints/words.js";
import { hasErrors, type Result } from "../../kernel/diagnostic.js";
import type { Reader } from "../document/reader.js";
import { nearestName } from "../document/schema/path-text.js";
import type { Feature, MadePiece } from "./as-set.js";
import type { MadeInput, MadeWord } from "./as-set-input.js";

/** Reads the pieces of an earlier build by what the document calls it. */
export type LoadPieces = (from: string) => Result<readonly Piece[]>;

const ALL: readonly Feature[] = ["start", "end", "holes"];

/** The feature a word means on a piece; undefined where it has no such end. */
function featureOf(piece: Piece, word: MadeWord): Feature | undefined {
  if (word === "holes") return "holes";
  const ends = ([0, 1] as const).filter((end) => endWord(sightOf(piece), end) === word.toUpperCase());
  return ends[0] === undefined ? undefined : ends[0] === 0 ? "start" : "end";
}

function featuresOf(piece: Piece, { features }: MadeInput, i: number, read: Reader): Feature[] {
  if (features === "all") return [...ALL];
  const found = features.flatMap((word, k): Feature[] => {
    const own = featureOf(piece, word);
    if (own !== undefined) return [own];
    const ends = ([0, 1] as const).map((end) => endWord(sightOf(piece), end).toLowerCase()).join(" and ");
    const message = `expected an end of ${piece.mark}, which has ${ends}, got ${word}.`;
    read.report("no-such-end", ["made", i, "features", k], message, "Name the end as the cut list does.");
    return [];
  });
  return ALL.filter((own) => found.includes(own));
}

/** The made pieces of a document. */
export function madePieces(
  list: readonly MadeInput[],
  load: LoadPieces | undefined,
  read: Reader,
): readonly MadePiece[] {
  if (list.length > 0 && load === undefined) {
    const message = "expected a reader for the build that the pieces were made from, got none.";
    read.report("made-without-pieces", ["made"], message, "Pass `load`, or leave the made pieces out.");
    return [];
  }
  const builds = new Map<string, readonly Piece[] | undefined>();
  const piecesOf = (from: string): readonly Piece[] | undefined => {
    if (!builds.has(from)) {
      const loaded = load?.(from);
      read.diagnostics.push(...(loaded?.diagnostics ?? []));
      if (loaded?.ok === false && !hasErrors(loaded.diagnostics)) {
        const message = `expected the pieces of ${from}, got none.`;
        read.report("made-without-pieces", ["made"], message, "Name the build they were made from.");
      }
      builds.set(from, loaded?.ok ? loaded.value : undefined);
    }
    return builds.get(from);
  };
  const seen = new Set<string>();
  return list.flatMap((own, i): MadePiece[] => {
    const pieces = piecesOf(own.from);
    if (pieces === undefined) return [];
    const piece = pieces.find(({ mark }) => mark === own.piece) ?? pieces.find(({ id }) => id === own.piece);
    if (piece === undefined) {
      const near = nearestName(
        own.piece,
        pieces.map(({ mark }) => mark),
      );
      const message = `expected the mark or id of a piece of ${own.from}, got ${own.piece}.`;
      const hint = near === undefined ? "Correct the mark." : `Did you mean ${near}?`;
      read.report("unknown-piece", ["made", i, "piece"], message, hint);
      return [];
    }
    if (seen.has(piece.id)) {
      const message = `expected each piece once, got ${piece.mark} again.`;
      read.report("measured-twice", ["made", i, "piece"], message, "Say in one place what of it is made.");
      return [];
    }
    seen.add(piece.id);
    if (piece.status !== "ok") {
      const message = `expected a piece that could be made in ${own.from}, got ${piece.mark}, which was blocked there.`;
      read.report(
        "piece-not-sound",
        ["made", i, "piece"],
        message,
        "Name the build it was really made from.",
      );
      return [];
    }
    const features = featuresOf(piece, own, i, read);
    return [{ piece, features, set: own.set ?? false, path: `made[${i}]` }];
  });
}
