/**
 * From a design to members and joints: where everything goes, before anything is cut.
 *
 * The guard stands in its own plumb plane, y = 0; the side only names left and right. Layout frame: X uphill and onto the
 * landing, Y left looking uphill, Z up, origin at the top nosing; millimetres.
 *
 * @packageDocumentation
 */
import type { Joint, JointRules } from "../joints/joint.js";
import { type Diagnostic, diagnostic, RakewrightError } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import { checkPosts } from "./check-posts.js";
import type { Design } from "./design.js";
import { lowerRails } from "./lower-rails.js";
import { nosingLine } from "./nosing-line.js";
import { pathEnds } from "./path-ends.js";
import { placePosts } from "./place-posts.js";
import { postMembers } from "./post-members.js";
import { railPath } from "./rail-path.js";
import { layoutReport } from "./report.js";
import type { LayoutReport } from "./report-types.js";
import { sectionExtent } from "./section-extent.js";
import { topRails } from "./top-rails.js";

/** A guard laid out: what the joint solver takes, and what the shop reads. */
export interface Layout {
  /** Top rails, lower rails, posts, each from the foot upward. */
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly rules: JointRules;
  readonly report: LayoutReport;
  readonly diagnostics: readonly Diagnostic[];
}

/** Drops a member whose id or mark another one has; marks are file names, so case does not tell them apart. */
function withoutRepeats(members: readonly Member[]): {
  readonly kept: Member[];
  readonly diagnostics: Diagnostic[];
} {
  const seen = new Set<string>();
  const diagnostics: Diagnostic[] = [];
  const kept = members.filter((own) => {
    const names = [`id ${own.id.toLowerCase()}`, `mark ${(own.mark ?? own.id).toLowerCase()}`];
    const taken = names.some((name) => seen.has(name));
    for (const name of names) seen.add(name);
    if (taken) {
      diagnostics.push(
        diagnostic({
          code: "duplicate-id",
          members: [own.id],
          message: `Member ${own.id} (${own.mark ?? own.id}): expected an id and a mark of its own, got one that is taken.`,
          hint: "Pin another id; letters of either case count as the same.",
        }),
      );
    }
    return !taken;
  });
  return { kept, diagnostics };
}

/** Ids of the members a joint speaks of. */
function membersOf(joint: Joint): readonly string[] {
  if (joint.kind === "miter") return joint.ends.map((end) => end.member);
  if (joint.kind === "cope") return [joint.end.member, ...joint.onto];
  if (joint.kind === "cut") return [joint.end.member];
  return joint.kind === "bore" ? [joint.member] : [joint.bar, joint.member];
}

/**
 * Lays a guard out.
 *
 * @param design - from `parseDesign`
 * @returns members, joints, rules and report. Diagnostics: `unknown-post`, `post-hits-nosing`, `foot-hits-riser`,
 *   `foot-past-nosing`, `posts-overlap`, `rail-past-leg`, `rail-too-short`, `post-past-rail`, `rail-below-foot`,
 *   `post-wider-than-rail`, `bay-without-line`, `rail-below-post-foot`, `rails-overlap`, `duplicate-id`. What cannot be built
 *   is left out, the rest is still laid out.
 * @throws RakewrightError `bad-stair` or `bad-design` for a design that `parseDesign` would not return
 * @example
 * ```ts
 * const read = parseDesign(document);
 * if (read.ok) layOut(read.value).report.pitch;
 * ```
 */
export function layOut(design: Design): Layout {
  const line = nosingLine(design.stair);
  const rail = design.rails.find((own) => own.role === "top");
  if (rail === undefined || !design.legs.some((leg) => leg.along === "stair")) {
    throw new RakewrightError({
      code: "bad-design",
      message: "Design: expected a top rail and a stair leg.",
      hint: "Read documents with parseDesign.",
    });
  }
  const placed = placePosts(design, line);
  const { ends, diagnostics: endFindings } = pathEnds(design, line, placed.posts);
  const path = railPath(design.legs, line, sectionExtent(rail.section), ends);
  const top = topRails(design, rail, path);
  const posts = postMembers(design, rail, placed.posts, path);
  const built = placed.posts.filter((post) => posts.members.some((own) => own.id === post.id));
  const lower = lowerRails(design, line, built, path);
  const { kept, diagnostics } = withoutRepeats([...top.members, ...lower.members, ...posts.members]);
  const known = new Set(kept.map((own) => own.id));
  const joints = [...top.joints, ...lower.joints, ...posts.joints];
  return {
    members: kept,
    joints: joints.filter((joint) => membersOf(joint).every((id) => known.has(id))),
    rules: { gap: design.gap },
    report: layoutReport(design, line, rail, path, built, kept),
    diagnostics: [
      ...placed.diagnostics,
      ...checkPosts(placed.posts, design, line),
      ...endFindings,
      ...top.diagnostics,
      ...posts.diagnostics,
      ...lower.diagnostics,
      ...diagnostics,
    ],
  };
}
