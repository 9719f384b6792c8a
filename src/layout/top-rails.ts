/**
 * The top rail as members: one a leg, mitred at the breaks, cut plumb or square at the ends.
 *
 * @packageDocumentation
 */
import type { Joint } from "../joints/joint.js";
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import type { Vec3 } from "../kernel/vec.js";
import { type Member, member } from "../members/member.js";
import type { Design, RailDesign } from "./design.js";
import { edgeZ, type PathBreak, type RailPath, type RailRun } from "./rail-path.js";
import { sayLength } from "./say-length.js";

/** Members and joints of one part of the guard. */
export interface Part {
  readonly members: readonly Member[];
  readonly joints: readonly Joint[];
  readonly diagnostics: readonly Diagnostic[];
}

/** Id of the top rail on a leg, e.g. `stair-top`. */
export function topRailId(along: string, rail: RailDesign): string {
  return `${along}-${rail.id}`;
}

/** Where two runs' axes meet: on the level one, so that both members end in the very same point. */
function nodeOf(found: PathBreak, path: RailPath): Vec3 {
  const level = path.runs.find((run) => run.slope === 0 && found.between.includes(run.along));
  return [found.x.axis, 0, level === undefined ? 0 : edgeZ(level, "axis", found.x.axis)];
}

function tooShort(run: RailRun, id: string, index: number): Diagnostic[] {
  const lengths = Object.values(run.x).map(([from, to]) => to - from);
  const shortest = Math.min(...lengths);
  if (shortest > 0) return [];
  return [
    diagnostic({
      code: "rail-too-short",
      path: `legs[${index}]`,
      members: [id],
      message: `Top rail on the ${run.along}: expected its end past its start on every edge, got ${sayLength(shortest)} in plan.`,
      hint: "The heights put a break beyond the end of the leg: bring the heights nearer to each other, or make the leg longer.",
      values: { shortest },
    }),
  ];
}

function endJoint(run: RailRun, id: string, end: 0 | 1, design: Design): Joint {
  const leg = design.legs.find((own) => own.along === run.along);
  const x = run.x.top[end];
  const at: Vec3 = [x, 0, edgeZ(run, "top", x)];
  const cut = { type: run.along === "stair" ? "plumb" : "square" } as const;
  const wall = leg?.end?.type === "wall" ? (leg.end.endPlate > 0 ? "end plate" : "wall") : undefined;
  const base = { kind: "cut", id: `${id}-end-${end}`, end: { member: id, end }, cut, at } as const;
  return wall === undefined ? base : { ...base, onto: wall };
}

/** The top rail's members with marks R1, R2… from the foot. */
export function topRails(design: Design, rail: RailDesign, path: RailPath): Part {
  const members: Member[] = [];
  const joints: Joint[] = [];
  const diagnostics: Diagnostic[] = [];
  const nodes = path.breaks.map((found) => nodeOf(found, path));
  path.runs.forEach((run, i) => {
    const id = topRailId(run.along, rail);
    const [fromX, toX] = run.x.axis;
    const short = tooShort(run, id, i);
    diagnostics.push(...short);
    if (short.length > 0) return;
    const from = nodes[i - 1] ?? [fromX, 0, edgeZ(run, "axis", fromX)];
    const to = nodes[i] ?? [toX, 0, edgeZ(run, "axis", toX)];
    const { section } = rail;
    members.push(
      member({ id, mark: `R${i + 1}`, section, from, to, role: "top-rail", material: design.material }),
    );
    if (i === 0) joints.push(endJoint(run, id, 0, design));
    if (i === path.runs.length - 1) joints.push(endJoint(run, id, 1, design));
    const before = path.runs[i - 1];
    if (before !== undefined) {
      const lower = topRailId(before.along, rail);
      const ends = [
        { member: lower, end: 1 },
        { member: id, end: 0 },
      ] as const;
      joints.push({ kind: "miter", id: `break-${before.along}-${run.along}`, ends });
    }
  });
  return { members, joints, diagnostics };
}
