/**
 * The top rail, and the cap on it, as members: one a run, mitred where runs meet, with a plumb leg where a break is held.
 *
 * Marks are R1, R2… from the foot (C1, C2… for a cap). At a corner post both rails are left to the post; other corners are
 * mitred.
 *
 * @packageDocumentation
 */
import type { Joint, MemberEnd } from "../../joints/joint.js";
import { type Diagnostic, diagnostic } from "../../kernel/diagnostic.js";
import { CORNER_STEP_MM } from "../../kernel/tolerance.js";
import { negate, type Vec3 } from "../../kernel/vec.js";
import { type Member, member } from "../../members/member.js";
import { cutToPost } from "../as-set/beside.js";
import type { RailDesign } from "../document/design.js";
import { alongOf, at, type Part, type Place } from "../part.js";
import type { PlacedPost } from "../posts/place-posts.js";
import { sayLength } from "../say-length.js";
import { sectionExtent } from "../section-extent.js";
import { cornerRolls } from "./corner-rolls.js";
import type { PathBreak } from "./path-break.js";
import { edgeZ, type PathCorner, type RailPath, type RailRun } from "./rail-path.js";

/** Id of the rail's member on a run, e.g. `stair-top`; of a spliced one the piece at x, `stair-top-2`, the first by default. */
export function railId(
  place: Place,
  run: Pick<RailRun, "id" | "splices">,
  rail: RailDesign,
  x = Number.NEGATIVE_INFINITY,
): string {
  const before = run.splices.filter((splice) => splice.x < x).length;
  return `${place.prefix}${run.id}-${rail.id}${before === 0 ? "" : `-${before + 1}`}`;
}

/** Id of the piece at a run's upper end. */
export function lastRailId(place: Place, run: RailRun, rail: RailDesign): string {
  return railId(place, run, rail, Number.POSITIVE_INFINITY);
}

/** Id of the plumb leg at a break. */
export function legId(place: Place, path: RailPath, found: PathBreak, rail: RailDesign): string {
  return `${railId(place, path.runs[found.runs[1]] as RailRun, rail)}-drop`;
}

/** A run's axis point at x. */
function axisPoint(place: Place, run: RailRun, x: number): Vec3 {
  return at(place, run.reach, x, edgeZ(run, "axis", x));
}

/** The run of a break that is level, or the upper one: both members end in a point of its axis. */
function nodeRun(path: RailPath, found: PathBreak): RailRun {
  const runs = found.runs.map((i) => path.runs[i] as RailRun);
  return (runs.find((run) => run.slope === 0) ?? runs[1]) as RailRun;
}

/** Where a run starts (side 0) and ends (1), for its member. */
function nodeOf(place: Place, path: RailPath, i: number, side: 0 | 1): Vec3 {
  const run = path.runs[i] as RailRun;
  const found = path.breaks.find((own) => own.runs[1 - side] === i);
  if (found !== undefined) {
    return axisPoint(place, found.leg === undefined ? nodeRun(path, found) : run, found.x.axis);
  }
  const corner = path.corners.find((own) => own.runs[1 - side] === i);
  // Mitred corners have one point for both members: that of the lower run.
  const shared = corner !== undefined && mitred(corner);
  const [lower] = corner?.runs ?? [i];
  const of = shared ? (path.runs[lower] as RailRun) : run;
  return axisPoint(place, of, run.x.axis[side]);
}

/** True where the two rails are mitred in plan; rails that miss each other are left apart (their diagnostic says so). */
const mitred = ({ site, step }: PathCorner): boolean =>
  site.kind !== "post" && Math.abs(step) <= CORNER_STEP_MM;

function tooShort(run: RailRun, id: string): Diagnostic[] {
  const lengths = Object.values(run.x).map(([from, to]) => to - from);
  const shortest = Math.min(...lengths);
  if (shortest > 0) return [];
  return [
    diagnostic({
      code: "rail-too-short",
      path: `legs[${run.ground.index}]`,
      members: [id],
      message: `Top rail on the ${run.leg.id}: expected its end past its start on every edge, got ${sayLength(shortest)} in plan.`,
      hint: run.stub
        ? "The level piece at the corner has no room: move the corner farther from the nosing, or bring the heights nearer to each other."
        : "The heights put a break beyond the end of the leg: bring the heights nearer to each other, or make the leg longer.",
      values: { shortest },
    }),
  ];
}

function badBreak(path: RailPath, found: PathBreak, id: string): Diagnostic[] {
  const upper = path.runs[found.runs[1]] as RailRun;
  const where = `legs[${upper.ground.index}].break`;
  const hint = "Make the heights equal, or further apart, or let the lines meet.";
  if (found.leg !== undefined && !found.leg.feasible) {
    const { length, shortestLeg } = found.leg;
    const message = `Break before the ${upper.leg.id}: expected a plumb leg longer than ${sayLength(shortestLeg)} between centrelines, got ${sayLength(length)}.`;
    return [
      diagnostic({
        code: "drop-too-short",
        path: where,
        members: [id],
        message,
        hint,
        values: { length, shortestLeg },
      }),
    ];
  }
  if (found.met) return [];
  const step = found.heightLevel - found.heightRake;
  return [
    diagnostic({
      code: "rails-never-meet",
      path: where,
      members: [id],
      message: `Break before the ${upper.leg.id}: expected lines that meet, got parallel rails ${sayLength(step)} apart plumb.`,
      hint: 'Give both legs one height, or ask for a plumb leg: `"break": { "type": "drop" }`.',
      values: { step },
    }),
  ];
}

