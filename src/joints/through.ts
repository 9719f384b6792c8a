/**
 * A bar that runs through a drilled member: the bore that lets it.
 *
 * The bore follows the bar's axis through every wall of the member, as wide as the bar and its clearance all round. The bar
 * is round, lies across the member and reaches out of it on both sides; it is not cut there. Millimetres, layout in, the
 * drilled member's frame out.
 *
 * @packageDocumentation
 */
import type { Bore } from "../kernel/bar.js";
import { boreWalls } from "../kernel/bore.js";
import { placeWall } from "../kernel/bore-clearance.js";
import { splitsClearOf } from "../kernel/bore-splits.js";
import { type Diagnostic, type DiagnosticInput, diagnostic } from "../kernel/diagnostic.js";
import { directionToLocal, pointToLocal } from "../kernel/frame.js";
import { PARALLEL_SINE, ROUNDING_MM } from "../kernel/tolerance.js";
import { cross, distance, dot, length, sub } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { ThroughJoint } from "./joint.js";

/** The bore a `through` joint drills, in the frame of the member it is in, or why it cannot be drilled. */
export type ThroughResult = { readonly bore: Bore } | { readonly diagnostic: Diagnostic };

/** The bore for a bar through a member. What only the walls can tell, a bore that misses say, is found with all bores. */
export function throughBore(joint: ThroughJoint, bar: Member, member: Member): ThroughResult {
  const { id, clearance } = joint;
  const refuse = (why: DiagnosticInput): ThroughResult => ({
    diagnostic: diagnostic({
      ...why,
      joint: id,
      members: [member.id, bar.id],
      message: `Joint ${id}: ${why.message}`,
    }),
  });
  const { shape } = bar.section;
  if (shape.kind !== "round-tube" && shape.kind !== "round-bar") {
    return refuse({
      code: "through-not-round",
      message: `${bar.id} (${bar.section.name}) is not round; only a round bar runs through a drilled hole.`,
      hint: "Use a round bar or tube, or end the bar at the member on both sides.",
    });
  }
  if (length(cross(bar.frame.z, member.frame.z)) < PARALLEL_SINE) {
    return refuse({
      code: "through-along",
      message: `${bar.id} runs along ${member.id}, not through it.`,
      hint: "Name the member that the bar crosses.",
    });
  }
  const { frame } = member;
  const drilled = (diameter: number): Bore => ({
    id,
    point: pointToLocal(frame, bar.from),
    direction: directionToLocal(frame, bar.frame.z),
    diameter,
    through: "both",
  });
  const shortBy = missing(drilled(shape.od), bar, member);
  if (shortBy > ROUNDING_MM) {
    return refuse({
      code: "through-stops-short",
      message: `${bar.id} ends ${shortBy.toFixed(3)} mm before it is out of ${member.id}.`,
      hint: "Make the bar longer, or drill the member to a depth with a bore through its first wall.",
      values: { shortBy },
    });
  }
  return { bore: drilled(shape.od + 2 * clearance) };
}

/** How far a bar's centreline stops short of either side of a member; 0 when it reaches out of both. */
function missing(bore: Bore, bar: Member, member: Member): number {
  const region = splitsClearOf(member.section.region, [bore]);
  const made = boreWalls(region, bore);
  if ("diagnostic" in made) return 0;
  const reaches = made.walls.flatMap((wall) =>
    placeWall(region, wall).stretch.map((p) => dot(sub(p, bore.point), wall.stance.surface.frame.z)),
  );
  return Math.max(0, -Math.min(...reaches), Math.max(...reaches) - distance(bar.from, bar.to));
}
