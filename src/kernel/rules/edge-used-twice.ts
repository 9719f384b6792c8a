/**
 * Rule: every edge is used exactly twice, once in each direction.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";

/** Edges that break the rule. */
export function edgeUsedTwice(solid: Solid): Diagnostic[] {
  const uses = new Int8Array(solid.edges.length * 2);
  for (const face of solid.faces) {
    for (const loop of face.loops) {
      for (const use of loop) {
        const i = use.edge * 2 + (use.forward ? 0 : 1);
        uses[i] = (uses[i] as number) + 1;
      }
    }
  }
  const out: Diagnostic[] = [];
  for (let e = 0; e < solid.edges.length; e++) {
    const [forward, backward] = [uses[e * 2] as number, uses[e * 2 + 1] as number];
    if (forward === 1 && backward === 1) continue;
    out.push(
      diagnostic({
        code: "edge-not-used-twice",
        message: `Edge ${e} is used ${forward} times forward and ${backward} times backward; expected once each.`,
        hint: "The solid is not closed. Report the design: it is a fault of the kernel.",
        values: { edge: e, forward, backward },
      }),
    );
  }
  return out;
}
