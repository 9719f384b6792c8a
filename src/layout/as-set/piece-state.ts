/**
 * How far each piece has got: which of its features are made, and whether it stands.
 *
 * A feature that is made keeps its shape whatever is measured later; one that is only designed follows the layout. Plates
 * of a post stand where the post stands.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import { endWord, sightOf } from "../../joints/words.js";
import type { AsSet, Feature, PostStage } from "./as-set.js";

/** How far one feature has got. */
export type FeatureState = "designed" | "made";

/** How far one piece has got. */
export interface PieceState {
  /** The piece's id and mark. */
  readonly id: string;
  readonly mark: string;
  readonly start: FeatureState;
  readonly end: FeatureState;
  /** Of the holes it has; of a piece without holes, of the statement that it has none. */
  readonly holes: FeatureState;
  /** `dry-set`: stood up to be measured and taken down again. */
  readonly place: "designed" | PostStage;
}

/** A feature's order on every paper. */
export const FEATURES: readonly Feature[] = ["start", "end", "holes"];

/**
 * Ids of the pieces that stand where a post was found: the post itself, and the plates that are named after it.
 *
 * @param asSet - what stands already
 * @param pieces - anything with ids and marks: members of a layout, or pieces
 * @returns the stage of each by id
 */
export function stagesOf(
  { posts }: Pick<AsSet, "posts">,
  pieces: readonly { readonly id: string; readonly mark?: string; readonly kind?: string }[],
): ReadonlyMap<string, PostStage> {
  const stages = new Map<string, PostStage>();
  for (const { post: mark, stage } of posts) {
    const post = pieces.find((own) => (own.mark ?? own.id) === mark);
    if (!post) continue;
    stages.set(post.id, stage);
    for (const own of pieces) {
      const plate = own.kind === "plate" || own.kind === "bracket";
      if (plate && own.id.startsWith(`${post.id}-`)) stages.set(own.id, stage);
    }
  }
  return stages;
}

/**
 * The state of every piece.
 *
 * @param pieces - the pieces, in any order
 * @param asSet - what stands and what is made already
 * @returns one state a piece, in their order
 * @example
 * pieceStates(guard.pieces, NOTHING_SET).every((own) => own.start === "designed"); // true
 */
export function pieceStates(pieces: readonly Piece[], asSet: Pick<AsSet, "posts" | "made">): PieceState[] {
  const made = new Map(asSet.made.map((own) => [own.piece.id, own]));
  const stages = stagesOf(asSet, pieces);
  return pieces.map(({ id, mark }) => {
    const own = made.get(id);
    const of = (feature: Feature): FeatureState =>
      own?.features.includes(feature) === true ? "made" : "designed";
    return {
      ...{ id, mark, start: of("start"), end: of("end"), holes: of("holes") },
      place: own?.set === true ? "set" : (stages.get(id) ?? "designed"),
    };
  });
}

/** True of a piece of which nothing is made and that does not stand. */
export function isOnlyDesigned(state: PieceState): boolean {
  return state.place === "designed" && FEATURES.every((feature) => state[feature] === "designed");
}

/**
 * What of a piece is made, in the shop's words; a piece without holes has none to make.
 *
 * @returns e.g. `FOOT end, holes`; `outline and holes` of a plate; empty when nothing is
 * @example madeWords(piece, state); // "FOOT end"
 */
export function madeWords(piece: Piece, state: PieceState): string {
  const [start, end, holes] = FEATURES.map((feature) => state[feature] === "made");
  const drilled = piece.bores.length + (piece.kind === "member" ? 0 : piece.section.region.holes.length) > 0;
  if (piece.kind !== "member") {
    const words = [...(start || end ? ["outline"] : []), ...(holes && drilled ? ["holes"] : [])];
    return words.join(" and ");
  }
  const name = (at: 0 | 1): string => `${endWord(sightOf(piece), at)} end`;
  return [
    ...(start ? [name(0)] : []),
    ...(end ? [name(1)] : []),
    ...(holes && drilled ? ["holes"] : []),
  ].join(", ");
}
