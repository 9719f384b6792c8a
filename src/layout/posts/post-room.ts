/**
 * Between which nosings does a post stand, and where is the riser face in front of it?
 *
 * The riser face stands `overhang` uphill of its nosing. x along the guard, millimetres.
 *
 * @packageDocumentation
 */

import { sayLength } from "../say-length.js";
import type { LegGround, Site } from "../site/site.js";
import type { PlacedPost } from "./place-posts.js";

/** The nosings a post stands between, and the riser face in front of it. */
export interface Room {
  readonly own: number;
  readonly next: number;
  /** Height of that nosing. */
  readonly nextZ: number;
  readonly riser: number;
  readonly which: string;
}

const NONE: Room = {
  own: Number.NEGATIVE_INFINITY,
  next: Number.POSITIVE_INFINITY,
  nextZ: Number.NEGATIVE_INFINITY,
  riser: Number.POSITIVE_INFINITY,
  which: "",
};

/** Room on a level leg, or at a corner: between the flight before and the flight after, in the same reach. */
function levelRoom(
  site: Site,
  before: LegGround | undefined,
  after: LegGround | undefined,
  reach: number,
): Room {
  const [low, high] = [
    before?.reach === reach ? before.flight : undefined,
    after?.reach === reach ? after.flight : undefined,
  ];
  const next = high?.nosings[0]?.x ?? NONE.next;
  const which =
    site.legs[0] === before || before === undefined
      ? "the lowest nosing"
      : "the first nosing of the next flight";
  const nextZ = high?.nosings[0]?.z ?? NONE.nextZ;
  return { own: low?.nosings.at(-1)?.x ?? NONE.own, next, nextZ, riser: next + (high?.overhang ?? 0), which };
}

/** The room of a post on a tread, a landing or a floor. */
export function roomOf(site: Site, post: PlacedPost): Room {
  const index = site.legs.findIndex(({ leg }) => leg.id === post.leg);
  const ground = site.legs[index];
  if (ground === undefined) return NONE;
  if (ground.flight !== undefined && post.tread !== undefined) {
    const { nosings, overhang, line } = ground.flight;
    const [own, next] = [nosings[post.tread - 1]?.x ?? 0, nosings[post.tread]?.x ?? Number.POSITIVE_INFINITY];
    const which = `the next nosing of the stair, whose going is ${sayLength(line.going)},`;
    return { own, next, nextZ: nosings[post.tread]?.z ?? NONE.nextZ, riser: next + overhang, which };
  }
  // A corner post belongs to the leg below it, and stands past its end.
  const before = ground.flight === undefined ? site.legs[index - 1] : ground;
  return levelRoom(site, before, site.legs[index + 1], post.reach);
}
