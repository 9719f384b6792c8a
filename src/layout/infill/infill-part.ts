/**
 * What filling one opening adds to the guard: pieces, joints, findings and what the report says of it.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../../kernel/diagnostic.js";
import { joined, type Part, type Place } from "../part.js";
import { tailOf } from "../rails/bay.js";
import type { InfillReport } from "../report-types.js";
import type { Opening, Row } from "./opening.js";

/** A part with its lines of the report. */
export interface InfillPart extends Part {
  readonly infill: readonly InfillReport[];
}

/** Nothing but findings. */
export function onlyFindings(diagnostics: readonly Diagnostic[]): InfillPart {
  return { members: [], joints: [], diagnostics, infill: [] };
}

/** Parts one after another. */
export function allOf(parts: readonly InfillPart[]): InfillPart {
  return { ...joined(parts), infill: parts.flatMap((part) => part.infill) };
}

/** The start of the ids and of the marks of one row's pieces: `bay-3`, `3`; `bay-3-b`, `3b` for the second row. */
export function rowName(
  place: Place,
  opening: Opening,
  row: Row,
): { readonly id: string; readonly mark: string } {
  const tail = row.number === 1 ? "" : tailOf(row.number - 1);
  return {
    id: `${place.prefix}bay-${opening.number}${tail === "" ? "" : `-${tail}`}`,
    mark: `${opening.number}${tail}`,
  };
}
