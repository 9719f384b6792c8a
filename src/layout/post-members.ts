/**
 * Posts as members: plumb, from the top of their plate to the top rail's axis.
 *
 * A post that ends on the rail's axis yields to the rail by the solver's own rule. Two cases are asked for explicitly: a
 * post under a break is shaped to both rails, and a post wider than its rail is closed at the rail's mid-depth, with a
 * warning that says how much of it stands out. Layout frame, millimetres.
 *
 * @packageDocumentation
 */
import type { CopeJoint, Joint } from "../joints/joint.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { STATION_MM } from "../kernel/tolerance.js";
import { type Member, member } from "../members/member.js";
import type { Design, RailDesign } from "./design.js";
import type { PlacedPost } from "./place-posts.js";
import { edgeZ, type RailPath, type RailRun, runAt } from "./rail-path.js";
import { sayLength } from "./say-length.js";
import { type SectionExtent, sectionExtent } from "./section-extent.js";
import { type Part, topRailId } from "./top-rails.js";

/** The legs whose rails a post's top touches: two under a break, when its footprint meets the miter between axis and underside. */
function railsOver(post: PlacedPost, run: RailRun, path: RailPath): readonly string[] {
  const half = post.extent.depth / 2;
  const broken = path.breaks.find(
    ({ x }) => post.x + half > x.axis + STATION_MM && post.x - half < x.underside - STATION_MM,
  );
  return broken?.between ?? [run.along];
}

function pastRail(post: PlacedPost, path: RailPath): Diagnostic[] {
  const first = path.runs[0]?.x.axis[0] ?? 0;
  const last = path.runs.at(-1)?.x.axis[1] ?? 0;
  const half = post.extent.depth / 2;
  const by = Math.max(first - (post.x - half), post.x + half - last);
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "post-past-rail",
      path: post.path,
      members: [post.id],
      message: `Post ${post.mark}: expected it to stand wholly under the top rail, got a face ${sayLength(by)} past the rail's end.`,
      hint: "Move the post in, or let the leg or its rail reach farther.",
      values: { by },
    }),
  ];
}

function tooLow(post: PlacedPost, run: RailRun): Diagnostic[] {
  const height = edgeZ(run, "underside", post.x) - (run.slope * post.extent.depth) / 2 - post.footZ;
  if (height > 0) return [];
  return [
    diagnostic({
      code: "rail-below-foot",
      path: post.path,
      members: [post.id],
      message: `Post ${post.mark}: expected the rail's underside above the top of the plate, got ${sayLength(height)} at its lower face.`,
      hint: "Raise the rail, or make the plate thinner.",
      values: { height },
    }),
  ];
}

function topJoint(post: PlacedPost, onto: readonly string[], rail: RailDesign, by: number): CopeJoint[] {
  const wide = by > STATION_MM;
  if (!wide && onto.length === 1) return [];
  const joint = { kind: "cope", id: `${post.id}-top`, end: { member: post.id, end: 1 } } as const;
  const headers = onto.map((along) => topRailId(along, rail));
  return [{ ...joint, onto: headers, ...(wide ? { shoulder: "midline" as const } : {}) }];
}

function wider(post: PlacedPost, by: number, rail: RailDesign, railExtent: SectionExtent): Diagnostic[] {
  if (by <= STATION_MM) return [];
  return [
    diagnostic({
      code: "post-wider-than-rail",
      severity: "warning",
      path: post.path,
      members: [post.id],
      message: `Post ${post.mark} (${post.section.name}): expected it no wider across than the top rail (${rail.section.name}), got ${sayLength(by)} more on each side; its sides are closed level with the rail's mid-depth.`,
      hint: "Grind the corners to suit, use a narrower post or a wider rail.",
      values: { bySide: by, postHalfWidth: post.extent.halfWidth, railHalfWidth: railExtent.halfWidth },
    }),
  ];
}

/** The posts' members; a post that is not under the rail, or has no height, is left out with its diagnostic. */
export function postMembers(
  design: Design,
  rail: RailDesign,
  posts: readonly PlacedPost[],
  path: RailPath,
): Part {
  const members: Member[] = [];
  const joints: Joint[] = [];
  const diagnostics: Diagnostic[] = [];
  const railExtent = sectionExtent(rail.section);
  for (const post of posts) {
    const run = runAt(path, "axis", post.x);
    const past = pastRail(post, path);
    const low = past.length === 0 && run !== undefined ? tooLow(post, run) : [];
    diagnostics.push(...past, ...low);
    if (run === undefined || past.length + low.length > 0) continue;
    const { id, mark, section, x } = post;
    const by = post.extent.halfWidth - railExtent.halfWidth;
    members.push(
      member({
        ...{ id, mark, section, role: "post", material: design.material, up: [1, 0, 0] },
        from: [x, 0, post.footZ],
        to: [x, 0, edgeZ(run, "axis", x)],
      }),
    );
    joints.push(...topJoint(post, railsOver(post, run, path), rail, by));
    diagnostics.push(...wider(post, by, rail, railExtent));
  }
  return { members, joints, diagnostics };
}
