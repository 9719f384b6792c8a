/**
 * A rail as a chain of straight links, mitred to each other: how long is the shortest fibre of each?
 *
 * Every corner is cut by the plane that halves its turn τ, τ/2 from square on both sides (handbook of returns and extensions). A
 * plane with normal n shortens the fibre at p from the axis by p·w, w = (n − (n·a)a)/(n·a) for a link along a, so the shortest
 * fibre is the axis less the section's reach along w₀ + w₁: exact for every section and two cuts in any directions. Millimetres.
 *
 * @packageDocumentation
 */
import type { Joint } from "../../joints/joint.js";
import type { Diagnostic } from "../../kernel/diagnostic.js";
import { extentAlong } from "../../kernel/region-extent.js";
import { PARALLEL_SINE, SHORTEST_FIBRE_MM } from "../../kernel/tolerance.js";
import { add, addScaled, dot, length, scale, sub, type Vec3 } from "../../kernel/vec.js";
import { type Member, type MemberInput, member } from "../../members/member.js";
import type { Section } from "../../members/section.js";
import type { Part } from "../part.js";

/** One link. */
export interface Link extends Pick<MemberInput, "up" | "roll"> {
  readonly id: string;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Unit: the way it is meant to run, from `from`; a link that runs backward has no room. */
  readonly way: Vec3;
  /** Normals of cuts that are no miters, at either end; a miter where the next link starts, square where none does. */
  readonly cuts?: readonly [Vec3 | undefined, Vec3 | undefined];
  /** Where it is in the document. */
  readonly path: string;
  /** False where it is not mitred to the link before. */
  readonly mitred: boolean;
}

/** What all links have in common. */
export interface ChainCommon extends Pick<MemberInput, "role" | "material"> {
  readonly section: Section;
  readonly mark: (index: number) => string;
  /** Says that a link has no room. */
  readonly tooShort: (link: Link, shortest: number) => Diagnostic;
}

/** A link as it was built. */
export interface ChainPiece {
  readonly id: string;
  readonly mark: string;
  /** Between its two points. */
  readonly length: number;
  /** Shortest fibre. */
  readonly shortestEdge: number;
}

/** How fast a cut shortens the fibres of a link along `way`, per millimetre across. */
function lean(way: Vec3, normal: Vec3): Vec3 {
  const along = dot(way, normal);
  return scale(addScaled(normal, way, -along), 1 / along);
}

const SQUARE: Vec3 = [0, 0, 0];

function leanAt(links: readonly Link[], i: number, side: 0 | 1): Vec3 {
  const link = links[i] as Link;
  const asked = link.cuts?.[side];
  const beside = links[side === 0 ? i - 1 : i + 1];
  const mitred = side === 0 ? link.mitred : (beside?.mitred ?? false);
  const normal = asked ?? (beside !== undefined && mitred ? add(link.way, beside.way) : undefined);
  if (normal === undefined) return SQUARE;
  return side === 0 ? scale(lean(link.way, normal), -1) : lean(link.way, normal);
}

/** Shortest fibre of link i. */
function shortestFibre(links: readonly Link[], i: number, own: Member | undefined, axis: number): number {
  if (own === undefined) return axis;
  const w = add(leanAt(links, i, 0), leanAt(links, i, 1));
  const [u, v] = [dot(w, own.frame.x), dot(w, own.frame.y)];
  const size = Math.hypot(u, v);
  if (!(size > PARALLEL_SINE)) return axis;
  return axis - size * extentAlong(own.section.region.outer, [u / size, v / size]).greatest;
}

/**
 * Members and miters of a chain; a link without room is left out with its diagnostic.
 *
 * @param links - in order; each starts where the one before ends
 */
export function chainPart(
  links: readonly Link[],
  common: ChainCommon,
): Part & { readonly pieces: readonly ChainPiece[] } {
  const { section, role = "rail", material } = common;
  const members: Member[] = [];
  const joints: Joint[] = [];
  const diagnostics: Diagnostic[] = [];
  const pieces: ChainPiece[] = [];
  links.forEach((link, i) => {
    const { id, from, to, up, roll } = link;
    const mark = common.mark(i);
    const axis = dot(sub(to, from), link.way);
    const more = {
      ...(up && { up }),
      ...(roll !== undefined && { roll }),
      ...(material !== undefined && { material }),
    };
    const own =
      axis > 0 && length(sub(to, from)) > 2 * SHORTEST_FIBRE_MM
        ? member({ id, mark, section, from, to, role, ...more })
        : undefined;
    const shortest = shortestFibre(links, i, own, axis);
    if (own === undefined || !(shortest > 0)) diagnostics.push(common.tooShort(link, shortest));
    else {
      members.push(own);
      pieces.push({ id, mark, length: axis, shortestEdge: shortest });
    }
    const before = links[i - 1];
    if (before === undefined || !link.mitred) return;
    joints.push({
      ...{ kind: "miter", id: `${before.id}-${id}` },
      ends: [
        { member: before.id, end: 1 },
        { member: id, end: 0 },
      ],
    });
  });
  return { members, joints, diagnostics, pieces };
}
