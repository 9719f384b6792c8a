/**
 * May this solid be written? Every edge used twice, loops closed, its colour a colour. Numbers are looked at as they are spelt.
 *
 * @packageDocumentation
 */
import type { Diagnostic } from "../../kernel/diagnostic.js";
import { topologyProblems } from "../../kernel/rules/topology.js";
import type { Solid } from "../../kernel/solid.js";
import { checkColour } from "../check-items.js";

/** Why a piece cannot be written; empty for a good one. */
export function checkSolid(item: {
  readonly name: string;
  readonly solid: Solid;
  readonly colour?: readonly [number, number, number];
}): readonly Diagnostic[] {
  const { name, solid } = item;
  const found = topologyProblems(solid).map((d) => ({ ...d, message: `${name}: ${d.message}` }));
  return [...found, ...checkColour(item, name)].map((d) => ({ ...d, members: [name] }));
}
