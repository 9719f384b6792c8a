/**
 * Round tube and round bar.
 *
 * @packageDocumentation
 */
import { circleLoop } from "../../kernel/region.js";
import type { Section } from "../section.js";
import { requireBore, requireSizes, sizesOf } from "./checks.js";

/** What every section may be called and where its sizes come from. */
export interface SectionNaming {
  /** Name on the papers; by default the shape's word and its sizes in millimetres. */
  readonly name?: string;
  /** Where the sizes come from; default `as given`. */
  readonly source?: string;
}

/**
 * A round tube; outer side `wall`, inner side `bore`.
 *
 * @param input.od - outside diameter, millimetres, above zero
 * @param input.wall - wall thickness, millimetres, above zero and below half the diameter
 * @throws RakewrightError `bad-section` for sizes that are no tube
 * @example
 * roundTube({ od: 48.3, wall: 3.2 }).name; // round 48.3 x 3.2
 */
export function roundTube(input: { readonly od: number; readonly wall: number } & SectionNaming): Section {
  const { od, wall } = input;
  requireSizes("Round tube", { od, wall });
  requireBore("Round tube", od, wall);
  return {
    name: input.name ?? `round ${sizesOf(od, wall)}`,
    shape: { kind: "round-tube", od, wall },
    region: {
      outer: circleLoop([0, 0], od / 2, "wall"),
      holes: [circleLoop([0, 0], od / 2 - wall, "bore", true)],
    },
    source: input.source ?? "as given",
  };
}

/**
 * A solid round bar; its side is `wall`.
 *
 * @param input.od - diameter, millimetres, above zero
 * @throws RakewrightError `bad-section` for a size that is no bar
 * @example
 * roundBar({ od: 16 }).name; // round bar 16
 */
export function roundBar(input: { readonly od: number } & SectionNaming): Section {
  const { od } = input;
  requireSizes("Round bar", { od });
  return {
    name: input.name ?? `round bar ${sizesOf(od)}`,
    shape: { kind: "round-bar", od },
    region: { outer: circleLoop([0, 0], od / 2, "wall"), holes: [] },
    source: input.source ?? "as given",
  };
}
