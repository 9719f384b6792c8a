/**
 * What of a layout an end's fit depends on: how long a member is between its two ends' mates, and how it meets them.
 *
 * A member's centreline runs from mate to mate: between the axes or faces its ends are cut to. Angles are between the
 * centrelines, 0 to 180 degrees, by the arc tangent of sine and cosine, which stays true where two run along one line.
 *
 * @packageDocumentation
 */
import type { Piece } from "../../joints/piece.js";
import { cross, distance, dot, length, sub, type Vec3 } from "../../kernel/vec.js";
import type { Member } from "../../members/member.js";

/** Whom the two ends of a member meet: ids of members; none means it is held against plumb. */
export interface MemberMates {
  readonly id: string;
  readonly mates: readonly [readonly string[], readonly string[]];
}

/** Length, mm; then for each end and each of its mates the angle, degrees. */
export type Measures = readonly number[];

const PLUMB: Vec3 = [0, 0, 1];
const DEGREES = 180 / Math.PI;

const axisOf = ({ from, to }: Member): Vec3 => sub(to, from);

function angleBetween(a: Vec3, b: Vec3): number {
  return Math.atan2(length(cross(a, b)), dot(a, b)) * DEGREES;
}

/** A piece's length along its axis, or its longest fibre where no fibre lies on the axis. */
export const lengthOf = ({ lengths }: Piece): number => (lengths.axis ?? lengths.longPoint).value;

/** How many measures a member has. */
export const countOf = ({ mates: [first, second] }: MemberMates): number =>
  1 + Math.max(first.length, 1) + Math.max(second.length, 1);

/** Which end each measure after the length belongs to. */
export function endOfMeasure({ mates }: MemberMates, index: number): 0 | 1 {
  return index <= Math.max(mates[0].length, 1) ? 0 : 1;
}

/**
 * The measures of the members that are asked for, one list each; undefined where a member or a mate is not there.
 *
 * @param members - of a layout
 * @param wanted - members and their mates
 */
export function measuresOf(
  members: readonly Member[],
  wanted: readonly MemberMates[],
): readonly (Measures | undefined)[] {
  const byId = new Map(members.map((own) => [own.id, own]));
  return wanted.map(({ id, mates }): Measures | undefined => {
    const own = byId.get(id);
    if (own === undefined) return undefined;
    const axis = axisOf(own);
    const angles = mates.flatMap((ids) => {
      if (ids.length === 0) return [angleBetween(axis, PLUMB)];
      return ids.map((mate) => {
        const other = byId.get(mate);
        return other === undefined ? Number.NaN : angleBetween(axis, axisOf(other));
      });
    });
    return angles.some(Number.isNaN) ? undefined : [distance(own.from, own.to), ...angles];
  });
}
