/**
 * What does an end of a piece meet when it is fitted: nothing, a mate on the bench, something on site, or another assembly?
 *
 * Pieces of one welded assembly are made to each other on the bench. Where posts are set first, a post stands on site and
 * belongs to no bench. Assemblies are set in their order along the guard, loose pieces last.
 *
 * @packageDocumentation
 */
import type { Contact, Piece } from "../joints/piece.js";
import type { AsSet } from "../layout/as-set/as-set.js";
import type { LayoutAssembly } from "../layout/assemblies.js";
import type { EndOnSite } from "../layout/uncertainty/ends-on-site.js";
import { lengthOf } from "../layout/uncertainty/measures.js";

/** What an end meets; `what` in words. */
export type Meeting =
  | { readonly kind: "nothing" }
  | { readonly kind: "bench"; readonly what: string }
  /** On site, or laid on a post that is: its place is measured. */
  | { readonly kind: "known"; readonly what: string }
  /** It stands already, on what. */
  | { readonly kind: "stands"; readonly what: string }
  | { readonly kind: "not-set"; readonly what: string }
  | { readonly kind: "set-first" | "set-later"; readonly what: string };

/** Who stands where when the pieces are fitted. */
export interface Scene {
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly contacts: readonly Contact[];
  readonly onSite: readonly EndOnSite[];
  readonly assemblies: readonly LayoutAssembly[];
  readonly asSet: AsSet;
  /** True where posts are set on site before rails are cut to them. */
  readonly postsFirst: boolean;
}

/** Of several at one end, the one that counts most. */
const RANK: readonly Meeting["kind"][] = [
  "stands",
  "not-set",
  "set-later",
  "known",
  "set-first",
  "bench",
  "nothing",
];

const isPost = ({ pieces }: Scene, id: string): boolean => pieces.get(id)?.role === "post";

const stageOf = ({ asSet, pieces }: Scene, id: string) =>
  asSet.posts.find((own) => own.post === pieces.get(id)?.mark)?.stage;

function siteMeeting(scene: Scene, own: EndOnSite): Meeting {
  const { what } = own;
  if (own.post !== undefined) {
    const stands = scene.postsFirst && stageOf(scene, own.piece) !== undefined;
    return { kind: stands ? "stands" : "known", what };
  }
  // A floor stands where it was measured; a wall counts as set once its place was measured as found.
  if (own.on === "floor") return { kind: "known", what };
  const { leg } = own;
  // In a pair a leg may be named for one of the two guards, as its pieces are marked.
  const suffix = /-[LR]$/.exec(scene.pieces.get(own.piece)?.mark ?? "")?.[0] ?? "";
  const names = leg === undefined ? [] : [leg, `${leg}${suffix}`];
  const found = scene.asSet.legs.some((one) => names.includes(one.leg));
  return { kind: found ? "known" : "not-set", what };
}

/** Which assembly a piece is in, in the order they are set. */
function assemblyOf({ assemblies }: Scene, id: string): number {
  const welded = assemblies.findIndex((own) => own.kind === "welded" && own.pieces.includes(id));
  return welded >= 0 ? welded : assemblies.length;
}

function pieceMeeting(scene: Scene, piece: string, onto: string): Meeting {
  const what = scene.pieces.get(onto)?.mark ?? onto;
  if (scene.postsFirst) {
    if (isPost(scene, onto)) return { kind: stageOf(scene, onto) === "set" ? "known" : "not-set", what };
    if (isPost(scene, piece)) return { kind: "known", what };
  }
  const [own, other] = [assemblyOf(scene, piece), assemblyOf(scene, onto)];
  const last = scene.assemblies.length;
  if (own === other && own < last) return { kind: "bench", what: scene.assemblies[own]?.mark ?? "" };
  return { kind: own < other ? "set-first" : "set-later", what };
}

/** The rail on the other side of a splice: both are cut square to the word, and meet no piece. */
function spliceMeeting(scene: Scene, { id, cuts }: Piece, end: 0 | 1): Meeting[] {
  if (!cuts[end].onto.includes("splice")) return [];
  const point = (own: Piece, at: 0 | 1) => {
    const z = at === 0 ? 0 : lengthOf(own);
    const { origin, z: way } = own.frame;
    return [origin[0] + way[0] * z, origin[1] + way[1] * z, origin[2] + way[2] * z] as const;
  };
  const own = scene.pieces.get(id) as Piece;
  const here = point(own, end);
  const far = (other: Piece): number => {
    const there = point(other, end === 0 ? 1 : 0);
    return Math.hypot(here[0] - there[0], here[1] - there[1], here[2] - there[2]);
  };
  const others = [...scene.pieces.values()].filter(
    (other) => other.id !== id && other.cuts[end === 0 ? 1 : 0].onto.includes("splice"),
  );
  const [mate] = others.sort((a, b) => far(a) - far(b));
  return mate === undefined ? [] : [pieceMeeting(scene, id, mate.id)];
}

/**
 * What an end meets.
 *
 * @param scene - the guard and what of it stands
 * @param piece - one of its members
 * @param end - 0 or 1
 * @returns what counts most there: what is not set before what is, the site before the bench
 */
export function meetingOf(scene: Scene, piece: Piece, end: 0 | 1): Meeting {
  const site = scene.onSite.find((own) => own.piece === piece.id && own.end === end);
  const met = scene.contacts
    .filter((own) => own.piece === piece.id && own.end === end && own.kind !== "flush")
    .map((own) => pieceMeeting(scene, piece.id, own.onto));
  const all: Meeting[] = [
    ...(site === undefined ? met : [siteMeeting(scene, site)]),
    ...spliceMeeting(scene, piece, end),
    { kind: "nothing" },
  ];
  return all.sort((a, b) => RANK.indexOf(a.kind) - RANK.indexOf(b.kind))[0] as Meeting;
}
