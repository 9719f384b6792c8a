/**
 * Puts measured posts where they stand, and lets measured legs end where they end.
 *
 * What was not measured stays as designed: a post moved along its leg keeps its tread, on a sloping floor it keeps to the floor.
 * Marks are the designed ones; a place that is the designed one to within what two stations may differ by is the designed one.
 *
 * @packageDocumentation
 */
import { STATION_MM } from "../../kernel/tolerance.js";
import { tanDegrees } from "../angles.js";
import type { Design } from "../document/design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import type { AsSet, AsSetPost } from "./as-set.js";

const sameOr = (designed: number, measured: number | undefined): number =>
  measured === undefined || Math.abs(measured - designed) <= STATION_MM ? designed : measured;

/** What stands on the ground follows its base; what hangs on a stringer's side has its lower end measured, or keeps to the nosing line. */
function heightsOf(post: PlacedPost, own: AsSetPost, slope: number, moved: number) {
  const designed = post.baseZ + (post.tread === undefined && post.corner === undefined ? slope * moved : 0);
  const line = post.lineZ + (post.corner === undefined ? slope * moved : 0);
  if (post.foot.type === "side") {
    const footZ = sameOr(line - post.foot.below, own.baseZ);
    const lineZ = own.baseZ === undefined ? line : footZ + post.foot.below;
    return { baseZ: designed, lineZ, footZ };
  }
  const baseZ = sameOr(designed, own.baseZ);
  const thick = post.foot.type === "plate" ? post.foot.thickness : 0;
  return { baseZ, lineZ: post.corner === undefined ? line : baseZ, footZ: baseZ + thick };
}

/** A post where it was measured. */
function stood(place: Place, post: PlacedPost, own: AsSetPost): PlacedPost {
  const index = place.site.legs.findIndex(({ leg }) => leg.id === post.leg);
  const ground = place.site.legs[index];
  const x = sameOr(post.x, own.x);
  const moved = x - post.x;
  // The first leg, where it is level, is measured back from where the next one starts.
  const way = index === 0 && ground?.flight === undefined ? -1 : 1;
  const { offset, baseZ } = post;
  return {
    ...post,
    x,
    offset: post.corner === undefined ? offset + way * moved : offset,
    ...heightsOf(post, own, ground?.slope ?? 0, moved),
    set: {
      ...{ stage: own.stage, y: own.across, lean: own.lean, leanAcross: own.leanAcross },
      tilt: { along: tanDegrees(own.lean), across: tanDegrees(own.leanAcross) },
      design: { x: post.x, offset, baseZ },
    },
  };
}

/** The posts of a guard as they stand. */
export function standing(place: Place, posts: readonly PlacedPost[]): readonly PlacedPost[] {
  const measured = place.asSet?.posts ?? [];
  if (measured.length === 0) return posts;
  return posts.map((post) => {
    const own = measured.find((one) => one.post === post.mark);
    return own === undefined ? post : stood(place, post, own);
  });
}

/** A design whose measured legs are as long as they are; in a pair a leg may be named for one of the two guards. */
export function withMeasuredLegs(design: Design, asSet: AsSet | undefined, suffix: string): Design {
  const measured = asSet?.legs ?? [];
  if (measured.length === 0) return design;
  const legs = design.legs.map((leg) => {
    const own = measured.find((one) => one.leg === leg.id || one.leg === `${leg.id}${suffix}`);
    if (own === undefined || leg.along === "stair") return leg;
    return { ...leg, length: sameOr(leg.length ?? Number.NaN, own.length) };
  });
  return { ...design, legs };
}
