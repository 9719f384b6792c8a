/**
 * Lays one guard out: rails, posts, plates, ends, on one side of the stair.
 *
 * @packageDocumentation
 */
import { type Diagnostic, RakewrightError } from "../kernel/diagnostic.js";
import type { Section } from "../members/section.js";
import { standing } from "./as-set/stand.js";
import { assembliesOf, type LayoutAssembly } from "./assemblies.js";
import { checkPlan } from "./check-plan.js";
import type { RailDesign } from "./document/design.js";
import { handrails } from "./handrails/handrails.js";
import { toeBoards } from "./handrails/toe-board.js";
import { infill } from "./infill/infill.js";
import { joined, type Part, type Place } from "./part.js";
import { checkPosts } from "./posts/check-posts.js";
import { checkFeet } from "./posts/foot-holes.js";
import { footPlates } from "./posts/foot-plates.js";
import { type PlacedPost, placePosts } from "./posts/place-posts.js";
import { postMembers } from "./posts/post-members.js";
import { checkCorners } from "./rails/corners.js";
import { lowerRails } from "./rails/lower-rails.js";
import { pathEnds } from "./rails/path-ends.js";
import { splicesOn } from "./rails/placed-splice.js";
import { railEnds } from "./rails/rail-ends.js";
import { metAtCorners, type RailPath, railPath } from "./rails/rail-path.js";
import { type RunLine, railRuns } from "./rails/rail-runs.js";
import { withHeadings } from "./rails/reach-span.js";
import { spliceParts } from "./rails/splices.js";
import { cornerCopes, railId, topRails } from "./rails/top-rails.js";
import type { HandrailReport, InfillReport } from "./report-types.js";
import { type SectionExtent, sectionExtent } from "./section-extent.js";
import type { LegGround } from "./site/site.js";

/** One guard: its part of the model, and what the report is made from. */
export interface GuardLayout {
  readonly part: Part;
  readonly rail: RailDesign;
  readonly path: RailPath;
  /** The cap on it, where there is one: what the hand is on. */
  readonly over?: { readonly rail: RailDesign; readonly path: RailPath };
  /** Those that were built. */
  readonly posts: readonly PlacedPost[];
  readonly assemblies: readonly LayoutAssembly[];
  readonly handrails: readonly HandrailReport[];
  readonly infill: readonly InfillReport[];
}

/** The same lines, lower by the cap that lies on them, square to each run. */
function lowered(lines: readonly RunLine[], cap: SectionExtent | undefined): readonly RunLine[] {
  if (cap === undefined) return lines;
  return lines.map((run) => ({
    ...run,
    z0: run.z0 - cap.depth * Math.hypot(1, run.slope),
    capBelow: cap.below,
  }));
}

/** The runs with the splices of the legs they run over; short level pieces have none. */
function withSplices({ design, site }: Place, runs: readonly RunLine[]): readonly RunLine[] {
  const whole = runs.filter((run) => !run.stub);
  const ownerOf = (leg: LegGround) =>
    whole.filter((run) => run.reach === leg.reach && run.ground.index <= leg.index).at(-1);
  return runs.map((run) => {
    const legs = run.stub ? [] : site.legs.filter((leg) => ownerOf(leg) === run);
    return { ...run, splices: splicesOn(site, design.splices, legs) };
  });
}

/** The rail that runs over the posts. */
function topRail(place: Place): RailDesign {
  const rail = place.design.rails.find((own) => own.role === "top");
  if (rail !== undefined) return rail;
  throw new RakewrightError({
    code: "bad-design",
    message: "Design: expected a top rail and a stair leg.",
    hint: "Read documents with parseDesign.",
  });
}

/** A stair side with handrails and no guard. */
function handrailsOnly(place: Place, section: Section): GuardLayout {
  const hand = handrails(place, []);
  const checks: Part = { members: [], joints: [], diagnostics: placePosts(place).diagnostics };
  const part = joined([checks, hand.part, toeBoards(place, [])]);
  const path: RailPath = { runs: [], breaks: [], corners: [] };
  return {
    part: { ...part, members: withHeadings(place, path, part.members) },
    rail: { id: "top", role: "top", section },
    path,
    posts: [],
    assemblies: assembliesOf(place, path, part.members, new Set()),
    handrails: hand.reports,
    infill: [],
  };
}

/** Lays a guard out at its place. */
export function guardLayout(place: Place): GuardLayout {
  const { design, site } = place;
  const [alone] = design.rails.length === 0 ? design.handrails : [];
  if (alone !== undefined) return handrailsOnly(place, alone.section);
  const rail = topRail(place);
  const cap = design.rails.find((own) => own.role === "cap");
  const placed = placePosts(place);
  const stood = standing(place, placed.posts);
  const lines = withSplices(place, railRuns(site).runs);
  const capExtent = cap && sectionExtent(cap.section);
  const extent = sectionExtent(rail.section);
  const { ends, diagnostics: endFindings } = pathEnds(place, stood, lowered(lines, capExtent), extent);
  const path = railPath(site, metAtCorners(site, lowered(lines, capExtent), extent), extent, ends);
  const plain = lines.map((run) => ({ ...run, splices: [] }));
  const capPath = capExtent && railPath(site, metAtCorners(site, plain, capExtent), capExtent, ends);
  const atCorners = cornerCopes(place, rail, path, stood);
  const finish = railEnds(place, rail, path, stood);
  const top = topRails(place, rail, path, "R", [...finish.joints, ...atCorners.joints]);
  const over =
    cap && capPath
      ? [topRails(place, cap, capPath, "C", cornerCopes(place, cap, capPath, stood).joints)]
      : [];
  const spliced = spliceParts(place, rail, path, stood, (run, x) => railId(place, run, rail, x));
  const posts = postMembers(place, rail, stood, path);
  const ids = new Set(posts.members.map((own) => own.id));
  const built = stood.filter((post) => ids.has(post.id));
  const lower = lowerRails(place, built, path);
  const filled = infill(place, rail, path, built, lower.bays);
  const feet = footPlates(place, built);
  const topOf = new Map(posts.members.map((own) => [own.id, own.to[2]]));
  const hand = handrails(
    place,
    built.map((post) => ({ ...post, topZ: topOf.get(post.id) ?? post.footZ })),
  );
  const checks: Diagnostic[] = [
    ...placed.diagnostics,
    ...checkPosts(place, stood, (post) => topOf.get(post.id) ?? post.footZ),
    ...checkFeet(place, stood),
    ...checkPlan(place, path, 2 * extent.halfWidth),
    ...endFindings,
    ...atCorners.diagnostics,
    ...checkCorners(place, path, extent),
  ];
  const part = joined([
    { members: [], joints: [], diagnostics: checks },
    top,
    ...over,
    spliced,
    lower,
    filled,
    posts,
    feet,
    { ...finish, joints: [] },
    hand.part,
    toeBoards(place, built),
  ]);
  const sheets = new Set(filled.members.filter((own) => own.kind === "plate").map((own) => own.id));
  const sleeves = new Set(spliced.members.map((own) => own.id));
  const assemblies = assembliesOf(place, path, part.members, sleeves, sheets);
  return {
    part: { ...part, members: withHeadings(place, path, part.members) },
    rail,
    path,
    ...(cap && capPath ? { over: { rail: cap, path: capPath } } : {}),
    posts: built,
    assemblies,
    handrails: hand.reports,
    infill: filled.infill,
  };
}
