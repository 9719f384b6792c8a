/**
 * A handrail in its place: what its links, ends, brackets and report are made from.
 *
 * @packageDocumentation
 */
import type { HandrailDesign } from "../document/handrail-design.js";
import type { Place } from "../part.js";
import type { RailRun } from "../rails/rail-path.js";
import type { SectionExtent } from "../section-extent.js";
import type { HandrailPath } from "./handrail-path.js";

/** A handrail that has been placed. */
export interface PlacedHandrail {
  readonly place: Place;
  readonly design: HandrailDesign;
  readonly extent: SectionExtent;
  /** Before the ids of its members. */
  readonly id: string;
  /** In the document, e.g. `handrails[0]`. */
  readonly path: string;
  readonly line: HandrailPath;
  readonly ends: readonly [number, number];
}

/** Id of a run's member. */
export function linkId({ id }: Pick<PlacedHandrail, "id">, run: Pick<RailRun, "id">): string {
  return `${id}-${run.id}`;
}
