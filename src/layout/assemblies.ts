/**
 * What is welded together in the shop, and what joins on site?
 *
 * The guard is parted along its path at every splice, and at corners and breaks where the design says so. What lies between two
 * partings is one assembly; a piece that crosses one is loose: it is fitted on site. A sleeve goes with the assembly below it.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../kernel/region-extent.js";
import { NODE_MM } from "../kernel/tolerance.js";
import { dot, sub, type Vec3 } from "../kernel/vec.js";
import type { Member } from "../members/member.js";
import type { Place } from "./part.js";
import { alongOf, at } from "./part.js";
import type { RailPath } from "./rail-path.js";

/** Pieces that leave the shop as one, or one by one. */
export interface LayoutAssembly {
  readonly id: string;
  readonly mark: string;
  /** `welded`: one thing; `loose`: single pieces that are fitted on site. */
  readonly kind: "welded" | "loose";
  /** Piece ids, in the layout's order. */
  readonly pieces: readonly string[];
}

/** Where the guard is parted, along its path. */
function partings(place: Place, path: RailPath): number[] {
  const asked = place.design.fieldJoints;
  const corners = asked.includes("corners") ? path.corners.map((own) => own.site.x) : [];
  const breaks = asked.includes("breaks") ? path.breaks.map((own) => own.x.axis) : [];
  const splices = path.runs.flatMap((run) => run.splices.map((own) => own.x));
  return [...new Set([...corners, ...breaks, ...splices])].sort((a, b) => a - b);
}

/** How far a section reaches back and forth along the guard. */
function sidesOf({ frame, section }: Member, along: Vec3): readonly [number, number] {
  const { least, greatest } = extentAlong(section.region.outer, [dot(frame.x, along), dot(frame.y, along)]);
  return [least, greatest];
}

interface Span {
  readonly reach: number;
  readonly x: readonly [number, number];
}

/** The members with the heading of the reach they stand in: what their shop words call uphill is the guard's own way up. */
export function withHeadings(place: Place, path: RailPath, members: readonly Member[]): Member[] {
  return members.map((own) => {
    const { heading } = place.site.plans[spanOf(place, path, own, false).reach] ?? { heading: 0 };
    return heading === 0 ? own : { ...own, heading };
  });
}

/**
 * x along the guard of a member's two ends, in the reach whose plane it is nearest to and within; of a sheet that stands in that
 * plane (`spread`) from its one side to the other.
 */
function spanOf(place: Place, path: RailPath, own: Member, spread: boolean): Span {
  const { corners, plans } = place.site;
  const ends = [path.runs[0]?.x.axis[0] ?? 0, path.runs.at(-1)?.x.axis[1] ?? 0] as const;
  const spans = plans.map((_, reach): Span & { readonly off: number } => {
    const [low, high] = [corners[reach - 1]?.x ?? ends[0], corners[reach]?.x ?? ends[1]];
    const along = alongOf(place, reach);
    const zero = at(place, reach, 0, 0);
    const [from, to] = [own.from, own.to].map((p) => sub(p, zero)) as [typeof zero, typeof zero];
    const [least, most] = spread ? sidesOf(own, along) : [0, 0];
    const beside = (p: typeof zero) => Math.abs(p[0] * along[1] - p[1] * along[0]);
    const x = [dot(from, along), dot(to, along)].sort((a, b) => a - b) as [number, number];
    const past = Math.max(0, low - x[0], x[1] - high);
    const wide = [x[0] + least, x[1] + most] as const;
    return { reach, x: wide, off: past + Math.max(beside(from), beside(to)) };
  });
  return spans.reduce((best, next) => (next.off < best.off ? next : best));
}

/**
 * The assemblies of one guard.
 *
 * @param members - of this guard, plates and sleeves included
 * @param sleeves - ids of members that bridge a parting from below
 * @param sheets - ids of plates that stand in the guard's plane and may reach over a parting
 */
export function assembliesOf(
  place: Place,
  path: RailPath,
  members: readonly Member[],
  sleeves: ReadonlySet<string>,
  sheets: ReadonlySet<string> = new Set(),
): LayoutAssembly[] {
  const cuts = partings(place, path);
  const groups = Array.from({ length: cuts.length + 1 }, (): string[] => []);
  const loose: string[] = [];
  for (const own of members) {
    const [from, to] = spanOf(place, path, own, sheets.has(own.id)).x;
    const first = cuts.filter((x) => x <= from + NODE_MM).length;
    const last = cuts.filter((x) => x < to - NODE_MM).length;
    if (last <= first) groups[Math.min(first, Math.max(last, 0), cuts.length)]?.push(own.id);
    else if (sleeves.has(own.id)) groups[first]?.push(own.id);
    else loose.push(own.id);
  }
  const { prefix, suffix } = place;
  const welded = groups
    .filter((pieces) => pieces.length > 0)
    .map((pieces, i): LayoutAssembly => {
      return { id: `${prefix}assembly-${i + 1}`, mark: `A${i + 1}${suffix}`, kind: "welded", pieces };
    });
  if (loose.length === 0) return welded;
  return [...welded, { id: `${prefix}loose`, mark: `LOOSE${suffix}`, kind: "loose", pieces: loose }];
}
