/**
 * The links of a path beside the guard: one a run, with one point where two of them meet.
 *
 * @packageDocumentation
 */
import { CORNER_STEP_MM } from "../../kernel/tolerance.js";
import type { Vec3 } from "../../kernel/vec.js";
import { alongOf, at, type Place } from "../part.js";
import { edgeZ, type RailRun } from "../rails/rail-path.js";
import type { Link } from "./chain.js";
import type { HandrailPath } from "./handrail-path.js";

/** A path in its place. */
export interface PathInPlace {
  readonly place: Place;
  readonly line: HandrailPath;
  /** Of the guard's middle plane. */
  readonly inward: number;
  /** In the document. */
  readonly path: string;
  readonly idOf: (run: RailRun, index: number) => string;
}

function axisPoint({ place, inward }: PathInPlace, run: RailRun, x: number): Vec3 {
  return at(place, run.reach, x, edgeZ(run, "axis", x), inward);
}

/** Where run i starts: one point for it and the run before, unless they miss each other at a corner. */
function nodeOf(own: PathInPlace, i: number): Vec3 {
  const { runs, breaks, corners } = own.line;
  const run = runs[i] as RailRun;
  const found = breaks.find((one) => one.runs[1] === i);
  if (found !== undefined) {
    const [lower, upper] = found.runs.map((k) => runs[k] as RailRun) as [RailRun, RailRun];
    return axisPoint(own, lower.slope === 0 ? lower : upper, found.x.axis);
  }
  const corner = corners.find((one) => one.runs[1] === i && Math.abs(one.step) <= CORNER_STEP_MM);
  const lower = corner && runs[corner.runs[0]];
  return lower === undefined ? axisPoint(own, run, run.x.axis[0]) : axisPoint(own, lower, lower.x.axis[1]);
}

/** The unit way of a run. */
export function wayOf(place: Place, run: Pick<RailRun, "reach" | "slope">): Vec3 {
  const along = alongOf(place, run.reach);
  const secant = Math.hypot(1, run.slope);
  return [along[0] / secant, along[1] / secant, run.slope / secant];
}

/** The links, mitred to each other except where a corner's two runs miss each other. */
export function pathLinks(own: PathInPlace): Link[] {
  const { place, line, path } = own;
  const missed = new Set(
    line.corners.filter((one) => Math.abs(one.step) > CORNER_STEP_MM).map((one) => one.runs[1]),
  );
  return line.runs.map((run, i): Link => {
    const ends = missed.has(i + 1) || i + 1 === line.runs.length;
    return {
      id: own.idOf(run, i),
      from: nodeOf(own, i),
      to: ends ? axisPoint(own, run, run.x.axis[1]) : nodeOf(own, i + 1),
      way: wayOf(place, run),
      path,
      mitred: i > 0 && !missed.has(i),
    };
  });
}
