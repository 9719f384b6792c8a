/** A STEP text read strictly: its faults, and a graph to walk. */
import { faultsOf } from "./faults.js";
import { Graph } from "./graph.js";
import { Part21Fault, parsePart21 } from "./parse.js";

/** Reads a text; no graph where its letters are wrong already. */
export function readStep(text: string): { readonly faults: readonly string[]; readonly graph: Graph | null } {
  try {
    const exchange = parsePart21(text);
    return { faults: faultsOf(exchange), graph: new Graph(exchange) };
  } catch (error) {
    if (error instanceof Part21Fault) return { faults: [error.message], graph: null };
    throw error;
  }
}
