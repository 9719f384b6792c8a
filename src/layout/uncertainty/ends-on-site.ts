/**
 * Which ends stand on something that is on site and no piece of the guard: a floor, a tread, a wall?
 *
 * A post stands on its foot's base plate or bare; other ends are cut to an end plate, a flange, or straight to a wall or the
 * ground: their joints and plates are known by the ids the layout gives them. How well the place of that thing is known, where
 * no input of the design says it: a floor by a level reading from the nosing its height was taken at; a wall or a ground by one
 * tape reading of the piece's own length. Millimetres.
 *
 * @packageDocumentation
 */
import type { Contact, Piece } from "../../joints/piece.js";
import { scale } from "../../kernel/vec.js";
import { tanDegrees } from "../angles.js";
import type { LayoutReport, PostReport } from "../report-types.js";
import { siteOf } from "../site/site.js";
import { lengthOf } from "./measures.js";
import type { LaidCase } from "./unknown.js";
import { levelSigma, tapeSigma } from "./unknowns.js";

/** An end on site. */
export interface EndOnSite {
  readonly piece: string;
  readonly end: 0 | 1;
  readonly on: "floor" | "wall";
  /** In words, e.g. `tread 4`, `the wall`. */
  readonly what: string;
  /** Leg whose far end it is, where an input says where that is. */
  readonly leg?: string;
  /** Mark of the post, of feet. */
  readonly post?: string;
  /** Of its place along the piece, besides what the inputs say, mm. */
  readonly sigma: number;
}

/** Plates that lie on something on site: ids as the layout makes them. */
const ON_SITE_PLATE = /-(end-plate|flange)(-[01])?$/;
/** What an end without a plate is cut to, in the words of its joint. */
const ON_SITE_WORDS: readonly string[] = ["wall", "ground"];
/** A piece whose plate is nearer to plumb than to level under it stands on a floor. */
const STEEP = Math.SQRT1_2;

/** Level distance from a post to the nosing its floor's height was taken at. */
function toNosing(laid: LaidCase, post: PostReport): number {
  if (post.tread !== undefined) return Math.abs(post.offset);
  const nosings = siteOf(laid.design).legs.flatMap((leg) => leg.flight?.nosings ?? []);
  return Math.min(...nosings.map((own) => Math.abs(own.x - post.x)));
}

/** What a post stands on, in words. */
function groundWords({ along, tread, corner }: PostReport): string {
  if (tread !== undefined) return `tread ${tread}`;
  if (corner !== undefined) return `the floor at corner ${corner}`;
  return along === "landing" ? "the landing" : "the floor";
}

function footOf(laid: LaidCase, { id, mark }: Piece, post: PostReport): EndOnSite {
  const measured = laid.asSet?.posts.some((own) => own.post === mark && own.baseZ !== undefined) ?? false;
  return {
    ...{ piece: id, end: 0, on: "floor", post: mark },
    what: groundWords(post),
    sigma: measured ? 0 : tanDegrees(levelSigma()) * toNosing(laid, post),
  };
}

/** Whether an end is cut to such a plate or such a word. */
function isOnSite(piece: Piece, end: 0 | 1, contacts: readonly Contact[]): boolean {
  const seats = contacts.filter((own) => own.piece === piece.id && own.end === end && own.kind === "seat");
  return (
    seats.some((own) => ON_SITE_PLATE.test(own.onto)) ||
    piece.cuts[end].onto.some((own) => ON_SITE_WORDS.includes(own))
  );
}

function otherEnd(laid: LaidCase, piece: Piece, end: 0 | 1): EndOnSite {
  const out = scale(piece.frame.z, end === 1 ? 1 : -1);
  const on = out[2] < -STEEP ? "floor" : "wall";
  const { legs } = laid.design;
  const last = legs.at(-1);
  // The guard's own far ends are where its legs end; a handrail's wall is where its document says.
  const cut = piece.cuts[end].joint.endsWith(`-end-${end}`) && piece.role === "top-rail";
  const leg = !cut ? undefined : end === 0 ? legs[0] : last;
  const tape = laid.shop?.tape ?? "II";
  return {
    ...{ piece: piece.id, end, on, what: on === "floor" ? "the ground" : "the wall" },
    ...(leg === undefined ? {} : { leg: leg.id }),
    sigma: leg === undefined ? tapeSigma(lengthOf(piece), tape) : 0,
  };
}

/**
 * The ends of a guard that stand on site.
 *
 * @param laid - design, shop, what was found as set
 * @param pieces - of the solved guard
 * @param contacts - of the same
 * @param report - of its layout: where the posts stand
 */
export function endsOnSite(
  laid: LaidCase,
  pieces: readonly Piece[],
  contacts: readonly Contact[],
  report: Pick<LayoutReport, "posts">,
): readonly EndOnSite[] {
  const posts = new Map(report.posts.map((own) => [own.id, own]));
  const hung = new Set(pieces.filter((own) => own.kind === "plate").map((own) => own.id));
  return pieces.flatMap((piece): EndOnSite[] => {
    // Of a pair the report has the left guard's posts; the right one's are their mirror images.
    const post = posts.get(piece.id) ?? posts.get(piece.id.replace(/^right-/, "left-"));
    // A post on a plate at its side hangs: its lower end meets nothing.
    if (post !== undefined) return hung.has(`${piece.id}-side`) ? [] : [footOf(laid, piece, post)];
    if (piece.kind !== "member") return [];
    return ([0, 1] as const).flatMap((end) =>
      isOnSite(piece, end, contacts) ? [otherEnd(laid, piece, end)] : [],
    );
  });
}
