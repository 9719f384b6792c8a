/**
 * Is there room for a toe board: a bay at all, above the posts' plates, below the lower rails?
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { STATION_MM } from "../../kernel/tolerance.js";
import type { ToeBoardDesign } from "../document/handrail-design.js";
import type { Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { sayLength } from "../say-length.js";
import type { SectionExtent } from "../section-extent.js";
import type { LegGround } from "../site/site.js";

interface Bay {
  readonly from: PlacedPost;
  readonly to: PlacedPost;
  readonly legs: readonly LegGround[];
}

/** True where a post's plate reaches under the board. */
function reachesUnder({ foot, extent }: PlacedPost, face: ToeBoardDesign["face"]): boolean {
  if (foot.type !== "plate") return false;
  return face === "inside"
    ? (foot.across ?? 0) > 2 * extent.halfWidth + STATION_MM
    : (foot.along ?? 0) > extent.depth + STATION_MM;
}

function inFeet({ site }: Place, design: ToeBoardDesign, bays: readonly Bay[]): Diagnostic[] {
  const posts = [...new Set(bays.flatMap(({ from, to }) => [from, to]))];
  return posts.flatMap((post): Diagnostic[] => {
    const slope = post.corner ? 0 : (site.legs.find(({ leg }) => leg.id === post.leg)?.slope ?? 0);
    const thickness = post.foot.type === "plate" ? post.foot.thickness * Math.hypot(1, slope) : 0;
    if (!reachesUnder(post, design.face) || thickness <= design.gap + STATION_MM) return [];
    return [
      diagnostic({
        code: "toe-board-in-foot",
        path: "toeBoard.gap",
        members: [post.id],
        message: `Toe board at post ${post.mark}: expected its underside above the post's plate (${sayLength(thickness)}), got ${sayLength(design.gap)} above the floor.`,
        hint: "Make `gap` larger, or the plate no larger than the post.",
        values: { thickness, gap: design.gap },
      }),
    ];
  });
}

function underRails(
  { design: { rails } }: Place,
  design: ToeBoardDesign,
  extent: SectionExtent,
  bays: readonly Bay[],
): Diagnostic[] {
  const legs = [...new Set(bays.flatMap((bay) => bay.legs))];
  return legs.flatMap(({ leg, index, slope }): Diagnostic[] => {
    const top = design.gap + extent.depth * Math.hypot(1, slope);
    const hit = rails.find(
      (rail) => (leg.undersides[rail.id] ?? Number.POSITIVE_INFINITY) < top - STATION_MM,
    );
    if (hit === undefined || design.face === "inside") return [];
    const underside = leg.undersides[hit.id] as number;
    return [
      diagnostic({
        code: "toe-board-hits-rail",
        path: `legs[${index}].undersides.${hit.id}`,
        message: `Toe board on the ${leg.id}: expected its top below rail ${hit.id} (underside ${sayLength(underside)} high), got ${sayLength(top)}.`,
        hint: "Raise the rail, use a lower flat, or put the boards in front of the posts.",
        values: { top, underside },
      }),
    ];
  });
}

/** Findings about toe boards. */
export function toeBoardFindings(
  place: Place,
  design: ToeBoardDesign,
  extent: SectionExtent,
  bays: readonly Bay[],
): Diagnostic[] {
  if (bays.length === 0) {
    return [
      diagnostic({
        code: "toe-board-without-bay",
        path: "toeBoard",
        message: "Toe board: expected two posts beside each other on one of its level legs, got none.",
        hint: "Put posts on a floor or landing, or leave the toe board out.",
      }),
    ];
  }
  return [...inFeet(place, design, bays), ...underRails(place, design, extent, bays)];
}
