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
import { edgeZ, type RailPath, type RailRun } from "./rail-path.js";
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

/** Findings about reaches that meet others than their neighbours; `width` is the rail's. */
export function checkPlan(place: Place, path: RailPath, width: number): Diagnostic[] {
  const lines = path.runs.map((run) => lineOf(place, run));
  return lines.flatMap((upper, j) =>
    lines.slice(0, j).flatMap((lower): Diagnostic[] => {
      if (upper.run.reach - lower.run.reach < 2) return [];
      if (upper.z[0] >= lower.z[1] || lower.z[0] >= upper.z[1]) return [];
      const { distance } = segmentDistance(lower.from, lower.to, upper.from, upper.to);
      if (distance >= width) return [];
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
