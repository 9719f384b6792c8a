/**
 * Handrails as members: a chain of straight links, mitred at breaks, plan corners and returns.
 *
 * Marks are H1, H2… from the foot, through all handrails of a guard; flanges HF1, HF2…; brackets HB1…
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { CORNER_STEP_MM, STATION_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";
import type { HandrailDesign } from "../document/handrail-design.js";
import { alongOf, joined, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { crossX, inwardReach, postAxis, xAt } from "../posts/post-line.js";
import type { RailRun } from "../rails/rail-path.js";
import type { RunLine } from "../rails/rail-runs.js";
import type { HandrailReport } from "../report-types.js";
import { sayLength } from "../say-length.js";
import { sectionExtent } from "../section-extent.js";
import { handrailBrackets } from "./brackets.js";
import { type ChainPiece, chainPart, type Link } from "./chain.js";
import { graspNote } from "./grasp.js";
import {
  axisAtRail,
  type HandrailEndPlace,
  type HandrailReturnPart,
  handrailReturn,
  postAt,
  postFindings,
  type StandingPost,
} from "./handrail-ends.js";
import { handrailLines } from "./handrail-lines.js";
import { handrailPath } from "./handrail-path.js";
import { handrailReport } from "./handrail-report.js";
import { pathLinks } from "./path-links.js";
import { linkId, type PlacedHandrail } from "./placed-handrail.js";

/** The handrails of a guard, and what is said about them. */
export interface Handrails {
  readonly part: Part;
  readonly reports: readonly HandrailReport[];
}

function missedCorners(rail: PlacedHandrail): Diagnostic[] {
  return rail.line.corners.flatMap(({ site, step }): Diagnostic[] => {
    if (Math.abs(step) <= CORNER_STEP_MM) return [];
    const leg = rail.place.site.legs[site.legs[1]]?.leg.id;
    return [
      diagnostic({
        code: "handrail-corner-misses",
        path: rail.path,
        message: `Handrail ${rail.design.id}, corner before the ${leg}: expected both pieces at one height, got a step of ${sayLength(step)}.`,
        hint: "Let the floor at the corner be level, or end the handrail there and start another one.",
        values: { step },
      }),
    ];
  });
}

/** Where the handrail would run through a post. */
function inPosts(rail: PlacedHandrail, posts: readonly PlacedPost[]): Diagnostic[] {
  const { design, extent, line, path } = rail;
  const { place } = rail;
  const runsOf = (reach: number) => line.runs.filter((run) => run.reach === reach);
  /** Where the post's axis is as high as the handrail's. */
  const meets = (post: PlacedPost) => {
    const runs = runsOf(post.reach);
    const run = runs.find((own) => own.x.axis[1] >= post.x) ?? runs.at(-1);
    const rake = { slope: run?.slope ?? 0, z0: run?.z0.axis ?? post.footZ };
    const x = crossX(postAxis(place.site, post), rake);
    return { x, z: rake.z0 + rake.slope * x };
  };
  const beside = posts.filter((post) => {
    const runs = runsOf(post.reach);
    const [from, to] = [runs[0]?.x.axis[0] ?? Number.NaN, runs.at(-1)?.x.axis[1] ?? Number.NaN];
    const { x } = meets(post);
    return x + post.extent.depth / 2 > from && x - post.extent.depth / 2 < to;
  });
  const half = (post: PlacedPost) => inwardReach(place, post, post.reach, [meets(post).z]);
  const least = Math.max(0, ...beside.map(half)) + extent.halfWidth;
  const hit = beside.filter((post) => design.inward < half(post) + extent.halfWidth - STATION_MM);
  if (hit.length === 0) return [];
  return [
    diagnostic({
      code: "handrail-in-posts",
      path: `${path}.inward`,
      members: hit.map((post) => post.id),
      message: `Handrail ${design.id}: expected its centre at least ${sayLength(least)} from the guard's middle plane, half a post and half the rail, got ${sayLength(design.inward)}.`,
      hint: "Move the handrail farther towards the walking side.",
      values: { least, inward: design.inward },
    }),
  ];
}

function tooShort(rail: PlacedHandrail) {
  return (link: Link, shortest: number): Diagnostic =>
    diagnostic({
      code: "handrail-too-short",
      path: link.path,
      members: [link.id],
      message: `Handrail ${rail.design.id}, ${link.id}: expected a piece with every edge longer than nothing between its miters, got a shortest edge of ${sayLength(shortest)}.`,
      hint: "Make the extension or return longer, or move the corner farther from the nosing.",
      values: { shortest },
    });
}

