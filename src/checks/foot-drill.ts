/**
 * Where are the holes of base plates drilled, and how far is the riser in front of them?
 *
 * A post on a tread is cut to its base plate, whose outline runs with the guard in v, + uphill. The riser face stands
 * `overhang` behind the next nosing. Of each plate the hole nearest to it counts. Frame: along the guard, millimetres.
 *
 * @packageDocumentation
 */
import type { Piece } from "../joints/piece.js";
import { extentAlong } from "../kernel/region-extent.js";
import type { Design } from "../layout/document/design.js";
import type { PostReport } from "../layout/report-types.js";
import { stepLine } from "../layout/site/measured-line.js";
import { plateSizes } from "../members/plate-sizes.js";
import type { DrillPlace } from "./drill-room.js";

/**
 * The hole of each base plate on a tread that is nearest to the riser in front of it.
 *
 * @param design - its legs know the steps
 * @param posts - from the layout's report
 * @param pieces - of the same guard; posts on plates without holes, and posts that are on no tread, are passed over
 * @returns places for `drillRoom`, in the posts' order
 * @example
 * drillRoom(footDrillPlaces(guard.design, guard.report.posts, guard.pieces), DEFAULT_SHOP);
 */
export function footDrillPlaces(
  { legs }: Pick<Design, "legs">,
  posts: readonly PostReport[],
  pieces: readonly Piece[],
): readonly DrillPlace[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  return posts.flatMap(({ id, mark, leg, tread, offset }) => {
    const stair = legs.find((own) => own.id === leg)?.stair;
    const reach = nearestHole(byId.get(id), byId);
    if (stair === undefined || tread === undefined || reach === undefined) return [];
    const { nosings } = stepLine(stair);
    const [own, next] = [nosings[tread - 1], nosings[tread]];
    if (!own || !next) return [];
    const toFace = next.x + stair.overhang - own.x - offset - reach;
    return [{ member: id, mark, toFace, face: `the riser in front of tread ${tread}` }];
  });
}

/** How far uphill of the post's centre its plate's farthest hole is. */
function nearestHole(post: Piece | undefined, byId: ReadonlyMap<string, Piece>): number | undefined {
  const plates = (post?.cuts ?? []).flatMap((cut) => cut.onto.map((id) => byId.get(id)));
  const plate = plates.find((own) => own?.kind === "plate");
  if (!plate) return undefined;
  const { least } = extentAlong(plate.section.region.outer, [0, 1]);
  const reaches = plateSizes(plate.section).holes.map((hole) => least + hole.fromBottom);
  return reaches.length === 0 ? undefined : Math.max(...reaches);
}
