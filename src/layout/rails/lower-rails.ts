/**
 * Lower rails as members: one piece a bay, from post axis to post axis, cut to the posts by the solver's rule.
 *
 * Marks are B and the bay's number from the foot; a second lower rail adds `-2`, a bay broken in two adds `a`, `b`.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import type { Vec3 } from "../../kernel/vec.js";
import { type Member, member } from "../../members/member.js";
import { cutBeside } from "../as-set/beside.js";
import type { RailDesign } from "../document/design.js";
import { at, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import type { RakeLine } from "../posts/post-line.js";
import { type SectionExtent, sectionExtent } from "../section-extent.js";
import { type Bay, memberId, type Stretch, tailOf } from "./bay.js";
import { bayLine } from "./bay-line.js";
import { checkBay } from "./check-bay.js";
import type { RailPath } from "./rail-path.js";

function axisPoint(place: Place, stretch: Stretch, x: number, extent: SectionExtent): Vec3 {
  const z = stretch.z0 + extent.below * Math.hypot(1, stretch.slope) + stretch.slope * x;
  return at(place, stretch.reach, x, z);
}

/** Points the bay's axis runs through; a break's is taken on the level stretch, one point for both members. */
export function bayPoints(place: Place, { stretches, extent }: Bay): Vec3[] {
  const ends = stretches.map((stretch, i): Vec3 => {
    const before = stretches[i - 1];
    const x = stretch.x[0];
    return axisPoint(place, before !== undefined && before.slope === 0 ? before : stretch, x, extent);
  });
  const last = stretches.at(-1);
  return last === undefined ? ends : [...ends, axisPoint(place, last, last.x[1], extent)];
}

/** The axis of one stretch. */
export function axisLine(extent: SectionExtent, { reach, slope, z0 }: Omit<Stretch, "x">): RakeLine {
  return { reach, slope, z0: z0 + extent.below * Math.hypot(1, slope) };
}

/** Members of a bay's rail, one a stretch, mitred to one another. */
export function bayPart(place: Place, bay: Bay): Part {
  const { material } = place.design;
  const points = bayPoints(place, bay);
  const single = bay.stretches.length === 1;
  const name = (i: number) => memberId(bay, i);
  const members = bay.stretches.flatMap((_, i): Member[] => {
    const [from, to] = [points[i], points[i + 1]];
    if (from === undefined || to === undefined) return [];
    const mark = `${bay.mark}${single ? "" : tailOf(i)}${place.suffix}`;
    return [member({ id: name(i), mark, section: bay.rail.section, from, to, role: "rail", material })];
  });
  const joints = members.slice(1).map((_, i): Joint => {
    const ends = [
      { member: name(i), end: 1 },
      { member: name(i + 1), end: 0 },
    ] as const;
    return { kind: "miter", id: `${bay.id}-break-${i + 1}`, ends };
  });
  const last = bay.stretches.length - 1;
  const railAt = (i: number, end: 0 | 1) => ({
    ...{ end: { member: name(i), end }, mark: bay.mark, halfWidth: bay.extent.halfWidth },
    line: axisLine(bay.extent, bay.stretches[i] as Stretch),
  });
  const [low, high] = [cutBeside(place, bay.from, railAt(0, 0)), cutBeside(place, bay.to, railAt(last, 1))];
  return {
    members,
    joints: [...joints, ...low.joints, ...high.joints],
    diagnostics: [...low.diagnostics, ...high.diagnostics],
  };
}

function stuck(rail: RailDesign, from: PlacedPost, to: PlacedPost): Diagnostic {
  return diagnostic({
    code: "bay-without-line",
    path: to.path,
    members: [from.id, to.id],
    message: `Rail ${rail.id} between posts ${from.mark} and ${to.mark}: expected room for its breaks between the posts, got none.`,
    hint: "Put a post on the stair or at the corner, move these posts apart, or change the undersides.",
  });
}

/** The lower rails between neighbouring posts. */
export function lowerRails(
  place: Place,
  posts: readonly PlacedPost[],
  path: RailPath,
): Part & { readonly bays: readonly Bay[] } {
  const diagnostics: Diagnostic[] = [];
  const bays: Bay[] = [];
  const rails = place.design.rails.filter((rail) => rail.role === "lower");
  posts.slice(1).forEach((to, i) => {
    const from = posts[i];
    if (from === undefined || to.x - from.x <= (from.extent.depth + to.extent.depth) / 2) return;
    const inBay = rails.flatMap((rail, k): Bay[] => {
      const extent = sectionExtent(rail.section);
      const found = bayLine(place, rail, extent, from, to);
      if (found.kind === "stuck") diagnostics.push(stuck(rail, from, to));
      if (found.kind !== "line") return [];
      const mark = `B${i + 1}${k === 0 ? "" : `-${k + 1}`}`;
      return [
        {
          id: `${place.prefix}bay-${i + 1}-${rail.id}`,
          mark,
          rail,
          extent,
          from,
          to,
          stretches: found.stretches,
        },
      ];
    });
    const findings = checkBay(place, inBay, path);
    diagnostics.push(...findings);
    const bad = new Set(findings.flatMap((d) => d.members));
    bays.push(...inBay.filter((bay) => !bad.has(bay.id)));
  });
  const parts = bays.map((bay) => bayPart(place, bay));
  return {
    bays,
    members: parts.flatMap((part) => part.members),
    joints: parts.flatMap((part) => part.joints),
    diagnostics: [...diagnostics, ...parts.flatMap((part) => part.diagnostics)],
  };
}
