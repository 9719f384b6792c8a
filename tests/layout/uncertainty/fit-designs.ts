/**
 * Designs with steps that were measured, for the tests of what is known of them: taped, surveyed, or read from scratch.
 */

import { type BuiltGuard, buildGuard } from "../../../src/layout/build-guard.js";
import {
  type Adjustment,
  adjustReadings,
  type Design,
  type LaidCase,
  type LayoutReport,
  NOTHING_SET,
  type PieceUncertainty,
  parseDesign,
  pieceUncertainties,
  type Reading,
  solveAsSet,
  type TapedNosing,
  unknownsOf,
} from "../../../src/layout/index.js";
import { layOut } from "../../../src/layout/lay-out.js";
import type { Loose } from "../designs.js";

/** A design and the guard it makes. */
export interface BuiltCase extends BuiltGuard {
  readonly design: Design;
  readonly report: LayoutReport;
}

/** Nosings that are a few millimetres off a line: eight risers of 190 on goings of 270, mm. */
export const UNEVEN: readonly TapedNosing[] = [
  [0, 190],
  [270, 378],
  [541, 572],
  [809, 761],
  [1080, 949],
  [1352, 1141],
  [1619, 1329],
  [1890, 1520],
].map(([run, height]) => ({ run: run as number, height: height as number }));

/** A stair and a landing to a wall, posts on both, a bottom rail; millimetres. */
export function document(change: (own: Loose) => void = () => undefined): Loose {
  const own: Loose = {
    ...{ version: 1, job: "Glaze store (invented)", unit: "mm", side: "left", gap: 1.5 },
    stair: { nosings: UNEVEN, overhang: 20 },
    sections: { rail: "round 48.3 x 3.2", post: "square 40 x 3", low: "square 25 x 2" },
    rails: [
      { role: "top", section: "rail" },
      { id: "low", role: "lower", section: "low" },
    ],
    posts: { section: "post" },
    foot: { thickness: 10, along: 90, across: 90 },
    legs: [
      {
        ...{ along: "stair", top: 950, undersides: { low: 40 } },
        posts: { onTreads: [1, 4, 7], behindNosing: 80 },
      },
      {
        ...{ along: "landing", length: 2000, top: 950, undersides: { low: 50 } },
        posts: { at: [80, 1000, 1900] },
        end: { type: "wall", endPlate: 10 },
      },
    ],
  };
  change(own);
  return own;
}

/** A document read, with a survey on its steps where there is one. */
export function designOf(own: Loose, survey?: Adjustment): Design {
  const read = parseDesign(own);
  if (!read.ok) throw new Error(read.diagnostics.map((d) => d.message).join("\n"));
  if (survey === undefined) return read.value;
  const legs = read.value.legs.map((leg) =>
    leg.stair?.nosings === undefined ? leg : { ...leg, stair: { ...leg.stair, survey } },
  );
  return { ...read.value, legs };
}

/** A design laid out and solved. */
export function built(design: Design): BuiltCase {
  const layout = layOut(design);
  const { pieces, contacts, states, misfits } = solveAsSet(layout, NOTHING_SET);
  const { members, assemblies, report, diagnostics } = layout;
  return { design, members, pieces, contacts, assemblies, report, states, misfits, diagnostics };
}

/** The same from a document. */
export function guardOf(own: Loose): BuiltCase {
  const guard = buildGuard(own);
  if (!guard.design || !guard.report) throw new Error(guard.diagnostics.map((d) => d.message).join("\n"));
  return { ...guard, design: guard.design, report: guard.report };
}

/** Readings adjusted. */
export function survey(readings: readonly Reading[]): Adjustment {
  const found = adjustReadings(readings);
  if (!found.ok) throw new Error(found.diagnostics.map((own) => own.message).join(" "));
  return found.value;
}

/** Nosings of an adjusted survey as the document has them: runs from the lowest, heights from the floor. */
export function nosingsOf({ points }: Adjustment): TapedNosing[] {
  const floor = points.find((own) => own.point === 0)?.z ?? 0;
  const steps = points.filter((own) => typeof own.point === "number" && own.point > 0);
  const start = steps[0]?.x ?? 0;
  return steps.map((own) => ({ run: (own.x ?? 0) - start, height: (own.z ?? 0) - floor }));
}

/** What is known of every piece. */
export function knownOf(
  laid: LaidCase,
  guard: BuiltCase = built(laid.design),
): Map<string, PieceUncertainty> {
  const unknowns = unknownsOf(laid);
  if (!unknowns.ok) throw new Error(unknowns.diagnostics.map((own) => own.message).join(" "));
  return new Map(pieceUncertainties(laid, unknowns.value, guard.contacts).map((own) => [own.piece, own]));
}
