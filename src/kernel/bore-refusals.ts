/**
 * Why a bore cannot be drilled through a section, in words and numbers.
 *
 * @packageDocumentation
 */
import type { Bore } from "./bar.js";
import type { BoreStance } from "./bore-stance.js";
import type { OutlineTurn } from "./bore-turns.js";
import { type Diagnostic, type DiagnosticInput, diagnostic } from "./diagnostic.js";
import type { Loop, Segment } from "./region.js";
import { LEFT_BESIDE_BORE_MM } from "./tolerance.js";

/** A finding about a bore. */
export interface BoreRefusal {
  readonly diagnostic: Diagnostic;
}

/** A refusal whose message starts with the bore's name and size. */
export function refuseBore(bore: Bore, why: DiagnosticInput): BoreRefusal {
  const message = `Bore ${bore.id} of ${bore.diameter.toFixed(3)} mm ${why.message}`;
  return { diagnostic: diagnostic({ ...why, bore: bore.id, message }) };
}

/**
 * A bore that reaches past the section, or past its hollow, where the outline turns.
 *
 * @param turns - of the whole outline
 * @param near - those that the bore reaches past
 */
export function refuseTurn(
  bore: Bore,
  stance: BoreStance,
  turns: readonly OutlineTurn[],
  near: readonly OutlineTurn[],
): BoreRefusal {
  const { radius } = stance.surface;
  const outer = turns.filter((t) => t.loop === 0).map((t) => t.h - stance.h);
  const [least, greatest] = [Math.min(...outer), Math.max(...outer)];
  const missBy = Math.max(least, -greatest) - radius;
  if (missBy >= 0 || near.length === 0) {
    return refuseBore(bore, {
      code: "bore-misses",
      message: `misses the section by ${missBy.toFixed(3)} mm.`,
      hint: "Move the bore so that its axis crosses the bar.",
      values: { missBy },
    });
  }
  if (least > -radius && greatest < radius) {
    const width = greatest - least;
    return refuseBore(bore, {
      code: "bore-wider-than-section",
      message: `is wider than the section, ${width.toFixed(3)} mm there, and would cut the bar in two.`,
      hint: "Use a smaller drill.",
      values: { width },
    });
  }
  const over = Math.max(...near.map((t) => radius - Math.abs(t.h - stance.h)));
  const reaches =
    over > LEFT_BESIDE_BORE_MM ? `reaches ${over.toFixed(3)} mm past` : "touches, without crossing it,";
  const hint = "Drill nearer to the middle, or use a smaller drill.";
  if (near.every((t) => t.loop > 0)) {
    const message = `${reaches} the side of the hollow in the section.`;
    return refuseBore(bore, { code: "bore-leaves-hollow", message, hint, values: { over } });
  }
  const message = `${reaches} the outside of the section.`;
  return refuseBore(bore, { code: "bore-leaves-section", message, hint, values: { over } });
}

/** A bore that only touches the line between two sides, which starts the side `corner`. */
export function refuseTouching(bore: Bore, loop: Loop, corner: number): BoreRefusal {
  const name = (k: number): string => (loop[(k + loop.length) % loop.length] as Segment).label || "unnamed";
  return refuseBore(bore, {
    code: "bore-touches-edge",
    message: `touches the line between the sides "${name(corner - 1)}" and "${name(corner)}" without crossing it.`,
    hint: "Move the bore, or change its diameter, by 0.01 mm: across the line or clear of it, either can be cut.",
  });
}
