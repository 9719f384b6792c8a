/**
 * Rule: V − E + F − (inner loops) = 2·(shells) − 2·(handles) is an even number that two or fewer handles per hole explain.
 *
 * A bar with h holes in its section is a ball with h handles: V − E + F − L = 2 − 2h with L the number of inner loops.
 * Here the rule asks that the number is even and not above 2, and that every vertex has at least three edges or joins
 * two faces smoothly (two edges).
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../diagnostic.js";
import type { Solid } from "../solid.js";

/** V − E + F − L of a solid. */
export function eulerOf(solid: Solid): number {
  const used = new Set<number>();
  for (const e of solid.edges) {
    used.add(e.from);
    used.add(e.to);
  }
  const inner = solid.faces.reduce((n, f) => n + f.loops.length - 1, 0);
  return used.size - solid.edges.length + solid.faces.length - inner;
}

/** The Euler number when it cannot belong to one closed solid. */
export function eulerNumber(solid: Solid): Diagnostic[] {
  const chi = eulerOf(solid);
  if (chi <= 2 && chi % 2 === 0) return [];
  return [
    diagnostic({
      code: "euler-number-odd",
      message: `Vertices − edges + faces − inner loops is ${chi}; a closed solid has an even number of at most 2.`,
      hint: "Report the design: it is a fault of the kernel.",
      values: { chi },
    }),
  ];
}
