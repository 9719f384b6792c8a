/**
 * Branches that stand side by side on one header and run into each other there.
 *
 * Each is cut to the header as decided; two that would overlap are also parted. Alike in section and meeting in one
 * line, both take the plane that halves the angle between them: their outsides meet on it. Otherwise the narrower one is
 * shaped to the other's skin as well, if that skin stops it only where the other has material; else both take the miter
 * plane, and the step their outsides leave on it is said. A plane parts any two, so none is left overlapping.
 *
 * Which of two goes first: one whose joint was asked for, then the wider across both, then the top rail before other
 * rails, posts and the rest, then by id; the order of the members plays no part. Millimetres, layout.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { extentAlong, reachOf } from "../kernel/region-extent.js";
import { segmentDistance } from "../kernel/segment-distance.js";
import { STATION_MM } from "../kernel/tolerance.js";
import { cross, dot, sub, type Vec3 } from "../kernel/vec.js";
import type { Member, Role } from "../members/member.js";
import { type Branch, ontoBranch, overlapInto } from "./branch-overlap.js";
import { type Decision, endKey } from "./decision.js";
import { partingPlane } from "./fixed.js";
import { miterPlane } from "./miter-plane.js";
import { endPoint } from "./nodes.js";
import type { Piece } from "./piece.js";

/** The rule's name in decisions and on papers. */
const RULE = "rule:shared-header";

interface Standing extends Branch {
  readonly key: string;
  readonly header: Member;
  /** Stretch of the header's axis that the branch can reach, millimetres from the header's origin. */
  readonly low: number;
  readonly high: number;
}

