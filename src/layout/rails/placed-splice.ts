/**
 * Where the splices of a run are along the guard.
 *
 * @packageDocumentation
 */
import type { SpliceDesign } from "../document/design.js";
import type { LegGround, Site } from "../site/site.js";

/** A splice on its run. */
export interface PlacedSplice {
  readonly design: SpliceDesign;
  /** In the document. */
  readonly path: string;
  readonly x: number;
}

/** The splices of some legs, in order along the guard; a leg's stations start at its lower end, a first floor's at its upper. */
export function splicesOn(
  site: Site,
  splices: readonly SpliceDesign[],
  legs: readonly LegGround[],
): PlacedSplice[] {
  return splices
    .flatMap((design, i): PlacedSplice[] => {
      const ground = legs.find((own) => own.leg.id === design.leg);
      if (ground === undefined) return [];
      const backward = ground === site.legs[0] && ground.flight === undefined;
      const x = backward ? ground.x[1] - design.at : ground.x[0] + design.at;
      return [{ design, path: `splices[${i}]`, x }];
    })
    .sort((a, b) => a.x - b.x);
}
