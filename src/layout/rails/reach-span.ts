/**
 * In which reach of the guard does a member stand, and from where to where along it?
 *
 * The reach whose plane it is nearest to and within; x along the guard, millimetres.
 *
 * @packageDocumentation
 */
import { extentAlong } from "../../kernel/region-extent.js";
import { dot, sub, type Vec3 } from "../../kernel/vec.js";
import type { Member } from "../../members/member.js";
import { alongOf, at, type Place } from "../part.js";
import type { RailPath } from "./rail-path.js";

/** How far a section reaches back and forth along the guard. */
function sidesOf({ frame, section }: Member, along: Vec3): readonly [number, number] {
  const { least, greatest } = extentAlong(section.region.outer, [dot(frame.x, along), dot(frame.y, along)]);
  return [least, greatest];
}

/** A stretch along the guard, and the reach it is in. */
export interface Span {
  readonly reach: number;
  readonly x: readonly [number, number];
}

/**
 * x along the guard of a member's two ends, in the reach whose plane it is nearest to and within; of a sheet that stands in that
 * plane (`spread`) from its one side to the other.
 */
export function spanOf(place: Place, path: RailPath, own: Member, spread: boolean): Span {
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

/** The members with the heading of the reach they stand in: what their shop words call uphill is the guard's own way up. */
export function withHeadings(place: Place, path: RailPath, members: readonly Member[]): Member[] {
  return members.map((own) => {
    const { heading } = place.site.plans[spanOf(place, path, own, false).reach] ?? { heading: 0 };
    return heading === 0 ? own : { ...own, heading };
  });
}