/** What parts branches on shared headers: for each end the decisions to put beside its own, and the findings. */
export interface Parting {
  readonly beside: ReadonlyMap<string, readonly Decision[]>;
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Finds and parts all pairs of branches that overlap on a header they share.
 *
 * @param byEnd - every end's decision
 * @param kept - ends that are cut already, by `endKey`: the other of the pair gives way, to the same plane where the cut has one
 */
export function partBranches(
  byEnd: ReadonlyMap<string, Decision>,
  members: ReadonlyMap<string, Member>,
  kept: ReadonlyMap<string, Piece>,
): Parting {
  const beside = new Map<string, Decision[]>();
  const diagnostics: Diagnostic[] = [];
  const put = (b: Standing, decision: Decision): void => {
    const list = beside.get(b.key);
    if (list) list.push(decision);
    else beside.set(b.key, [decision]);
  };
  const seen = new Set<string>();
  for (const [a, b] of neighbours(byEnd, members)) {
    const pair = a.key < b.key ? `${a.key}\n${b.key}` : `${b.key}\n${a.key}`;
    if (seen.has(pair) || yields(a, b) || yields(b, a)) continue;
    seen.add(pair);
    const found = part(a, b, members, kept);
    if (!found) continue;
    for (const [branch, decision] of found.cuts) put(branch, decision);
    if (found.diagnostic) diagnostics.push(found.diagnostic);
  }
  return { beside, diagnostics };
}

const yields = (a: Branch, b: Branch): boolean => a.decision.onto.includes(b.member.id);

/** Pairs of branches on one header that come near each other, header by header along its axis. */
function* neighbours(
  byEnd: ReadonlyMap<string, Decision>,
  members: ReadonlyMap<string, Member>,
): Generator<readonly [Standing, Standing]> {
  const onHeader = new Map<string, Standing[]>();
  for (const member of members.values()) {
    for (const end of [0, 1] as const) {
      const key = endKey({ member: member.id, end });
      const decision = byEnd.get(key);
      if (decision?.kind !== "skin") continue;
      for (const id of decision.onto) {
        const header = members.get(id);
        if (!header || id === member.id) continue;
        const list = onHeader.get(id);
        const own = standing({ member, end, decision }, key, header);
        if (list) list.push(own);
        else onHeader.set(id, [own]);
      }
    }
  }
  for (const list of onHeader.values()) {
    list.sort((a, b) => a.low - b.low || (a.key < b.key ? -1 : 1));
    for (const [i, a] of list.entries()) {
      for (let k = i + 1; k < list.length && (list[k] as Standing).low <= a.high; k++) {
        const b = list[k] as Standing;
        if (a.member.id !== b.member.id && near(a.member, b.member)) yield [a, b];
      }
    }
  }
}

function standing(branch: Branch, key: string, header: Member): Standing {
  const { member } = branch;
  const along = (p: Vec3): number => dot(sub(p, header.frame.origin), header.frame.z);
  const [s0, s1] = [along(member.from), along(member.to)];
  const radius = reachOf(member.section.region.outer);
  return { ...branch, key, header, low: Math.min(s0, s1) - radius, high: Math.max(s0, s1) + radius };
}

/** False when the centrelines stay farther apart than the two sections reach. */
function near(a: Member, b: Member): boolean {
  const reach = reachOf(a.section.region.outer) + reachOf(b.section.region.outer);
  return segmentDistance(a.from, a.to, b.from, b.to).distance < reach;
}

interface Parted {
  readonly cuts: readonly (readonly [Standing, Decision])[];
  readonly diagnostic?: Diagnostic;
}

function part(
  a: Standing,
  b: Standing,
  members: ReadonlyMap<string, Member>,
  kept: ReadonlyMap<string, Piece>,
): Parted | null {
  const [first, second] = kept.has(b.key) || (!kept.has(a.key) && before(b, a)) ? [b, a] : [a, b];
  if (kept.has(second.key)) return null;
  const bound = kept.get(first.key);
  const parted = bound && partingPlane(bound, first.end, second.member.id);
  if (parted) return { cuts: [[second, parting(parted, 0, first)]] };
  const into = overlapInto(second, first, members);
  const back = overlapInto(first, second, members);
  if (!into || !back || Math.max(into.depth, back.depth) <= STATION_MM) return null;
  const plane = miterPlane(first.member, first.end, second.member, second.end);
  const flat = plane.kind === "plane" && !bound;
  if (into.shapes && !(flat && plane.step <= STATION_MM))
    return { cuts: [[second, ontoBranch(second, first, RULE)]] };
  if (!flat) return { cuts: [], diagnostic: unparted(second, first, Math.max(into.depth, back.depth)) };
  const { step } = plane;
  const cuts = [
    [first, parting(plane, step, second)],
    [second, parting(plane, step, first)],
  ] as const;
  return step <= STATION_MM ? { cuts } : { cuts, diagnostic: stepped(first, second, step, plane.axisGap) };
}

/** The cut along the plane that parts a branch from its mate. */
function parting(
  { point, normal }: { readonly point: Vec3; readonly normal: Vec3 },
  step: number,
  mate: Standing,
): Decision {
  return { kind: "flat", joint: RULE, onto: [mate.member.id], point, normal, miter: true, step };
}

const ROLES: readonly Role[] = ["top-rail", "rail", "post", "other"];

/** True when a goes before b. */
function before(a: Standing, b: Standing): boolean {
  const asked = (s: Standing): number => (s.decision.joint.startsWith("rule:") ? 1 : 0);
  if (asked(a) !== asked(b)) return asked(a) < asked(b);
  const across = cross(a.member.frame.z, b.member.frame.z);
  const wide = (s: Standing): number => {
    const { frame, section } = s.member;
    const [u, v] = [dot(across, frame.x), dot(across, frame.y)];
    const size = Math.hypot(u, v);
    if (size === 0) return 0;
    const { least, greatest } = extentAlong(section.region.outer, [u / size, v / size]);
    return greatest - least;
  };
  const wider = wide(a) - wide(b);
  if (Math.abs(wider) > STATION_MM) return wider > 0;
  const rank = ROLES.indexOf(a.member.role) - ROLES.indexOf(b.member.role);
  return rank === 0 ? a.member.id < b.member.id : rank < 0;
}

function unparted(a: Standing, b: Standing, depth: number): Diagnostic {
  return diagnostic({
    code: "members-cross",
    members: [a.member.id, b.member.id],
    joint: RULE,
    end: a.end,
    point: endPoint(a.member, a.end),
    message: `${a.member.id} and ${b.member.id} run into each other on ${a.header.id}, ${depth.toFixed(3)} mm along a fibre, and neither can be shaped to the other as they stand.`,
    hint: `Move one of them along ${a.header.id}, cut one to a plane, or let both be cut anew.`,
    values: { depth },
  });
}

function stepped(a: Standing, b: Standing, step: number, axisGap: number): Diagnostic {
  return diagnostic({
    code: "miter-steps",
    severity: "warning",
    members: [a.member.id, b.member.id, a.header.id],
    joint: RULE,
    end: a.end,
    point: endPoint(a.member, a.end),
    message: `${a.member.id} and ${b.member.id} run into each other on ${a.header.id} and are parted by one plane, on which their outsides miss each other by up to ${step.toFixed(3)} mm.`,
    hint: "Use one section for both and line them up, move one along the header, or cope one to the other by name.",
    values: { step, axisGap },
  });
}
