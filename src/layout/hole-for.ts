/**
 * What is drilled so that a thing goes through after the finish is on, and what slips into a tube.
 *
 * A finish of thickness t on a round wall takes 2t off a hole's diameter and puts 2t on a bolt's, bar's or sleeve's. Plain
 * arithmetic, millimetres.
 *
 * @packageDocumentation
 */
import { RakewrightError } from "../kernel/diagnostic.js";
import { ROUNDING_SHARE } from "../kernel/tolerance.js";
import type { Shop } from "./document/shop.js";

/** Which of the two surfaces that pass each other carry the finish: only the outer one (the hole's wall), or both. */
export type Finished = "outer" | "both";

/** A hole as it is drilled. */
export interface DrilledHole {
  /** Diameter that leaves the nominal one when the finish is on, mm. */
  readonly exact: number;
  /** The next drill of the shop that is no smaller, mm. */
  readonly drill: number;
}

/**
 * The hole to drill so that `nominal` is left, or passes, when the finish is on.
 *
 * With a finish of 0.1 mm a hole of 13 mm is drilled 13 + 2 · 0.1 = 13.2 mm; where what passes is finished too,
 * 13 + 4 · 0.1 = 13.4 mm. With drills by 0.5 mm both are drilled 13.5 mm.
 *
 * @param nominal - clear diameter wanted, mm, above 0: the bolt or bar with the clearance it is to have
 * @param shop - its finish and its step of drills
 * @param finished - which surfaces are finished; default `outer`, the hole's wall alone
 * @returns the exact diameter and the drill, mm
 * @throws RakewrightError `bad-length` when `nominal` is not above zero
 * @example
 * holeFor(13, { ...DEFAULT_SHOP, finish: { kind: "paint", thickness: 0.1 } }); // { exact: 13.2, drill: 13.5 }
 */
export function holeFor(
  nominal: number,
  { finish, drillStep }: Pick<Shop, "finish" | "drillStep">,
  finished: Finished = "outer",
): DrilledHole {
  positive("Hole", nominal);
  const exact = nominal + walls(finished) * finish.thickness;
  // A drill that differs by a rounding is the drill.
  const drill = Math.ceil((exact / drillStep) * (1 - ROUNDING_SHARE)) * drillStep;
  return { exact, drill };
}

/**
 * The greatest outside diameter of a sleeve that slips into a tube when the finish is on.
 *
 * A bore of 60 mm, a slip fit of 0.5 mm and 0.085 mm of zinc on both: 60 − 0.5 − 4 · 0.085 = 59.16 mm; bare: 59.5 mm. The
 * seam's bead inside a welded tube comes off besides: measure it.
 *
 * @param bore - inside diameter of the bare tube, mm, above 0
 * @param shop - its finish and slip fit
 * @param finished - which surfaces are finished before they are put together; default `both`
 * @returns mm, of the bare sleeve; 0 where nothing is left
 * @throws RakewrightError `bad-length` when `bore` is not above zero
 * @example
 * sleeveFor(60, { ...DEFAULT_SHOP, slipFit: 0.5 }); // 59.5
 */
export function sleeveFor(
  bore: number,
  { finish, slipFit }: Pick<Shop, "finish" | "slipFit">,
  finished: Finished = "both",
): number {
  positive("Sleeve", bore);
  return Math.max(0, bore - slipFit - walls(finished) * finish.thickness);
}

/** How many thicknesses a diameter loses. */
const walls = (finished: Finished): number => (finished === "both" ? 4 : 2);

function positive(what: string, diameter: number): void {
  if (diameter > 0 && diameter < Number.POSITIVE_INFINITY) return;
  throw new RakewrightError({
    code: "bad-length",
    message: `${what}: expected a diameter above 0 mm, got ${diameter}.`,
    hint: "Give the clear diameter, in millimetres.",
  });
}