/** What the two rails of a corner are cut to where its post stands beside its designed place: the rules look for it there. */
export function cornerCopes(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  posts: readonly PlacedPost[],
): Omit<Part, "members"> {
  const { halfWidth } = sectionExtent(rail.section);
  const made = posts.flatMap((post) => {
    const corner =
      post.corner && path.corners.find((own) => own.site === place.site.corners[post.corner?.index ?? -1]);
    const { set } = post;
    if (corner === undefined || set === undefined) return [];
    const { tilt, design, y } = set;
    if (post.x === design.x && y === 0 && tilt.along === 0 && tilt.across === 0) return [];
    const [lower, upper] = corner.runs.map((i) => path.runs[i] as RailRun) as [RailRun, RailRun];
    const ends = [
      { member: lastRailId(place, lower, rail), end: 1 },
      { member: railId(place, upper, rail), end: 0 },
    ] as const;
    return [lower, upper].map(({ reach, slope, z0, leg }, i) =>
      cutToPost(place, post, {
        ...{ end: ends[i] as MemberEnd, mark: `rail ${rail.id} on the ${leg.id}`, halfWidth },
        line: { reach, slope, z0: z0.axis },
      }),
    );
  });
  return {
    joints: made.flatMap((own) => own.joints),
    diagnostics: made.flatMap((own) => own.diagnostics),
  };
}

/** Members and joints of one rail that runs over the posts. */
export function topRails(
  place: Place,
  rail: RailDesign,
  path: RailPath,
  letter: "R" | "C",
  ends: readonly Joint[],
): Part {
  const { material } = place.design;
  const { section } = rail;
  const role = letter === "R" ? "top-rail" : "rail";
  const rolls = cornerRolls(path, rail);
  const diagnostics: Diagnostic[] = [];
  const members: Member[] = [];
  const joints: Joint[] = [...ends];
  const bad = new Set<number>();
  let number = 0;
  const add = (id: string, from: Vec3, to: Vec3, more: { up?: Vec3; roll?: number } = {}) => {
    number += 1;
    const mark = `${letter}${number}${place.suffix}`;
    members.push(member({ id, mark, section, from, to, role, material, ...more }));
  };
  const miter = (id: string, lower: MemberEnd, upper: MemberEnd) =>
    joints.push({ kind: "miter", id: `${place.prefix}${id}`, ends: [lower, upper] });
  path.runs.forEach((run, i) => {
    const id = railId(place, run, rail);
    const short = tooShort(run, id);
    diagnostics.push(...short);
    const found = path.breaks.find((own) => own.runs[1] === i);
    const broken = found === undefined ? [] : badBreak(path, found, id);
    diagnostics.push(...broken);
    if (short.length + broken.length > 0) bad.add(i);
    if (found?.leg !== undefined && broken.length === 0) {
      const [lower, upper] = [nodeOf(place, path, i - 1, 1), nodeOf(place, path, i, 0)];
      const along = alongOf(place, run.reach);
      const drop = legId(place, path, found, rail);
      add(drop, lower, upper, { up: found.leg.length > 0 ? negate(along) : along });
      const before = lastRailId(place, path.runs[i - 1] as RailRun, rail);
      miter(`break-${before}-${drop}`, { member: before, end: 1 }, { member: drop, end: 0 });
      miter(`break-${drop}-${id}`, { member: drop, end: 1 }, { member: id, end: 0 });
    } else if (found !== undefined) {
      const before = path.runs[i - 1] as RailRun;
      const name =
        letter === "R" ? `break-${before.id}-${run.id}` : `break-${before.id}-${run.id}-${rail.id}`;
      miter(name, { member: lastRailId(place, before, rail), end: 1 }, { member: id, end: 0 });
    }
    const corner = path.corners.find((own) => own.runs[1] === i);
    if (corner !== undefined && mitred(corner)) {
      const before = lastRailId(place, path.runs[corner.runs[0]] as RailRun, rail);
      miter(`corner-${before}-${id}`, { member: before, end: 1 }, { member: id, end: 0 });
    }
    const roll = rolls[i] ?? 0;
    if (bad.has(i)) return;
    const stops = run.splices.map((splice) => axisPoint(place, run, splice.x));
    const points = [nodeOf(place, path, i, 0), ...stops, nodeOf(place, path, i, 1)];
    points.slice(1).forEach((to, k) => {
      const own = k === 0 ? id : `${id}-${k + 1}`;
      add(own, points[k] as Vec3, to, roll === 0 ? {} : { roll });
    });
  });
  return { members, joints, diagnostics };
}
