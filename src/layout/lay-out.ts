/**
 * From a design to members and joints: where everything goes, before anything is cut.
 *
 * Between two plan turns a guard stands in one plumb plane. Layout frame: X along the last flight, uphill; Y left looking
 * uphill; Z up; origin at the top nosing of that flight, in the guard's plane (the left one's, where there are two); millimetres.
 *
 * @packageDocumentation
 */
import type { Joint, JointRules } from "../joints/joint.js";
import { type Diagnostic, diagnostic, RakewrightError } from "../kernel/diagnostic.js";
import type { Member } from "../members/member.js";
import type { AsSet } from "./as-set/as-set.js";
import type { LayoutAssembly } from "./assemblies.js";
import { checkPair } from "./check-plan.js";
import type { Design } from "./document/design.js";
import type { Shop } from "./document/shop.js";
import { guardLayout } from "./guard-layout.js";
import { joined, type Place } from "./part.js";
import { placesOf } from "./places.js";
import { heightFindings } from "./rails/height-findings.js";
import { layoutReport, postReports } from "./report.js";
import type { LayoutReport } from "./report-types.js";
import { sectionExtent } from "./section-extent.js";

/** A guard laid out: what the joint solver takes, and what the shop reads. */
export interface Layout {
  /** Top rails, lower rails, posts, each from the foot upward. */
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly rules: JointRules;
  /** What is welded in the shop and what is fitted on site; every member is in one of them. */
  readonly assemblies: readonly LayoutAssembly[];
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
 * @param shop - from `parseShop`: sleeves are held against its slip fit and finish; without one they only have to go in
 * @param asSet - from `parseAsSet`: measured posts and legs override the design's, and everything that meets them follows
 * @returns members, joints, rules, assemblies and report. Diagnostics: `unknown-post`, `post-hits-nosing`, `foot-hits-riser`,
 *   `foot-past-nosing`, `foot-past-edge`, `substrate-thin`, `hole-near-edge`, `guard-crosses-itself`, `guards-meet`, `post-past-leg`, `posts-overlap`, `rail-past-leg`, `rail-too-short`, `drop-too-short`,
 *   `rails-never-meet`, `corner-rails-miss`, `corner-level-too-short`, `post-past-rail`, `rail-below-foot`,
 *   `post-wider-than-rail`, `bay-without-line`, `rail-below-post-foot`, `rails-overlap`, `splice-past-run`, `splice-at-post`,
 *   `sleeve-too-wide`, `unknown-leg`, `handrail-too-short`,
 *   `handrail-corner-misses`, `handrail-in-posts`, `handrail-no-post`, `handrail-wide-for-post`, `handrail-grasp`,
 *   `bracket-without-post`, `bracket-too-short`, `toe-board-too-short`, `toe-board-without-bay`,
 *   `toe-board-in-foot`, `toe-board-hits-rail`,
 *   `infill-without-rail`, `infill-too-wide`, `infill-no-room`, `infill-too-many`,
 *   `bar-without-seat`, `side-plate-gap`, `rail-past-post-side`, `post-misses-rail`, `infill-not-parallel`,
 *   `infill-misses-corner`, `infill-wider-space`, `bad-plate`, `bad-section`, `heights-no-rail`, `height-outside`,
 *   `duplicate-id`. What cannot be built is left out, the rest is still laid out.
 * @throws RakewrightError `bad-stair` or `bad-design` for a design that `parseDesign` would not return
 * @example
 * ```ts
 * const read = parseDesign(document);
 * if (read.ok) layOut(read.value).report.pitch;
 * ```
 */
export function layOut(design: Design, shop?: Shop, asSet?: AsSet): Layout {
  if (!design.legs.some((leg) => leg.along === "stair")) {
    throw new RakewrightError({
      code: "bad-design",
      message: "Design: expected a top rail and a stair leg.",
      hint: "Read documents with parseDesign.",
    });
  }
  const places = placesOf(design, shop, asSet);
  const all = places.map(guardLayout);
  const [left, right] = all;
  const width = left === undefined ? 0 : 2 * sectionExtent(left.rail.section).halfWidth;
  const meeting =
    left === undefined || right === undefined
      ? []
      : checkPair([places[0] as Place, left.path], [places[1] as Place, right.path], width);
  // A pair that runs into each other is one finding, not a hundred crossings: the left-hand guard is laid out.
  const guards = meeting.length > 0 ? all.slice(0, 1) : all;
  const whole = joined(guards.map((guard) => guard.part));
  const { kept, diagnostics } = withoutRepeats(whole.members);
  const known = new Set(kept.map((own) => own.id));
  const [place, guard] = [places[0] as Place, guards[0] as (typeof guards)[number]];
  const report = layoutReport(place, guard.rail, guard.path, guard.posts, kept, guard.over, guard);
  // Of a pair the left-hand guard is told; the right-hand one where it was found to differ.
  const rightPosts = guards.slice(1).flatMap(({ posts, path, over }, i) => {
    const found = posts.filter((post) => post.set !== undefined);
    return postReports(places[i + 1] as Place, found, path, over?.path ?? path);
  });
  return {
    members: kept,
    joints: whole.joints.filter((joint) => membersOf(joint).every((id) => known.has(id))),
    rules: { gap: design.gap },
    assemblies: guards.flatMap((own) =>
      own.assemblies.map((one) => ({ ...one, pieces: one.pieces.filter((id) => known.has(id)) })),
    ),
    report: { ...report, posts: [...report.posts, ...rightPosts] },
    diagnostics: [
      ...whole.diagnostics,
      ...meeting,
      ...diagnostics,
      ...heightFindings(place.site.legs, report),
    ],
  };
}
