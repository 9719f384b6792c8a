/**
 * A lower rail between two neighbouring posts, as data.
 *
 * @packageDocumentation
 */
import type { RailDesign } from "../document/design.js";
import type { PlacedPost } from "../posts/place-posts.js";
import type { SectionExtent } from "../section-extent.js";

/** A straight stretch of a lower rail: underside z = z0 + slope·x from x[0] to x[1], where its axis starts and ends. */
export interface Stretch {
  readonly reach: number;
  readonly slope: number;
  readonly z0: number;
  readonly x: readonly [number, number];
}

/** One lower rail in one bay. */
export interface Bay {
  readonly id: string;
  readonly mark: string;
  readonly rail: RailDesign;
  readonly extent: SectionExtent;
  readonly from: PlacedPost;
  readonly to: PlacedPost;
  readonly stretches: readonly Stretch[];
}

/** A letter for one of several pieces of a bay. */
export const tailOf = (i: number): string => String.fromCharCode("a".charCodeAt(0) + i);

/** Id of the member of one stretch. */
export function memberId(bay: Bay, stretch: number): string {
  return bay.stretches.length === 1 ? bay.id : `${bay.id}-${tailOf(stretch)}`;
}