function placed(place: Place, index: number, posts: readonly StandingPost[]) {
  const design = place.design.handrails[index] as HandrailDesign;
  const extent = sectionExtent(design.section);
  const path = `handrails[${index}]`;
  const xs = (leg: string) =>
    posts
      .filter((post) => post.leg === leg)
      .map((post) => xAt(postAxis(place.site, post), post.lineZ + design.height));
  const lines = handrailLines(place.site, design, xs);
  const outer = [lines.lines[0] as RunLine, lines.lines.at(-1) as RunLine] as const;
  const sides = [design.bottom, design.top] as const;
  const into = ([0, 1] as const).map((side) =>
    sides[side]?.back?.to === "post" ? postAt(posts, outer[side], extent, lines.ends[side], side) : undefined,
  );
  const endX = (side: 0 | 1): number => {
    const post = into[side];
    return post === undefined ? lines.ends[side] : axisAtRail(place, post, outer[side], extent);
  };
  const ends = [endX(0), endX(1)] as const;
  const line = handrailPath(place, lines, ends, extent, design.inward);
  const rail: PlacedHandrail = {
    ...{ place, design, extent, path, line, ends },
    id: `${place.prefix}${design.id}`,
  };
  return { rail, into };
}

/** A plumb cut of an end that nothing is mitred to. */
function freeEnd(rail: PlacedHandrail, side: 0 | 1): { joint: Joint; normal: Vec3 } {
  const run = rail.line.runs.at(side === 0 ? 0 : -1) as RailRun;
  const id = linkId(rail, run);
  const type = run.slope === 0 ? "square" : "plumb";
  const joint: Joint = {
    ...{ kind: "cut", id: `${id}-end-${side}`, end: { member: id, end: side }, cut: { type } },
  };
  return { joint, normal: alongOf(rail.place, run.reach) };
}

interface Numbers {
  readonly pieces: number;
  readonly flanges: number;
  readonly brackets: number;
}

function handrailPart(
  place: Place,
  index: number,
  posts: readonly StandingPost[],
  before: Numbers,
): { readonly part: Part; readonly report: HandrailReport; readonly after: Numbers } {
  const { rail, into } = placed(place, index, posts);
  const { design, extent, path, ends } = rail;
  const links = pathLinks({ ...rail, inward: design.inward, idOf: (run) => linkId(rail, run) });
  const diagnostics: Diagnostic[] = [...missedCorners(rail), ...inPosts(rail, posts)];
  const joints: Joint[] = [];
  const made: (HandrailReturnPart | undefined)[] = [];
  let flanges = before.flanges;
  ([0, 1] as const).forEach((side) => {
    const back = (side === 0 ? design.bottom : design.top)?.back;
    const run = rail.line.runs.at(side === 0 ? 0 : -1) as RailRun;
    const flanged = back !== undefined && back.to !== "post" && back.flange !== undefined;
    if (flanged) flanges += 1;
    const link = links[side === 0 ? 0 : links.length - 1] as Link;
    const end: HandrailEndPlace = {
      ...{ place, design, extent, id: rail.id, side, run, x: ends[side] },
      path: `${path}.${side === 0 ? "bottom" : "top"}`,
      point: side === 0 ? link.from : link.to,
      mark: `HF${flanges}${place.suffix}`,
    };
    if (back?.to === "post") diagnostics.push(...postFindings(end, into[side], extent));
    const own = back && handrailReturn(end, back, into[side]);
    made.push(own);
    if (own === undefined) joints.push(freeEnd(rail, side).joint);
  });
  const [low, high] = made;
  const free = ([0, 1] as const).map((side) => (made[side] ? undefined : freeEnd(rail, side).normal));
  const cut = links.map((link, i): Link => {
    const [first, last] = [i === 0, i === links.length - 1];
    const cuts = [first ? free[0] : undefined, last ? free[1] : undefined] as const;
    return { ...link, cuts, mitred: link.mitred || (first && low !== undefined) };
  });
  const chain = [...(low ? [{ ...low.link, mitred: false }] : []), ...cut, ...(high ? [high.link] : [])];
  const built = chainPart(chain, {
    ...{ section: design.section, role: "rail", material: place.design.material },
    mark: (i) => `H${before.pieces + i + 1}${place.suffix}`,
    tooShort: tooShort(rail),
  });
  const pieces: readonly ChainPiece[] = built.pieces;
  const brackets = handrailBrackets(rail, posts, before.brackets);
  const note =
    design.graspable && graspNote(design.id, design.section, design.graspable, `${path}.graspable`);
  const part = joined([
    built,
    ...[low, high].flatMap((own) => (own ? [own] : [])),
    brackets.part,
    { members: [], joints, diagnostics: [...diagnostics, ...(note ? [note] : [])] },
  ]);
  return {
    part,
    report: handrailReport(rail, pieces, brackets.reports),
    after: {
      pieces: before.pieces + chain.length,
      flanges,
      brackets: before.brackets + brackets.reports.length,
    },
  };
}

/** All handrails of a guard; what cannot be built is left out with its diagnostic. */
export function handrails(place: Place, posts: readonly StandingPost[]): Handrails {
  let numbers: Numbers = { pieces: 0, flanges: 0, brackets: 0 };
  const made = place.design.handrails.map((_, i) => {
    const own = handrailPart(place, i, posts, numbers);
    numbers = own.after;
    return own;
  });
  return { part: joined(made.map((own) => own.part)), reports: made.map((own) => own.report) };
}
