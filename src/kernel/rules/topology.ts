/**
 * The rules of topology that every solid passes before anybody sees it.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";
import { edgeUsedTwice } from "./edge-used-twice.js";
import { eulerNumber } from "./euler-number.js";
import { loopsClose } from "./loops-close.js";

/** All topological faults of a solid; empty for a good one. */
export function topologyProblems(solid: Solid): Diagnostic[] {
  return [...edgeUsedTwice(solid), ...loopsClose(solid), ...eulerNumber(solid)];
}
