/**
 * What is welded together in the shop, and what joins on site?
 *
 * The guard is parted along its path at every splice, and at corners and breaks where the design says so. What lies between two
 * partings is one assembly; a piece that crosses one is loose: it is fitted on site. A sleeve goes with the assembly below it.
 *
 * @packageDocumentation
 */
import { NODE_MM } from "../kernel/tolerance.js";
import type { Member } from "../members/member.js";
import type { Place } from "./part.js";
import type { RailPath } from "./rails/rail-path.js";
import { spanOf } from "./rails/reach-span.js";

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
