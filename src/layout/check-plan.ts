/**
 * Does the guard run into itself in plan?
 *
 * Reaches that do not follow each other may not cross or come together where they are at heights that overlap: a stair that
 * winds up over itself is allowed, one rail through another is not. Reaches are taken as straight lines in plan; millimetres.
 *
 * @packageDocumentation
 */
import { type Diagnostic, diagnostic } from "../kernel/diagnostic.js";
import { segmentDistance } from "../kernel/segment-distance.js";
import type { Vec3 } from "../kernel/vec.js";
import { at, type Place } from "./part.js";
import { edgeZ, type RailPath, type RailRun } from "./rails/rail-path.js";
import { sayLength } from "./say-length.js";

interface Line {
  readonly run: RailRun;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Ground to top of rail. */
  readonly z: readonly [number, number];
}

function lineOf(place: Place, run: RailRun): Line {
  const [x0, x1] = run.x.axis;
  const tops = [edgeZ(run, "top", x0), edgeZ(run, "top", x1)];
  const height = run.leg.top;
  return {
    run,
    from: at(place, run.reach, x0, 0),
    to: at(place, run.reach, x1, 0),
    z: [Math.min(...tops) - height, Math.max(...tops)],
  };
}

/** How near two lines come in plan, where they are at heights that overlap; else undefined. */
function between(one: Line, other: Line): number | undefined {
  if (one.z[0] >= other.z[1] || other.z[0] >= one.z[1]) return undefined;
  return segmentDistance(one.from, one.to, other.from, other.to).distance;
}

/** Findings about reaches that meet others than their neighbours; `width` is the rail's. */
export function checkPlan(place: Place, path: RailPath, width: number): Diagnostic[] {
  const lines = path.runs.map((run) => lineOf(place, run));
  return lines.flatMap((upper, j) =>
    lines.slice(0, j).flatMap((lower): Diagnostic[] => {
      const distance = upper.run.reach - lower.run.reach < 2 ? undefined : between(lower, upper);
      if (distance === undefined || distance >= width) return [];
      return [
        diagnostic({
          code: "guard-crosses-itself",
          path: `legs[${upper.run.ground.index}]`,
          message: `Leg ${upper.run.leg.id}: expected its middle at least ${sayLength(width)} from that of leg ${lower.run.leg.id} in plan, got ${sayLength(distance)}.`,
          hint: "Correct the turns' signs (+ is to the left, walking up), or the legs' lengths.",
          values: { distance, width },
        }),
      ];
    }),
  );
}

/** The first place where the two guards of a pair meet in plan, if they do; `width` is the rail's. */
export function checkPair(
  left: readonly [Place, RailPath],
  right: readonly [Place, RailPath],
  width: number,
): Diagnostic[] {
  const [ones, others] = [left, right].map(([place, path]) => path.runs.map((run) => lineOf(place, run)));
  for (const one of ones ?? []) {
    for (const other of others ?? []) {
      const distance = between(one, other);
      if (distance === undefined || distance >= width) continue;
      return [
        diagnostic({
          code: "guards-meet",
          path: `legs[${other.run.ground.index}]`,
          message: `Guards on both sides: expected the right-hand one clear of the left-hand one by ${sayLength(width)}, got ${sayLength(distance)} between leg ${one.run.leg.id} and its mirror image's ${other.run.leg.id}.`,
          hint: "A pair turns away from the stair on both sides; where both turn the same way, make one design for each side.",
          values: { distance, width },
        }),
      ];
    }
  }
  return [];
}
